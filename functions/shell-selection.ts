/**
 * Which shell does the maker's table give for the marks of a journal and a bore?
 *
 *   journal mark, bore mark → shell mark, where exactly one row of the table names the pair
 *
 *   marks   letters or numbers stamped on the parts     no unit
 *
 * Source: the table is the engine maker's; that marks match without regard to case and outer spaces is
 * common practice, no published source.
 */
import { selectedShell as selected } from '../src/maths/tables.js';
import { defineFunction } from './definition.js';

export const selectedShell = defineFunction({
  name: 'SELECTED_SHELL',
  group: 'columns',
  sentence: "The shell that the maker's selection table gives for two marks.",
  arguments: [
    {
      name: 'journal_mark',
      meaning: 'the mark of the journal',
      quantity: 'mark',
      blank: 'allowed',
      blankMeans: 'no shell can be named',
    },
    {
      name: 'bore_mark',
      meaning: 'the mark of the bore',
      quantity: 'mark',
      blank: 'allowed',
      blankMeans: 'no shell can be named',
    },
    {
      name: 'selection',
      meaning:
        'rows of Journal mark, Bore mark and Shell mark, without the header row; blank rows are skipped',
      quantity: 'selection',
      blank: 'refused',
    },
  ],
  result: {
    meaning: 'the mark of the shell',
    quantity: 'text',
    emptyWhen: 'a mark is blank, or not exactly one row names the pair',
  },
  errors: [
    {
      code: 'VALUE',
      when: 'the table has other than three columns',
      message:
        'SELECTED_SHELL: selection is a range of 1 × 2 cells; expected rows of three cells: Journal mark, Bore mark, Shell mark',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'a number and its text are one mark',
      grid: [
        [1, 'A', 'P'],
        [2, 'A', 'Q'],
      ],
      formula: '=SELECTED_SHELL("2", "a", A1:C2)',
      expected: 'Q',
    },
    {
      kind: 'edge',
      says: 'a pair named twice gives nothing',
      grid: [
        [1, 'A', 'P'],
        [1, 'A', 'Q'],
      ],
      formula: '=SELECTED_SHELL(1, "A", A1:C2)',
      expected: '',
    },
    {
      kind: 'refused',
      says: 'the table needs its three columns',
      grid: [[1, 'A', 'P']],
      formula: '=SELECTED_SHELL(1, "A", A1:B1)',
      expected: {
        error: 'VALUE',
        message:
          'SELECTED_SHELL: selection is a range of 1 × 2 cells; expected rows of three cells: Journal mark, Bore mark, Shell mark',
      },
    },
  ],
  source: 'the engine maker’s selection table',
  since: '0.1.0',
  related: ['SHELL_GRADE', 'FIT_GRADE'],
  body: (journalMark, boreMark, selection) =>
    journalMark === undefined || boreMark === undefined
      ? undefined
      : selected(selection, journalMark, boreMark),
});
