/** The cells of one sheet part (ISO 29500-1, 18.3.1). */
import { type Cell, type CellBlock, type CellContent, cellAddress } from '../../engine/workbook-model.js';
import { MAX_COLUMNS, MAX_ROWS, parseAddress, parseRange } from './cell-reference.js';
import { StringItem } from './read-strings.js';
import { parsePieces } from './sax.js';
import type { SharedCells } from './shared-cells.js';
import { shiftFormula } from './shift-formula.js';
import { decodeCellText } from './xml-text.js';

export interface SheetContext {
  readonly cells: SharedCells;
  readonly dateStyles: readonly boolean[];
  readonly usesDate1904: boolean;
  /**
   * Told the rows so far once the first with a cell is there; says of which columns the formulas are not wanted: those
   * of an earlier run are made anew.
   */
  readonly madeColumns: (rows: Rows) => PassedColumns | undefined;
  /** Told what belongs to several cells together. */
  readonly onBlock?: (block: CellBlock) => void;
}

/** Columns of an earlier run, and whether a row's results in them are the program's. */
export interface PassedColumns {
  readonly first: number;
  readonly last: number;
  readonly isMadeRow: (cells: Rows[number]) => boolean;
}

type Rows = (Cell | undefined)[][];

/** Throws an Error that says what is wrong with the part. */
export async function readSheetRows(pieces: AsyncIterable<string>, context: SheetContext): Promise<Rows> {
  const reader = new SheetReader(context);
  await parsePieces(pieces, reader);
  return reader.rows;
}

/** Formulas of several cells, by what their element says. */
const BLOCK_FORMULAS: Readonly<Record<string, CellBlock['kind']>> = {
  array: 'array formula',
  dataTable: 'data table',
};

/** Rows and cells ascend; of two of one place, each program would show the one it likes. */
function outOfOrder(what: 'row' | 'cell', which: string): Error {
  return new Error(`the ${what} ${which} stands twice or behind one that comes after it`);
}

/** A number as a cell stores it (XML Schema 1.1, 3.3.5). */
const NUMBER = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:[Ee][+-]?\d+)?\s*$/;

interface SharedFormula {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

class SheetReader {
  readonly rows: Rows = [];
  /** The cells of the row at hand. */
  private cells: (Cell | undefined)[] = [];
  private made: PassedColumns | undefined;
  private isRootSeen = false;
  private isInside = false;
  private row = -1;
  private column = -1;
  private type = 'n';
  private style = 0;
  private value: string | undefined;
  private formula: string | undefined;
  private sharedIndex: string | undefined;
  /** The element whose text is being gathered. */
  private gathering: 'v' | 'f' | 'is' | undefined;
  private gathered = '';
  private readonly item = new StringItem();
  private readonly shared = new Map<string, SharedFormula>();

  constructor(private readonly context: SheetContext) {}

  open(local: string, attribute: (local: string) => string | undefined): void {
    if (!this.isRootSeen && local !== 'worksheet') {
      throw new Error(`its first element is <${local}>; a worksheet begins with <worksheet>`);
    }
    this.isRootSeen = true;
    if (local === 'sheetData') this.isInside = true;
    if (!this.isInside) {
      if (local === 'mergeCell') this.addBlock('merged cells', attribute('ref'));
      return;
    }
    if (local === 'row') this.openRow(attribute('r'));
    else if (local === 'c') this.openCell(attribute);
    else if (this.gathering === 'is') this.item.open(local);
    else if (local === 'v' || local === 'f' || local === 'is') {
      this.gathering = local;
      this.gathered = '';
      if (local === 'f') this.openFormula(attribute);
    }
  }

  private openFormula(attribute: (local: string) => string | undefined): void {
    const type = attribute('t');
    if (type === 'shared') this.sharedIndex = attribute('si');
    const block = type === undefined ? undefined : BLOCK_FORMULAS[type];
    if (block) this.addBlock(block, attribute('ref'));
  }

  /** One cell by itself is no block. */
  private addBlock(kind: CellBlock['kind'], ref: string | undefined): void {
    const bounds = ref?.includes(':') ? parseRange(ref) : undefined;
    if (bounds) this.context.onBlock?.({ kind, bounds });
  }

  text(text: string): void {
    if (this.gathering === 'is') this.item.add(text);
    else if (this.gathering) this.gathered += text;
  }

  close(local: string): void {
    if (local === 'sheetData') this.isInside = false;
    if (!this.isInside) return;
    if (this.gathering === local) {
      if (local === 'v') this.value = this.gathered;
      else if (local === 'f') this.formula = decodeCellText(this.gathered);
      else this.value = this.item.take();
      this.gathering = undefined;
    } else if (this.gathering === 'is') this.item.close(local);
    else if (local === 'c') this.closeCell();
    else if (local === 'row') this.closeRow();
  }

