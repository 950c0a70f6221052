/**
 * How wide is a gap, from its readings, or from the blades of a feeler gauge?
 *
 *   by readings   gap = mean, tightest = smallest, loosest = largest
 *   by feelers    tightest = goes, loosest = stops, gap = (goes + stops) / 2
 *
 *   readings   what was read of the gap, signed         mm or in
 *   goes       the thickest blade that goes in          mm or in
 *   stops      the thinnest blade that does not         mm or in
 *
 * Where there are readings, they count. A blank was not measured; with nothing measured the result is the empty text.
 *
 * Source: common practice, no published source.
 */
import type { Clearance } from '../src/maths/clearance.js';
import { gapOfFeelers } from '../src/maths/feelers.js';
import { type Grain, meanGrain } from '../src/maths/grain.js';
import { type ArgumentRecord, defineFunction } from './definition.js';

const blade = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'length',
    allowed: { from: 0 },
    blank: 'allowed',
    blankMeans: 'not tried',
    optional: true,
  }) as const satisfies ArgumentRecord;

const MEASURED = [
  {
    name: 'readings',
    meaning: 'the readings of one gap, signed',
    quantity: 'spots',
    blank: 'allowed',
    blankMeans: 'not measured, left out',
  },
  blade('goes', 'the thickest blade that goes in'),
  blade('stops', 'the thinnest blade that does not'),
] as const satisfies readonly ArgumentRecord[];

type Readings = readonly (Grain | undefined)[] | undefined;

/** What is known of a gap: by one blade its own side of it. */
function gapOf(
  readings: Readings,
  goes: Grain | undefined,
  stops: Grain | undefined,
): { readonly [Key in keyof Clearance]: Grain | undefined } {
  const read = (readings ?? []).filter((reading) => reading !== undefined);
  if (read.length > 0) {
    return { clearance: meanGrain(read), tightest: Math.min(...read), loosest: Math.max(...read) };
  }
  const clearance = gapOfFeelers({ goes, stops })?.clearance;
  return { clearance, tightest: goes, loosest: stops };
}

const textRefusal = (name: string) => {
  const message = `${name}: readings (cell 2 of 2) is the text "n/a"; expected a range of lengths in mm, blanks allowed`;
  return {
    error: { code: 'VALUE', when: 'a cell holds text', message },
    example: {
      kind: 'refused',
      says: 'text is not a blank',
      grid: [[0.12, 'n/a']],
      formula: `=${name}(A1:B1)`,
      expected: { error: 'VALUE', message },
    },
  } as const;
};

const SOURCE = 'common practice, no published source';

export const gapMean = defineFunction({
  name: 'GAP_MEAN',
  group: 'columns',
  sentence: 'A gap: the mean of its readings, or the middle between two feelers.',
  arguments: MEASURED,
  result: { meaning: 'the gap', quantity: 'length', emptyWhen: 'there is no reading, nor both blades' },
  errors: [textRefusal('GAP_MEAN').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'three readings of an end float',
      grid: [[0.12, 0.14, 0.13]],
      formula: '=GAP_MEAN(A1:C1)',
      expected: 0.13,
    },
    {
      kind: 'edge',
      says: 'by feelers the middle of the two blades',
      grid: [[null]],
      formula: '=GAP_MEAN(A1, 0.25, 0.3)',
      expected: 0.275,
    },
    textRefusal('GAP_MEAN').example,
  ],
  source: SOURCE,
  since: '0.2.0',
  related: ['GAP_TIGHTEST', 'GAP_LOOSEST', 'GAP_VERDICT'],
  body: (readings, goes, stops) => gapOf(readings, goes, stops).clearance,
});

export const gapTightest = defineFunction({
  name: 'GAP_TIGHTEST',
  group: 'columns',
  sentence: 'The smallest reading of a gap, or the thickest feeler that goes in.',
  arguments: MEASURED,
  result: { meaning: 'the tightest', quantity: 'length', emptyWhen: 'neither was measured' },
  errors: [textRefusal('GAP_TIGHTEST').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'the smallest of three readings',
      grid: [[0.12, 0.14, 0.13]],
      formula: '=GAP_TIGHTEST(A1:C1)',
      expected: 0.12,
    },
    {
      kind: 'edge',
      says: 'readings are signed, and zero is one',
      grid: [[0, -0.02]],
      formula: '=GAP_TIGHTEST(A1:B1)',
      expected: -0.02,
    },
    textRefusal('GAP_TIGHTEST').example,
  ],
  source: SOURCE,
  since: '0.2.0',
  related: ['GAP_MEAN', 'GAP_LOOSEST'],
  body: (readings, goes, stops) => gapOf(readings, goes, stops).tightest,
});

export const gapLoosest = defineFunction({
  name: 'GAP_LOOSEST',
  group: 'columns',
  sentence: 'The largest reading of a gap, or the thinnest feeler that does not go in.',
  arguments: MEASURED,
  result: { meaning: 'the loosest', quantity: 'length', emptyWhen: 'neither was measured' },
  errors: [textRefusal('GAP_LOOSEST').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'the largest of three readings',
      grid: [[0.12, 0.14, 0.13]],
      formula: '=GAP_LOOSEST(A1:C1)',
      expected: 0.14,
    },
    {
      kind: 'edge',
      says: 'where there are readings, feelers do not count',
      grid: [[0.26, 0.27]],
      formula: '=GAP_LOOSEST(A1:B1, 0.25, 0.3)',
      expected: 0.27,
    },
    textRefusal('GAP_LOOSEST').example,
  ],
  source: SOURCE,
  since: '0.2.0',
  related: ['GAP_MEAN', 'GAP_TIGHTEST'],
  body: (readings, goes, stops) => gapOf(readings, goes, stops).loosest,
});
