/**
 * Evaluates the result columns of many rows on the engine, a block of rows at a time: one array formula a column. The
 * formulas are built once; a block is evaluated when one of its rows is asked for, and forgotten with the next. So the
 * engine holds no more than a block of each list, however long that is, and every row goes through the same formulas.
 */
import { DetailedCellError, type HyperFormula } from 'hyperformula';
import { functionRecords } from '../../../functions/index.js';
import { buildEngine, type EngineUnits, type RawSheets } from '../spreadsheet.js';
import { cellAddress } from '../workbook-model.js';
import { type EngineValue, refuseDisagreement } from './agreement.js';
import { EACH_ROW, INPUT, type InputRows, type InputSource, rowFunctions } from './row-functions.js';
import { BLANK, type Template } from './template.js';

/** More make fewer recalculations, and each larger. */
export const BLOCK_ROWS = 512;

/** An array of one row is for the engine a single value. */
const LEAST_ROWS = 2;

/** The number of the block at hand; the results stand below. */
const BLOCK_CELL = { row: 0, col: 0 };
const TOP = 1;

/** The values of a template's columns, row by row. */
export interface TemplateValues {
  /**
   * What the formulas give for a row, by column; undefined where none is to.
   * @throws DisagreementError where a formula gives something else than the assessment
   */
  ofRow(at: number): readonly EngineValue[];
}

/** @param blockRows how many rows are evaluated together; the values do not depend on it */
export function evaluateTemplates<Row>(
  templates: readonly Template<Row>[],
  units: EngineUnits,
  blockRows = BLOCK_ROWS,
): TemplateValues[] {
  const blocks = templates.map((template) => new TemplateBlocks(template, blockRows));
  const filled = blocks.filter(({ template }) => template.rows.length > 0);
  const sources = new Map(filled.flatMap((own) => own.sources()));
  const sheets: RawSheets = Object.fromEntries(filled.map((own) => [own.template.name, own.sheet()]));
  const engine = buildEngine(sheets, units, {
    useArrayArithmetic: true,
    functionPlugins: [rowFunctions(sources, units)],
  });
  return blocks.map((own) => own.on(engine));
}

const OUR_CALL = new RegExp(`\\b(${functionRecords.map(({ name }) => name).join('|')})\\(`, 'g');

class TemplateBlocks<Row> implements TemplateValues {
  /** Rows that the formulas are made for. */
  private readonly size: number;
  /** The inputs of the block at hand, by their places. */
  private inputs: InputRows[] = [];
  private block = 0;
  /** Of the block at hand, row by row. */
  private values: (readonly EngineValue[])[] | undefined;
  private engine: HyperFormula | undefined;

  constructor(
    readonly template: Template<Row>,
    blockRows: number,
  ) {
    this.size = Math.max(LEAST_ROWS, Math.min(blockRows, template.rows.length));
    this.setInputs();
  }

  on(engine: HyperFormula): this {
    this.engine = engine;
    return this;
  }

  /** What INPUT gives, by name. */
  sources(): [string, InputSource][] {
    const { name, constants, inputs } = this.template;
    const { size } = this;
    return [
      ...inputs.map((input, place): [string, InputSource] => [
        `${name} ${input}`,
        { size, rows: () => this.inputs[place]! },
      ]),
      ...Object.entries(constants).map(([constant, cells]): [string, InputSource] => [
        `${name} ${constant}`,
        { size: 1, rows: () => [cells] },
      ]),
    ];
  }

  /** The template's sheet, as it is built. */
  sheet(): RawSheets[string] {
    return [[this.block], this.template.columns.map(({ header, engine }) => this.formulaOf(header, engine))];
  }

  /** A column's formula for all rows of a block. */
  private formulaOf(header: string, formula: string | undefined): string | null {
    if (formula === undefined) return null;
    const { name, constants, inputs, columns } = this.template;
    const placed = formula.replaceAll(/\[([^\]]+)\]/g, (_, input: string) => {
      if (inputs.includes(input)) return `${INPUT}("${name} ${input}",$A$1)`;
      if (input in constants) return `${INPUT}("${name} ${input}")`;
      const column = columns.findIndex((other) => other.header === input);
      if (column < 0) throw new Error(`${name}: ${header} names ${input}, which is no input`);
      return `${cellAddress(TOP, column)}:${cellAddress(TOP + this.size - 1, column)}`;
    });
    return placed.replaceAll(OUR_CALL, `${EACH_ROW}("$1",`);
  }

  ofRow(at: number): readonly EngineValue[] {
    const block = Math.floor(at / this.size);
    if (block !== this.block) this.take(block);
    this.values ??= this.read();
    return this.values[at - block * this.size]!;
  }

  private take(block: number): void {
    this.block = block;
    this.values = undefined;
    this.setInputs();
    const sheet = this.engine!.getSheetId(this.template.name)!;
    this.engine!.setCellContents({ sheet, ...BLOCK_CELL }, block);
  }

  private rowsAtHand(): readonly Row[] {
    const first = this.block * this.size;
    return this.template.rows.slice(first, first + this.size);
  }

  private setInputs(): void {
    const { inputs, inputsOf } = this.template;
    const rows = this.rowsAtHand().map(inputsOf);
    this.inputs = inputs.map((_, place) => {
      const cells = rows.map((row) => row[place]!);
      while (cells.length < LEAST_ROWS) cells.push([BLANK]);
      return cells;
    });
  }

  private read(): (readonly EngineValue[])[] {
    const { name, columns, assessment } = this.template;
    const sheet = this.engine!.getSheetId(name)!;
    const rows = this.rowsAtHand();
    const found = this.engine!.getRangeValues({
      start: { sheet, row: TOP, col: 0 },
      end: { sheet, row: TOP + rows.length - 1, col: columns.length - 1 },
    });
    return rows.map((row, at) =>
      columns.map((column, place) => {
        if (column.engine === undefined || !column.isComputed?.(row, assessment)) return undefined;
        const value = found[at]![place];
        const plain = value instanceof DetailedCellError ? `${value.value} (${value.message})` : value;
        refuseDisagreement(this.template, column, row, plain);
        return plain;
      }),
    );
  }
}
