/**
 * Which of a user's formulas are given to the engine. It takes apart formulas by recursion, holds every cell of a
 * range by itself and fills arrays and texts of any size: some formulas that a spreadsheet program may hold would
 * exhaust stack or memory. Their stored values are used instead.
 */

/** Measured with HyperFormula 3.5: 150 functions within one another, or 2,000 operators in a row, exhaust the stack. */
const DEEPEST = 64;
const MOST_OPERATORS = 1000;
/** A range of a million cells takes some 500 MB; `A:A` takes next to nothing. */
const MOST_CELLS_OF_A_RANGE = 1_000_000;
const MOST_CELLS_OF_ALL_RANGES = 2_000_000;
/** Of functions that fill arrays or repeat texts, the product of the numbers in the formula. */
const LARGEST_FILL = 1_000_000;
/** What a cell of a spreadsheet program holds. */
const LONGEST = 32_767;

const TEXTS = /"(?:[^"]|"")*"|'(?:[^']|'')*'/g;
const RANGE = /\$?([A-Z]{1,3})\$?(\d{1,7}):\$?([A-Z]{1,3})\$?(\d{1,7})/gi;
const FILLING = /\b(?:SEQUENCE|REPT|RANDARRAY|MUNIT)\s*\(/i;

/** Counts what the formulas of one workbook cost together; the same formulas in the same order get the same answers. */
export class FormulaBudget {
  private readonly ranges = new Set<string>();
  private rangeCells = 0;

  /** Whether the engine can be given this formula, which then counts. */
  allows(formula: string): boolean {
    if (formula.length > LONGEST) return false;
    const bare = formula.replaceAll(TEXTS, (text) => (text.startsWith("'") ? '' : '""'));
    return depthOf(bare) <= DEEPEST && operatorsOf(bare) <= MOST_OPERATORS && fillOf(bare) <= LARGEST_FILL
      ? this.allowsRanges(formula)
      : false;
  }

  private allowsRanges(formula: string): boolean {
    let cells = 0;
    const fresh: string[] = [];
    for (const [text, left, top, right, bottom] of formula.matchAll(RANGE)) {
      const key = text.replaceAll('$', '').toUpperCase();
      if (this.ranges.has(key)) continue;
      const area =
        (Math.abs(columnNumber(right!) - columnNumber(left!)) + 1) *
        (Math.abs(Number(bottom) - Number(top)) + 1);
      if (area > MOST_CELLS_OF_A_RANGE) return false;
      cells += area;
      fresh.push(key);
    }
    if (this.rangeCells + cells > MOST_CELLS_OF_ALL_RANGES) return false;
    this.rangeCells += cells;
    for (const key of fresh) this.ranges.add(key);
    return true;
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

function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}
