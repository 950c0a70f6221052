/** The sheet Cylinders: bores or liners that pistons run in. */
import { engineType, MEASURED, mark, part } from './common-columns.js';
import { needed, type PartSheet } from './input-sheet.js';
import { ENGINE_NAME, NAME } from './quantities.js';

export const CYLINDERS = {
  name: 'Cylinders',
  noun: 'cylinder',
  counted: ['cylinder', 'cylinders'],
  plural: 'Cylinders',
  readings: 'diameters',
  role: 'outer',
  fit: 'piston',
  // A block is of cast iron or of a light alloy: nobody can tell from its readings.
  material: undefined,
  matching: 'stays',
  letter: 'Cyl ',
  measured: 'Bore of the cylinder',
  guide:
    'measure each bore near the top, in the middle and near the bottom of the ring travel, along the crank and across it.',
  isPlain: true,
  isDrawn: true,
  columns: {
    part,
    engineType,
    engine: needed('Engine', ENGINE_NAME, 'The engine that the block or liner belongs to.', { width: 8 }),
    position: needed('Position', NAME, 'Its number in the engine.', { width: 9 }),
    mark,
    ...MEASURED,
  },
} as const satisfies PartSheet;
