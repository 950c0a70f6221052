/**
 * How much room does the oil have between a journal and its two half-shells?
 *
 *   clearance = B − u − l − J        diametral, at 20 °C
 *   tightest  = smallest B − largest u − largest l − largest J
 *   loosest   = largest B − smallest u − smallest l − smallest J
 *
 *   B   housing bore without shells, caps torqued     mm or in
 *   u   wall of the upper half-shell at its crown     mm or in
 *   l   wall of the lower half-shell at its crown     mm or in
 *   J   journal                                       mm or in
 *
 * Each is one size or a range of spots, whose mean, largest and smallest are used.
 *
 * Source: the arithmetic of printed bearing tables, e.g. TM 9-2815-202-34, p. 4-156 (walls and
 * clearance), whose printed range is the worst case of its own sizes.
 */
import { clearanceOf, type FitParts, type Sizes } from '../src/maths/clearance.js';
import type { Grain } from '../src/maths/grain.js';
import { defineFunction } from './definition.js';
import { partArgument, sizesOfReadings } from './part-sizes.js';

const PARTS = [
  partArgument('bore', 'the housing bore without shells, caps torqued'),
  partArgument('wall_upper', 'the wall of the upper half-shell at its crown'),
  partArgument('wall_lower', 'the wall of the lower half-shell at its crown'),
  partArgument('journal', 'the journal'),
] as const;

type PartReadings = readonly [
  bore: readonly Grain[],
  upper: readonly Grain[],
  lower: readonly Grain[],
  journal: readonly Grain[],
];

function fitOf([bore, upper, lower, journal]: PartReadings): FitParts<Sizes> {
  return {
    bore: sizesOfReadings(bore),
    upper: sizesOfReadings(upper),
    lower: sizesOfReadings(lower),
    journal: sizesOfReadings(journal),
  };
}

const SOURCE =
  'TM 9-2815-202-34, p. 4-156: the printed range of clearance is the worst case of the printed sizes';

