/** The sheet Selection: which shell goes between which marks. */
import { ruleFor } from './common-columns.js';
import { needed } from './input-sheet.js';
import { NAME } from './quantities.js';

export const SELECTION = {
  name: 'Selection',
  columns: {
    ...ruleFor('row is'),
    journalMark: needed('Journal mark', NAME, "The journal's mark."),
    boreMark: needed('Bore mark', NAME, "The bore's mark."),
    shellMark: needed('Shell mark', NAME, 'The shell that goes between them.'),
  },
} as const;
