/** Everything that one run writes into a workbook. */

import { inUnit, type LengthUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { FitResult } from '../assess/fit.js';
import type { PartResult } from '../assess/part.js';
import type { CheckedSheet } from '../assess/table-checks.js';
import { INPUT_SHEETS, type SheetName } from '../book/input-sheets.js';
import { nameKey } from '../book/names.js';
import { isMadeByProgram, MADE_BY, ownColumnsOf } from '../book/own-columns.js';
import { type Evaluated, evaluateColumns } from '../columns/evaluate.js';
import type { ResultCells } from '../columns/result-cells.js';
import { RESULT_HEADERS } from '../columns/result-headers.js';
import type {
  OutputCell,
  OutputFormat,
  OutputSheet,
  PlacedCell,
  PlacedCells,
  SheetEdit,
  WorkbookEdit,
  WorkbookModel,
} from '../workbook-model.js';
import { matchingSheets } from './matching-sheets.js';
import { headerRow, MADE_BY_WIDTH, text } from './own-sheet.js';
import { studySheets } from './study-sheet.js';
import { remeasureSheet, summarySheet } from './summary.js';
import { type TypedName, typedName } from './typed-name.js';

const OWN_SHEETS = [
  'Summary',
  'Re-measure',
  'Matched sets',
  'Not matched',
  'Pick list',
  'To buy',
  'Left over',
  'Gauge study results',
];

/** Tables that get columns only where something is wrong. */
const QUIET_TABLES: readonly SheetName[] = ['Gauges', 'Materials'];

export interface WriteOptions {
  /** Plain values in place of live formulas. */
  readonly valuesOnly: boolean;
}

export function writtenWorkbook(assessment: Assessment, { valuesOnly }: WriteOptions): WorkbookEdit {
  const { book } = assessment;
  const evaluated = evaluateColumns(assessment);
  const { layout } = evaluated;
  const own = [
    summarySheet(assessment, layout),
    remeasureSheet(assessment),
    ...matchingSheets(assessment, layout),
    ...studySheets(assessment),
  ];
  if (layout.makesFits && assessment.fits.length > 0) own.splice(1, 0, fitsSheet(assessment, evaluated));
  const sheets = own.map((sheet) => ({ ...sheet, name: freeName(sheet.name, assessment) }));
  const written = new Set(sheets.map(({ name }) => name.toLowerCase()));
  const edits = sheetEdits(assessment, evaluated);
  return {
    edits: valuesOnly ? edits.map((edit) => ({ ...edit, cells: plainCells(edit.cells) })) : edits,
    sheets: valuesOnly ? sheets.map((sheet) => ({ ...sheet, rows: plainRows(sheet.rows) })) : sheets,
    remove: book.model.sheets
      .filter(
        (sheet) => isOwnSheet(sheet.name) && isMadeByProgram(sheet) && !written.has(sheet.name.toLowerCase()),
      )
      .map(({ name }) => name),
  };
}

/**
 * A book of which the program makes the whole package, with room for Summary before all other sheets; a sheet of
 * the user's own of that name keeps its place.
 */
export function withSummaryFirst(model: WorkbookModel): WorkbookModel {
  if (model.sheets.some(({ name }) => nameKey(name) === 'summary')) return model;
  const summary = { name: 'Summary', rows: [[{ content: { kind: 'text' as const, value: MADE_BY } }]] };
  return { ...model, sheets: [summary, ...model.sheets] };
}

function plain({ value, format }: OutputCell): OutputCell {
  return { value, format };
}

function plainCells(cells: PlacedCells): PlacedCells {
  const plainCell = (placed: PlacedCell) => ({ ...placed, cell: plain(placed.cell) });
  if (!('bounds' in cells)) return cells.map(plainCell);
  const { bounds, formats } = cells;
  return { bounds, formats, ...againAndAgain(() => mapped(cells, plainCell)) };
}

function plainRows(rows: OutputSheet['rows']): OutputSheet['rows'] {
  return againAndAgain(() => mapped(rows, (row) => row.map((cell) => cell && plain(cell))));
}

/** An iterable that begins anew whenever it is gone through. */
function againAndAgain<Value>(begin: () => Iterator<Value>): Iterable<Value> {
  return { [Symbol.iterator]: begin };
}

function* mapped<Value, Result>(values: Iterable<Value>, map: (value: Value) => Result): Generator<Result> {
  for (const value of values) yield map(value);
}

function isOwnSheet(name: string): boolean {
  return [...OWN_SHEETS, 'Fits'].some(
    (own) => name.toLowerCase().replace(' (oilgap)', '') === own.toLowerCase(),
  );
}

/** A sheet of that name that is not the program's stays the user's. */
function freeName(name: string, { book }: Assessment): string {
  const taken = book.model.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  return taken && !isMadeByProgram(taken) ? `${name} (oilgap)` : name;
}

function sheetEdits(assessment: Assessment, { cells, userValues, layout }: Evaluated): SheetEdit[] {
  const { book, tables } = assessment;
  const edits: SheetEdit[] = [];
  const edited = new Set<string>();
  for (const [name, table] of book.tables) {
    if (name === 'Fits' && layout.makesFits) continue;
    const headers = RESULT_HEADERS[name];
    if (!headers) continue;
    const before = ownColumnsOf(name, table.sheet);
    const first = layout.first(name);
    const results = cells.get(name);
    const isQuiet =
      QUIET_TABLES.includes(name) &&
      tables[name as CheckedSheet].every(({ status }) => status === 'consistent');
    if (isQuiet && !before) continue;
    const titles = headers.map((header, place) => ({
      row: table.headerRow,
      column: first + place,
      cell: text(header, 'header'),
    }));
    edited.add(table.sheet.name);
    edits.push({
      sheet: table.sheet.name,
      clear: before,
      cells: isQuiet
        ? []
        : results
          ? titledCells(titles, results)
          : [...titles, ...tableCells(name, tables, first)],
      storedValues: userValues.filter(({ sheet }) => sheet === table.sheet.name),
      widths: isQuiet
        ? []
        : headers.map((header, place) => ({
            column: first + place,
            characters: widthOf(header, name, book.setup.lengthUnit),
          })),
    });
  }
  for (const sheet of book.model.sheets) {
    const { name } = sheet;
    // A sheet that is made anew takes no values of the old one's formulas.
    if (isOwnSheet(name) && isMadeByProgram(sheet)) continue;
    const storedValues = userValues.filter(({ sheet }) => sheet === name);
    if (!edited.has(name) && storedValues.length > 0)
      edits.push({ sheet: name, cells: [], storedValues, widths: [] });
  }
  return edits;
}

/** The headers, and below them the results of each row. */
function titledCells(titles: readonly PlacedCell[], results: ResultCells): PlacedCells {
  const { row, column } = titles[0]!;
  return {
    formats: new Set<OutputFormat>(['header', ...results.formats]),
    bounds: {
      top: row,
      left: column,
      bottom: Math.max(row, results.lastRow),
      right: column + titles.length - 1,
    },
    ...againAndAgain(function* () {
      yield* titles;
      yield* results;
    }),
  };
}

/**
 * Columns as narrow as their values, so that a wide sheet prints as large as it can. In a sheet of the user's a header
 * stands in one line, since the heights of rows are the user's.
 */
const WIDTHS: Readonly<Record<string, number>> = {
  Size: 11,
  Largest: 11,
  Smallest: 11,
  Class: 9,
  'Out of round': 14,
  'Clearance U': 13,
  'Chance in range': 17,
  'Shell by marks': 16,
  'Shell by size': 14,
  Status: 14,
  Why: 50,
};
const LENGTH_WIDTH = 10;
/** Seven decimals and the room beside them, in a wide face. */
const INCH_WIDTH = 12;
/** `within service limit` */
const FIT_STATUS_WIDTH = 19;
/** `check the source` */
const TABLE_STATUS_WIDTH = 17;

/** In the program's own sheet headers wrap. */
const FITS_WIDTHS: Readonly<Record<string, number>> = {
  'Clearance U': 11,
  Clearance: 11,
  'Chance in range': 11,
  'Shell by marks': 9,
  'Shell by size': 9,
  Status: FIT_STATUS_WIDTH,
  Why: 50,
};

function widthOf(header: string, sheet: SheetName, unit: LengthUnit): number {
  if (header === 'Status' && sheet === 'Fits') return FIT_STATUS_WIDTH;
  if (header === 'Status' && !INPUT_SHEETS[sheet].readings) return TABLE_STATUS_WIDTH;
  return lengthWidth(header, WIDTHS[header], unit);
}

const LENGTHS = [
  'Size',
  'Largest',
  'Smallest',
  'Taper',
  'Size U',
  'Wall',
  'Wall U',
  'Clearance',
  'Tightest',
  'Loosest',
];

function lengthWidth(header: string, width = LENGTH_WIDTH, unit: LengthUnit): number {
  return unit === 'in' && LENGTHS.includes(header) ? INCH_WIDTH : width;
}

function tableCells(name: SheetName, tables: Assessment['tables'], first: number): PlacedCell[] {
  return (tables[name as CheckedSheet] ?? []).flatMap(({ row, status, why }) => [
    { row, column: first, cell: text(status) },
    ...(why.length > 0 ? [{ row, column: first + 1, cell: text(why.join('; '), 'text') }] : []),
  ]);
}

function nameCell(name: TypedName | undefined): OutputCell | undefined {
  return name === undefined || name === '' ? undefined : { value: name, format: 'name' };
}

/** The sheet Fits where the book has none of the user's. */
function fitsSheet(assessment: Assessment, { cells, layout }: Evaluated): OutputSheet {
  const unit = assessment.book.setup.lengthUnit;
  const inputs = INPUT_SHEETS.Fits.columns.map(({ header }) => header);
  const results = RESULT_HEADERS.Fits!;
  const header = headerRow([...inputs, ...results]);
  const { book } = assessment;
  const partName = (part: PartResult | undefined) => part && typedName(book, part.row, 'Part', part.row.name);
  const given = ({ engine, fit, position, parts, source }: FitResult): (OutputCell | undefined)[] => {
    const { row } = parts.journal!;
    const names = [
      typedName(book, row, 'Engine', engine),
      fit,
      typedName(book, row, 'Position', position),
      ...[parts.journal, parts.bore, parts.upper, parts.lower].map(partName),
    ];
    const strip: OutputCell | undefined =
      source?.strip === undefined
        ? undefined
        : { value: inUnit(source.strip, unit), format: unit === 'in' ? 'in' : 'mm' };
    return [...names.map((name) => nameCell(name)), strip];
  };
  const computed = cells.get('Fits')!;
  const rows = againAndAgain(function* () {
    yield header;
    for (const [at, fit] of assessment.fits.entries()) {
      const row = given(fit);
      for (const { column, cell } of computed.ofRow(at)) row[column] = cell;
      yield row;
    }
  });
  return {
    name: layout.sheetName('Fits').replace(/ \(oilgap\)$/, ''),
    rows,
    formats: new Set<OutputFormat>(['header', 'name', unit === 'in' ? 'in' : 'mm', ...computed.formats]),
    widths: [
      ...inputs.map(() => 11),
      ...results.map((header) => lengthWidth(header, FITS_WIDTHS[header], unit)),
      MADE_BY_WIDTH,
    ],
    headerRows: 1,
    landscape: true,
  };
}
