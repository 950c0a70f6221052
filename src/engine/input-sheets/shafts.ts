/** The sheet Shafts: inner parts of plain bearings and of press fits, such as pins, stems and cam journals. */
import { engineType, MEASURED, mark, part, ranAt } from './common-columns.js';
import { needed, type PartSheet } from './input-sheet.js';
import { NAME } from './quantities.js';

export const SHAFTS = {
  name: 'Shafts',
  noun: 'shaft',
  counted: ['shaft', 'shafts'],
  plural: 'Shafts',
  readings: 'diameters',
  role: 'inner',
  material: 'steel',
  matching: 'stays',
  measured: 'Diameter',
  guide: 'measure each shaft where it runs in its bore.',
  isPlain: true,
  isDrawn: true,
  columns: {
    part,
    engineType,
    ...ranAt('shaft'),
    fit: needed('Fit', NAME, 'Such as `small end`, `guide` or `cam`.', { width: 10 }),
    mark,
    ...MEASURED,
  },
} as const satisfies PartSheet;
