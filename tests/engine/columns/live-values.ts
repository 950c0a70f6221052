/** The live formulas of a written book, evaluated on an engine that knows the built-in functions. */
import { DetailedCellError } from 'hyperformula';
import type { Assessment } from '../../../src/engine/assess/assess.js';
import { rawSheets } from '../../../src/engine/raw-sheets.js';
import { writtenWorkbook } from '../../../src/engine/sheets/written-workbook.js';
import { buildEngine, type RawSheets } from '../../../src/engine/spreadsheet.js';
import { cellAddress, type OutputCell, type WorkbookModel } from '../../../src/engine/workbook-model.js';

export interface LiveValue {
  readonly sheet: string;
  readonly cell: string;
  readonly formula: string;
  readonly stored: OutputCell['value'];
  readonly found: string | number | boolean | null;
}

/**
 * The engine reads no exponent with a sign, TRUE and FALSE only as functions, and wants a second argument of
 * NORMSDIST; spreadsheet programs take all of them as they stand.
 */
function inDialect(formula: string): string {
  return formula
    .replaceAll('9E+15', '9000000000000000')
    .replaceAll(/\b(TRUE|FALSE)\b(?!\()/g, '$1()')
    .replaceAll(/NORMSDIST\((\(.*?\)\/[\d.e+-]+)\)/g, 'NORMSDIST($1,TRUE())');
}

/** The checksum of the readings takes the rows of a range as an array, which only spreadsheet programs do. */
const BEYOND_THE_ENGINE = /SUMPRODUCT\(/;

/** @param change of the book's cells after its results were written */
export function liveValues(
  assessment: Assessment,
  change: (model: WorkbookModel) => WorkbookModel = (model) => model,
): LiveValue[] {
  const { edits, sheets } = writtenWorkbook(assessment, { valuesOnly: false });
  const written = [
    ...edits.flatMap(({ sheet, cells }) => Array.from(cells, (placed) => ({ sheet, ...placed }))),
    ...sheets.flatMap(({ name, rows }) =>
      [...rows].flatMap((cells, row) =>
        cells.flatMap((cell, column) => (cell ? [{ sheet: name, row, column, cell }] : [])),
      ),
    ),
  ];
  const raw: RawSheets = rawSheets(change(assessment.book.model));
  for (const { sheet, row, column, cell } of written) {
    raw[sheet] ??= [];
    const rows = raw[sheet];
    while (rows.length <= row) rows.push([]);
    while (rows[row]!.length <= column) rows[row]!.push(null);
    const { formula, value } = cell;
    const plain = typeof value === 'string' ? `'${value}` : value;
    rows[row]![column] = formula === undefined ? plain : `=${inDialect(formula)}`;
  }
  const engine = buildEngine(raw, assessment.book.setup);
  try {
    return written.flatMap(({ sheet, row, column, cell: { formula, value } }) => {
      if (formula === undefined || BEYOND_THE_ENGINE.test(formula)) return [];
      const found = engine.getCellValue({ sheet: engine.getSheetId(sheet)!, row, col: column });
      return [
        {
          sheet,
          cell: cellAddress(row, column),
          formula,
          stored: value,
          found: found instanceof DetailedCellError ? found.value : found,
        },
      ];
    });
  } finally {
    engine.destroy();
  }
}
