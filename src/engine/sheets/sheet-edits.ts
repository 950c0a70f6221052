/** What is written into the user's own sheets. */
import type { Assessment } from '../assess/assess.js';
import type { CheckedSheet, TableRowResult } from '../assess/table-checks.js';
import { isMadeByProgram } from '../book/own-columns.js';
import { plainCell } from '../columns/cell-value.js';
import type { Evaluated } from '../columns/evaluate.js';
import type { Layout } from '../columns/layout.js';
import type { ResultCells } from '../columns/result-cells.js';
import { widthOf } from '../columns/result-column.js';
import { resultColumns } from '../columns/result-headers.js';
import { QUIET_TABLES, TABLE_COLUMNS } from '../columns/table-columns.js';
import { FITS } from '../input-sheets/fits.js';
import type { OutputFormat, PlacedCell, PlacedCells, SheetEdit } from '../workbook-model.js';
import { isOwnSheet } from './own-names.js';
import { text } from './own-sheet.js';
import { againAndAgain } from './plain-cells.js';

/** The columns that the user's sheets get, and new values of the user's own formulas. */
export function sheetEdits(assessment: Assessment, { cells, userValues, layout }: Evaluated): SheetEdit[] {
  const { book, tables } = assessment;
  const edits: SheetEdit[] = [];
  const edited = new Set<string>();
  for (const [name, table] of book.tables) {
    if (name === FITS.name && layout.makesFits) continue;
    const columns = resultColumns(name);
    if (columns.length === 0) continue;
    const before = book.own.get(name);
    const first = layout.first(name);
    const results = cells.get(name);
    const isQuiet =
      QUIET_TABLES.includes(name) &&
      tables[name as CheckedSheet].every(({ status }) => status === 'consistent');
    if (isQuiet && !before) continue;
    const titles = columns.map(({ header }, place) => ({
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
          : [...titles, ...tableCells(tables[name as CheckedSheet] ?? [], first, layout)],
      storedValues: userValues.filter(({ sheet }) => sheet === table.sheet.name),
      widths: isQuiet
        ? []
        : columns.map((column, place) => ({
            column: first + place,
            characters: widthOf(column, book.setup.lengthUnit),
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

function tableCells(results: readonly TableRowResult[], first: number, { assessment }: Layout): PlacedCell[] {
  return results.flatMap((result) =>
    TABLE_COLUMNS.flatMap((column, place): PlacedCell[] => {
      const cell = plainCell(column, result, assessment);
      return cell ? [{ row: result.row, column: first + place, cell }] : [];
    }),
  );
}
