/** Reads the cells of a workbook into a Book. Nothing is guessed: what cannot be read is named. */
import { CLASSES } from '../input-sheets/classes.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import { FITS } from '../input-sheets/fits.js';
import { GAUGE_STUDY } from '../input-sheets/gauge-study.js';
import { GAUGES } from '../input-sheets/gauges.js';
import { LIMITS } from '../input-sheets/limits.js';
import { MATERIALS } from '../input-sheets/materials.js';
import { NEW_SHELLS } from '../input-sheets/new-shells.js';
import { SELECTION } from '../input-sheets/selection.js';
import { UNDERSIZES } from '../input-sheets/undersizes.js';
import type { WorkbookModel } from '../workbook-model.js';
import type { Book, FitRow, LimitsRow, NewShellRow, Setup } from './book.js';
import { readFasteners } from './fasteners.js';
import { findTables } from './find-tables.js';
import { materialLookup } from './materials.js';
import { onlyEngineType, typesOfTables } from './only-engine-type.js';
import type { OwnColumns, OwnHeaders } from './own-columns.js';
import { readParts } from './parts.js';
import { quoted } from './problems.js';
import { badOf, readRows, readValues } from './read-row.js';
import type { Table } from './table.js';
import {
  classRow,
  gaugeRow,
  limitsRow,
  materialRow,
  newShellRow,
  selectionRow,
  studyRow,
  undersizeRow,
} from './table-rows.js';

/**
 * @param ownHeaders the columns that the program writes, which are passed over
 * @throws UserError where no sheet is known, a needed column is missing, or a setting cannot be read.
 */
export function openBook(model: WorkbookModel, setup: Setup, ownHeaders: OwnHeaders): Book {
  const units = { length: setup.lengthUnit, temperature: setup.temperatureUnit };
  const { tables, own, places, notices } = findTables(model, units, ownHeaders);
  const materials = readRows(tables.get(MATERIALS.name), materialRow);
  const knows = materialLookup(materials);
  const named = readRows(tables.get(LIMITS.name), (row) => limitsRow(row, knows));
  const onlyType = onlyEngineType(
    named.map(({ engineType }) => engineType),
    typesOfTables(tables),
  );
  const { fits, keptStrips } = fitRows(tables.get(FITS.name), own.get(FITS.name));
  const parts = readParts(tables, onlyType);
  const rows = {
    limits: named.map((row) => withType(row, onlyType)),
    materials,
    classes: readRows(tables.get(CLASSES.name), (row) => classRow(row, onlyType)),
    selection: readRows(tables.get(SELECTION.name), (row) => selectionRow(row, onlyType)),
    gauges: readRows(tables.get(GAUGES.name), (row) => gaugeRow(row, knows)),
    newShells: readRows(tables.get(NEW_SHELLS.name), (row) => newShellRow(row, onlyType)),
    undersizes: readRows(tables.get(UNDERSIZES.name), (row) => undersizeRow(row, onlyType)),
    studies: readRows(tables.get(GAUGE_STUDY.name), studyRow),
    fasteners: readFasteners(tables.get(FASTENERS.name), onlyType),
  };
  notices.push(...upsideDown(rows.newShells, tables.get(NEW_SHELLS.name), model.file));
  const badCells = (list: readonly { readonly bad: Book['bad'] }[]) => list.flatMap(({ bad }) => bad);
  return {
    model,
    setup,
    tables,
    own,
    places,
    ...rows,
    parts,
    onlyEngineType: onlyType,
    fits,
    keptStrips,
    notices,
    bad: [
      ...setup.bad,
      ...Object.values(rows).flatMap(badCells),
      ...badCells(parts.all()),
      ...badCells(fits ?? keptStrips),
    ],
    bareNumbers: [...tables.values()].flatMap((table) => table.bareNumbers),
  };
}

/** New shells have no Status: what is never bought is said here. */
function upsideDown(rows: readonly NewShellRow[], table: Table | undefined, file: string): string[] {
  return rows.flatMap(({ row, mark, from, to }) =>
    from !== undefined && to !== undefined && from > to
      ? [
          `${file}: ${table!.sheet.name}, row ${row + 1}, mark ${quoted(mark ?? '')}: found Wall from above Wall to; ` +
            'expected the smaller first; correct them: until then the shell is not bought.',
        ]
      : [],
  );
}

/** A row that leaves its Engine type out is for the only one; a refused cell is for none. */
function withType(row: LimitsRow, onlyType: string | undefined): LimitsRow {
  const isBlankType = row.engineType === '' && !row.bad.some(({ header }) => header === 'Engine type');
  return isBlankType ? { ...row, engineType: onlyType ?? '' } : row;
}

/** The user's fits; those of a sheet that the program made only lend their strip readings. */
function fitRows(table: Table | undefined, own: OwnColumns | undefined): Pick<Book, 'fits' | 'keptStrips'> {
  const rows = readRows(table, (row): FitRow => {
    const values = readValues(row, FITS.columns);
    const { engine = '', fit = '', position = '' } = values;
    return { ...values, row: row.row, engine, fit, position, bad: badOf(row) };
  });
  if (!table) return { fits: undefined, keptStrips: [] };
  if (!own?.isWholeSheet) return { fits: rows, keptStrips: [] };
  // The other cells of a sheet that is made anew are the program's own.
  const ofStrip = ({ bad }: FitRow) => bad.filter(({ header }) => header === FITS.columns.strip.header);
  return { fits: undefined, keptStrips: rows.map((row) => ({ ...row, bad: ofStrip(row) })) };
}
