/** The sheet Rods: big ends of connecting rods. */
import { engineType, MEASURED, mark, part, ranAt } from './common-columns.js';
import { column, type PartSheet } from './input-sheet.js';
import { MASS } from './quantities.js';

export const RODS = {
  name: 'Rods',
  noun: 'rod',
  plural: 'Connecting rods',
  readings: 'diameters',
  role: 'outer',
  fit: 'big end',
  material: 'steel',
  matching: 'chosen',
  letter: 'R',
  measured: 'Bore, cap torqued, no shells in it',
  columns: {
    part,
    engineType,
    ...ranAt('rod'),
    mark,
    mass: column('Mass', MASS, 'In grams.'),
    ...MEASURED,
  },
} as const satisfies PartSheet;
