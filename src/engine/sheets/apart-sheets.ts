/** Sheets with the results of a sheet of the user's in which they have no room: the same rows, each with its names. */
import type { Assessment } from '../assess/assess.js';
import { dataRowsOf } from '../book/data-rows.js';
import type { Table } from '../book/table.js';
import type { Evaluated } from '../columns/evaluate.js';
import { widthOf } from '../columns/result-column.js';
import { resultColumns } from '../columns/result-headers.js';
import { namedBy } from '../input-sheets/input-sheet.js';
import type { OutputCell, OutputFormat, OutputSheet, PlacedCell } from '../workbook-model.js';
import { headerRow, MADE_BY_WIDTH } from './own-sheet.js';
import { againAndAgain } from './plain-cells.js';
import { isQuietTable, tableCells } from './sheet-edits.js';

const NAME_WIDTH = 12;

export function apartSheets(assessment: Assessment, evaluated: Evaluated): OutputSheet[] {
  return [...assessment.book.tables].flatMap(([name, table]) =>
    evaluated.layout.isApart(name) && dataRowsOf(table).length > 0 && !isQuietTable(name, assessment)
      ? [apartSheet(name, table, assessment, evaluated)]
      : [],
  );
}

function apartSheet(
  name: string,
  table: Table,
  { book }: Assessment,
  { cells, layout }: Evaluated,
): OutputSheet {
  const names = namedBy(table.record);
  const columns = resultColumns(name);
  const results = cells.get(name);
  const rows = againAndAgain(function* (): Generator<(OutputCell | undefined)[]> {
    for (let row = 0; row < table.headerRow; row++) yield [];
    yield headerRow([...names, ...columns.map(({ header }) => header)]);
    let next = table.headerRow + 1;
    for (const [row, own] of grouped(results ?? tableCells(name, layout))) {
      for (; next < row; next++) yield [];
      next++;
      const line = names.map((header) => nameCell(table, row, header));
      for (const { column, cell } of own) line[column] = cell;
      yield line;
    }
  });
  return {
    name: layout.sheetName(name),
    rows,
    formats: new Set<OutputFormat>(['header', 'name', 'plain', 'text', ...(results?.formats ?? [])]),
    widths: [
      ...names.map(() => NAME_WIDTH),
      ...columns.map((column) => widthOf(column, book.setup.lengthUnit, true)),
      MADE_BY_WIDTH,
    ],
    headerRows: table.headerRow + 1,
    landscape: true,
  };
}

/** Cells row by row. */
function* grouped(cells: Iterable<PlacedCell>): Generator<readonly [number, readonly PlacedCell[]]> {
  let own: PlacedCell[] = [];
  for (const cell of cells) {
    if (own.length > 0 && own[0]!.row !== cell.row) {
      yield [own[0]!.row, own];
      own = [];
    }
    own.push(cell);
  }
  if (own.length > 0) yield [own[0]!.row, own];
}

function nameCell(table: Table, row: number, header: string): OutputCell | undefined {
  const column = table.columns.get(header)?.column;
  const content = column === undefined ? undefined : table.sheet.rows[row]?.[column]?.content;
  return content && { value: content.value, format: 'name' };
}
