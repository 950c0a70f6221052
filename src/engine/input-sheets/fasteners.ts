/** The sheet Fasteners: bolts, studs and nuts, with what the maker's manual says of each. */
import { engineType, MEASURED, quantity } from './common-columns.js';
import { column, type InputSheet, needed } from './input-sheet.js';
import { ANGLE, COUNT, ENGINE_NAME, NAME, oneOf, PRICE, SIZE, TORQUE } from './quantities.js';

export const FASTENERS = {
  name: 'Fasteners',
  readings: 'bolts',
  rowNames: ['Engine', 'Group', 'Number'],
  columns: {
    engine: needed('Engine', ENGINE_NAME, 'The engine that it is of.', { width: 8 }),
    engineType,
    group: needed('Group', NAME, 'What the fasteners hold: `cylinder head`.', { width: 16 }),
    number: column('Number', COUNT, 'Its place in the order of tightening, from 1.', { width: 8 }),
    thread: column('Thread', NAME, 'As `M10x1.25`.'),
    length: column('Length', SIZE, 'Its nominal length.', { width: 8 }),
    quantity,
    torque: column(
      'Torque',
      TORQUE,
      'N·m, unless header or cell names lb·ft, lb·in or kgf·m: a number, or a range `10–11`.',
      { width: 10 },
    ),
    torqueAsPrinted: column(
      'Torque as printed',
      TORQUE,
      "The same in the manual's other unit, to check the first.",
    ),
    angle: column('Angle', ANGLE, 'Degrees that it is turned on behind the torque.', { width: 8 }),
    renew: column('Renew', oneOf('always', 'by length', 'by neck'), '`always`, `by length` or `by neck`.', {
      width: 10,
    }),
    lengthMax: column('Length max', SIZE, 'The greatest length of a bolt that may be used again.', {
      width: 8,
    }),
    neckMin: column('Neck min', SIZE, 'The least neck of a bolt that may be used again.', { width: 8 }),
    price: column('Price', PRICE, 'Of one, to four decimals; a blank counts nothing.', {
      width: 8,
      isExtra: true,
    }),
    gauge: MEASURED.gauge,
    bin: MEASURED.bin,
    note: MEASURED.note,
  },
} as const satisfies InputSheet;
