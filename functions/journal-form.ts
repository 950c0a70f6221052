/**
 * How far is a journal or bore from a true cylinder?
 *
 *   taper        = greatest, over angles, of (largest − smallest over the stations)
 *   out of round = greatest, over stations, of (largest − smallest over the angles)
 *
 *   readings   two-point diameters, station by station       mm or in
 *   stations   how many places along the part were read      a count
 *
 * Two-point diameters cannot see a three-lobed form.
 *
 * Source: TM 5-3805-262-34, pp. 4-23 and 4-24 (front and rear for taper, and at 90° for out of round);
 * two-point size: ISO 14405-1.
 */

import { type Form, formOf, spotsByStation } from '../src/maths/form.js';
import type { Grain } from '../src/maths/grain.js';
import { type ArgumentRecord, ArgumentRefusal, defineFunction } from './definition.js';
import { messages } from './messages.js';

const GRID = [
  {
    name: 'readings',
    meaning: 'the diameters, station by station, the same angles at each',
    quantity: 'lengths',
    allowed: { above: 0 },
    blank: 'refused',
  },
  {
    name: 'stations',
    meaning: 'how many stations were read',
    quantity: 'count',
    allowed: { from: 1, to: 1000 },
    blank: 'refused',
  },
] as const satisfies readonly ArgumentRecord[];

function formByStation(readings: readonly Grain[], stations: number): Form {
  if (readings.length % stations !== 0) {
    throw new ArgumentRefusal('NUM', messages.notMultiple(readings.length, stations));
  }
  return formOf(spotsByStation(readings, stations));
}

const SOURCE = 'TM 5-3805-262-34, pp. 4-23 and 4-24; two-point size: ISO 14405-1';

export const journalTaper = defineFunction({
  name: 'JOURNAL_TAPER',
  group: 'workshop',
  sentence: 'The taper: the greatest difference of diameter along the part at one angle.',
  arguments: GRID,
  result: { meaning: 'the taper, 0 or more', quantity: 'length' },
  errors: [
    {
      code: 'NUM',
      when: 'there is one station only',
      message: 'JOURNAL_TAPER: stations is 1; a taper needs readings at 2 stations or more',
    },
    {
      code: 'NUM',
      when: 'the stations cannot share the readings evenly',
      message:
        'JOURNAL_TAPER: readings has 4 cells, which 3 stations cannot share evenly; give every station the same angles',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'a row for each station, a column for each angle',
      grid: [
        [59.985, 59.98],
        [59.905, 59.902],
      ],
      formula: '=JOURNAL_TAPER(A1:B2, 2)',
      expected: 0.08,
    },
    {
      kind: 'edge',
      says: 'the same readings in one row, station by station',
      grid: [[59.985, 59.98, 59.905, 59.902]],
      formula: '=JOURNAL_TAPER(A1:D1, 2)',
      expected: 0.08,
    },
    {
      kind: 'refused',
      says: 'one station shows no taper',
      grid: [[59.985, 59.98]],
      formula: '=JOURNAL_TAPER(A1:B1, 1)',
      expected: {
        error: 'NUM',
        message: 'JOURNAL_TAPER: stations is 1; a taper needs readings at 2 stations or more',
      },
    },
    {
      kind: 'refused',
      says: 'three stations cannot share four readings',
      grid: [[59.985, 59.98, 59.905, 59.902]],
      formula: '=JOURNAL_TAPER(A1:D1, 3)',
      expected: {
        error: 'NUM',
        message:
          'JOURNAL_TAPER: readings has 4 cells, which 3 stations cannot share evenly; give every station the same angles',
      },
    },
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['OUT_OF_ROUND', 'SPOT_TAPER'],
  body: (readings, stations) => {
    const { taper } = formByStation(readings, stations);
    if (taper === undefined) throw new ArgumentRefusal('NUM', messages.tooFewStations);
    return taper;
  },
});

export const outOfRound = defineFunction({
  name: 'OUT_OF_ROUND',
  group: 'workshop',
  sentence: 'Out of round: the greatest difference of diameter around the part at one station.',
  arguments: GRID,
  result: { meaning: 'out of round, 0 or more', quantity: 'length' },
  errors: [
    {
      code: 'NUM',
      when: 'a station has one reading only',
      message:
        'OUT_OF_ROUND: readings has 2 cells for 2 stations; out of round needs 2 angles or more at each',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'a row for each station, a column for each angle',
      grid: [
        [59.985, 59.98],
        [59.905, 59.902],
      ],
      formula: '=OUT_OF_ROUND(A1:B2, 2)',
      expected: 0.005,
    },
    {
      kind: 'edge',
      says: 'one station is enough',
      grid: [[42.003, 42.0015, 42.002]],
      formula: '=OUT_OF_ROUND(A1:C1, 1)',
      expected: 0.0015,
    },
    {
      kind: 'refused',
      says: 'one angle a station shows nothing',
      grid: [[59.985, 59.905]],
      formula: '=OUT_OF_ROUND(A1:B1, 2)',
      expected: {
        error: 'NUM',
        message:
          'OUT_OF_ROUND: readings has 2 cells for 2 stations; out of round needs 2 angles or more at each',
      },
    },
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['JOURNAL_TAPER', 'SPOT_OUT_OF_ROUND'],
  body: (readings, stations) => {
    const form = formByStation(readings, stations);
    if (form.outOfRound === undefined) {
      throw new ArgumentRefusal('NUM', messages.tooFewAngles(readings.length, stations));
    }
    return form.outOfRound;
  },
});
