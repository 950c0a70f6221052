/**
 * Does a measured gap lie within its limits, of which it may have one of the two?
 *
 *   by readings: the rules of FIT_VERDICT, a blank limit being none
 *   by feelers   tight                  stops + G < min
 *                loose                  goes − G > service limit, or > max where there is none
 *                in range               goes − g ≥ min and stops + g ≤ max
 *                within service limit   goes − G > max and stops + g ≤ service limit
 *                undecided              all else
 *
 *   chance = Φ((max − loosest)/u) − Φ((min − tightest)/u), not below 0; a blank limit never fails
 *
 *   tightest, loosest   extremes of the readings; of feelers goes and stops           mm or in
 *   min, max            limits                                                         mm or in
 *   service limit       the most that worn parts may have                              mm or in
 *   g, G                guards inside and outside a limit                              mm or in
 *   u                   standard uncertainty                                           mm or in
 *   Φ                   standard normal distribution
 *
 * Source: ISO 14253-1:2017 (rules for verifying conformity and nonconformity); JCGM 106:2012, 7 (probability of
 * conformity); feelers as an interval: common practice, no published source.
 */
import { chanceInRange, fitVerdict } from '../src/maths/conformity.js';
import { feelerVerdict } from '../src/maths/feelers.js';
import { type ArgumentRecord, defineFunction } from './definition.js';
import { neededGuard } from './guard-argument.js';

const length = <const Name extends string>(name: Name, meaning: string) =>
  ({ name, meaning, quantity: 'length', blank: 'refused' }) as const satisfies ArgumentRecord;
const open = <const Name extends string>(name: Name, meaning: string, blankMeans: string) =>
  ({ name, meaning, quantity: 'length', blank: 'allowed', blankMeans }) as const satisfies ArgumentRecord;
const NO_LIMIT = 'there is none';
const LIMITS = [
  open('min', 'the least that is allowed', NO_LIMIT),
  open('max', 'the greatest that is allowed', NO_LIMIT),
] as const;
const GUARDS = [
  neededGuard('guard_inside', 'by which a value has to lie inside a limit to keep it'),
  neededGuard('guard_outside', 'by which it has to lie outside a limit to break it'),
] as const;
const SERVICE_LIMIT = {
  ...open('service_limit', 'the greatest that worn parts may have', NO_LIMIT),
  optional: true,
} as const satisfies ArgumentRecord;
const WORDS = '`tight`, `loose`, `in range`, `within service limit` or `undecided`';

const ORDERED = [['min', 'max']] as const;
const NEGATIVE_GUARD = 'guard_inside is -0.001; expected a length in mm of 0 or more';

function negativeGuard(name: string, values: string) {
  const message = `${name}: ${NEGATIVE_GUARD}`;
  return {
    error: { code: 'NUM', when: 'a guard is negative', message },
    example: {
      kind: 'refused',
      says: 'a guard may be zero, not less',
      formula: `=${name}(${values}, 0.1, 0.2, -0.001, 0.006)`,
      expected: { error: 'NUM', message },
    },
  } as const;
}

const SOURCE =
  'ISO 14253-1:2017, decision rules for verifying conformity or nonconformity with specifications';

export const gapVerdict = defineFunction({
  name: 'GAP_VERDICT',
  group: 'columns',
  sentence: 'What the readings of a gap prove about its limits.',
  arguments: [
    length('tightest', 'the smallest reading'),
    length('loosest', 'the largest reading'),
    ...LIMITS,
    ...GUARDS,
    SERVICE_LIMIT,
  ],
  ordered: [['tightest', 'loosest'], ...ORDERED],
  result: { meaning: WORDS, quantity: 'text' },
  errors: [negativeGuard('GAP_VERDICT', '0.12, 0.14').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'an end float inside both limits by more than the guard',
      formula: '=GAP_VERDICT(0.12, 0.14, 0.1, 0.2, 0.003, 0.006)',
      expected: 'in range',
    },
    {
      kind: 'edge',
      says: 'a gap that has a least size only',
      formula: '=GAP_VERDICT(0.3, 0.32, 0.25, "", 0.003, 0.006)',
      expected: 'in range',
    },
    negativeGuard('GAP_VERDICT', '0.12, 0.14').example,
  ],
  source: SOURCE,
  since: '0.2.0',
  related: ['FEELER_VERDICT', 'FIT_VERDICT', 'GAP_CHANCE'],
  body: (tightest, loosest, min, max, inside, outside, serviceLimit) =>
    fitVerdict({ tightest, loosest }, { min, max, serviceLimit }, { inside, outside }),
});

