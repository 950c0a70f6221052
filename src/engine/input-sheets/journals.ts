/** The sheet Journals: main journals and crankpins. */
import { engineType, FIT_WORDS, MEASURED, mark, part } from './common-columns.js';
import { needed, type PartSheet } from './input-sheet.js';
import { ENGINE_NAME, NAME } from './quantities.js';

export const JOURNALS = {
  name: 'Journals',
  noun: 'journal',
  counted: ['journal', 'journals'],
  plural: 'Journals',
  readings: 'diameters',
  role: 'inner',
  material: 'steel',
  matching: 'filled',
  measured: 'Diameter',
  guide: 'measure at every station and angle of the drawing.',
  isDrawn: true,
  columns: {
    part,
    engineType,
    engine: needed('Engine', ENGINE_NAME, 'Groups the journals of one crank.', { width: 8 }),
    fit: needed('Fit', NAME, FIT_WORDS, { width: 8 }),
    position: needed('Position', NAME, 'Its place along the crank.', { width: 9 }),
    mark,
    ...MEASURED,
  },
} as const satisfies PartSheet;