export const shellClearance = defineFunction({
  name: 'SHELL_CLEARANCE',
  group: 'workshop',
  sentence: 'The diametral oil clearance of a journal in a bore through two half-shells, from mean sizes.',
  arguments: PARTS,
  result: { meaning: 'the clearance; negative where the parts interfere', quantity: 'length' },
  errors: [
    {
      code: 'VALUE',
      when: 'a part, or one spot of a range, is blank',
      message: 'SHELL_CLEARANCE: wall_upper is blank; expected a length in mm above 0, or a range of them',
    },
    {
      code: 'NUM',
      when: 'a size is zero or less',
      message: 'SHELL_CLEARANCE: journal is 0; expected a length in mm above 0, or a range of them',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'four sizes; the result lies exactly on 0.035',
      formula: '=SHELL_CLEARANCE(45.0125, 1.4875, 1.4885, 42.0015)',
      expected: 0.035,
    },
    {
      kind: 'ordinary',
      says: 'a bore of three spots and a journal of four, whose means are used',
      grid: [
        ['Bore', 45.012, 45.014, 45.013, null],
        ['Upper', 1.4875],
        ['Lower', 1.4885],
        ['Journal', 42.002, 42.001, 42.002, 42.001],
      ],
      formula: '=SHELL_CLEARANCE(B1:D1, B2, B3, B4:E4)',
      expected: 0.0355,
    },
    {
      kind: 'edge',
      says: 'parts that interfere give a negative clearance',
      formula: '=SHELL_CLEARANCE(45, 1.5, 1.5, 42.01)',
      expected: -0.01,
    },
    {
      kind: 'refused',
      says: 'a wall that was not measured is not 0',
      grid: [[45.0125, null, 1.4885, 42.0015]],
      formula: '=SHELL_CLEARANCE(A1, B1, C1, D1)',
      expected: {
        error: 'VALUE',
        message: 'SHELL_CLEARANCE: wall_upper is blank; expected a length in mm above 0, or a range of them',
      },
    },
    {
      kind: 'refused',
      says: 'no journal has a size of 0',
      formula: '=SHELL_CLEARANCE(45.0125, 1.4875, 1.4885, 0)',
      expected: {
        error: 'NUM',
        message: 'SHELL_CLEARANCE: journal is 0; expected a length in mm above 0, or a range of them',
      },
    },
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['TIGHTEST_CLEARANCE', 'LOOSEST_CLEARANCE', 'FIT_STATUS', 'RUNNING_CLEARANCE'],
  body: (...parts) => clearanceOf(fitOf(parts)).clearance,
});

export const tightestClearance = defineFunction({
  name: 'TIGHTEST_CLEARANCE',
  group: 'workshop',
  sentence: 'The clearance where a fit is tightest: smallest bore, largest walls, largest journal.',
  arguments: PARTS,
  result: { meaning: 'the tightest clearance; negative where the parts interfere', quantity: 'length' },
  errors: [
    {
      code: 'VALUE',
      when: 'a part, or one spot of a range, is text',
      message:
        'TIGHTEST_CLEARANCE: bore (cell 2 of 3) is the text "worn"; expected a length in mm above 0, or a range of them',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'printed limits in inches: the smallest bore, the thickest walls, the largest journal',
      formula: '=TIGHTEST_CLEARANCE(4.812, 0.1552, 0.1552, 4.5)',
      expected: 0.0016,
      lengthUnit: 'in',
    },
    {
      kind: 'edge',
      says: 'of ranges, the extremes of the spots count',
      grid: [
        [45.012, 45.014, 45.013],
        [1.4875, 1.488],
        [1.4885, 1.488],
        [42.002, 42.001, 42.0005],
      ],
      formula: '=TIGHTEST_CLEARANCE(A1:C1, A2:B2, A3:B3, A4:C4)',
      expected: 0.0335,
    },
    {
      kind: 'refused',
      says: 'text among the spots is named by its place in the range',
      grid: [
        [45.012, 'worn', 45.013],
        [1.4875, 1.4885, 42.002],
      ],
      formula: '=TIGHTEST_CLEARANCE(A1:C1, A2, B2, C2)',
      expected: {
        error: 'VALUE',
        message:
          'TIGHTEST_CLEARANCE: bore (cell 2 of 3) is the text "worn"; expected a length in mm above 0, or a range of them',
      },
    },
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['SHELL_CLEARANCE', 'LOOSEST_CLEARANCE', 'FIT_STATUS'],
  body: (...parts) => clearanceOf(fitOf(parts)).tightest,
});

export const loosestClearance = defineFunction({
  name: 'LOOSEST_CLEARANCE',
  group: 'workshop',
  sentence: 'The clearance where a fit is loosest: largest bore, smallest walls, smallest journal.',
  arguments: PARTS,
  result: { meaning: 'the loosest clearance', quantity: 'length' },
  errors: [
    {
      code: 'NA',
      when: 'an argument is left out',
      message: 'LOOSEST_CLEARANCE: journal is missing; expected a length in mm above 0, or a range of them',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'printed limits in inches: the largest bore, the thinnest walls, the smallest journal',
      formula: '=LOOSEST_CLEARANCE(4.813, 0.1545, 0.1545, 4.499)',
      expected: 0.005,
      lengthUnit: 'in',
    },
    {
      kind: 'edge',
      says: 'of ranges, the extremes of the spots count',
      grid: [
        [45.012, 45.014, 45.013],
        [1.4875, 1.488],
        [1.4885, 1.488],
        [42.002, 42.001, 42.0005],
      ],
      formula: '=LOOSEST_CLEARANCE(A1:C1, A2:B2, A3:B3, A4:C4)',
      expected: 0.038,
    },
    {
      kind: 'refused',
      says: 'three arguments where four are needed',
      formula: '=LOOSEST_CLEARANCE(45.0125, 1.4875, 1.4885)',
      expected: {
        error: 'NA',
        message: 'LOOSEST_CLEARANCE: journal is missing; expected a length in mm above 0, or a range of them',
      },
    },
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['SHELL_CLEARANCE', 'TIGHTEST_CLEARANCE', 'FIT_STATUS'],
  body: (...parts) => clearanceOf(fitOf(parts)).loosest,
});
