/** The sheet Shells: half-shells, by the wall at the crown. */
import { engineType, MEASURED, mark, part, quantity, ranAt } from './common-columns.js';
import { column, needed, type PartSheet } from './input-sheet.js';
import { HALF, NAME } from './quantities.js';

export const SHELLS = {
  name: 'Shells',
  noun: 'shell',
  counted: ['half-shell', 'half-shells'],
  plural: 'Half-shells',
  readings: 'walls',
  role: 'wall',
  fit: 'big end',
  material: 'steel',
  matching: 'chosen',
  measured: 'Wall at the crown',
  guide: 'measure the wall at the crown, 90° from the parting line, with a ball anvil.',
  columns: {
    part,
    engineType,
    fit: column('Fit', NAME, 'Blank is `big end`.', { width: 8 }),
    ...ranAt('shell'),
    half: needed('Half', HALF, '`upper`, `lower` or `either`.', { width: 8 }),
    mark,
    quantity,
    ...MEASURED,
  },
} as const satisfies PartSheet;
