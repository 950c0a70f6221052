/**
 * Terms of live formulas, in built-in functions that every spreadsheet program has had for decades.
 *
 * All arithmetic is done in whole grains (0.001 µm): ROUND(…,0) of a length times the grains in its
 * unit. Sums and halves of whole numbers are exact in floating point, so a live cell agrees with the
 * core to the last digit in every program.
 */
import type { Grain } from '../../maths/grain.js';
import type { LengthUnit } from '../../maths/units.js';
import { cellAddress, columnLetters } from '../workbook-model.js';

/** Grains in one unit of length. */
export const GRAINS: Readonly<Record<LengthUnit, number>> = { mm: 1_000_000, in: 25_400_000, µm: 1000 };

/** Excel takes no longer formula. */
export const LONGEST_FORMULA = 8000;

export function quotedSheet(name: string): string {
  return `'${name.replaceAll("'", "''")}'`;
}

/** A cell of another sheet. */
export function sheetCell(sheet: string, row: number, column: number): string {
  return `${quotedSheet(sheet)}!${cellAddress(row, column)}`;
}

/** A cell of another sheet that a formula goes on naming when its row is sorted to another place. */
export function fixedCell(sheet: string, row: number, column: number): string {
  return `${quotedSheet(sheet)}!$${columnLetters(column)}$${row + 1}`;
}

/** A live verdict that says `run again` where its row has other names than at the run; undefined conditions are not asked. */
export function unlessMoved(
  conditions: readonly (string | undefined)[],
  verdict: string | undefined,
): string | undefined {
  const asked = [...new Set(conditions.filter((condition) => condition !== undefined))];
  if (verdict === undefined || asked.length === 0) return verdict;
  const all = asked.length === 1 ? asked[0]! : `AND(${asked.join(',')})`;
  return fitting(`IF(${all},${verdict},"run again")`) ?? verdict;
}

/** A cell as whole grains. */
export function grains(cell: string, unit: LengthUnit): string {
  return `ROUND(${cell}*${GRAINS[unit]},0)`;
}

/** A term of whole grains as a length. */
export function lengthOf(term: string, unit: LengthUnit): string {
  return `${term}/${GRAINS[unit]}`;
}

/** Cells added up with their signs, as a length; blank text where one of them holds no number. */
export function signedSum(
  cells: readonly { readonly sign: 1 | -1; readonly cell: string }[],
  unit: LengthUnit,
): string {
  const sum = cells.map(({ sign, cell }, at) => `${sign < 0 ? '-' : at > 0 ? '+' : ''}${cell}`).join('');
  const term = `ROUND((${sum})*${GRAINS[unit]},0)`;
  const count = `COUNT(${cells.map(({ cell }) => cell).join(',')})`;
  return `IF(${count}<${cells.length},"",${lengthOf(term, unit)})`;
}

/** The comparisons of a value with a limit and its guard. All terms in grains. */
export function beyond(value: string, side: 'at least' | 'at most', limit: string, guard: Grain): string {
  return side === 'at least' ? `${limit}-${value}>${guard}` : `${value}-${limit}>${guard}`;
}

export function clear(value: string, side: 'at least' | 'at most', limit: string, guard: Grain): string {
  return side === 'at least' ? `${limit}-${value}<=${-guard}` : `${value}-${limit}<=${-guard}`;
}

/** A condition on a value that may be blank text. */
export function ifNumber(cell: string, condition: string): string {
  return `IF(ISNUMBER(${cell}),${condition},FALSE)`;
}

/** Left out where it would be too long for a cell. */
export function fitting(formula: string | undefined): string | undefined {
  return formula !== undefined && formula.length <= LONGEST_FORMULA ? formula : undefined;
}