  /** A row or cell without its position takes the one after the previous. */
  private openRow(r: string | undefined): void {
    const previous = this.row;
    this.row = r === undefined ? previous + 1 : Number(r) - 1;
    this.column = -1;
    if (!(Number.isInteger(this.row) && this.row >= 0 && this.row < MAX_ROWS)) {
      throw new Error(`a row has the number ${r ?? this.row + 1}; a sheet has ${MAX_ROWS} rows`);
    }
    if (this.row <= previous) throw outOfOrder('row', String(this.row + 1));
  }

  private closeRow(): void {
    if (this.cells.length === 0) return;
    const isFirst = this.rows.length === 0;
    if (this.made?.isMadeRow(this.cells)) this.dropMadeFormulas(this.made);
    // A copy is as long as it has cells; one that grew has room to spare.
    this.rows[this.row] = this.cells.slice();
    this.cells = [];
    if (isFirst) this.made = this.context.madeColumns(this.rows);
  }

  private dropMadeFormulas({ first, last }: PassedColumns): void {
    for (let column = first; column <= last && column < this.cells.length; column++) {
      const cell = this.cells[column];
      if (cell?.formula !== undefined) this.cells[column] = cell.content && { content: cell.content };
    }
  }

  private openCell(attribute: (local: string) => string | undefined): void {
    const r = attribute('r');
    const place = r === undefined ? { row: this.row, column: this.column + 1 } : parseAddress(r);
    if (!place || place.row !== this.row || place.column >= MAX_COLUMNS) {
      throw new Error(`row ${this.row + 1} holds a cell at ${r ?? `column ${this.column + 2}`}`);
    }
    if (place.column <= this.column) throw outOfOrder('cell', cellAddress(place.row, place.column));
    this.column = place.column;
    this.type = attribute('t') ?? 'n';
    this.style = Number(attribute('s') ?? 0);
    this.value = undefined;
    this.formula = undefined;
    this.sharedIndex = undefined;
  }

  private closeCell(): void {
    const formula = this.sharedIndex === undefined ? this.formula : this.sharedFormula(this.sharedIndex);
    const cell = this.value === undefined ? undefined : this.valueOf(this.value);
    if (cell === undefined && !formula) return;
    this.cells[this.column] = formula ? { content: cell?.content, formula } : cell;
  }

  /** The first cell of a shared formula holds its text; the others name it by its index. */
  private sharedFormula(index: string): string | undefined {
    if (this.formula) {
      this.shared.set(index, { formula: this.formula, row: this.row, column: this.column });
      return this.formula;
    }
    const master = this.shared.get(index);
    if (!master) return undefined;
    return shiftFormula(master.formula, this.row - master.row, this.column - master.column);
  }

  private valueOf(stored: string): Cell | undefined {
    const { cells, dateStyles } = this.context;
    switch (this.type) {
      case 's':
        return this.sharedString(stored);
      case 'inlineStr':
        return cells.ofText(stored);
      case 'str':
        return cells.ofText(decodeCellText(stored));
      case 'b':
        return { content: { kind: 'boolean', value: ['1', 'true'].includes(stored.trim()) } };
      case 'e':
        return { content: { kind: 'error', value: stored } };
      case 'd':
        return { content: this.isoDate(stored) };
      default: {
        if (!dateStyles[this.style]) return cells.ofNumber(stored, () => this.number(stored));
        const content = this.number(stored);
        return content && { content };
      }
    }
  }

  private sharedString(stored: string): Cell {
    const cell = this.context.cells.ofString(Number(stored));
    if (cell !== undefined) return cell;
    throw new Error(
      `cell ${cellAddress(this.row, this.column)} shows shared text number ${stored}, of which there are ${this.context.cells.stringCount}`,
    );
  }

  private number(stored: string): CellContent | undefined {
    if (stored.trim() === '') return undefined;
    const value = Number(stored);
    // What is no number is handed on as text: whoever needs this cell then refuses it by name.
    if (!NUMBER.test(stored) || !Number.isFinite(value)) return { kind: 'text', value: stored };
    return { kind: this.context.dateStyles[this.style] ? 'date' : 'number', value };
  }

  /** An ISO 8601 date (strict packages) as the serial number that another package would store. */
  private isoDate(stored: string): CellContent {
    const time = Date.parse(
      /^\d{1,2}:/.test(stored)
        ? `1899-12-30T${stored}Z`
        : `${stored.replace(/Z$/, '')}${stored.includes('T') ? 'Z' : ''}`,
    );
    if (Number.isNaN(time)) return { kind: 'text', value: stored };
    const serial = (time - Date.UTC(1899, 11, 30)) / 86_400_000;
    return { kind: 'date', value: this.context.usesDate1904 && serial >= 1462 ? serial - 1462 : serial };
  }
}
