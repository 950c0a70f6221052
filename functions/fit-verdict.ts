/**
 * Does a measured fit lie within the limits of its clearance, with one guard for keeping a limit and one for breaking it?
 *
 *   tight                  tightest + G < min
 *   loose                  loosest − G > service limit, or > max where there is none
 *   in range               tightest − g ≥ min and loosest + g ≤ max
 *   within service limit   tightest − g ≥ min, loosest − G > max, loosest + g ≤ service limit
 *   undecided              all else
 *
 *   g = guard inside, G = guard outside
 *
 *   tightest, loosest   extremes of the clearance                                       mm or in
 *   min, max            limits of the clearance                                         mm or in
 *   service limit       the most a worn fit may have                                    mm or in
 *   g, G                guards inside and outside a limit; G allows for scattered spots  mm or in
 *
 * Source: ISO 14253-1:2017 (rules for verifying conformity and nonconformity).
 */
import { fitVerdict as verdictOf } from '../src/maths/conformity.js';
import { type ArgumentRecord, defineFunction } from './definition.js';
import { neededGuard } from './guard-argument.js';

const length = <const Name extends string>(name: Name, meaning: string) =>
  ({ name, meaning, quantity: 'length', blank: 'refused' }) as const satisfies ArgumentRecord;

export const fitVerdict = defineFunction({
  name: 'FIT_VERDICT',
  group: 'columns',
  sentence: 'What the measured clearance proves about its limits, with a guard for each side of them.',
  arguments: [
    length('tightest', 'the tightest clearance of the fit'),
    length('loosest', 'the loosest clearance of the fit'),
    length('min', 'the least clearance allowed'),
    length('max', 'the greatest clearance allowed'),
    neededGuard('guard_inside', 'by which a clearance has to lie inside a limit to keep it'),
    neededGuard('guard_outside', 'by which it has to lie outside a limit to break it'),
    {
      name: 'service_limit',
      meaning: 'the greatest clearance that a worn fit may have',
      quantity: 'length',
      blank: 'allowed',
      blankMeans: 'there is none',
      optional: true,
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
      when: 'a guard is negative',
      message: 'FIT_VERDICT: guard_inside is -0.001; expected a length in mm of 0 or more',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'inside both limits by more than the guard',
      formula: '=FIT_VERDICT(0.035, 0.04, 0.02, 0.06, 0.003, 0.006)',
      expected: 'in range',
    },
    {
      kind: 'edge',
      says: 'over max by more than the inside guard, but not by more than the outside one',
      formula: '=FIT_VERDICT(0.035, 0.064, 0.02, 0.06, 0.003, 0.006)',
      expected: 'undecided',
    },
    {
      kind: 'edge',
      says: 'over max by more than the outside guard',
      formula: '=FIT_VERDICT(0.035, 0.067, 0.02, 0.06, 0.003, 0.006)',
      expected: 'loose',
    },
    {
      kind: 'refused',
      says: 'a guard may be zero, not less',
      formula: '=FIT_VERDICT(0.035, 0.04, 0.02, 0.06, -0.001, 0.006)',
      expected: {
        error: 'NUM',
        message: 'FIT_VERDICT: guard_inside is -0.001; expected a length in mm of 0 or more',
      },
    },
  ],
  source: 'ISO 14253-1:2017, decision rules for verifying conformity or nonconformity with specifications',
  since: '0.2.0',
  related: ['FIT_STATUS', 'PART_STATUS', 'CHANCE_IN_RANGE'],
  body: (tightest, loosest, min, max, inside, outside, serviceLimit) =>
    verdictOf({ tightest, loosest }, { min, max, serviceLimit }, { inside, outside }),
});
