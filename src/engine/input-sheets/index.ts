/** Every sheet that a user fills, in the order in which workbooks and documentation have them. */
import { headerKey } from '../book/names.js';
import { BORES } from './bores.js';
import { CASES } from './cases.js';
import { CLASSES } from './classes.js';
import { CYLINDERS } from './cylinders.js';
import { FASTENERS } from './fasteners.js';
import { FITS } from './fits.js';
import { GAPS } from './gaps.js';
import { GAUGE_STUDY } from './gauge-study.js';
import { GAUGES } from './gauges.js';
import type { InputSheet, PartSheet } from './input-sheet.js';
import { JOURNALS } from './journals.js';
import { LIMITS } from './limits.js';
import { MATERIALS } from './materials.js';
import { NEW_SHELLS } from './new-shells.js';
import { PISTONS } from './pistons.js';
import { RODS } from './rods.js';
import { RUN_OUTS } from './run-outs.js';
import { SELECTION } from './selection.js';
import { SETUP } from './setup.js';
import { SHAFTS } from './shafts.js';
import { SHELLS } from './shells.js';
import { UNDERSIZES } from './undersizes.js';

const SHEETS = new Map<string, InputSheet>(
  [
    SETUP,
    LIMITS,
    CLASSES,
    SELECTION,
    GAUGES,
    MATERIALS,
    JOURNALS,
    RODS,
    CASES,
    CYLINDERS,
    PISTONS,
    BORES,
    SHAFTS,
    GAPS,
    RUN_OUTS,
    SHELLS,
    NEW_SHELLS,
    UNDERSIZES,
    FASTENERS,
    FITS,
    GAUGE_STUDY,
  ].map((sheet: InputSheet) => [sheet.name, sheet]),
);

export function inputSheets(): readonly InputSheet[] {
  return [...SHEETS.values()];
}

export function partSheets(): readonly PartSheet[] {
  return inputSheets().filter(isPartSheet);
}

export function isPartSheet(sheet: InputSheet): sheet is PartSheet {
  return 'role' in sheet;
}

/** Whether the rows of a sheet, by its name as its record has it, are known by their place. */
export function isSheetOfPlaces(name: string): boolean {
  const found = SHEETS.get(name);
  return found !== undefined && isPartSheet(found) && found.isOfPlaces === true;
}

/** Whether a sheet of that name is read, in whatever case and punctuation. */
export function isKnownSheet(name: string): boolean {
  return inputSheets().some((sheet) => headerKey(sheet.name) === headerKey(name));
}

/** Looks a sheet up by its name, as its record has it. */
export function inputSheet(name: string): InputSheet | undefined {
  return SHEETS.get(name);
}

/**
 * Looks a sheet of parts up by its name, as its record has it.
 * @throws RangeError where no sheet of parts has the name.
 */
export function partSheet(name: string): PartSheet {
  const found = SHEETS.get(name);
  if (!found || !isPartSheet(found)) throw new RangeError(`${name} is no sheet of parts`);
  return found;
}

/** Adds a sheet of parts behind the others; what it returns takes it out again. */
export function addPartSheet(sheet: PartSheet): () => void {
  SHEETS.set(sheet.name, sheet);
  return () => {
    SHEETS.delete(sheet.name);
  };
}
