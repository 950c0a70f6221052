/**
 * Does a measured fit lie within the limits of its clearance, and how sure is that?
 *
 *   guard = z·u
 *   tight                  tightest + guard < min
 *   loose                  loosest − guard > service limit, or > max where there is none
 *   in range               tightest − guard ≥ min and loosest + guard ≤ max
 *   within service limit   tightest − guard ≥ min, loosest − guard > max, loosest + guard ≤ service limit
 *   undecided              all else
 *
 *   chance in range = Φ((max − loosest)/u) − Φ((min − tightest)/u), not below 0
 *
 *   tightest, loosest   extremes of the clearance                             mm or in
 *   min, max            limits of the clearance                               mm or in
 *   service limit       the most a worn fit may have                          mm or in
 *   u                   standard uncertainty of the clearance                 mm or in
 *   z                   one-sided normal quantile of the confidence           1.6449 at 95 %
 *   Φ                   standard normal distribution
 *
 * Source: ISO 14253-1:2017 (rules for verifying conformity and nonconformity); JCGM 106:2012, 7
 * (probability of conformity).
 */
import { chanceInRange as chance, fitVerdict } from '../src/maths/conformity.js';
import { evenGuards } from '../src/maths/guards.js';
import { type ArgumentRecord, defineFunction } from './definition.js';

const length = <const Name extends string>(name: Name, meaning: string) =>
  ({ name, meaning, quantity: 'length', blank: 'refused' }) as const satisfies ArgumentRecord;

const TIGHTEST = length('tightest', 'the tightest clearance of the fit');
const LOOSEST = length('loosest', 'the loosest clearance of the fit');
const MIN = length('min', 'the least clearance allowed');
const MAX = length('max', 'the greatest clearance allowed');

export const fitStatus = defineFunction({
  name: 'FIT_STATUS',
  group: 'workshop',
  sentence: 'What the measured clearance proves about its limits.',
  arguments: [
    TIGHTEST,
    LOOSEST,
    MIN,
    MAX,
    {
      name: 'u',
      meaning: 'the standard uncertainty of the clearance',
      quantity: 'unrounded length',
      allowed: { from: 0 },
      blank: 'allowed',
      blankMeans: '0, no guard',
      optional: true,
      default: 0,
    },
    {
      name: 'service_limit',
      meaning: 'the greatest clearance that a worn fit may have',
      quantity: 'length',
      blank: 'allowed',
      blankMeans: 'there is none',
      optional: true,
    },
    {
      name: 'confidence',
      meaning: 'how sure a proof has to be, 50 % to 99.99 %',
      quantity: 'confidence',
      blank: 'allowed',
      blankMeans: '95 %',
      optional: true,
      default: 0.95,
    },
  ],
  ordered: [
    ['tightest', 'loosest'],
    ['min', 'max'],
  ],
  result: {
    meaning: '`tight`, `loose`, `in range`, `within service limit` or `undecided`',
    quantity: 'text',
  },
  errors: [
    {
      code: 'NUM',
      when: 'min lies above max, or tightest above loosest',
      message: 'FIT_STATUS: min 0.06 lies above max 0.02; expected min at or below max',
    },
    {
      code: 'NUM',
      when: 'the confidence is below 50 % or above 99.99 %',
      message:
        'FIT_STATUS: confidence is 100; expected a confidence from 50 % to 99.99 %, as 0.95, 95 or "95 %"',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'a fit well inside its limits, known to 2 µm',
      formula: '=FIT_STATUS(0.035, 0.04, 0.02, 0.06, 0.002)',
      expected: 'in range',
    },
    {
      kind: 'edge',
      says: 'on both limits, nothing said about uncertainty',
      formula: '=FIT_STATUS(0.02, 0.06, 0.02, 0.06)',
      expected: 'in range',
    },
    {
      kind: 'edge',
      says: 'the same fit known to 2 µm proves nothing',
      formula: '=FIT_STATUS(0.02, 0.06, 0.02, 0.06, 0.002)',
      expected: 'undecided',
    },
    {
      kind: 'edge',
      says: 'worn beyond max, but within the service limit; u is skipped',
      formula: '=FIT_STATUS(0.05, 0.07, 0.02, 0.06, , 0.1)',
      expected: 'within service limit',
    },
    {
      kind: 'edge',
      says: 'with 90 % in place of 95 % the guard is narrower: 1.2816·2 µm',
      formula: '=FIT_STATUS(0.023, 0.05, 0.02, 0.06, 0.002, , "90 %")',
      expected: 'in range',
    },
    {
      kind: 'refused',
      says: 'limits upside down',
      formula: '=FIT_STATUS(0.035, 0.04, 0.06, 0.02)',
      expected: {
        error: 'NUM',
        message: 'FIT_STATUS: min 0.06 lies above max 0.02; expected min at or below max',
      },
    },
    {
      kind: 'refused',
      says: 'nothing measured is certain',
      formula: '=FIT_STATUS(0.035, 0.04, 0.02, 0.06, 0.002, , 100)',
      expected: {
        error: 'NUM',
        message:
          'FIT_STATUS: confidence is 100; expected a confidence from 50 % to 99.99 %, as 0.95, 95 or "95 %"',
      },
    },
  ],
  source: 'ISO 14253-1:2017, decision rules for verifying conformity or nonconformity with specifications',
  since: '0.1.0',
  related: ['CHANCE_IN_RANGE', 'CLEARANCE_UNCERTAINTY', 'FIT_VERDICT'],
  body: (tightest, loosest, min, max, u, serviceLimit, confidence) =>
    fitVerdict({ tightest, loosest }, { min, max, serviceLimit }, evenGuards(confidence, u)),
});

export const chanceInRange = defineFunction({
  name: 'CHANCE_IN_RANGE',
  group: 'workshop',
  sentence: 'The probability that the whole fit lies within its limits.',
  arguments: [
    TIGHTEST,
    LOOSEST,
    {
      name: 'u',
      meaning: 'the standard uncertainty of the clearance',
      quantity: 'unrounded length',
      allowed: { from: 0 },
      blank: 'refused',
    },
    MIN,
    MAX,
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
      message: 'CHANCE_IN_RANGE: u is blank; expected a length in mm of 0 or more',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'one value on the middle of a range that is four standard uncertainties wide',
      formula: '=CHANCE_IN_RANGE(0.04, 0.04, 0.01, 0.02, 0.06)',
      expected: 0.9545,
      tolerance: 5e-5,
    },
    {
      kind: 'edge',
      says: 'on the limit, known exactly',
      formula: '=CHANCE_IN_RANGE(0.02, 0.06, 0, 0.02, 0.06)',
      expected: 1,
    },
    {
      kind: 'refused',
      says: 'an unknown uncertainty is not 0',
      grid: [[0.04, 0.04, null]],
      formula: '=CHANCE_IN_RANGE(A1, B1, C1, 0.02, 0.06)',
      expected: {
        error: 'VALUE',
        message: 'CHANCE_IN_RANGE: u is blank; expected a length in mm of 0 or more',
      },
    },
  ],
  source: 'JCGM 106:2012, 7 (probability of conformity)',
  since: '0.1.0',
  related: ['FIT_STATUS', 'CLEARANCE_UNCERTAINTY'],
  body: (tightest, loosest, u, min, max) => chance({ tightest, loosest }, { min, max }, u),
});
