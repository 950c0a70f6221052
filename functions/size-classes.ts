/**
 * Which size class does a part fall in, and which class of shell suits a bore and a journal?
 *
 *   class of a size   From ≤ size < To; the class with the largest To also holds its To
 *   class of a shell  the one with the least |B − 2w − J − aim|, w = (From + To)/2; the thicker at a tie
 *
 *   From, To   the ends of a class                          mm or in
 *   B, J       sizes of bore and journal                    mm or in
 *   aim        the clearance wished for                     mm or in
 *   w          middle of a class of shell walls             mm or in
 *
 * Source: the general principle of selective assembly: common practice, no published source. The table
 * of classes is the engine maker's.
 */
import { classify, isOrdered, type SizeClass, shellClosestToAim } from '../src/maths/classes.js';
import { meanGrain } from '../src/maths/grain.js';
import { type ArgumentRecord, ArgumentRefusal, defineFunction } from './definition.js';
import { messages } from './messages.js';

const SOURCE = 'common practice, no published source; the classes are the engine maker’s';

const part = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'lengths',
    allowed: { above: 0 },
    blank: 'refused',
  }) as const satisfies ArgumentRecord;

/** Rows upside down hold no size. */
function usable(argument: string, classes: readonly SizeClass[]): readonly SizeClass[] {
  const rows = classes.every(isOrdered) ? classes : classes.filter(isOrdered);
  if (rows.length === 0) throw new ArgumentRefusal('NA', messages.noUsableClass(argument));
  return rows;
}

export const fitGrade = defineFunction({
  name: 'FIT_GRADE',
  group: 'workshop',
  sentence: 'The mark of the size class that a size falls in.',
  arguments: [
    {
      name: 'size',
      meaning: 'the size of the part',
      quantity: 'length',
      allowed: { above: 0 },
      blank: 'refused',
    },
    {
      name: 'classes',
      meaning: 'rows of Mark, From and To, without the header row; blank rows are skipped',
      quantity: 'classes',
      allowed: { above: 0 },
      blank: 'refused',
    },
  ],
  result: {
    meaning:
      'the mark; `B/C` where classes overlap; `below A`, `above C` or `between A and B` outside all of them',
    quantity: 'text',
  },
  errors: [
    {
      code: 'VALUE',
      when: 'the header row is inside the range',
      message:
        'FIT_GRADE: classes (row 1, From) is the text "From"; expected a length in mm above 0; leave the header row out',
    },
    {
      code: 'NA',
      when: 'every row has its From above its To',
      message: 'FIT_GRADE: classes has no row whose From is at or below its To',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'a size on a border belongs to the class that begins there',
      grid: [
        ['A', 42, 42.006],
        ['B', 42.006, 42.012],
      ],
      formula: '=FIT_GRADE(42.006, A1:C2)',
      expected: 'B',
    },
    {
      kind: 'edge',
      says: 'the largest To belongs to its class',
      grid: [
        ['A', 42, 42.006],
        ['B', 42.006, 42.012],
      ],
      formula: '=FIT_GRADE(42.012, A1:C2)',
      expected: 'B',
    },
    {
      kind: 'edge',
      says: 'in an overlap every mark that fits is given',
      grid: [
        [1, 4.626, 4.6275],
        [2, 4.627, 4.6285],
      ],
      formula: '=FIT_GRADE(4.6272, A1:C2)',
      expected: '1/2',
      lengthUnit: 'in',
    },
    {
      kind: 'edge',
      says: 'outside, the neighbour is named',
      grid: [
        ['A', 42, 42.006],
        ['B', 42.006, 42.012],
      ],
      formula: '=FIT_GRADE(41.9999, A1:C2)',
      expected: 'below A',
    },
    {
      kind: 'refused',
      says: 'the header row is left out of the range',
      grid: [
        ['Mark', 'From', 'To'],
        ['A', 42, 42.006],
      ],
      formula: '=FIT_GRADE(42.003, A1:C2)',
      expected: {
        error: 'VALUE',
        message:
          'FIT_GRADE: classes (row 1, From) is the text "From"; expected a length in mm above 0; leave the header row out',
      },
    },
    {
      kind: 'refused',
      says: 'a row upside down holds no size',
      grid: [['A', 42.006, 42]],
      formula: '=FIT_GRADE(42.003, A1:C1)',
      expected: { error: 'NA', message: 'FIT_GRADE: classes has no row whose From is at or below its To' },
    },
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['SHELL_GRADE', 'SELECTED_SHELL'],
  body: (size, classes) => classify(size, usable('classes', classes)).text,
});

export const shellGrade = defineFunction({
  name: 'SHELL_GRADE',
  group: 'workshop',
  sentence: 'The class of shell that brings the clearance closest to the aim.',
  arguments: [
    part('bore', 'the housing bore; the mean of a range is used'),
    part('journal', 'the journal; the mean of a range is used'),
    { name: 'aim', meaning: 'the clearance wished for', quantity: 'length', blank: 'refused' },
    {
      name: 'shell_classes',
      meaning: 'rows of Mark, From and To of the wall, without the header row; blank rows are skipped',
      quantity: 'classes',
      allowed: { above: 0 },
      blank: 'refused',
    },
  ],
  result: { meaning: 'the mark of the class, the thicker at a tie', quantity: 'text' },
  errors: [
    {
      code: 'VALUE',
      when: 'a cell of the table is not a length',
      message: 'SHELL_GRADE: shell_classes (row 2, To) is blank; expected a length in mm above 0',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'bore 45.013 and journal 42.001 leave 3.012: walls of 1.4865 and an aim of 0.04 meet',
      grid: [
        ['P', 1.485, 1.488],
        ['Q', 1.488, 1.491],
      ],
      formula: '=SHELL_GRADE(45.013, 42.001, 0.04, A1:C2)',
      expected: 'P',
    },
    {
      kind: 'edge',
      says: 'at a tie the thicker shell',
      grid: [
        ['P', 1.485, 1.488],
        ['Q', 1.488, 1.491],
      ],
      formula: '=SHELL_GRADE(45.013, 42.001, 0.036, A1:C2)',
      expected: 'Q',
    },
    {
      kind: 'refused',
      says: 'a cell of the table is blank',
      grid: [
        ['P', 1.485, 1.488],
        ['Q', 1.488, null],
      ],
      formula: '=SHELL_GRADE(45.013, 42.001, 0.036, A1:C2)',
      expected: {
        error: 'VALUE',
        message: 'SHELL_GRADE: shell_classes (row 2, To) is blank; expected a length in mm above 0',
      },
    },
  ],
  source: SOURCE,
  since: '0.1.0',
  related: ['FIT_GRADE', 'SELECTED_SHELL'],
  body: (bore, journal, aim, classes) =>
    shellClosestToAim(meanGrain(bore), meanGrain(journal), aim, usable('shell_classes', classes))?.mark,
});
