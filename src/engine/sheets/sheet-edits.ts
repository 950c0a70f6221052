/** What is written into the user's own sheets. */
import type { Assessment } from '../assess/assess.js';
import type { CheckedSheet } from '../assess/table-checks.js';
import { madeRowsOf } from '../book/made-cells.js';
import { headerKey } from '../book/names.js';
import { isMadeByProgram, isOwnColumn, type OwnColumns } from '../book/own-columns.js';
import type { Table } from '../book/table.js';
import { plainCell } from '../columns/cell-value.js';
import type { Evaluated } from '../columns/evaluate.js';
import type { Layout } from '../columns/layout.js';
import type { ResultCells } from '../columns/result-cells.js';
import { widthOf } from '../columns/result-column.js';
import { resultColumns } from '../columns/result-headers.js';
import { QUIET_TABLES, TABLE_COLUMNS } from '../columns/table-columns.js';
import { FITS } from '../input-sheets/fits.js';
import type { ClearedCells, OutputFormat, PlacedCell, PlacedCells, SheetEdit } from '../workbook-model.js';
import { isOwnSheet } from './own-names.js';
import { text } from './own-sheet.js';
import { againAndAgain } from './plain-cells.js';

/** The columns that the user's sheets get, and new values of the user's own formulas. */
export function sheetEdits(assessment: Assessment, { cells, userValues, layout }: Evaluated): SheetEdit[] {
  const { book } = assessment;
  const edits: SheetEdit[] = [];
  const edited = new Set<string>();
  for (const [name, table] of book.tables) {
    if (name === FITS.name && layout.makesFits) continue;
    if (resultColumns(name).length === 0 || layout.isApart(name)) continue;
    const isQuiet = isQuietTable(name, assessment);
    if (isQuiet && !book.own.get(name)) continue;
    edited.add(table.sheet.name);
    edits.push({
      sheet: table.sheet.name,
      ...columnsEdit(name, table, assessment, layout, isQuiet ? undefined : cells),
      storedValues: userValues.filter(({ sheet }) => sheet === table.sheet.name),
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

/** Whether a table gets columns only where something is wrong, and nothing is. */
export function isQuietTable(name: string, { tables }: Assessment): boolean {
  return (
    QUIET_TABLES.includes(name) && tables[name as CheckedSheet].every(({ status }) => status === 'consistent')
  );
}

/** @param cells of the sheets of parts and fits; undefined where the columns are taken away */
function columnsEdit(
  name: string,
  table: Table,
  assessment: Assessment,
  layout: Layout,
  cells: Evaluated['cells'] | undefined,
): Pick<SheetEdit, 'clear' | 'cells' | 'widths' | 'list'> {
  const { book } = assessment;
  const before = book.own.get(name);
  const clear = before && clearedCells(before, table);
  if (!cells) return { clear, cells: [], widths: [] };
  const columns = resultColumns(name);
  const places = layout.columns(name);
  const titles = columns.flatMap(({ header }, at): PlacedCell[] => {
    const column = places[at]!;
    // A header that the user has changed stays.
    const isRenamed = before?.columns && headerKey(table.headers[column] ?? '') !== headerKey(header);
    return isRenamed ? [] : [{ row: table.headerRow, column, cell: text(header, 'header') }];
  });
  const results = cells.get(name);
  const list = QUIET_TABLES.includes(name) ? undefined : book.places.get(name)?.list;
  return {
    clear,
    cells: results ? titledCells(titles, results, places) : [...titles, ...tableCells(name, layout)],
    // Columns of an earlier run have the width that the user left them.
    widths: columns.flatMap((column, at) =>
      before && isOwnColumn(before, places[at]!)
        ? []
        : [{ column: places[at]!, characters: widthOf(column, book.setup.lengthUnit) }],
    ),
    list: list && {
      bounds: list.bounds,
      first: places[0]!,
      headers: columns.map(({ header }) => header),
    },
  };
}

/** Of our columns only the header and the rows that hold or held results: the rest is the user's. */
function clearedCells(own: OwnColumns, { sheet, headerRow, headers }: Table): ClearedCells {
  const { first, last } = own;
  const columns = new Set(own.columns ?? headers.flatMap((_, at) => (first <= at && at <= last ? [at] : [])));
  const made = madeRowsOf(sheet, own);
  // Where the user has changed headers, each is written by itself.
  return { first, last, columns, rows: own.columns ? made : made.with(headerRow) };
}

/** The headers, and below them the results of each row. */
function titledCells(
  titles: readonly PlacedCell[],
  results: ResultCells,
  places: readonly number[],
): PlacedCells {
  const { row } = titles[0]!;
  return {
    formats: new Set<OutputFormat>(['header', ...results.formats]),
    bounds: {
      top: row,
      left: places[0]!,
      bottom: Math.max(row, results.lastRow),
      right: places.at(-1)!,
    },
    ...againAndAgain(function* () {
      yield* titles;
      yield* results;
    }),
  };
}

/** The results of the rows of a table that is checked. */
export function tableCells(name: string, layout: Layout): PlacedCell[] {
  const { assessment } = layout;
  const places = layout.columns(name);
  return (assessment.tables[name as CheckedSheet] ?? []).flatMap((result) =>
    TABLE_COLUMNS.flatMap((column, at): PlacedCell[] => {
      const cell = plainCell(column, result, assessment);
      return cell ? [{ row: result.row, column: places[at]!, cell }] : [];
    }),
  );
}
