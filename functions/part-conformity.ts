/**
 * Does a measured part lie within its limits?
 *
 *   excess = limit − value for a lower limit, value − limit for an upper one
 *
 *   passes      excess ≤ −g: the value lies inside its limit by the guard or more
 *   fails       excess > G: the value lies outside its limit by more than its guard there
 *   undecided   all else, and a value that cannot be formed from the readings
 *
 *   beyond limits where one check fails; within limits where all pass; no limits without a check
 *
 *   largest, smallest      extremes of the spots                          mm or in
 *   out of round, taper    form                                           mm or in
 *   g, G                   guards inside and outside a limit, of the       mm or in
 *                          extremes and of the form
 *
 * Source: ISO 14253-1:2017, decision rules for verifying conformity or nonconformity.
 */
import { type LimitCheck, partVerdict } from '../src/maths/conformity.js';
import type { Grain } from '../src/maths/grain.js';
import { type AllowedRange, type ArgumentRecord, defineFunction } from './definition.js';
import { optionalGuard } from './guard-argument.js';

const value = <const Name extends string>(name: Name, meaning: string, allowed: AllowedRange) =>
  ({
    name,
    meaning,
    quantity: 'length',
    allowed,
    blank: 'allowed',
    blankMeans: 'not measured',
  }) as const satisfies ArgumentRecord;

const limit = <const Name extends string>(name: Name, meaning: string, allowed: AllowedRange) =>
  ({
    name,
    meaning,
    quantity: 'length',
    allowed,
    blank: 'allowed',
    blankMeans: 'no such limit',
    optional: true,
  }) as const satisfies ArgumentRecord;

const outside = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'length',
    allowed: { from: 0 },
    blank: 'allowed',
    blankMeans: 'as the guard inside it',
    optional: true,
  }) as const satisfies ArgumentRecord;

const SIZE: AllowedRange = { above: 0 };
const FORM: AllowedRange = { from: 0 };

function check(
  side: LimitCheck['side'],
  quantity: string,
  measured: Grain | undefined,
  limitName: string,
  allowed: Grain | undefined,
  inside: Grain,
  outsideLimit: Grain = inside,
): LimitCheck[] {
  if (allowed === undefined) return [];
  return [
    { side, quantity, value: measured, limitName, limit: allowed, guards: { inside, outside: outsideLimit } },
  ];
}

export const partStatus = defineFunction({
  name: 'PART_STATUS',
  group: 'columns',
  sentence: 'What the measured part proves about its limits.',
  arguments: [
    value('largest', 'the largest spot', SIZE),
    value('smallest', 'the smallest spot', SIZE),
    value('out_of_round', 'out of round', FORM),
    value('taper', 'the taper', FORM),
    limit('lower_limit', 'the least that the smallest spot may be', SIZE),
    limit('upper_limit', 'the most that the largest spot may be', SIZE),
    limit('out_of_round_limit', 'the most that out of round may be', FORM),
    limit('taper_limit', 'the most that the taper may be', FORM),
    optionalGuard('guard_extremes', 'the guard of the largest and the smallest spot'),
    optionalGuard('guard_form', 'the guard of out of round and taper'),
    outside('outside_extremes', 'the guard outside a limit of the largest and the smallest spot'),
    outside('outside_out_of_round', 'the guard outside the limit of out of round'),
    outside('outside_taper', 'the guard outside the limit of the taper'),
  ],
  result: { meaning: '`within limits`, `beyond limits`, `undecided` or `no limits`', quantity: 'text' },
  errors: [
    {
      code: 'NUM',
      when: 'a limit of form is negative',
      message: 'PART_STATUS: taper_limit is -0.01; expected a length in mm of 0 or more',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'inside both limits by more than the guard',
      formula: '=PART_STATUS(42.003, 42.001, 0.001, 0.001, 42, 42.012, 0.005, 0.005, 0.001, 0.0005)',
      expected: 'within limits',
    },
    {
      kind: 'edge',
      says: 'nearer to its limit than the guard',
      formula: '=PART_STATUS(42.003, 42.0005, , , 42, 42.012, , , 0.001)',
      expected: 'undecided',
    },
    {
      kind: 'edge',
      says: 'a taper limit, but the taper could not be formed',
      formula: '=PART_STATUS(42.003, 42.001, 0.001, "", 42, 42.012, 0.005, 0.005)',
      expected: 'undecided',
    },
    {
      kind: 'edge',
      says: 'one check that fails decides',
      formula: '=PART_STATUS(42.003, 42.001, 0.006, "", 42, 42.012, 0.005, 0.005)',
      expected: 'beyond limits',
    },
    {
      kind: 'edge',
      says: 'under its limit by more than the guard inside it, but not by more than the one outside',
      formula: '=PART_STATUS(42.003, 41.9985, , , 42, 42.012, , , 0.001, , 0.002)',
      expected: 'undecided',
    },
    {
      kind: 'edge',
      says: 'nothing to check against',
      formula: '=PART_STATUS(42.003, 42.001, 0.006, 0.001)',
      expected: 'no limits',
    },
    {
      kind: 'refused',
      says: 'a limit of form may be zero, not less',
      formula: '=PART_STATUS(42.003, 42.001, 0.006, 0.001, 42, 42.012, 0.005, -0.01)',
      expected: {
        error: 'NUM',
        message: 'PART_STATUS: taper_limit is -0.01; expected a length in mm of 0 or more',
      },
    },
  ],
  source: 'ISO 14253-1:2017, decision rules for verifying conformity or nonconformity with specifications',
  since: '0.1.0',
  related: ['FIT_STATUS', 'PART_SIZE', 'SPOT_TAPER', 'SPOT_OUT_OF_ROUND'],
  body: (
    largest,
    smallest,
    outOfRound,
    taper,
    lowerLimit,
    upperLimit,
    outOfRoundLimit,
    taperLimit,
    guardExtremes,
    guardForm,
    outsideExtremes,
    outsideOutOfRound,
    outsideTaper,
  ) =>
    partVerdict([
      ...check('at least', 'smallest', smallest, 'lower limit', lowerLimit, guardExtremes, outsideExtremes),
      ...check('at most', 'largest', largest, 'upper limit', upperLimit, guardExtremes, outsideExtremes),
      ...check(
        'at most',
        'out of round',
        outOfRound,
        'out-of-round limit',
        outOfRoundLimit,
        guardForm,
        outsideOutOfRound,
      ),
      ...check('at most', 'taper', taper, 'taper limit', taperLimit, guardForm, outsideTaper),
    ]),
});
