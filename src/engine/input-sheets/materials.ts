/** The sheet Materials: expansions that are not built in, or differ. */
import { column, needed } from './input-sheet.js';
import { EXPANSION, MATERIAL_NAME } from './quantities.js';

export const MATERIALS = {
  name: 'Materials',
  columns: {
    material: needed('Material', MATERIAL_NAME, "The material's name."),
    expansion: needed('Expansion', EXPANSION, 'Linear expansion coefficient, 1e-6 per K.'),
    expansionError: column('Expansion error', EXPANSION, '±, 1e-6 per K; blank is a tenth of Expansion.'),
  },
} as const;
