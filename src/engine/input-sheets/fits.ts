/** The sheet Fits: what is assembled, or is to be. */
import { FIT_WORDS } from './common-columns.js';
import { column, needed } from './input-sheet.js';
import { ENGINE_NAME, LENGTH, NAME, PART_NAME } from './quantities.js';

const BY_PLACE = 'Blank: filled by place.';

export const FITS = {
  name: 'Fits',
  columns: {
    engine: needed('Engine', ENGINE_NAME, 'The engine.'),
    fit: needed('Fit', NAME, FIT_WORDS),
    position: needed('Position', NAME, 'The place along the crank.'),
    journal: column('Journal', PART_NAME, BY_PLACE),
    bore: column('Bore', PART_NAME, BY_PLACE),
    upper: column('Upper shell', PART_NAME, BY_PLACE),
    lower: column('Lower shell', PART_NAME, BY_PLACE),
    strip: column('Strip reading', LENGTH, 'The clearance that a plastic gauge strip showed.'),
  },
} as const;

/** The columns of Fits that name a part. */
export const FIT_SLOTS = ['journal', 'bore', 'upper', 'lower'] as const;

export type FitSlot = (typeof FIT_SLOTS)[number];

/** The header that a slot stands under: `Upper shell`. */
export function slotHeader(slot: FitSlot): string {
  return FITS.columns[slot].header;
}
