/** The sheet Rods: big ends of connecting rods. */
import {
  BORE_WITH_ITS_SHELLS,
  BORE_WITHOUT_SHELLS,
  engineType,
  GUIDE_TO_BORES,
  MEASURED,
  mark,
  part,
  ranAt,
  shellsIn,
} from './common-columns.js';
import { column, type PartSheet } from './input-sheet.js';
import { MASS } from './quantities.js';

export const RODS = {
  name: 'Rods',
  noun: 'rod',
  counted: ['rod', 'rods'],
  plural: 'Connecting rods',
  readings: 'diameters',
  role: 'outer',
  fit: 'big end',
  material: 'steel',
  matching: 'chosen',
  letter: 'R',
  measured: BORE_WITHOUT_SHELLS,
  guide: GUIDE_TO_BORES,
  withShells: BORE_WITH_ITS_SHELLS,
  columns: {
    part,
    engineType,
    ...ranAt('rod'),
    mark,
    mass: column('Mass', MASS, 'In grams.', { width: 8 }),
    shellsIn,
    ...MEASURED,
  },
} as const satisfies PartSheet;
