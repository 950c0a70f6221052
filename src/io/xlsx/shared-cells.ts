/**
 * Cells that stand for many: of a long list, most cells say what another says too. Each text and number is kept once,
 * so that a cell of a sheet takes a few bytes.
 */
import type { Cell, CellContent } from '../../engine/workbook-model.js';

/** Texts and numbers beyond this many different ones are kept each by itself. */
const MOST = 100_000;

export class SharedCells {
  private readonly ofStrings: Cell[] = [];
  private readonly numbers = new Map<string, Cell>();
  private readonly texts = new Map<string, Cell>();

  constructor(private readonly strings: readonly string[]) {}

  get stringCount(): number {
    return this.strings.length;
  }

  /** The cell of a shared string; undefined where there is none of that number. */
  ofString(index: number): Cell | undefined {
    const value = this.strings[index];
    if (value === undefined) return undefined;
    this.ofStrings[index] ??= { content: { kind: 'text', value } };
    return this.ofStrings[index];
  }

  /** The cell of a number as it is stored; `make` is asked where it is not known yet. */
  ofNumber(stored: string, make: () => CellContent | undefined): Cell | undefined {
    return this.known(this.numbers, stored, make);
  }

  ofText(value: string): Cell {
    return this.known(this.texts, value, () => ({ kind: 'text', value }))!;
  }

  private known(
    cells: Map<string, Cell>,
    key: string,
    make: () => CellContent | undefined,
  ): Cell | undefined {
    const known = cells.get(key);
    if (known) return known;
    const content = make();
    if (!content) return undefined;
    const cell = { content };
    if (cells.size < MOST) cells.set(key, cell);
    return cell;
  }
}
