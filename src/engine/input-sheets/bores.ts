/** The sheet Bores: outer parts of plain bearings and of press fits, such as bushes, guides and cam bores. */
import { engineType, MEASURED, mark, part, ranAt } from './common-columns.js';
import { needed, type PartSheet } from './input-sheet.js';
import { NAME } from './quantities.js';

export const BORES = {
  name: 'Bores',
  noun: 'bore',
  counted: ['bore', 'bores'],
  plural: 'Bores',
  readings: 'diameters',
  role: 'outer',
  // A bush is of any alloy: nobody can tell from its readings.
  material: undefined,
  matching: 'stays',
  measured: 'Bore',
  guide: 'measure each bore where its shaft runs.',
  isPlain: true,
  isDrawn: true,
  columns: {
    part,
    engineType,
    ...ranAt('bore'),
    fit: needed('Fit', NAME, 'Such as `small end`, `guide` or `cam`.', { width: 10 }),
    mark,
    ...MEASURED,
  },
} as const satisfies PartSheet;
