/**
 * How much room is there between two plain parts, one in the other?
 *
 *   clearance = O − I        diametral, at 20 °C
 *
 *   O   outer part: cylinder, bush, guide      mm or in
 *   I   inner part: piston, shaft, stem        mm or in
 *
 * Each is one size or a range of spots, whose mean is used. A negative clearance is a press fit.
 *
 * Source: the arithmetic of printed tables, e.g. TM 55-1905-219-14-4 (piston and liner), whose printed range of
 * clearance is the worst case of its own sizes.
 */
import { fitOf } from '../src/maths/clearance.js';
import { defineFunction } from './definition.js';
import { partArgument, sizesOfReadings } from './part-sizes.js';

export const plainClearance = defineFunction({
  name: 'PLAIN_CLEARANCE',
  group: 'workshop',
  sentence: 'The diametral clearance of an inner part in an outer one, from mean sizes.',
  arguments: [partArgument('outer', 'the outer part'), partArgument('inner', 'the inner part')],
  result: { meaning: 'the clearance; negative where the parts interfere', quantity: 'length' },
  errors: [
    {
      code: 'VALUE',
      when: 'a part, or one spot of a range, is blank',
      message: 'PLAIN_CLEARANCE: inner is blank; expected a length in mm above 0, or a range of them',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'the smallest liner and the largest piston of a printed table',
      formula: '=PLAIN_CLEARANCE(4.2495, 4.245)',
      expected: 0.0045,
      lengthUnit: 'in',
    },
    {
      kind: 'edge',
      says: 'a bush pressed into its bore: the clearance is negative',
      formula: '=PLAIN_CLEARANCE(22, 22.034)',
      expected: -0.034,
    },
    {
      kind: 'refused',
      says: 'a piston that was not measured is not 0',
      grid: [[87.22, null]],
      formula: '=PLAIN_CLEARANCE(A1, B1)',
      expected: {
        error: 'VALUE',
        message: 'PLAIN_CLEARANCE: inner is blank; expected a length in mm above 0, or a range of them',
      },
    },
  ],
  source: 'TM 55-1905-219-14-4: the printed range of clearance is the worst case of the printed sizes',
  since: '0.2.0',
  related: ['SHELL_CLEARANCE', 'FIT_STATUS', 'CHANCE_IN_RANGE'],
  body: (outer, inner) =>
    fitOf([
      { sign: 1, part: sizesOfReadings(outer) },
      { sign: -1, part: sizesOfReadings(inner) },
    ]).clearance,
});
