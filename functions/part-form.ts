/**
 * How far is a part from a true cylinder, from spots that need not fill a grid?
 *
 *   taper        = greatest, over angles read at two or more stations, of (largest − smallest)
 *   out of round = greatest, over stations read at two or more angles, of (largest − smallest)
 *
 *   spots      two-point diameters at 20 °C            mm or in
 *   stations   the name of the station of each spot    text or a number
 *   angles     the angle of each spot                  degrees
 *
 * A blank spot was not measured. A blank angle belongs to a wall, which has no form.
 *
 * Source: TM 5-3805-262-34, pp. 4-23 and 4-24 (front and rear for taper, and at 90° for out of round);
 * two-point size: ISO 14405-1.
 */

import { type Form, formOf, type Spot } from '../src/maths/form.js';
import type { Grain } from '../src/maths/grain.js';
import { type ArgumentRecord, ArgumentRefusal, defineFunction } from './definition.js';
import { messages } from './messages.js';

const PLACES = [
  {
    name: 'spots',
    meaning: 'the spots of one part',
    quantity: 'spots',
    allowed: { above: 0 },
    blank: 'allowed',
    blankMeans: 'not measured, left out',
  },
  {
    name: 'stations',
    meaning: 'the station of each spot, as many cells as spots',
    quantity: 'names',
    blank: 'refused',
  },
  {
    name: 'angles',
    meaning: 'the angle of each spot, as many cells as spots',
    quantity: 'angles',
    blank: 'allowed',
    blankMeans: 'a wall, which has no form',
  },
] as const satisfies readonly ArgumentRecord[];

function formOfPlaces(
  spots: readonly (Grain | undefined)[] = [],
  stations: readonly (string | undefined)[] = [],
  angles: readonly (number | undefined)[] = [],
): Form | undefined {
  for (const [name, cells] of [
    ['stations', stations.length],
    ['angles', angles.length],
  ] as const) {
    if (cells !== spots.length) {
      throw new ArgumentRefusal('VALUE', messages.unequalRanges('spots', spots.length, name, cells));
    }
  }
  const measured: Spot[] = [];
  for (const [place, spot] of spots.entries()) {
    if (spot === undefined) continue;
    measured.push({ station: stations[place] ?? '', angle: angles[place], readings: [spot] });
  }
  return measured.length > 0 ? formOf(measured) : undefined;
}

function unequal(name: string) {
  const message = `${name}: angles has 2 cells and spots has 3; expected ranges of equal length`;
  return {
    error: { code: 'VALUE', when: 'the ranges differ in length', message },
    example: {
      kind: 'refused',
      says: 'every spot needs its station and angle',
      grid: [
        ['A', 'A', 'B'],
        [0, 90, 0],
        [42.002, 42.001, 42.003],
      ],
      formula: `=${name}(A3:C3, A1:C1, A2:B2)`,
      expected: { error: 'VALUE', message },
    },
  } as const;
}

const HEADERS = [
  ['A', 'A', 'B', 'B'],
  [0, 90, 0, 90],
] as const;

const SOURCE = 'TM 5-3805-262-34, pp. 4-23 and 4-24; two-point size: ISO 14405-1';

export const spotTaper = defineFunction({
  name: 'SPOT_TAPER',
  group: 'columns',
  sentence: 'The taper of a part from spots named by station and angle.',
  arguments: PLACES,
  result: {
    meaning: 'the taper, 0 or more',
    quantity: 'length',
    emptyWhen: 'no angle was read at two stations',
  },
  errors: [unequal('SPOT_TAPER').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'a spot that was not measured is left out',
      grid: [...HEADERS, [59.985, 59.98, 59.905, null]],
      formula: '=SPOT_TAPER(A3:D3, A1:D1, A2:D2)',
      expected: 0.08,
    },
    {
      kind: 'edge',
      says: 'one station shows no taper',
      grid: [...HEADERS, [59.985, 59.98, null, null]],
      formula: '=SPOT_TAPER(A3:D3, A1:D1, A2:D2)',
      expected: '',
    },
    unequal('SPOT_TAPER').example,
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['SPOT_OUT_OF_ROUND', 'JOURNAL_TAPER'],
  body: (spots, stations, angles) => formOfPlaces(spots, stations, angles)?.taper,
});

export const spotOutOfRound = defineFunction({
  name: 'SPOT_OUT_OF_ROUND',
  group: 'columns',
  sentence: 'Out of round of a part from spots named by station and angle.',
  arguments: PLACES,
  result: {
    meaning: 'out of round, 0 or more',
    quantity: 'length',
    emptyWhen: 'no station was read at two angles',
  },
  errors: [unequal('SPOT_OUT_OF_ROUND').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'the greatest of the stations counts',
      grid: [...HEADERS, [59.985, 59.98, 59.905, 59.902]],
      formula: '=SPOT_OUT_OF_ROUND(A3:D3, A1:D1, A2:D2)',
      expected: 0.005,
    },
    {
      kind: 'edge',
      says: 'walls have no angle and no form',
      grid: [
        ['Wall 1', 'Wall 2'],
        [null, null],
        [1.487, 1.488],
      ],
      formula: '=SPOT_OUT_OF_ROUND(A3:B3, A1:B1, A2:B2)',
      expected: '',
    },
    unequal('SPOT_OUT_OF_ROUND').example,
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['SPOT_TAPER', 'OUT_OF_ROUND'],
  body: (spots, stations, angles) => formOfPlaces(spots, stations, angles)?.outOfRound,
});
