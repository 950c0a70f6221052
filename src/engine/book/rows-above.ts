/** Formulas over the rows above them: totals and means, which are no readings. */

/** Functions of whole lists, which leave out other totals. */
const OF_LISTS = /\b(?:SUBTOTAL|AGGREGATE)\s*\(/i;
/** A column of a table by its name; `[#This Row]` and `[@…]` are of the formula's own row. */
const COLUMN_OF_TABLE = /[\p{L}\p{N}_.]\[(?!\[?#This Row|\[?@)/iu;
const OF_SEVERAL =
  /\b(?:SUM|SUMPRODUCT|AVERAGEA?|MEDIAN|MINA?|MAXA?|COUNTA?|STDEV[AP]?|STDEV\.[SP]|VAR[AP]?|VAR\.[SP])\s*\(/i;
/** Cells and ranges of the formula's own sheet. */
const REFERENCE =
  /(?<![\p{L}\p{N}_.!'$:])\$?[A-Z]{1,3}\$?(\d+)(?::\$?[A-Z]{1,3}\$?(\d+))?(?![\p{L}\p{N}_.(!:])/giu;

/**
 * Whether a formula takes several rows between the header and its own together, or one of them by a function that does.
 * A reading that is the one above it and a little more is a reading.
 *
 * @param row the formula's own, from 0
 */
export function isOverRowsAbove(formula: string | undefined, headerRow: number, row: number): boolean {
  if (formula === undefined) return false;
  const plain = formula.replaceAll(/"[^"]*"/g, '""');
  if (OF_LISTS.test(plain) || COLUMN_OF_TABLE.test(plain)) return true;
  const above = new Set<number>();
  for (const [, from, to] of plain.matchAll(REFERENCE)) {
    const first = Math.max(headerRow + 1, Number(from) - 1);
    const last = Math.min(row - 1, Number(to ?? from) - 1);
    // Two rows are as good as a million.
    for (let at = first; at <= last && at < first + 2; at++) above.add(at);
  }
  return above.size > 1 || (above.size === 1 && OF_SEVERAL.test(plain));
}
