/** The headers of the columns that the program writes to the right of the user's, in order. */
import type { SheetName } from '../book/input-sheets.js';

const DIAMETER_PART = [
  'Size',
  'Largest',
  'Smallest',
  'Taper',
  'Out of round',
  'Class',
  'Size U',
  'Status',
  'Why',
] as const;
const TABLE = ['Status', 'Why'] as const;

export const RESULT_HEADERS: Partial<Readonly<Record<SheetName, readonly string[]>>> = {
  Journals: DIAMETER_PART,
  Rods: DIAMETER_PART,
  Cases: DIAMETER_PART,
  Shells: ['Wall', 'Largest', 'Smallest', 'Class', 'Wall U', 'Status', 'Why'],
  Classes: TABLE,
  Selection: TABLE,
  Limits: TABLE,
  Undersizes: TABLE,
  Gauges: TABLE,
  Materials: TABLE,
  Fits: [
    'Clearance',
    'Tightest',
    'Loosest',
    'Clearance U',
    'Chance in range',
    'Shell by marks',
    'Shell by size',
    'Status',
    'Why',
  ],
};
