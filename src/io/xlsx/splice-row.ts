/** Changes the cells of one row in the text of a user's sheet. */
import { type ClearedCells, cellAddress } from '../../engine/workbook-model.js';
import { columnIndex, parseAddress } from './cell-reference.js';
import { cellXml, withStoredValue } from './cell-xml.js';
import type { OutputStyles } from './output-styles.js';
import type { RowEdit } from './row-edits.js';
import { shiftFormula } from './shift-formula.js';
import { attribute, localName, openedTag, type Tag, TagScanner, withAttribute } from './xml-scan.js';
import { decodeCellText, encodeCellText, escapeXml, unescapeXml } from './xml-text.js';
import { attr, childOf, readTree } from './xml-tree.js';

interface CellText {
  readonly column: number;
  readonly start: number;
  readonly end: number;
  readonly hasAddress: boolean;
}

interface SharedFormula {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

const FORMULA_TAG = /<(?:[\w.-]+:)?f[\s/>]/;

export class RowSplicer {
  readonly lostFormulas = new Set<string>();
  /** Shared formulas whose first cell, which alone has the text, was replaced: the others must get it spelled out. */
  private readonly orphans = new Map<string, SharedFormula>();

  /** The rows at hand. */
  private xml = '';

  constructor(
    private readonly prefix: string,
    private readonly clear: ClearedCells | undefined,
    private readonly styles: Pick<OutputStyles, 'styleOf' | 'hasFill'>,
    private readonly styleOfColumn: (column: number) => number | undefined,
  ) {}

  newRow(row: number, edit: RowEdit): string {
    if (edit.storedValues.size > 0) this.failOnStoredValue(row, [...edit.storedValues.keys()]);
    if (edit.cells.size === 0) return '';
    const p = this.prefix;
    return `<${p}row r="${row + 1}">${this.newCells(row, edit, sortedColumns(edit))}</${p}row>`;
  }

  /** The text of a row after its edit. */
  row(xml: string, open: Tag, close: Tag, row: number, edit: RowEdit | undefined): string {
    this.xml = xml;
    const whole = () => xml.slice(open.start, close.end);
    const isCleared = this.clear !== undefined && (this.clear.rows?.has(row) ?? true);
    if (!edit && !isCleared && this.orphans.size === 0) return whole();
    const appended = edit && open.kind === 'open' && this.appended(open, close, row, edit);
    if (appended) return appended;
    const cells = open.kind === 'open' ? this.cellsOf(open.end, close.start) : [];
    const inner = this.spliceCells(open, close, row, cells, edit);
    const old = open.kind === 'open' ? xml.slice(open.end, close.start) : '';
    if (inner === old) return whole();
    const tag = this.withSpans(xml.slice(open.start, open.end), edit);
    return `${openedTag(tag)}${inner}</${open.name}>`;
  }

  /** The short way for most rows of a long sheet: nothing stands where the new cells go, or the new cells themselves. */
  private appended(open: Tag, close: Tag, row: number, edit: RowEdit): string | undefined {
    if (edit.storedValues.size > 0 || this.orphans.size > 0 || edit.cells.size === 0) return undefined;
    const columns = sortedColumns(edit);
    const first = Math.min(columns[0]!, this.clear?.first ?? columns[0]!);
    const old = this.xml.slice(open.end, close.start);
    const text = this.newCells(row, edit, columns);
    if (old.endsWith(text)) {
      const before = lastCell(old.slice(0, -text.length), row, this.prefix);
      if (before !== undefined && before < first) return this.xml.slice(open.start, close.end);
    }
    const last = lastCell(old, row, this.prefix);
    if (last === undefined || last >= first) return undefined;
    const tag = this.withSpans(this.xml.slice(open.start, open.end), edit);
    return `${openedTag(tag)}${old}${text}</${open.name}>`;
  }

  private spliceCells(
    open: Tag,
    close: Tag,
    row: number,
    cells: CellText[],
    edit: RowEdit | undefined,
  ): string {
    const { xml } = this;
    const columns = edit ? sortedColumns(edit) : [];
    const stored = new Set(edit?.storedValues.keys());
    const pieces: string[] = [];
    let at = open.end;
    let next = 0;
    cells.forEach((cell, i) => {
      const firstLater = columns.findIndex((c, k) => k >= next && c >= cell.column);
      const upTo = firstLater < 0 ? columns.length : firstLater;
      if (edit) pieces.push(this.newCells(row, edit, columns.slice(next, upTo)));
      next = upTo;
      const isReplaced = columns[next] === cell.column;
      if (isReplaced) next++;
      pieces.push(xml.slice(at, cell.start));
      const place = { row, column: cell.column, prefix: this.prefix };
      const output = edit?.cells.get(cell.column);
      const content = edit?.storedValues.get(cell.column);
      if (isReplaced && output) {
        this.noteFormula(cell, row, output.formula !== undefined);
        pieces.push(cellXml(place, output, this.styles.styleOf(output, styleOfCell(this.cellTag(cell)))));
      } else if (this.isCleared(row, cell.column)) {
        this.noteFormula(cell, row, false);
        const style = styleOfCell(this.cellTag(cell));
        // The fill of a cell is the user's.
        if (this.styles.hasFill(style)) {
          pieces.push(cellXml(place, { value: '', format: 'plain' }, style));
          at = cell.end;
          return;
        }
        // A cell that stays and does not tell its place would move into this one's.
        const follower = cells[i + 1];
        const isFollowerKept =
          follower && !this.isCleared(row, follower.column) && !edit?.cells.has(follower.column);
        if (isFollowerKept && !follower.hasAddress)
          pieces.push(cellXml(place, { value: '', format: 'plain' }, 0));
      } else {
        const text = this.spelledOut(xml.slice(cell.start, cell.end), row, cell.column);
        pieces.push(content ? withStoredValue(text, content) : text);
        stored.delete(cell.column);
      }
      at = cell.end;
    });
    if (edit) pieces.push(this.newCells(row, edit, columns.slice(next)));
    if (stored.size > 0) this.failOnStoredValue(row, [...stored]);
    if (open.kind === 'open') pieces.push(xml.slice(at, close.start));
    return pieces.join('');
  }

