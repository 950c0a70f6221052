/** Changes of cells that the workbook's file does not hold yet. */

import { isBlank } from '../book/blank-cell.js';
import { dataRowsOf } from '../book/data-rows.js';
import type { Table } from '../book/table.js';
import { namedBy } from '../input-sheets/input-sheet.js';
import { cellAddress, type SheetModel, type WorkbookModel } from '../workbook-model.js';

/** A cell of the book that is to hold another value; a blank text empties it. */
export interface CellFill {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly value: number | string;
  /** The column whose look the cell takes where it has none of its own. */
  readonly like?: number;
  /** The header of a column that the file does not have yet. */
  readonly isNewHeader?: true;
}

export const cellKey = (sheet: string, row: number, column: number) => `${sheet}\u0000${row}\u0000${column}`;

export class PendingFills {
  private readonly fills = new Map<string, CellFill>();

  add(fill: CellFill): void {
    const { isNewHeader } = this.fills.get(keyOf(fill)) ?? fill;
    this.fills.set(keyOf(fill), isNewHeader ? { ...fill, isNewHeader } : fill);
  }

  /** What is to be written. A new column without a reading waits. */
  list(): CellFill[] {
    return [...this.fills.values()].filter((fill) => !this.isEmptyColumn(fill));
  }

  /** The file has all that `list` gave. */
  written(): void {
    for (const fill of this.list()) this.fills.delete(keyOf(fill));
  }

  /**
   * Whether parts and columns still stand where they stood, in the file as it is now: it may have been edited
   * elsewhere in the meantime.
   * @param tables of the book as it was opened
   * @returns what has moved
   */
  movedIn(file: WorkbookModel, tables: Iterable<Table>): string | undefined {
    const known = new Map([...tables].map((table) => [table.sheet.name, table]));
    for (const fill of this.list()) {
      const { sheet: name, row, column } = fill;
      const table = known.get(name)!;
      const now = file.sheets.find((sheet) => sheet.name === name);
      const isSamePart = namesOf(table).every(
        (column) => textAt(now, row, column) === textAt(table.sheet, row, column),
      );
      const header = textAt(now, table.headerRow, column);
      const isNew = header === '' && this.isOfNewColumn(fill) && isFree(now, table, column);
      if (!isSamePart || !(isNew || header === textAt(table.sheet, table.headerRow, column))) {
        return `${name}!${cellAddress(row, column)}`;
      }
    }
    return undefined;
  }

  private isEmptyColumn(fill: CellFill): boolean {
    return fill.isNewHeader === true && this.ofColumn(fill).every(({ isNewHeader }) => isNewHeader);
  }

  private isOfNewColumn(fill: CellFill): boolean {
    return this.ofColumn(fill).some(({ isNewHeader }) => isNewHeader);
  }

  private ofColumn({ sheet, column }: CellFill): CellFill[] {
    return [...this.fills.values()].filter((other) => other.sheet === sheet && other.column === column);
  }
}

const keyOf = ({ sheet, row, column }: CellFill) => cellKey(sheet, row, column);

/** Whether nothing stands in a column from the header to the last part: somebody may have typed there in the meantime. */
function isFree(sheet: SheetModel | undefined, table: Table, column: number): boolean {
  const last = dataRowsOf(table).at(-1) ?? table.headerRow;
  const rows = sheet?.rows.slice(table.headerRow, last + 1) ?? [];
  return rows.every((cells) => isBlank(cells?.[column]));
}

/** The columns whose names tell one row from the others. */
function namesOf({ columns, record }: Table): number[] {
  const headers = record.rowNames ?? (columns.has('Part') ? ['Part'] : namedBy(record));
  return headers.flatMap((header) => columns.get(header)?.column ?? []);
}

function textAt(sheet: SheetModel | undefined, row: number, column: number): string {
  return String(sheet?.rows[row]?.[column]?.content?.value ?? '');
}
