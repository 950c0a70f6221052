/**
 * Units of torque, and whether a torque that a maker prints in two of them is one torque.
 *
 *   1 kgf·m  = 9.80665 N·m
 *   1 lbf·ft = 0.45359237 · 9.80665 · 0.3048 N·m = 1.355 817 948 … N·m
 *   1 lbf·in = 1/12 lbf·ft
 *
 * Exact ratios, so that a typed torque is rounded only where it is shown.
 *
 * Source: NIST SP 811 (2008), Appendix B.8 and footnotes: pound 0.453 592 37 kg, standard gravity 9.806 65 m/s²,
 * foot 0.3048 m, all exact.
 */
import { divide, isGreater, multiply, parseDecimal, type Ratio, subtract, toNumber } from './decimal.js';

export type TorqueUnit = 'N·m' | 'lb·ft' | 'lb·in' | 'kgf·m';

export const TORQUE_UNITS = ['N·m', 'lb·ft', 'lb·in', 'kgf·m'] as const satisfies readonly TorqueUnit[];

export function isTorqueUnit(text: string | undefined): text is TorqueUnit {
  return TORQUE_UNITS.some((unit) => unit === text);
}

const GRAVITY = parseDecimal('9.80665')!;
const POUND_FOOT = multiply(multiply(parseDecimal('0.45359237')!, GRAVITY), parseDecimal('0.3048')!);

const NEWTON_METRES: Readonly<Record<TorqueUnit, Ratio>> = {
  N·m: { numerator: 1n, denominator: 1n },
  lb·ft: POUND_FOOT,
  lb·in: divide(POUND_FOOT, { numerator: 12n, denominator: 1n }),
  kgf·m: GRAVITY,
};

/** One end of a torque as it was typed: its denominator is the last digit's, 10 of `98.0`. */
export interface TypedTorque {
  readonly value: Ratio;
  readonly unit: TorqueUnit;
}

/** A torque as a range; both ends are one where a single number was typed. */
export interface TorqueRange {
  readonly low: TypedTorque;
  readonly high: TypedTorque;
}

export function newtonMetres({ value, unit }: TypedTorque): Ratio {
  return multiply(value, NEWTON_METRES[unit]);
}

/** The torque in another unit, as a double. */
export function torqueIn(torque: TypedTorque, unit: TorqueUnit): number {
  // In its own unit it is the number that was typed.
  if (torque.unit === unit) return toNumber(torque.value);
  return toNumber(divide(newtonMetres(torque), NEWTON_METRES[unit]));
}

const HALF: Ratio = { numerator: 1n, denominator: 2n };

/** Whether two ends differ by more than half a step of the last digit of the coarser. */
function areEndsApart(a: TypedTorque, b: TypedTorque): boolean {
  const [one, other] = [a, b].map(({ value: { denominator }, unit }) =>
    newtonMetres({ value: { numerator: 1n, denominator }, unit }),
  ) as [Ratio, Ratio];
  const coarser = isGreater(one, other) ? one : other;
  const difference = subtract(newtonMetres(a), newtonMetres(b));
  const size = difference.numerator < 0n ? { ...difference, numerator: -difference.numerator } : difference;
  return isGreater(size, multiply(HALF, coarser));
}

/** Whether two torques are not one, end for end. */
export function areTorquesApart(a: TorqueRange, b: TorqueRange): boolean {
  return areEndsApart(a.low, b.low) || areEndsApart(a.high, b.high);
}
