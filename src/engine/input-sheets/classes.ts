/** The sheet Classes: the maker's size classes and their marks. */
import { ruleFor } from './common-columns.js';
import { needed } from './input-sheet.js';
import { NAME, oneOf, SIZE } from './quantities.js';

export const CLASSES = {
  name: 'Classes',
  isPrintedTwice: true,
  columns: {
    ...ruleFor('class is'),
    of: needed(
      'Of',
      oneOf('journal', 'bore', 'shell', 'piston', 'shaft', 'cylinder'),
      '`journal`, `bore` or `shell`; `piston` and `shaft` are read as `journal`, `cylinder` as `bore`.',
    ),
    mark: needed('Mark', NAME, 'The mark stamped on parts of the class.'),
    from: needed('From', SIZE, 'Least size.'),
    to: needed('To', SIZE, 'First size above the class.'),
  },
} as const;
