/**
 * How well is a clearance known, given how well its four parts are?
 *
 *   u_c² = u_B² + u_u² + u_l² + u_J²            errors of the walls independent
 *   u_c² = u_B² + (u_u + u_l)² + u_J²           one error behind both walls
 *
 *   u_B, u_u, u_l, u_J   standard uncertainties of bore, upper wall, lower wall, journal    mm or in
 *   u_c                  standard uncertainty of the clearance                              mm or in
 *
 * Source: JCGM 100:2008, 5.1.2 (independent) and 5.2.2 (correlated).
 */
import { combineClearance } from '../src/maths/uncertainty.js';
import { type ArgumentRecord, defineFunction } from './definition.js';

const uncertainty = <const Name extends string>(name: Name, of: string) =>
  ({
    name,
    meaning: `the standard uncertainty of ${of}`,
    quantity: 'unrounded length',
    allowed: { from: 0 },
    blank: 'refused',
  }) as const satisfies ArgumentRecord;

export const clearanceUncertainty = defineFunction({
  name: 'CLEARANCE_UNCERTAINTY',
  group: 'workshop',
  sentence: 'The standard uncertainty of a clearance from those of its four parts.',
  arguments: [
    uncertainty('u_bore', 'the bore'),
    uncertainty('u_upper', 'the upper wall'),
    uncertainty('u_lower', 'the lower wall'),
    uncertainty('u_journal', 'the journal'),
    {
      name: 'shared_walls',
      meaning: 'TRUE where one error stands behind both walls, so that they add',
      quantity: 'flag',
      blank: 'allowed',
      blankMeans: 'FALSE, the walls are independent',
      optional: true,
      default: false,
    },
  ],
  result: { meaning: 'the standard uncertainty u_c, not rounded', quantity: 'unrounded length' },
  errors: [
    {
      code: 'NUM',
      when: 'an uncertainty is negative',
      message: 'CLEARANCE_UNCERTAINTY: u_bore is -0.001; expected a length in mm of 0 or more',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'independent walls: the root of the sum of squares of 1.5, 0.8, 0.8 and 1 µm',
      formula: '=CLEARANCE_UNCERTAINTY(0.0015, 0.0008, 0.0008, 0.001)',
      expected: 0.002128,
      tolerance: 5e-7,
    },
    {
      kind: 'edge',
      says: 'one micrometer used on both walls: their errors add first',
      formula: '=CLEARANCE_UNCERTAINTY(0.0015, 0.0008, 0.0008, 0.001, TRUE())',
      expected: 0.00241,
      tolerance: 5e-7,
    },
    {
      kind: 'refused',
      says: 'no uncertainty is negative',
      formula: '=CLEARANCE_UNCERTAINTY(-0.001, 0.0008, 0.0008, 0.001)',
      expected: {
        error: 'NUM',
        message: 'CLEARANCE_UNCERTAINTY: u_bore is -0.001; expected a length in mm of 0 or more',
      },
    },
  ],
  source: 'JCGM 100:2008, 5.1.2 and 5.2.2',
  since: '0.1.0',
  related: ['FIT_STATUS', 'CHANCE_IN_RANGE', 'STANDARD_UNCERTAINTY'],
  body: (bore, upper, lower, journal, sharedWalls) =>
    combineClearance({ bore, upper, lower, journal }, sharedWalls),
});
