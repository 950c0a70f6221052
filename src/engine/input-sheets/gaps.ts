/** The sheet Gaps: distances measured on the assembly, by a dial or by feelers. */
import { PLACE_OF_ROW } from './common-columns.js';
import type { PartSheet } from './input-sheet.js';

export const GAPS = {
  name: 'Gaps',
  noun: 'gap',
  counted: ['gap', 'gaps'],
  plural: 'Gaps',
  readings: 'gaps',
  role: 'gap',
  material: undefined,
  matching: 'stays',
  isOfPlaces: true,
  measured: 'Gap',
  guide:
    'type what a dial or depth gauge shows as Gap 1, Gap 2 and so on; with feelers the thickest that goes in (Goes) and the thinnest that does not (Stops).',
  columns: PLACE_OF_ROW,
} as const satisfies PartSheet;
