/** The sheet Pistons: skirts, which are oval and tapered by design. */
import { engineType, MEASURED, mark, part, ranAt } from './common-columns.js';
import { column, type PartSheet } from './input-sheet.js';
import { MASS } from './quantities.js';

export const PISTONS = {
  name: 'Pistons',
  noun: 'piston',
  counted: ['piston', 'pistons'],
  plural: 'Pistons',
  readings: 'diameters',
  role: 'shaped inner',
  fit: 'piston',
  // Alloys of pistons differ by a tenth and more.
  material: undefined,
  matching: 'stays',
  letter: 'Pis ',
  measured: 'Skirt of the piston, where the manual says',
  guide: "measure the skirt at the height and angle of the maker's manual, not at the crown.",
  columns: {
    part,
    engineType,
    ...ranAt('piston'),
    mark,
    mass: column('Mass', MASS, 'In grams.', { width: 8 }),
    ...MEASURED,
  },
} as const satisfies PartSheet;
