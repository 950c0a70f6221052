/**
 * Which of a user's formulas are given to the engine. It takes apart formulas by recursion, holds every cell of a
 * range by itself and fills arrays and texts of any size: some formulas that a spreadsheet program may hold would
 * exhaust stack or memory. Their stored values are used instead.
 */
import { type RangeCost, rangesOf, type SheetExtent } from './range-cost.js';

/** Measured with HyperFormula 3.5: 150 functions within one another, or 2,000 operators in a row, exhaust the stack. */
const DEEPEST = 64;
const MOST_OPERATORS = 1000;
const MOST_CELLS_OF_A_RANGE = 1_000_000;
const MOST_CELLS_OF_ALL_RANGES = 2_000_000;
/** Cells that the workbook does not store are made for the range: 120,000 take 0.7 s and 80 MB. */
const MOST_BLANK_CELLS = 120_000;
/** Of functions that fill arrays or repeat texts, the product of the numbers in the formula. */
const LARGEST_FILL = 1_000_000;
/** What a cell of a spreadsheet program holds. */
const LONGEST = 32_767;

const TEXTS = /"(?:[^"]|"")*"|'(?:[^']|'')*'/g;
const FILLING = /\b(?:SEQUENCE|REPT|RANDARRAY|MUNIT)\s*\(/i;

/** Counts what the formulas of one workbook cost together; the same formulas in the same order get the same answers. */
export class FormulaBudget {
  private readonly ranges = new Set<string>();
  private rangeCells = 0;
  private blankCells = 0;

  /** @param extents of the workbook's sheets by `sheetKey`; without them every cell counts as one that is stored */
  constructor(private readonly extents?: ReadonlyMap<string, SheetExtent>) {}

  /** Whether the engine can be given this formula, which then counts. */
  allows(formula: string, sheet = ''): boolean {
    return this.refusal(formula, sheet) === undefined;
  }

  /** Why the engine cannot be given this formula; undefined where it can, and the formula then counts. */
  refusal(formula: string, sheet = ''): string | undefined {
    if (formula.length > LONGEST) return `it is longer than ${LONGEST} characters`;
    const withoutTexts = formula.replaceAll(TEXTS, (text) => (text.startsWith("'") ? text : '""'));
    const bare = withoutTexts.replaceAll(TEXTS, (text) => (text.startsWith("'") ? '' : text));
    if (depthOf(bare) > DEEPEST) return `it nests more than ${DEEPEST} brackets`;
    if (operatorsOf(bare) > MOST_OPERATORS) return `it has more than ${MOST_OPERATORS} operators`;
    if (fillOf(bare) > LARGEST_FILL) return `it fills more than ${LARGEST_FILL} cells or characters`;
    return this.rangesRefusal(rangesOf(withoutTexts, sheet, this.extents));
  }

  private rangesRefusal(found: readonly RangeCost[]): string | undefined {
    const fresh = [...new Map(found.map((range) => [range.key, range])).values()].filter(
      ({ key }) => !this.ranges.has(key),
    );
    const cells = fresh.reduce((sum, range) => sum + range.cells, 0);
    const blank = fresh.reduce((sum, range) => sum + (range.blank ?? 0), 0);
    if (fresh.some((range) => range.cells > MOST_CELLS_OF_A_RANGE)) {
      return `it names a range of more than ${MOST_CELLS_OF_A_RANGE} cells`;
    }
    if (this.rangeCells + cells > MOST_CELLS_OF_ALL_RANGES) {
      return `the ranges of all formulas hold more than ${MOST_CELLS_OF_ALL_RANGES} cells`;
    }
    if (this.blankCells + blank > MOST_BLANK_CELLS) {
      return `the ranges of all formulas hold more than ${MOST_BLANK_CELLS} blank cells`;
    }
    this.rangeCells += cells;
    this.blankCells += blank;
    for (const { key } of fresh) this.ranges.add(key);
    return undefined;
  }
}

function depthOf(formula: string): number {
  let depth = 0;
  let deepest = 0;
  for (const sign of formula) {
    if (sign === '(' || sign === '{') deepest = Math.max(deepest, ++depth);
    else if (sign === ')' || sign === '}') depth--;
  }
  return deepest;
}

function operatorsOf(formula: string): number {
  return formula.match(/[-+*/^&<>=%]/g)?.length ?? 0;
}

function fillOf(formula: string): number {
  if (!FILLING.test(formula)) return 0;
  return [...formula.matchAll(/(?<![A-Z$\d.])\d+/gi)].reduce(
    (product, [digits]) => product * Math.max(1, Number(digits)),
    1,
  );
}
