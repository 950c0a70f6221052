/** The sheet Setup: one setting a row. */
import { needed } from './input-sheet.js';
import { NAME, TEXT } from './quantities.js';

export const SETUP = {
  name: 'Setup',
  columns: {
    item: needed('Item', NAME, 'The name of a setting.'),
    // Each setting reads its own value.
    value: needed('Value', TEXT, 'Its value.'),
  },
} as const;

/** The settings of the sheet Setup. */
export const SETUP_ITEMS = [
  'Length unit',
  'Temperature unit',
  'Confidence',
  'Aim',
  'Undecided fits',
  'New shells',
  'Prefer',
  'Mass spread',
  'Half difference',
] as const;
