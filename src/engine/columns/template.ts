/**
 * Evaluates the result columns of many rows block by block. The formulas of one block of rows are built once; then
 * the inputs of each block in turn are put into its cells, and the results read. So the engine holds no more
 * than a block, however long the sheet is, and every row goes through the same formulas.
 */
import { DetailedCellError, type HyperFormula, type RawCellContent } from 'hyperformula';
import { groupBy } from '../assess/context.js';
import { buildEngine, type EngineUnits, type RawSheets } from '../spreadsheet.js';
import { cellAddress } from '../workbook-model.js';
import { quotedSheet } from './live-terms.js';
import type { ResultColumn } from './result-column.js';

/** Cells of one row that the formulas of the row work on. */
export interface TemplateInput<Row> {
  readonly name: string;
  readonly width: number;
  /** At most `width` values; the rest is blank. */
  readonly values: (row: Row) => readonly RawCellContent[];
}

/** Rows of three cells that all rows of a kind share. */
export interface TemplateTable<Row> {
  readonly name: string;
  readonly rows: (row: Row) => readonly (readonly RawCellContent[])[];
}

export interface Template<Row> {
  /** A name of its own among the templates. */
  readonly name: string;
  readonly rows: readonly Row[];
  /** Rows of one kind share their tables. */
  readonly kindOf: (row: Row) => string;
  /** Cells that are the same for every row. */
  readonly constants: Readonly<Record<string, readonly RawCellContent[]>>;
  readonly inputs: readonly TemplateInput<Row>[];
  readonly tables: readonly TemplateTable<Row>[];
  readonly columns: readonly ResultColumn<Row>[];
}

/** The values of a template's columns: by column, then by row. */
export type TemplateValues = readonly (readonly (string | number | undefined)[])[];

/** Rows of the longest template that are evaluated together: more make each recalculation longer, fewer make more. */
export const BLOCK_ROWS = 128;

const TABLE_WIDTH = 3;

/**
 * The blocks of all templates are evaluated side by side: each recalculation costs as much as there are cells on the
 * engine, whatever changed.
 * @param blockRows how many rows are evaluated together; the values do not depend on it
 * @throws Error where a formula that is to give a value answers with an error: a defect
 */
export function evaluateTemplates<Row>(
  templates: readonly Template<Row>[],
  units: EngineUnits,
  blockRows = BLOCK_ROWS,
): TemplateValues[] {
  const longest = Math.max(1, ...templates.map(({ rows }) => rows.length));
  const blocks = Math.ceil(longest / blockRows);
  const placed = templates.map(
    (template) => new PlacedTemplate(template, Math.ceil(template.rows.length / blocks)),
  );
  const most = Math.max(0, ...placed.map((template) => template.blocks.length));
  if (most === 0) return placed.map(({ values }) => values);
  const sheets: RawSheets = {};
  for (const template of placed) Object.assign(sheets, template.sheets());
  const engine = buildEngine(sheets, units);
  try {
    for (let at = 0; at < most; at++) {
      engine.suspendEvaluation();
      for (const template of placed) template.setBlock(engine, at);
      engine.resumeEvaluation();
      for (const template of placed) template.readBlock(engine, at);
    }
    return placed.map(({ values }) => values);
  } finally {
    engine.destroy();
  }
}

/** Rows of one kind, by their numbers. */
interface Block {
  readonly rows: readonly number[];
  /** Whether the block before was of another kind. */
  readonly isOther: boolean;
}

class PlacedTemplate<Row> {
  readonly values: (string | number | undefined)[][];
  readonly blocks: readonly Block[];
  private readonly size: number;
  /** The first row of the block, below the constants. */
  private readonly top: number;
  /** The first column of the results, right of the inputs. */
  private readonly left: number;
  private readonly heights: readonly number[];
  /** What stands in the input cells, so that what a block leaves as it is need not be set again. */
  private readonly standing: (readonly (readonly RawCellContent[])[])[] = [];

  constructor(
    readonly template: Template<Row>,
    blockRows: number,
  ) {
    const { rows, kindOf, constants, inputs, tables, columns } = template;
    this.values = columns.map(() => new Array<string | number | undefined>(rows.length));
    const numbers = rows.map((_, at) => at);
    const groups = [...groupBy(numbers, (at) => kindOf(rows[at]!)).values()];
    this.blocks = groups.flatMap((group) => inBlocks(group, blockRows));
    this.size = this.blocks.reduce((most, block) => Math.max(most, block.rows.length), 0);
    this.top = Object.keys(constants).length;
    this.left = inputs.reduce((sum, { width }) => sum + width, 0);
    this.heights = tables.map((table) =>
      groups.reduce((most, [first]) => Math.max(most, table.rows(rows[first!]!).length), 1),
    );
  }

