/** Evaluates every result column on the engine, beside the user's own cells. */
import { DetailedCellError } from 'hyperformula';
import { inUnit, snapToGrain } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { PartSheet } from '../book/book.js';
import type { SheetName } from '../book/input-sheets.js';
import { buildEngine, contentOf, rawSheets, usesOurFunctions } from '../spreadsheet.js';
import type { CellContent, OutputCell, OutputFormat } from '../workbook-model.js';
import { EngineInputs } from './engine-inputs.js';
import { fitColumns } from './fit-columns.js';
import { Layout } from './layout.js';
import { partColumns } from './part-columns.js';
import type { ResultColumn } from './result-column.js';

export interface PlacedCell {
  readonly row: number;
  readonly column: number;
  readonly cell: OutputCell;
}

export interface Evaluated {
  readonly layout: Layout;
  /** Result cells by sheet. */
  readonly cells: ReadonlyMap<SheetName, readonly PlacedCell[]>;
  /** New values of the user's formulas that use our functions, by the sheet's own name. */
  readonly userValues: readonly { sheet: string; row: number; column: number; content: CellContent }[];
}

interface Pending {
  readonly sheet: SheetName;
  readonly row: number;
  readonly column: number;
  readonly format: OutputFormat | 'length';
  readonly engine: string | number | undefined;
  readonly live: string | undefined;
}

export function evaluateColumns(assessment: Assessment): Evaluated {
  const { book, parts, fits } = assessment;
  const layout = new Layout(assessment);
  const inputs = new EngineInputs(assessment);
  const pending: Pending[] = [];
  const place = <Row>(
    sheet: SheetName,
    rows: readonly Row[],
    rowOf: (row: Row) => number,
    columns: readonly ResultColumn<Row>[],
  ) => {
    for (const row of rows) {
      for (const { header, format, engine, live } of columns) {
        const column = layout.column(sheet, header);
        pending.push({ sheet, row: rowOf(row), column, format, engine: engine(row), live: live?.(row) });
      }
    }
  };
  const partSheets: [PartSheet, (typeof parts)[keyof typeof parts], 'journal' | 'bore' | 'shell'][] = [
    ['Journals', parts.journals, 'journal'],
    ['Rods', parts.rods, 'bore'],
    ['Cases', parts.cases, 'bore'],
    ['Shells', parts.shells, 'shell'],
  ];
  for (const [sheet, results, of] of partSheets) {
    if (book.tables.has(sheet)) place(sheet, results, ({ row }) => row.row, partColumns(inputs, layout, of));
  }
  place('Fits', fits, (fit) => layout.fitRow(fit), fitColumns(inputs, layout));

  const { lengthUnit, temperatureUnit } = book.setup;
  const sheets = rawSheets(book.model);
  for (const cell of pending) {
    const name = layout.sheetName(cell.sheet);
    sheets[name] ??= [];
    const rows = sheets[name];
    while (rows.length <= cell.row) rows.push([]);
    const row = rows[cell.row]!;
    while (row.length < cell.column) row.push(null);
    const { engine } = cell;
    row[cell.column] =
      typeof engine === 'string' && !engine.startsWith('=') ? `'${engine}` : (engine ?? null);
  }
  const hyperFormula = buildEngine({ ...sheets, ...inputs.sheets() }, { lengthUnit, temperatureUnit });
  try {
    const valueAt = (sheet: string, row: number, col: number) =>
      hyperFormula.getCellValue({ sheet: hyperFormula.getSheetId(sheet)!, row, col });
    const cells = new Map<SheetName, PlacedCell[]>();
    for (const { sheet, row, column, format, live } of pending) {
      const found = valueAt(layout.sheetName(sheet), row, column);
      if (found instanceof DetailedCellError) {
        throw new Error(
          `the engine answers ${found.value} (${found.message}) at ${sheet} row ${row + 1}, column ${column + 1}`,
        );
      }
      if (found === null && live === undefined) continue;
      // Values computed on the grain are brought back onto it exactly.
      const value =
        format === 'length' && typeof found === 'number'
          ? inUnit(snapToGrain(found, lengthUnit), lengthUnit)
          : (found ?? '');
      const cell: OutputCell = {
        value,
        format: format === 'length' ? (lengthUnit === 'in' ? 'in' : 'mm') : format,
        formula: live,
      };
      const list = cells.get(sheet) ?? [];
      list.push({ row, column, cell });
      cells.set(sheet, list);
    }
    const userValues = book.model.sheets.flatMap(({ name, rows }) =>
      rows.flatMap((own, row) =>
        (own ?? []).flatMap((cell, column) => {
          const content = usesOurFunctions(cell?.formula) ? contentOf(valueAt(name, row, column)) : undefined;
          return content ? [{ sheet: name, row, column, content }] : [];
        }),
      ),
    );
    return { layout, cells, userValues };
  } finally {
    hyperFormula.destroy();
  }
}
