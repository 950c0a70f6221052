/**
 * What is the size of one part, from the readings of its spots?
 *
 *   spot     = mean of the repeats of one place
 *   size     = mean of the spots
 *   largest, smallest = extremes of the spots
 *
 *   readings, spots   two-point diameters or walls at 20 °C     mm or in
 *
 * Every mean is rounded to 0.001 µm, halves away from zero. A blank is a place that was not measured: it
 * is left out, and where all are blank the result is the empty text.
 *
 * Source: common practice, no published source; two-point size: ISO 14405-1.
 */
import type { Grain } from '../src/maths/grain.js';
import { meanGrain } from '../src/maths/grain.js';
import { type ArgumentRecord, defineFunction } from './definition.js';

const measuredPlaces = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'spots',
    allowed: { above: 0 },
    blank: 'allowed',
    blankMeans: 'not measured, left out',
  }) as const satisfies ArgumentRecord;

const SPOTS = measuredPlaces('spots', 'the spots of one part');
const SOURCE = 'common practice, no published source; two-point size: ISO 14405-1';
const EMPTY_WHEN = 'nothing was measured';

function measured(spots: readonly (Grain | undefined)[] | undefined): Grain[] {
  return (spots ?? []).filter((spot) => spot !== undefined);
}

function textRefusal(name: string, argument: string) {
  const message = `${name}: ${argument} (cell 2 of 3) is the text "n/a"; expected a range of lengths in mm above 0, blanks allowed`;
  return {
    error: { code: 'VALUE', when: 'a cell holds text', message },
    example: {
      kind: 'refused',
      says: 'text is not a blank',
      grid: [[42.002, 'n/a', 42.001]],
      formula: `=${name}(A1:C1)`,
      expected: { error: 'VALUE', message },
    },
  } as const;
}

const nothingMeasured = (name: string) =>
  ({
    kind: 'edge',
    says: 'nothing was measured',
    grid: [[null, null]],
    formula: `=${name}(A1:B1)`,
    expected: '',
  }) as const;

export const spotMean = defineFunction({
  name: 'SPOT_MEAN',
  group: 'columns',
  sentence: 'The value of one spot: the mean of its repeats.',
  arguments: [measuredPlaces('readings', 'the repeats of one spot, each at 20 °C')],
  result: { meaning: 'the mean, on the grain of 0.001 µm', quantity: 'length', emptyWhen: EMPTY_WHEN },
  errors: [textRefusal('SPOT_MEAN', 'readings').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'a mean of thirds is rounded to 0.001 µm',
      grid: [[42.002, 42.001, 42.001]],
      formula: '=SPOT_MEAN(A1:C1)',
      expected: 42.001333,
    },
    {
      kind: 'edge',
      says: 'a blank repeat is left out; a half rounds away from zero',
      grid: [[42.002001, null, 42.002]],
      formula: '=SPOT_MEAN(A1:C1)',
      expected: 42.002001,
    },
    nothingMeasured('SPOT_MEAN'),
    textRefusal('SPOT_MEAN', 'readings').example,
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['PART_SIZE', 'AT_20C'],
  body: (readings) => {
    const values = measured(readings);
    return values.length > 0 ? meanGrain(values) : undefined;
  },
});

export const partSize = defineFunction({
  name: 'PART_SIZE',
  group: 'columns',
  sentence: 'The size of a part: the mean of its spots.',
  arguments: [SPOTS],
  result: { meaning: 'the size, on the grain of 0.001 µm', quantity: 'length', emptyWhen: EMPTY_WHEN },
  errors: [textRefusal('PART_SIZE', 'spots').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'four spots, one of them not measured',
      grid: [[42.002, 42.001, null, 42.003]],
      formula: '=PART_SIZE(A1:D1)',
      expected: 42.002,
    },
    nothingMeasured('PART_SIZE'),
    textRefusal('PART_SIZE', 'spots').example,
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['LARGEST_SPOT', 'SMALLEST_SPOT', 'SPOT_MEAN'],
  body: (spots) => {
    const values = measured(spots);
    return values.length > 0 ? meanGrain(values) : undefined;
  },
});

export const largestSpot = defineFunction({
  name: 'LARGEST_SPOT',
  group: 'columns',
  sentence: 'The largest spot of a part.',
  arguments: [SPOTS],
  result: { meaning: 'the largest spot', quantity: 'length', emptyWhen: EMPTY_WHEN },
  errors: [textRefusal('LARGEST_SPOT', 'spots').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'four spots, one of them not measured',
      grid: [[42.002, 42.001, null, 42.003]],
      formula: '=LARGEST_SPOT(A1:D1)',
      expected: 42.003,
    },
    nothingMeasured('LARGEST_SPOT'),
    textRefusal('LARGEST_SPOT', 'spots').example,
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['SMALLEST_SPOT', 'PART_SIZE'],
  body: (spots) => {
    const values = measured(spots);
    return values.length > 0 ? Math.max(...values) : undefined;
  },
});

export const smallestSpot = defineFunction({
  name: 'SMALLEST_SPOT',
  group: 'columns',
  sentence: 'The smallest spot of a part.',
  arguments: [SPOTS],
  result: { meaning: 'the smallest spot', quantity: 'length', emptyWhen: EMPTY_WHEN },
  errors: [textRefusal('SMALLEST_SPOT', 'spots').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'a blank is not 0',
      grid: [[42.002, 42.001, null, 42.003]],
      formula: '=SMALLEST_SPOT(A1:D1)',
      expected: 42.001,
    },
    nothingMeasured('SMALLEST_SPOT'),
    textRefusal('SMALLEST_SPOT', 'spots').example,
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['LARGEST_SPOT', 'PART_SIZE'],
  body: (spots) => {
    const values = measured(spots);
    return values.length > 0 ? Math.min(...values) : undefined;
  },
});
