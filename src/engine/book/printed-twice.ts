/** Whether a length that a maker prints in two units is one length. */
import { isGreater, multiply, type Ratio, subtract } from '../../maths/decimal.js';
import { type LengthUnit, toMm } from '../../maths/units.js';

/** A length as it was typed: its denominator is the last digit's, 1000 of `42.003` and of `1.650`. */
export interface TypedLength {
  readonly value: Ratio;
  readonly unit: LengthUnit;
}

const HALF: Ratio = { numerator: 1n, denominator: 2n };

/** Whether two lengths differ by more than half a step of the last digit of the coarser. */
export function areApart(a: TypedLength, b: TypedLength): boolean {
  const steps = [a, b].map(({ value, unit }) =>
    toMm({ numerator: 1n, denominator: value.denominator }, unit),
  );
  const coarser = isGreater(steps[0]!, steps[1]!) ? steps[0]! : steps[1]!;
  const difference = subtract(toMm(a.value, a.unit), toMm(b.value, b.unit));
  const size = difference.numerator < 0n ? { ...difference, numerator: -difference.numerator } : difference;
  return isGreater(size, multiply(HALF, coarser));
}
