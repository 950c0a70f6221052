/**
 * How well is a size known, given everything that may be wrong with it?
 *
 *   u = √(Σ c²)          U = 2·u
 *
 *   c   one contribution: a standard uncertainty times its sensitivity     mm or in
 *   u   standard uncertainty                                              mm or in
 *   U   expanded uncertainty, k = 2                                       mm or in
 *
 * A blank contribution is none; where all are blank, nothing is known and the result is the empty text.
 *
 * Source: JCGM 100:2008, 5.1.2 and 6.2.
 */
import { expandedUncertainty as expanded, sumOfSquares } from '../src/maths/uncertainty.js';
import { type ArgumentRecord, defineFunction } from './definition.js';

const CONTRIBUTIONS = {
  name: 'contributions',
  meaning: 'the contributions to the standard uncertainty, independent of each other',
  quantity: 'unrounded lengths',
  blank: 'allowed',
  blankMeans: 'no contribution',
} as const satisfies ArgumentRecord;

const SOURCE = 'JCGM 100:2008, 5.1.2 and 6.2';

function flagRefusal(name: string) {
  const message = `${name}: contributions (cell 2 of 2) is TRUE; expected a range of lengths in mm, blanks allowed`;
  return {
    error: { code: 'VALUE', when: 'a cell holds no number', message },
    example: {
      kind: 'refused',
      says: 'TRUE is not 1',
      grid: [[0.001, true]],
      formula: `=${name}(A1:B1)`,
      expected: { error: 'VALUE', message },
    },
  } as const;
}

export const standardUncertainty = defineFunction({
  name: 'STANDARD_UNCERTAINTY',
  group: 'columns',
  sentence: 'The standard uncertainty of independent contributions: the root of their sum of squares.',
  arguments: [CONTRIBUTIONS],
  result: {
    meaning: 'the standard uncertainty, not rounded',
    quantity: 'unrounded length',
    emptyWhen: 'every contribution is blank',
  },
  errors: [flagRefusal('STANDARD_UNCERTAINTY').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'a contribution may be smaller than 0.001 µm',
      grid: [[0.0003, 0.0004, null, 0.000001]],
      formula: '=STANDARD_UNCERTAINTY(A1:D1)',
      expected: 0.000500001,
      tolerance: 1e-12,
    },
    {
      kind: 'edge',
      says: 'nothing is known',
      grid: [[null, null]],
      formula: '=STANDARD_UNCERTAINTY(A1:B1)',
      expected: '',
    },
    flagRefusal('STANDARD_UNCERTAINTY').example,
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['EXPANDED_UNCERTAINTY', 'CLEARANCE_UNCERTAINTY'],
  body: (contributions = []) =>
    contributions.length > 0 ? Math.sqrt(sumOfSquares(contributions)) : undefined,
});

export const expandedUncertainty = defineFunction({
  name: 'EXPANDED_UNCERTAINTY',
  group: 'columns',
  sentence: 'The expanded uncertainty of independent contributions: twice their standard uncertainty.',
  arguments: [CONTRIBUTIONS],
  result: {
    meaning: 'the expanded uncertainty (k = 2), on the grain of 0.001 µm',
    quantity: 'length',
    emptyWhen: 'every contribution is blank',
  },
  errors: [flagRefusal('EXPANDED_UNCERTAINTY').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'twice the root of the sum of squares',
      grid: [[0.0003, 0.0004]],
      formula: '=EXPANDED_UNCERTAINTY(A1:B1)',
      expected: 0.001,
    },
    {
      kind: 'edge',
      says: 'nothing is known',
      grid: [[null]],
      formula: '=EXPANDED_UNCERTAINTY(A1:A1)',
      expected: '',
    },
    flagRefusal('EXPANDED_UNCERTAINTY').example,
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['STANDARD_UNCERTAINTY'],
  body: (contributions = []) =>
    contributions.length > 0 ? expanded(sumOfSquares(contributions)) : undefined,
});