  /** The template's sheet and those of its tables, as they are built. */
  sheets(): RawSheets {
    const { name, constants, tables, columns } = this.template;
    const rows: RawCellContent[][] = Object.values(constants).map((values) => [...values]);
    for (let row = this.top; row < this.top + this.size; row++) {
      const addresses = this.addresses(row);
      const formulas = columns.map(({ header, engine }) => {
        if (engine === undefined) return null;
        return engine.replaceAll(/\[([^\]]+)\]/g, (_, input: string) => {
          const address = addresses.get(input);
          if (address === undefined) throw new Error(`${name}: ${header} names ${input}, which is no input`);
          return address;
        });
      });
      const blank = Array.from({ length: this.left }, () => null);
      rows.push([...blank, ...formulas]);
    }
    const blankRow = () => Array.from({ length: TABLE_WIDTH }, () => null);
    return {
      [name]: rows,
      ...Object.fromEntries(
        tables.map((table, at) => [
          `${name} ${table.name}`,
          Array.from({ length: this.heights[at]! }, () => blankRow()),
        ]),
      ),
    };
  }

  /** Where the names in a row's formulas lead. */
  private addresses(row: number): Map<string, string> {
    const { name, constants, inputs, tables, columns } = this.template;
    const known = new Map<string, string>();
    Object.entries(constants).forEach(([constant, values], at) => {
      known.set(constant, fixed(rangeOf(at, 0, at, values.length - 1)));
    });
    let column = 0;
    for (const input of inputs) {
      known.set(input.name, rangeOf(row, column, row, column + input.width - 1));
      column += input.width;
    }
    columns.forEach(({ header }, at) => {
      known.set(header, cellAddress(row, this.left + at));
    });
    tables.forEach((table, at) => {
      const sheet = quotedSheet(`${name} ${table.name}`);
      known.set(table.name, `${sheet}!${fixed(rangeOf(0, 0, this.heights[at]! - 1, TABLE_WIDTH - 1))}`);
    });
    return known;
  }

  /** Puts the inputs of a block, and the tables of its kind, into their cells. */
  setBlock(engine: HyperFormula, at: number): void {
    const block = this.blocks[at];
    if (!block) return;
    if (block.isOther) this.setTables(engine, this.template.rows[block.rows[0]!]!);
    const sheet = engine.getSheetId(this.template.name)!;
    let col = 0;
    this.template.inputs.forEach(({ width, values }, input) => {
      const cells = block.rows.map((row) => {
        const given = values(this.template.rows[row]!);
        return Array.from({ length: width }, (_, place) => given[place] ?? null);
      });
      if (!isSame(this.standing[input], cells)) engine.setCellContents({ sheet, row: this.top, col }, cells);
      this.standing[input] = cells;
      col += width;
    });
  }

  private setTables(engine: HyperFormula, row: Row): void {
    const { name, tables } = this.template;
    tables.forEach((table, at) => {
      const rows = table.rows(row);
      const cells = Array.from({ length: this.heights[at]! }, (_, place) =>
        Array.from({ length: TABLE_WIDTH }, (_, column) => rows[place]?.[column] ?? null),
      );
      engine.setCellContents({ sheet: engine.getSheetId(`${name} ${table.name}`)!, row: 0, col: 0 }, cells);
    });
  }

  readBlock(engine: HyperFormula, at: number): void {
    const block = this.blocks[at]?.rows ?? [];
    const sheet = engine.getSheetId(this.template.name)!;
    const { name, columns, rows } = this.template;
    block.forEach((row, place) => {
      columns.forEach(({ header, engine: formula, isComputed, plain }, at) => {
        const own = rows[row]!;
        if (formula === undefined || !isComputed?.(own)) {
          this.values[at]![row] = plain?.(own);
          return;
        }
        const found = engine.getCellValue({ sheet, row: this.top + place, col: this.left + at });
        if (found instanceof DetailedCellError) {
          throw new Error(
            `the engine answers ${found.value} (${found.message}) in ${name}, ${header}, row ${row + 1}`,
          );
        }
        this.values[at]![row] = typeof found === 'boolean' ? String(found) : (found ?? undefined);
      });
    });
  }
}

function inBlocks(rows: readonly number[], blockRows: number): Block[] {
  const blocks: Block[] = [];
  for (let start = 0; start < rows.length; start += blockRows) {
    blocks.push({ rows: rows.slice(start, start + blockRows), isOther: start === 0 });
  }
  return blocks;
}

function isSame(
  standing: readonly (readonly RawCellContent[])[] | undefined,
  cells: readonly (readonly RawCellContent[])[],
): boolean {
  return (
    standing?.length === cells.length &&
    cells.every((row, at) => row.every((value, place) => value === standing[at]![place]))
  );
}

function rangeOf(top: number, left: number, bottom: number, right: number): string {
  const first = cellAddress(top, left);
  return top === bottom && left === right ? first : `${first}:${cellAddress(bottom, right)}`;
}

/** A range that stays where it is from row to row, so that the engine reads the formula of a block but once. */
function fixed(range: string): string {
  return range.replaceAll(/([A-Z]+)(\d+)/g, '$$$1$$$2');
}
