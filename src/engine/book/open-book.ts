/** Reads the cells of a workbook into a Book. Nothing is guessed: what cannot be read is named. */
import { BUILT_IN_EXPANSION } from '../../maths/expansion.js';
import { UserError } from '../user-error.js';
import type { SheetModel, WorkbookModel } from '../workbook-model.js';
import type {
  Book,
  ClassRow,
  FitRow,
  GaugeRow,
  LimitsRow,
  MaterialRow,
  NewShellRow,
  SelectionTableRow,
  Setup,
  StudyRow,
  UndersizeRow,
} from './book.js';
import { INPUT_SHEETS, SETUP_ITEMS, type SheetName } from './input-sheets.js';
import { headerKey, nameKey } from './names.js';
import { hasBuriedColumns, ownColumnsOf } from './own-columns.js';
import { readParts } from './parts.js';
import { quoted } from './problems.js';
import { splitHeader } from './reading-headers.js';
import { RULES } from './rules.js';
import { isBlank, listOf, type Row, Table } from './table.js';

const HALVES = ['upper', 'lower', 'either'] as const;

/**
 * @throws UserError where no sheet is known, a needed column is missing, or a setting cannot be read.
 */
export function openBook(model: WorkbookModel, setup: Setup): Book {
  const notices: string[] = [];
  const tables = tablesOf(model, setup, notices);
  const rowsOf = <Read extends { bad: readonly unknown[] }>(
    name: SheetName,
    read: (row: Row) => Read,
  ): Read[] => {
    const table = tables.get(name);
    return table ? table.dataRows().map((row) => read(table.row(row))) : [];
  };

  const limitRows = rowsOf('Limits', (row) => row);
  const materials = rowsOf('Materials', materialRow);
  const knows = materialLookup(materials);
  const named = limitRows.map((row) => limitsRow(row, knows));
  const onlyType = onlyEngineType(
    named.map(({ engineType }) => engineType),
    TYPED_TABLES.flatMap((name) => rowsOf(name, (row) => row).map((row) => row.name('Engine type') ?? '')),
  );
  const limits = named.map((row) => withType(row, onlyType));
  const typeOf = (row: Row) => row.name('Engine type') ?? onlyType ?? '';
  const { fits, keptStrips } = fitRows(tables.get('Fits'), model);
  const parts = readParts(tables, onlyType);

  const book = {
    limits,
    materials,
    classes: rowsOf('Classes', (row) => classRow(row, typeOf(row))),
    selection: rowsOf('Selection', (row) => selectionRow(row, typeOf(row))),
    gauges: rowsOf('Gauges', (row) => gaugeRow(row, knows)),
    newShells: rowsOf('New shells', (row) => newShellRow(row, typeOf(row))),
    undersizes: rowsOf('Undersizes', (row) => undersizeRow(row, typeOf(row))),
    studies: rowsOf('Gauge study', studyRow),
    ...parts,
  };
  notices.push(...upsideDown(book.newShells, tables.get('New shells'), model.file));
  const badOf = (rows: readonly { bad: readonly Book['bad'][number][] }[]) => rows.flatMap(({ bad }) => bad);
  return {
    model,
    setup,
    tables,
    ...book,
    onlyEngineType: onlyType,
    fits,
    keptStrips,
    notices,
    bad: [...setup.bad, ...Object.values(book).flatMap(badOf), ...badOf(fits ?? keptStrips)],
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

/** Tables that name engine types, for a book without limits. */
const TYPED_TABLES = ['Classes', 'Selection', 'New shells', 'Undersizes'] as const;

/**
 * The engine type of rows that leave it out: the one that Limits names, undefined where it names
 * several. Without limits, the only one of the other tables, else `''`.
 */
function onlyEngineType(ofLimits: readonly string[], ofTables: readonly string[]): string | undefined {
  const distinct = (types: readonly string[]) => [
    ...new Map(types.filter((type) => type !== '').map((type) => [nameKey(type), type])).values(),
  ];
  const limits = distinct(ofLimits);
  if (limits.length > 0) return limits.length === 1 ? limits[0] : undefined;
  const tables = distinct(ofTables);
  return tables.length === 1 ? tables[0]! : '';
}

function tablesOf(model: WorkbookModel, setup: Setup, notices: string[]): Map<SheetName, Table> {
  const units = { length: setup.lengthUnit, temperature: setup.temperatureUnit };
  const tables = new Map<SheetName, Table>();
  for (const name of Object.keys(INPUT_SHEETS) as SheetName[]) {
    const sheet = findSheet(model, name);
    if (!sheet) continue;
    const layout = INPUT_SHEETS[name];
    const table = new Table(name, sheet, layout, units, ownColumnsOf(name, sheet)?.first);
    const missing = layout.columns.filter((column) => column.needed && !table.columns.has(column.header));
    const isEmpty = sheet.rows.every((cells) => cells?.every((cell) => isBlank(cell)) ?? true);
    if (missing.length > 0 && !isEmpty) {
      const headers = missing.map(({ header }) => `"${header}"`);
      throw new UserError(
        `${model.file}: sheet ${sheet.name}: found no column ${listOf(headers)} in row ${table.headerRow + 1}; ` +
          'expected one header row with it; add the column, or rename the sheet if it is not meant for measured parts.',
      );
    }
    if (missing.length === 0) tables.set(name, table);
    if (hasBuriedColumns(name, sheet)) {
      notices.push(
        `${model.file}: sheet ${sheet.name}: found results of an earlier run with other columns to their right; expected them last; ` +
          'they are kept as columns of yours and no longer brought up to date; delete them, or move your columns before them.',
      );
    }
    for (const header of table.repeatedHeaders) {
      notices.push(
        `${model.file}: sheet ${sheet.name}: found a second column of what the header "${header}" means; only the first is read; ` +
          'give each column its own header; a second reading of the spot "A 0" is "A 0 #2".',
      );
    }
  }
  for (const table of tables.values()) notices.push(...unreadNotices(table, model.file));
  if (tables.size === 0) {
    throw new UserError(
      `${model.file}: found no sheet that oilgap knows; expected Journals, Rods, Cases, Shells or another of ` +
        `${Object.keys(INPUT_SHEETS).length} sheets; name the sheets as the README shows.`,
    );
  }
  return tables;
}

/** What a user may have meant to be read: headers like a reading's, and Setup items that no setting has. */
function unreadNotices(table: Table, file: string): string[] {
  const example = table.name === 'Shells' ? '"Wall 1"' : '"A 0", "A 90" or "Front 45"';
  const headers = table.nearReadings.map(
    (header) =>
      `${file}: sheet ${table.sheet.name}: found the header ${quoted(header)}, which is not read; ` +
      `expected a reading headed such as ${example}; rename the column if it holds readings.`,
  );
  if (table.name !== 'Setup') return headers;
  const known = SETUP_ITEMS.map(headerKey);
  const items = table.dataRows().flatMap((number) => {
    const name = table.row(number).name('Item');
    return name === undefined || known.includes(headerKey(splitHeader(name).name)) ? [] : [name];
  });
  return items.map(
    (item) =>
      `${file}: sheet ${table.sheet.name}: found the item ${quoted(item)}, which is not read; ` +
      `expected ${listOf(SETUP_ITEMS)}; correct its name if a setting is meant.`,
  );
}

export function findSheet(model: WorkbookModel, name: string): SheetModel | undefined {
  return model.sheets.find((sheet) => headerKey(sheet.name) === headerKey(name));
}

export type MaterialLookup = (name: string) => number | undefined;

/** The expansion of a material, from Materials first, then built in; unknown where its row was refused. */
export function materialLookup(rows: readonly MaterialRow[]): MaterialLookup {
  const known = new Map(Object.entries(BUILT_IN_EXPANSION));
  for (const { material, expansion, bad } of [...rows].reverse()) {
    if (expansion !== undefined) known.set(nameKey(material), expansion);
    else if (bad.length > 0) known.delete(nameKey(material));
  }
  return (name) => known.get(nameKey(name));
}

/** A material's name, refused where no table has it. */
function material(row: Row, header: string, knows: MaterialLookup): string | undefined {
  const name = row.name(header);
  if (name === undefined || knows(name) !== undefined) return name;
  row.refuse(
    row.cell(header)!,
    `a material of Materials or ${listOf(Object.keys(BUILT_IN_EXPANSION))}`,
    'give its expansion in Materials',
  );
  return undefined;
}

function limitsRow(row: Row, knows: MaterialLookup): LimitsRow {
  return {
    row: row.row,
    engineType: row.name('Engine type') ?? '',
    fit: row.name('Fit') ?? '',
    clearanceMin: row.length('Clearance min', RULES.signedLength),
    clearanceMax: row.length('Clearance max', RULES.length),
    serviceLimit: row.length('Service limit', RULES.length),
    aim: row.length('Aim', RULES.length),
    journalMin: row.length('Journal min', RULES.size),
    journalMax: row.length('Journal max', RULES.size),
    wearLimit: row.length('Wear limit', RULES.size),
    boreMin: row.length('Bore min', RULES.size),
    boreMax: row.length('Bore max', RULES.size),
    outOfRoundLimit: row.length('Out-of-round limit', RULES.length),
    taperLimit: row.length('Taper limit', RULES.length),
    neighbourSpread: row.length('Neighbour spread', RULES.length),
    massSpread: row.plainNumber('Mass spread', RULES.massSpread),
    journalMaterial: material(row, 'Journal material', knows),
    boreMaterial: material(row, 'Bore material', knows),
    bad: row.bad,
  };
}

function classRow(row: Row, engineType: string): ClassRow {
  return {
    row: row.row,
    engineType,
    fit: row.name('Fit') ?? '',
    of: row.word('Of', ['journal', 'bore', 'shell']),
    mark: row.name('Mark'),
    from: row.length('From', RULES.size),
    to: row.length('To', RULES.size),
    bad: row.bad,
  };
}

function selectionRow(row: Row, engineType: string): SelectionTableRow {
  return {
    row: row.row,
    engineType,
    fit: row.name('Fit') ?? '',
    journalMark: row.name('Journal mark'),
    boreMark: row.name('Bore mark'),
    shellMark: row.name('Shell mark'),
    bad: row.bad,
  };
}

function gaugeRow(row: Row, knows: MaterialLookup): GaugeRow {
  const made = material(row, 'Material', knows);
  return {
    row: row.row,
    gauge: row.name('Gauge') ?? '',
    maxError: row.length('Max error', RULES.length),
    resolution: row.length('Resolution', RULES.length) ?? 0,
    repeatability: row.length('Repeatability', RULES.length) ?? 0,
    expansion: knows(made ?? 'steel'),
    setFrom: row.name('Set from'),
    bad: row.bad,
  };
}

function materialRow(row: Row): MaterialRow {
  return {
    row: row.row,
    material: row.name('Material') ?? '',
    expansion: row.plainNumber('Expansion', RULES.expansion),
    bad: row.bad,
  };
}

/** No money is finer, but a cell that divides one sum by another may be. */
const inTenThousandths = (price: number) => Math.round(price * 1e4) / 1e4;

function newShellRow(row: Row, engineType: string): NewShellRow {
  return {
    row: row.row,
    engineType,
    fit: row.name('Fit') ?? '',
    half: row.word('Half', HALVES),
    mark: row.name('Mark'),
    from: row.length('Wall from', RULES.size),
    to: row.length('Wall to', RULES.size),
    price: inTenThousandths(row.plainNumber('Price', RULES.price) ?? 1),
    step: row.name('Step'),
    bad: row.bad,
  };
}

function undersizeRow(row: Row, engineType: string): UndersizeRow {
  return {
    row: row.row,
    engineType,
    fit: row.name('Fit') ?? '',
    step: row.name('Step'),
    journalMin: row.length('Journal min', RULES.size),
    journalMax: row.length('Journal max', RULES.size),
    bad: row.bad,
  };
}

function studyRow(row: Row): StudyRow {
  return {
    row: row.row,
    gauge: row.name('Gauge') ?? '',
    part: row.name('Part') ?? '',
    person: row.name('Person') ?? '',
    trial: row.name('Trial') ?? '',
    // Studies are often of differences from a nominal size, which may be negative.
    value: row.length('Value', RULES.signedLength),
    bad: row.bad,
  };
}

/** The user's fits; those of a sheet that the program made only lend their strip readings. */
function fitRows(table: Table | undefined, model: WorkbookModel): Pick<Book, 'fits' | 'keptStrips'> {
  if (!table) return { fits: undefined, keptStrips: [] };
  const rows = table.dataRows().map((number): FitRow => {
    const row = table.row(number);
    return {
      row: row.row,
      engine: row.name('Engine') ?? '',
      fit: row.name('Fit') ?? '',
      position: row.name('Position') ?? '',
      journal: row.name('Journal'),
      bore: row.name('Bore'),
      upper: row.name('Upper shell'),
      lower: row.name('Lower shell'),
      strip: row.length('Strip reading', RULES.length),
      bad: row.bad,
    };
  });
  const made = ownColumnsOf('Fits', findSheet(model, 'Fits')!)?.isWholeSheet;
  if (!made) return { fits: rows, keptStrips: [] };
  // The other cells of a sheet that is made anew are the program's own.
  const ofStrip = ({ bad }: FitRow) => bad.filter(({ header }) => header === 'Strip reading');
  return { fits: undefined, keptStrips: rows.map((row) => ({ ...row, bad: ofStrip(row) })) };
}
