/** The sheet Journals: main journals and crankpins. */
import { engineType, FIT_WORDS, MEASURED, mark, part } from './common-columns.js';
import { needed, type PartSheet } from './input-sheet.js';
import { ENGINE_NAME, NAME } from './quantities.js';

export const JOURNALS = {
  name: 'Journals',
  noun: 'journal',
  plural: 'Journals',
  readings: 'diameters',
  role: 'inner',
  material: 'steel',
  matching: 'filled',
  measured: 'Diameter',
  isDrawn: true,
  columns: {
    part,
    engineType,
    engine: needed('Engine', ENGINE_NAME, 'Groups the journals of one crank.'),
    fit: needed('Fit', NAME, FIT_WORDS),
    position: needed('Position', NAME, 'Its place along the crank.'),
    mark,
    ...MEASURED,
  },
} as const satisfies PartSheet;
