/** The number in one cell, with its unit, or why it is none that its rule allows. */
import { exact, type Ratio, toNumber } from '../../maths/decimal.js';
import { breachOf, type NumberRule, type TextUnit } from '../input-sheets/quantities.js';
import type { CellContent } from '../workbook-model.js';
import { type DecimalSign, readScanned, type ScannedNumber, scanNumber } from './number-text.js';
import { isLength, isMmOrIn } from './table.js';

export interface Amount {
  readonly value: Ratio;
  /** What the cell names, else its header, else what goes without saying. */
  readonly unit: TextUnit | undefined;
  /** Whether it is a text without a unit, which can stand as a number just as well. */
  readonly isBareText: boolean;
}

/** What is said of a cell that is refused. */
export interface Refusal {
  readonly expected: string;
  readonly remedy: string;
}

/**
 * @param headerUnit of a cell that names none
 * @param settledSign the decimal sign that the texts of the column agree on, where they are of a unit
 */
export function readAmount(
  content: CellContent | undefined,
  headerUnit: TextUnit | undefined,
  rule: NumberRule,
  settledSign: (unit: TextUnit | undefined) => DecimalSign | undefined,
): Amount | Refusal {
  const remedy = rule.units.some(isLength) ? 'measure again or correct the cell' : 'correct the cell';
  if (headerUnit && !rule.units.includes(headerUnit)) {
    return { expected: `${rule.expected}, not in ${headerUnit}`, remedy: 'correct the unit in the header' };
  }
  const columnUnit = headerUnit ?? rule.units[0];
  if (content?.kind === 'number') {
    const expected = breachOf(rule, content.value, columnUnit);
    if (expected !== undefined) return { expected, remedy };
    return { value: exact(content.value), unit: columnUnit, isBareText: false };
  }
  const scan = content?.kind === 'text' ? scanNumber(content.value) : undefined;
  if (!scan || (scan.unit && !rule.units.includes(scan.unit))) return { expected: rule.expected, remedy };
  return amountOfText(scan, scan.unit ?? columnUnit, rule, settledSign(columnUnit), remedy);
}

function amountOfText(
  scan: ScannedNumber,
  unit: TextUnit | undefined,
  rule: NumberRule,
  settled: DecimalSign | undefined,
  remedy: string,
): Amount | Refusal {
  const read = readScanned(scan, isMmOrIn(unit), settled);
  if (read === 'not a number') return { expected: rule.expected, remedy };
  if ('either' in read) {
    return {
      expected: `a number with one reading, not ${read.either.join(' or ')}`,
      remedy: 'type it as a number, or without the thousands mark',
    };
  }
  const expected = breachOf(rule, toNumber(read.value), unit);
  if (expected !== undefined) return { expected, remedy };
  return { value: read.value, unit, isBareText: !scan.unit && !scan.fraction };
}
