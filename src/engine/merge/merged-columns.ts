/** Which columns the sheet of a stock has, and which of them each column of the single books goes to. */
import { isBlank } from '../book/blank-cell.js';
import { headerKey } from '../book/names.js';
import type { ReadingColumn, Table } from '../book/table.js';
import { engineType } from '../input-sheets/common-columns.js';
import { columnsOf, type InputColumn, type InputSheet } from '../input-sheets/input-sheet.js';
import type { TextUnit } from '../input-sheets/quantities.js';

/** A column of a single book's sheet. */
interface SourceColumn {
  readonly from: number;
  /** The unit in its header. */
  readonly unit: TextUnit | undefined;
  readonly is: { readonly input: InputColumn } | { readonly reading: ReadingColumn };
}

/** A column of a single book's sheet, and where it goes. */
export interface CopiedColumn extends SourceColumn {
  readonly to: number;
}

/** A sheet of a single book, and which of its rows go into the stock. */
export interface SourceSheet {
  readonly table: Table;
  readonly rows: readonly number[];
  /** Whether rows that name no engine type get one. */
  readonly isTyped: boolean;
}

/** A column that has to be in the stock. */
interface Wanted {
  /** What is one column in every book. */
  readonly key: string;
  readonly header: string;
  /** The first row that fills it. */
  readonly first: number;
  /** Undefined of a column that the sheet does not have. */
  readonly source: SourceColumn | undefined;
}

export class MergedColumns {
  readonly headers: string[] = [];
  private readonly places = new Map<string, number>();
  private readonly copied = new Map<Table, readonly CopiedColumn[]>();

  /**
   * Columns stand in the order in which the rows first fill them. One that is blank in every row is left out, unless the
   * sheet cannot be read without it.
   */
  constructor(record: InputSheet, sources: readonly SourceSheet[]) {
    for (const sheet of sources) {
      const wanted = [...inputsOf(record, sheet), ...readingsOf(sheet), ...typeOf(record, sheet)];
      wanted.sort((a, b) => a.first - b.first);
      const copied = wanted.flatMap(({ key, header, source }): CopiedColumn[] => {
        const to = this.places.get(key) ?? this.headers.push(header) - 1;
        this.places.set(key, to);
        return source ? [{ ...source, to }] : [];
      });
      this.copied.set(sheet.table, copied);
    }
  }

  /** The columns of a single book's sheet that go into the stock. */
  of(table: Table): readonly CopiedColumn[] {
    return this.copied.get(table)!;
  }
}

function inputsOf(record: InputSheet, sheet: SourceSheet): Wanted[] {
  const inputs = new Map(columnsOf(record).map((input) => [input.header, input]));
  return [...sheet.table.columns].flatMap(([header, { column, unit, header: typed }]) => {
    const input = inputs.get(header)!;
    const first = firstFilled(sheet, column) ?? (input.needed ? sheet.rows.length : undefined);
    if (first === undefined) return [];
    // What is copied as it was typed keeps the unit that its header gives it.
    const isCopied = input.quantity.kind === 'text' && unit !== undefined;
    const source = { from: column, unit, is: { input } };
    return [{ key: headerKey(header), header: isCopied ? typed : header, first, source }];
  });
}

function readingsOf(sheet: SourceSheet): Wanted[] {
  return sheet.table.readingColumns.flatMap((reading) => {
    const { column, header, station, angle, repeat, unit } = reading;
    const first = firstFilled(sheet, column);
    if (first === undefined) return [];
    // `A 0` and `A 0 #1` are one, and so are `Mid 0` and `Middle 0`.
    const key = `${station} ${angle} #${repeat}`;
    return [{ key, header, first, source: { from: column, unit, is: { reading } } }];
  });
}

/** The engine type, which goes without saying in its own book and must be said among others. */
function typeOf(record: InputSheet, { table, rows, isTyped }: SourceSheet): Wanted[] {
  const { header } = engineType;
  if (!isTyped || !columnsOf(record).some((input) => input.header === header)) return [];
  const known = table.columns.get(header);
  const first = rows.findIndex((row) => !known || isBlank(table.sheet.rows[row]?.[known.column]));
  return first < 0 ? [] : [{ key: headerKey(header), header, first, source: undefined }];
}

function firstFilled({ table, rows }: SourceSheet, column: number): number | undefined {
  const first = rows.findIndex((row) => !isBlank(table.sheet.rows[row]?.[column]));
  return first < 0 ? undefined : first;
}