  private cellsOf(start: number, end: number): CellText[] {
    const cells: CellText[] = [];
    const scanner = new TagScanner(this.xml, start, end);
    let column = -1;
    for (let open = scanner.next(); open; open = scanner.next()) {
      const close = open.kind === 'open' ? scanner.closeOf(open) : open;
      if (localName(open.name) !== 'c') continue;
      const r = attribute(this.xml.slice(open.start, open.end), 'r');
      column = r === undefined ? column + 1 : (parseAddress(r)?.column ?? columnIndex(r));
      cells.push({ column, start: open.start, end: close.end, hasAddress: r !== undefined });
    }
    return cells;
  }

  private cellTag({ start, end }: CellText): string {
    return this.xml.slice(start, Math.min(end, this.xml.indexOf('>', start) + 1));
  }

  private newCells(row: number, edit: RowEdit, columns: readonly number[]): string {
    return columns
      .map((column) => {
        const cell = edit.cells.get(column)!;
        const style = this.styles.styleOf(cell, this.styleOfColumn(column));
        return cellXml({ row, column, prefix: this.prefix }, cell, style);
      })
      .join('');
  }

  private isCleared(row: number, column: number): boolean {
    if (!this.clear) return false;
    const { first, last, columns, rows } = this.clear;
    return column >= first && column <= last && (columns?.has(column) ?? true) && (rows?.has(row) ?? true);
  }

  /** Remembers the formula of a cell that is replaced. */
  private noteFormula(cell: CellText, row: number, hasNewFormula: boolean): void {
    const text = this.xml.slice(cell.start, cell.end);
    const f = FORMULA_TAG.test(text) ? childOf(readTree(text), 'f') : undefined;
    if (!f) return;
    if (!hasNewFormula) this.lostFormulas.add(cellAddress(row, cell.column));
    const formula = decodeCellText(unescapeXml(text.slice(f.openEnd, f.closeStart)));
    const index = attr(f, 'si');
    if (attr(f, 't') === 'shared' && index !== undefined && formula !== '') {
      this.orphans.set(index, { formula, row, column: cell.column });
    }
  }

  /** A cell that shares the formula of one that was replaced, with that formula in full. */
  private spelledOut(text: string, row: number, column: number): string {
    if (this.orphans.size === 0) return text;
    const f = childOf(readTree(text), 'f');
    if (!f || attr(f, 't') !== 'shared') return text;
    const master = this.orphans.get(attr(f, 'si') ?? '');
    if (!master) return text;
    const formula = shiftFormula(master.formula, row - master.row, column - master.column);
    const full = `<${f.name}>${escapeXml(encodeCellText(formula))}</${f.name}>`;
    return text.slice(0, f.start) + full + text.slice(f.end);
  }

  /** `spans` is a hint that must not be wrong: it grows, or goes where it is more than one range. */
  private withSpans(tag: string, edit: RowEdit | undefined): string {
    const spans = attribute(tag, 'spans');
    if (spans === undefined || !edit || edit.cells.size === 0) return tag;
    const [min, max] = /^(\d+):(\d+)$/.exec(spans)?.slice(1).map(Number) ?? [];
    const columns = sortedColumns(edit);
    const first = columns[0]! + 1;
    const last = columns.at(-1)! + 1;
    if (min === undefined || max === undefined) return withAttribute(tag, 'spans', undefined);
    if (first >= min && last <= max) return tag;
    return withAttribute(tag, 'spans', `${Math.min(min, first)}:${Math.max(max, last)}`);
  }

  private failOnStoredValue(row: number, columns: readonly number[]): never {
    const cells = columns.map((column) => cellAddress(row, column)).join(', ');
    throw new Error(`a value is to be stored under the formula of ${cells}, but there is none`);
  }
}

/**
 * The column of the last cell of a row's text, behind which nothing stands; undefined where that cannot be seen at a
 * glance.
 */
function lastCell(text: string, row: number, prefix: string): number | undefined {
  if (text.includes('<!') || text.includes('<?')) return undefined;
  const start = text.lastIndexOf(`<${prefix}c r="`);
  if (start < 0) return undefined;
  const cell = text.slice(start);
  const close = `</${prefix}c>`;
  const isWhole = cell.endsWith('/>')
    ? cell.indexOf('>') === cell.length - 1
    : cell.indexOf(close) === cell.length - close.length && cell.endsWith(close);
  if (!isWhole || cell.includes(`<${prefix}c`, 1)) return undefined;
  const addressStart = prefix.length + '<c r="'.length;
  const place = parseAddress(cell.slice(addressStart, cell.indexOf('"', addressStart)));
  return place?.row === row ? place.column : undefined;
}

function styleOfCell(tag: string): number {
  return Number(attribute(tag, 's') ?? 0);
}

function sortedColumns(edit: RowEdit): number[] {
  return [...edit.cells.keys()].sort((a, b) => a - b);
}
