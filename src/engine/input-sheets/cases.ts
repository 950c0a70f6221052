/** The sheet Cases: main bores of the crankcase or block. */
import {
  BORE_WITH_ITS_SHELLS,
  BORE_WITHOUT_SHELLS,
  engineType,
  GUIDE_TO_BORES,
  MEASURED,
  mark,
  part,
  shellsIn,
} from './common-columns.js';
import { column, needed, type PartSheet } from './input-sheet.js';
import { ENGINE_NAME, NAME } from './quantities.js';

export const CASES = {
  name: 'Cases',
  noun: 'case',
  counted: ['case bore', 'case bores'],
  plural: 'Case bores',
  readings: 'diameters',
  role: 'outer',
  fit: 'main',
  // A case is of cast iron or of a light alloy: nobody can tell from its readings.
  material: undefined,
  matching: 'stays',
  letter: 'C',
  measured: BORE_WITHOUT_SHELLS,
  guide: GUIDE_TO_BORES,
  withShells: BORE_WITH_ITS_SHELLS,
  columns: {
    part,
    engineType,
    engine: needed('Engine', ENGINE_NAME, 'The engine that the crankcase or block belongs to.', { width: 8 }),
    fit: column('Fit', NAME, 'Blank is `main`.', { width: 8, isExtra: true }),
    position: needed('Position', NAME, 'Its place along the crank.', { width: 9 }),
    mark,
    shellsIn,
    ...MEASURED,
  },
} as const satisfies PartSheet;
