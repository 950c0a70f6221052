/** The sheet New shells: what can be bought. */
import { ruleFor } from './common-columns.js';
import { column, needed } from './input-sheet.js';
import { HALF, NAME, PRICE, SIZE } from './quantities.js';

export const NEW_SHELLS = {
  name: 'New shells',
  isPrintedTwice: true,
  columns: {
    ...ruleFor('shell is'),
    half: column(
      'Half',
      HALF,
      '`upper`, `lower` or `either`; blank: sold as a pair, for the price of the pair.',
    ),
    mark: needed('Mark', NAME, 'What to order.'),
    from: needed('Wall from', SIZE, 'Least wall.'),
    to: needed('Wall to', SIZE, 'Greatest wall.'),
    price: column('Price', PRICE, 'Of one, or of a pair, to four decimals; blank is 1.'),
    step: column('Step', NAME, 'The step of Undersizes that the shell is for; blank: any.'),
  },
} as const;
