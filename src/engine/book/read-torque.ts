/** The torque in one cell: a number or a range, with its unit, or why it is none. */
import { isGreater, toNumber } from '../../maths/decimal.js';
import { isTorqueUnit, type TorqueRange, type TorqueUnit } from '../../maths/torque.js';
import { breachOf, type TextUnit, type TorqueQuantity } from '../input-sheets/quantities.js';
import type { Cell } from '../workbook-model.js';
import { type DecimalSign, plainText, readScanned, type ScannedNumber, scanNumber } from './number-text.js';
import { type Refusal, readAmount } from './read-amount.js';

/** A number, what stands between the ends, and a second number: `10-11`, `98 N·m to 108 N·m`, `72 … 80 ft-lb`. */
const RANGE = /^(.+?) ?(?:-|to|\.{2,3}) ?(\d.*)$/i;

interface ScannedRange {
  readonly ends: readonly [ScannedNumber, ScannedNumber];
  /** What the text itself names. */
  readonly unit: TextUnit | undefined;
}

/** The two ends of a range; the first has the unit of the second where it names none. */
export function scanRange(text: string): ScannedRange | undefined {
  const match = RANGE.exec(plainText(text));
  const low = match && scanNumber(match[1]!);
  const high = match && scanNumber(match[2]!);
  if (!low || !high || (low.unit !== undefined && low.unit !== high.unit)) return undefined;
  return { ends: [low, high], unit: high.unit };
}

/**
 * @param found the cell, and the unit of its header
 * @param settledSign the decimal sign that the texts of the column agree on
 */
export function readTorque(
  { cell: { content }, unit: headerUnit }: { readonly cell: Cell; readonly unit: TextUnit | undefined },
  rule: TorqueQuantity,
  settledSign: (unit: TextUnit | undefined) => DecimalSign | undefined,
): TorqueRange | Refusal {
  if (content?.kind === 'date') {
    return { expected: rule.expected, remedy: 'type a range as text, such as 10 to 11' };
  }
  const range = content?.kind === 'text' ? scanRange(content.value) : undefined;
  if (!range) {
    const read = readAmount(content, headerUnit, rule, settledSign);
    if ('expected' in read) return read;
    const end = { value: read.value, unit: unitOf(read.unit) };
    return { low: end, high: end };
  }
  const refusal = { expected: rule.expected, remedy: 'correct the cell' };
  const own = range.unit ?? headerUnit ?? 'N·m';
  if (!isTorqueUnit(own)) return refusal;
  const ends = range.ends.map((scan) => {
    const read = readScanned(scan, false, settledSign(own));
    return typeof read === 'object' && 'value' in read ? { value: read.value, unit: own } : undefined;
  });
  const [low, high] = ends;
  if (!low || !high) return { ...refusal, remedy: 'type both ends without a thousands mark' };
  const isRefused = [low, high].some(({ value }) => breachOf(rule, toNumber(value), own) !== undefined);
  if (isRefused) return refusal;
  if (isGreater(low.value, high.value)) return { ...refusal, remedy: 'type the smaller end first' };
  return { low, high };
}

function unitOf(unit: TextUnit | undefined): TorqueUnit {
  return isTorqueUnit(unit) ? unit : 'N·m';
}
