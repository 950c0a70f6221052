/**
 * Exact decimal numbers.
 *
 * A reading is the shortest decimal that names the double in its cell (42.003, not
 * 42.00299999999999869…). Converting and correcting it in whole-number ratios and rounding
 * once keeps a size that lies on a limit exactly on it.
 */
export interface Ratio {
  readonly numerator: bigint;
  /** Always positive. */
  readonly denominator: bigint;
}

export const ONE: Ratio = { numerator: 1n, denominator: 1n };

const DECIMAL = /^([+-]?)(\d*)(?:\.(\d*))?(?:e([+-]?\d{1,3}))?$/i;

/** The exact value of a decimal text such as `42.003`, `-1.5e-3`; undefined for anything else. */
export function parseDecimal(text: string): Ratio | undefined {
  const match = DECIMAL.exec(text);
  if (!match) return undefined;
  const [, sign, whole = '', fraction = '', exponent = '0'] = match;
  if (whole === '' && fraction === '') return undefined;
  const digits = BigInt(whole + fraction) * (sign === '-' ? -1n : 1n);
  const scale = Number(exponent) - fraction.length;
  return scale >= 0
    ? { numerator: digits * 10n ** BigInt(scale), denominator: 1n }
    : { numerator: digits, denominator: 10n ** BigInt(-scale) };
}

/**
 * The exact value of the shortest decimal that names a double.
 * @throws RangeError for NaN and infinities, which name no decimal.
 */
export function exact(value: number): Ratio {
  const ratio = parseDecimal(String(value));
  if (!ratio) throw new RangeError(`${value} is not a finite number`);
  return ratio;
}

export function add(a: Ratio, b: Ratio): Ratio {
  return {
    numerator: a.numerator * b.denominator + b.numerator * a.denominator,
    denominator: a.denominator * b.denominator,
  };
}

export function subtract(a: Ratio, b: Ratio): Ratio {
  return add(a, { ...b, numerator: -b.numerator });
}

export function isGreater(a: Ratio, b: Ratio): boolean {
  return a.numerator * b.denominator > b.numerator * a.denominator;
}

export function multiply(a: Ratio, b: Ratio): Ratio {
  return { numerator: a.numerator * b.numerator, denominator: a.denominator * b.denominator };
}

/** @throws RangeError when the divisor is zero. */
export function divide(a: Ratio, b: Ratio): Ratio {
  if (b.numerator === 0n) throw new RangeError('division by zero');
  const sign = b.numerator < 0n ? -1n : 1n;
  return {
    numerator: sign * a.numerator * b.denominator,
    denominator: sign * a.denominator * b.numerator,
  };
}

export function toNumber(a: Ratio): number {
  return Number(a.numerator) / Number(a.denominator);
}

/** The nearest whole number, halves away from zero. */
export function roundHalfAway(a: Ratio): number {
  const magnitude = a.numerator < 0n ? -a.numerator : a.numerator;
  const rounded = (2n * magnitude + a.denominator) / (2n * a.denominator);
  return Number(a.numerator < 0n ? -rounded : rounded);
}

/** The digits of an exact number, such as `-0.00123`; undefined where they have no end, as of 1/3. */
export function decimalText({ numerator, denominator }: Ratio): string | undefined {
  const magnitude = numerator < 0n ? -numerator : numerator;
  let rest = denominator / greatestDivisor(magnitude, denominator);
  const timesDivided = (prime: bigint) => {
    let times = 0;
    for (; rest % prime === 0n; rest /= prime) times++;
    return times;
  };
  const places = Math.max(timesDivided(2n), timesDivided(5n));
  if (rest !== 1n) return undefined;
  const digits = ((magnitude * 10n ** BigInt(places)) / denominator).toString().padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  return `${numerator < 0n ? '-' : ''}${whole}${places > 0 ? `.${digits.slice(-places)}` : ''}`;
}

function greatestDivisor(a: bigint, b: bigint): bigint {
  let [divisor, rest] = [b, a];
  while (rest !== 0n) [divisor, rest] = [rest, divisor % rest];
  return divisor;
}

/** The double whose shortest decimal is an exact number; undefined where there is none. */
export function exactDouble(value: Ratio): number | undefined {
  const text = decimalText(value);
  if (text === undefined) return undefined;
  const double = Number(text);
  return Number.isFinite(double) && decimalText(exact(double)) === text ? double : undefined;
}
