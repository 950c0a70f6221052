/** The values of the formulas that users type with our functions: they see the cells of the book and the results. */
import type { Assessment } from '../assess/assess.js';
import { buildGuardedEngine } from '../guarded-engine.js';
import { rawSheets } from '../raw-sheets.js';
import { contentOf, usesOurFunctions } from '../spreadsheet.js';
import type { CellContent } from '../workbook-model.js';
import type { Layout } from './layout.js';
import type { ResultCells } from './result-cells.js';

export interface UserValue {
  /** The sheet's own name. */
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly content: CellContent;
}

export function userValues(
  { book }: Assessment,
  layout: Layout,
  results: ReadonlyMap<string, ResultCells>,
): UserValue[] {
  const places = book.model.sheets.flatMap(({ name, rows }) =>
    rows.flatMap((cells, row) =>
      (cells ?? []).flatMap((cell, column) =>
        usesOurFunctions(cell?.formula) ? [{ sheet: name, row, column }] : [],
      ),
    ),
  );
  // Without such a formula, the book need not be put on an engine at all.
  if (places.length === 0) return [];
  const sheets = rawSheets(book.model);
  for (const [name, cells] of results) {
    const sheet = layout.sheetName(name);
    sheets[sheet] ??= [];
    const rows = sheets[sheet];
    for (const { row, column, cell } of cells) {
      while (rows.length <= row) rows.push([]);
      while (rows[row]!.length < column) rows[row]!.push(null);
      rows[row]![column] = typeof cell.value === 'string' ? `'${cell.value}` : cell.value;
    }
  }
  const { engine } = buildGuardedEngine(sheets, book.setup);
  try {
    return places.flatMap(({ sheet, row, column }) => {
      const content = contentOf(engine.getCellValue({ sheet: engine.getSheetId(sheet)!, row, col: column }));
      return content ? [{ sheet, row, column, content }] : [];
    });
  } finally {
    engine.destroy();
  }
}