export const feelerVerdictOfGap = defineFunction({
  name: 'FEELER_VERDICT',
  group: 'columns',
  sentence: 'What the blades of a feeler gauge prove about a gap.',
  arguments: [
    open('goes', 'the thickest blade that goes in', 'not tried'),
    open('stops', 'the thinnest blade that does not', 'not tried'),
    ...LIMITS,
    ...GUARDS,
    SERVICE_LIMIT,
  ],
  ordered: [['goes', 'stops'], ...ORDERED],
  result: { meaning: WORDS, quantity: 'text' },
  errors: [negativeGuard('FEELER_VERDICT', '0.12, 0.14').error],
  examples: [
    {
      kind: 'ordinary',
      says: 'the whole gap has to lie beyond a limit to break it',
      formula: '=FEELER_VERDICT(0.2, 0.3, 0.25, 0.4, 0, 0)',
      expected: 'undecided',
    },
    {
      kind: 'edge',
      says: 'one blade that goes in proves that the gap is too wide',
      formula: '=FEELER_VERDICT(0.45, "", 0.25, 0.4, 0.003, 0.006)',
      expected: 'loose',
    },
    negativeGuard('FEELER_VERDICT', '0.12, 0.14').example,
  ],
  source: `${SOURCE}; feelers as an interval: common practice, no published source`,
  since: '0.2.0',
  related: ['GAP_VERDICT', 'GAP_CHANCE'],
  body: (goes, stops, min, max, inside, outside, serviceLimit) =>
    feelerVerdict({ goes, stops }, { min, max, serviceLimit }, { inside, outside }),
});

export const gapChance = defineFunction({
  name: 'GAP_CHANCE',
  group: 'columns',
  sentence: 'The probability that a whole gap lies within its limits.',
  arguments: [
    length('tightest', 'the tightest of the gap'),
    length('loosest', 'the loosest of the gap'),
    {
      name: 'u',
      meaning: 'the standard uncertainty of the gap',
      quantity: 'unrounded length',
      allowed: { from: 0 },
      blank: 'refused',
    },
    ...LIMITS,
  ],
  ordered: [
    ['tightest', 'loosest'],
    ['min', 'max'],
  ],
  result: { meaning: 'the probability, 0 to 1; with u = 0 it is 1 or 0', quantity: 'probability' },
  errors: [
    {
      code: 'VALUE',
      when: 'u is blank: an unknown uncertainty is not 0',
      message: 'GAP_CHANCE: u is blank; expected a length in mm of 0 or more',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'a gap two standard uncertainties above its least size, which has no greatest',
      formula: '=GAP_CHANCE(0.27, 0.27, 0.01, 0.25, "")',
      expected: 0.97725,
      tolerance: 5e-6,
    },
    {
      kind: 'edge',
      says: 'on the limit, known exactly',
      formula: '=GAP_CHANCE(0.25, 0.25, 0, 0.25, "")',
      expected: 1,
    },
    {
      kind: 'refused',
      says: 'an unknown uncertainty is not 0',
      grid: [[0.27, 0.27, null]],
      formula: '=GAP_CHANCE(A1, B1, C1, 0.25, 0.4)',
      expected: { error: 'VALUE', message: 'GAP_CHANCE: u is blank; expected a length in mm of 0 or more' },
    },
  ],
  source: 'JCGM 106:2012, 7 (probability of conformity)',
  since: '0.2.0',
  related: ['CHANCE_IN_RANGE', 'GAP_VERDICT'],
  body: (tightest, loosest, u, min, max) => chanceInRange({ tightest, loosest }, { min, max }, u),
});
