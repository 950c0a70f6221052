/**
 * How far does a turned part run out, from readings of a dial that are named by station?
 *
 *   run-out = greatest, over stations read at two or more places, of (largest − smallest reading)
 *
 *   spots      what the dial showed, signed              mm or in
 *   stations   the name of the station of each spot      text or a number
 *   total      the total that the dial showed by itself  mm or in
 *
 * A run-out is judged as one value is: over its roof by more than the guard it is beyond limits.
 *
 * A blank spot was not read. Where a station was read at two places, the readings count; else the total does.
 *
 * Source: TM 10-3930-664-24, p. 3-41 (the largest less the smallest reading); ISO 14253-1:2017 (verdict).
 */

import { fitVerdict } from '../src/maths/conformity.js';
import type { Spot } from '../src/maths/form.js';
import { runOutOf } from '../src/maths/run-out.js';
import { type ArgumentRecord, ArgumentRefusal, defineFunction } from './definition.js';
import { neededGuard } from './guard-argument.js';
import { messages } from './messages.js';

const UNEQUAL = 'SPOT_RUN_OUT: stations has 2 cells and spots has 3; expected ranges of equal length';

export const spotRunOut = defineFunction({
  name: 'SPOT_RUN_OUT',
  group: 'columns',
  sentence: 'The run-out of a part from readings of a dial named by station.',
  arguments: [
    {
      name: 'spots',
      meaning: 'what the dial showed at each place, signed',
      quantity: 'spots',
      blank: 'allowed',
      blankMeans: 'not read, left out',
    },
    {
      name: 'stations',
      meaning: 'the station of each spot, as many cells as spots',
      quantity: 'names',
      blank: 'allowed',
      blankMeans: 'a station without a name',
    },
    {
      name: 'total',
      meaning: 'the total that the dial showed by itself',
      quantity: 'length',
      allowed: { from: 0 },
      blank: 'allowed',
      blankMeans: 'none was read',
      optional: true,
    },
  ],
  result: {
    meaning: 'the run-out, 0 or more',
    quantity: 'length',
    emptyWhen: 'no station was read at two places and no total was',
  },
  errors: [{ code: 'VALUE', when: 'the ranges differ in length', message: UNEQUAL }],
  examples: [
    {
      kind: 'ordinary',
      says: 'the greatest of the stations counts',
      grid: [
        ['A', 'A', 'B', 'B'],
        [0, 0.01, -0.01, 0.02],
      ],
      formula: '=SPOT_RUN_OUT(A2:D2, A1:D1)',
      expected: 0.03,
    },
    {
      kind: 'edge',
      says: 'stations read once show nothing: the total counts',
      grid: [
        ['A', 'B'],
        [0, 0.01],
      ],
      formula: '=SPOT_RUN_OUT(A2:B2, A1:B1, 0.04)',
      expected: 0.04,
    },
    {
      kind: 'refused',
      says: 'every spot needs its station',
      grid: [
        ['A', 'A', 'B'],
        [0, 0.01, 0.02],
      ],
      formula: '=SPOT_RUN_OUT(A2:C2, A1:B1)',
      expected: { error: 'VALUE', message: UNEQUAL },
    },
  ],
  source: 'TM 10-3930-664-24, p. 3-41',
  since: '0.2.0',
  related: ['RUN_OUT', 'RUN_OUT_VERDICT'],
  body: (spots = [], stations = [], total) => {
    if (stations.length !== spots.length) {
      const words = messages.unequalRanges('spots', spots.length, 'stations', stations.length);
      throw new ArgumentRefusal('VALUE', words);
    }
    const read = spots.flatMap((reading, at): Spot[] =>
      reading === undefined ? [] : [{ station: stations[at] ?? '', angle: undefined, readings: [reading] }],
    );
    return runOutOf(read)?.runOut ?? total;
  },
});

const length = <const Name extends string>(name: Name, meaning: string) =>
  ({ name, meaning, quantity: 'length', blank: 'refused' }) as const satisfies ArgumentRecord;
const limit = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'length',
    blank: 'allowed',
    blankMeans: 'there is none',
  }) as const satisfies ArgumentRecord;
export const runOutVerdict = defineFunction({
  name: 'RUN_OUT_VERDICT',
  group: 'columns',
  sentence: 'What a measured run-out proves about its limits.',
  arguments: [
    length('run_out', 'the run-out'),
    limit('min', 'the least that is allowed'),
    limit('max', 'the greatest that is allowed'),
    neededGuard('guard_inside', 'by which a run-out has to lie inside a limit to keep it'),
    neededGuard('guard_outside', 'by which it has to lie outside a limit to break it'),
    { ...limit('service_limit', 'the greatest that worn parts may have'), optional: true },
  ],
  ordered: [['min', 'max']],
  result: {
    meaning: '`tight`, `beyond limits`, `in range`, `within service limit` or `undecided`',
    quantity: 'text',
  },
  errors: [
    {
      code: 'VALUE',
      when: 'the run-out is blank',
      message: 'RUN_OUT_VERDICT: run_out is blank; expected a length in mm',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'the example of a manual: .005 in against a limit of .008 in',
      formula: '=RUN_OUT_VERDICT(0.005, "", 0.008, 0, 0)',
      expected: 'in range',
      lengthUnit: 'in',
    },
    {
      kind: 'edge',
      says: 'over the limit, but not by more than the guard',
      formula: '=RUN_OUT_VERDICT(0.055, "", 0.05, 0.004, 0.007)',
      expected: 'undecided',
    },
    {
      kind: 'edge',
      says: 'over the limit by more than the guard',
      formula: '=RUN_OUT_VERDICT(0.06, "", 0.05, 0.004, 0.007)',
      expected: 'beyond limits',
    },
    {
      kind: 'refused',
      says: 'a part that was not turned has no run-out',
      grid: [[null]],
      formula: '=RUN_OUT_VERDICT(A1, "", 0.05, 0, 0)',
      expected: { error: 'VALUE', message: 'RUN_OUT_VERDICT: run_out is blank; expected a length in mm' },
    },
  ],
  source: 'ISO 14253-1:2017, decision rules for verifying conformity or nonconformity with specifications',
  since: '0.2.0',
  related: ['GAP_VERDICT', 'FIT_VERDICT'],
  body: (runOut, min, max, inside, outside, serviceLimit) => {
    const extremes = { tightest: runOut, loosest: runOut };
    const verdict = fitVerdict(extremes, { min, max, serviceLimit }, { inside, outside });
    return verdict === 'loose' ? 'beyond limits' : verdict;
  },
});
