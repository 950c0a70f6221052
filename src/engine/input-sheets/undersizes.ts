/** The sheet Undersizes: what the maker lets journals be ground to. */
import { ruleFor } from './common-columns.js';
import { needed } from './input-sheet.js';
import { NAME, SIZE } from './quantities.js';

export const UNDERSIZES = {
  name: 'Undersizes',
  isPrintedTwice: true,
  columns: {
    ...ruleFor('step is'),
    step: needed('Step', NAME, "The step's name, as `0.25`."),
    journalMin: needed('Journal min', SIZE, 'Least journal size after grinding.'),
    journalMax: needed('Journal max', SIZE, 'Greatest journal size after grinding.'),
  },
} as const;
