/**
 * Whether a reading can be right, judged by what is known before it: limits, the other spots of its part, the same
 * part of other engines, and earlier readings of the same spot. A doubt is no verdict: it asks to look again.
 *
 * Repeats: ISO 5725-6:1994, 4.1.4, critical range CR = f(n)·s, with f(n) the 95 % quantile of the range of n values.
 * The other margins are workshop convention, no published source: they catch a thimble read half a turn (0.5 mm) off,
 * a figure swapped or left out, and let worn and reground parts pass.
 *
 * Slips of the hand: the pitch of a metric micrometer's thimble is 0.5 mm or 1 mm (DIN 863-1, from memory), that of an
 * inch one 0.025 in; the rest is common practice, no published source.
 *
 * All lengths in grains (0.001 µm).
 */
import { GRAINS_PER_MM, type Grain, roundToWhole } from './grain.js';
import { rangeQuantile } from './studentized-range.js';
import { grainOf, inUnit, type LengthUnit } from './units.js';

export interface Range {
  readonly low: Grain;
  readonly high: Grain;
}

/** What is known of a spot before it is read. */
export interface Expectation {
  readonly kind: 'diameter' | 'wall' | 'bolt';
  /** A part may be worn beyond them, though not by much. */
  readonly limits: Range | undefined;
  /** Sizes that the part may be ground to; they count beside limits alone. */
  readonly undersizes?: readonly Range[];
  /** Other spots of the same part. */
  readonly sisters: readonly Grain[];
  /** Spots of other parts of the same kind. */
  readonly peers: readonly Grain[];
}

export type Doubt =
  | { readonly kind: 'limits'; readonly range: Range; readonly beyond: Grain }
  | { readonly kind: 'sisters'; readonly range: Range; readonly beyond: Grain }
  | { readonly kind: 'peers'; readonly range: Range; readonly beyond: Grain }
  | { readonly kind: 'repeat'; readonly spread: Grain; readonly allowed: Grain };

const grains = (mm: number): Grain => roundToWhole(mm * GRAINS_PER_MM);

/** How far outside a range a value may lie before it is doubted. */
export const MARGINS = {
  /** As wide as the limits are, between these two. */
  limits: { least: grains(0.05), greatest: grains(0.25) },
  sisters: { diameter: grains(0.05), wall: grains(0.02), bolt: grains(0.5) },
  peers: grains(0.4),
} as const;

export function rangeOfValues(values: readonly Grain[]): Range | undefined {
  return values.length === 0 ? undefined : { low: Math.min(...values), high: Math.max(...values) };
}

/** How far a value lies outside a range; 0 inside. */
export function beyondRange({ low, high }: Range, value: Grain): Grain {
  return Math.max(low - value, value - high, 0);
}

/** What speaks against a reading; empty where nothing does. */
export function doubtsOf(value: Grain, expectation: Expectation): Doubt[] {
  const { kind, limits, undersizes = [], sisters, peers } = expectation;
  const doubts: Doubt[] = [];
  if (limits) {
    const isUsual = [limits, ...undersizes].some((range) => beyondRange(range, value) <= limitsMargin(range));
    if (!isUsual) doubts.push({ kind: 'limits', range: limits, beyond: beyondRange(limits, value) });
  }
  const own = rangeOfValues(sisters);
  if (own) {
    const excess = beyondRange(own, value);
    if (excess > MARGINS.sisters[kind]) doubts.push({ kind: 'sisters', range: own, beyond: excess });
  }
  const others = rangeOfValues(peers);
  // Other engines may be reground: they count only where nothing nearer is known.
  if (others && !limits && !own) {
    const excess = beyondRange(others, value);
    if (excess > MARGINS.peers) doubts.push({ kind: 'peers', range: others, beyond: excess });
  }
  return doubts;
}

function limitsMargin({ low, high }: Range): Grain {
  const { least, greatest } = MARGINS.limits;
  return Math.min(Math.max(high - low, least), greatest);
}

export type SlipCause =
  | 'half a turn'
  | 'a turn'
  | 'inches'
  | 'millimetres'
  | 'decimal point'
  | 'digits exchanged';

/** What a reading would be without a slip of the hand. */
export interface Slip {
  readonly cause: SlipCause;
  readonly value: Grain;
}

/** The unit in which a reading was typed, and that of its book: whoever works in one may hold a gauge of the other. */
export interface UnitsOfReading {
  readonly typed: LengthUnit;
  readonly book: LengthUnit;
}

/**
 * The slip without which a doubtful value would be one that nothing speaks against. Of several the one that comes
 * nearest to the middle of what is expected; at a tie the first in the order of `SlipCause`.
 * @returns undefined where no slip helps
 */
export function slipOf(
  value: Grain,
  expectation: Expectation,
  units: UnitsOfReading = { typed: 'mm', book: 'mm' },
): Slip | undefined {
  const middles = middlesOf(expectation);
  const distance = (slip: Slip) => Math.min(...middles.map((middle) => Math.abs(slip.value - middle)));
  return slipsOf(value, units)
    .filter((slip) => slip.value > 0 && doubtsOf(slip.value, expectation).length === 0)
    .reduce<Slip | undefined>(
      (best, slip) => (best && distance(best) <= distance(slip) ? best : slip),
      undefined,
    );
}

/** The nearest knowledge counts: the part itself, its limits, others. */
function middlesOf({ limits, undersizes = [], sisters, peers }: Expectation): Grain[] {
  const own = rangeOfValues(sisters);
  const others = rangeOfValues(peers);
  const ranges = own ? [own] : limits ? [limits, ...undersizes] : others ? [others] : [];
  return ranges.map(({ low, high }) => (low + high) / 2);
}

const THIMBLES: readonly { readonly cause: SlipCause; readonly length: Grain; readonly isInch: boolean }[] = [
  { cause: 'half a turn', length: grains(0.5), isInch: false },
  { cause: 'a turn', length: grains(1), isInch: false },
  { cause: 'a turn', length: grains(0.635), isInch: true },
];

/** Every value that a slip may have made of the one that was typed. */
function slipsOf(value: Grain, units: UnitsOfReading): Slip[] {
  const times = (factor: number) => roundToWhole(value * factor);
  const inUse = [units.typed, units.book].map((unit) => unit === 'in');
  return [
    ...THIMBLES.filter(({ isInch }) => inUse.includes(isInch)).flatMap(({ cause, length }) =>
      [value - length, value + length].map((other) => ({ cause, value: other })),
    ),
    { cause: 'inches', value: times(25.4) },
    { cause: 'millimetres', value: times(1 / 25.4) },
    ...[0.001, 0.01, 0.1, 10, 100, 1000].map(
      (factor): Slip => ({ cause: 'decimal point', value: times(factor) }),
    ),
    ...withDigitsExchanged(value, units.typed).map(
      (other): Slip => ({ cause: 'digits exchanged', value: other }),
    ),
  ];
}

/** Decimals of a typed number: gauges show at least the first, and the grain holds no more than the second. */
const DECIMALS: Readonly<Record<LengthUnit, readonly [least: number, most: number]>> = {
  mm: [3, 6],
  in: [4, 6],
  µm: [0, 3],
};

/** The values of the typed digits with two neighbours exchanged, also over the decimal point. */
function withDigitsExchanged(value: Grain, unit: LengthUnit): Grain[] {
  const [least, most] = DECIMALS[unit];
  const [whole, fraction = ''] = inUnit(value, unit).toFixed(most).split('.') as [string, string?];
  // A spreadsheet keeps no zeros at the end of a number; the gauge showed them.
  const digits = [...whole, ...fraction.replace(/0+$/, '').padEnd(least, '0')];
  const scale = 10 ** (digits.length - whole.length);
  return digits.slice(1).flatMap((digit, at) => {
    if (digit === digits[at]) return [];
    const exchanged = digits.with(at, digit).with(at + 1, digits[at]!);
    return [grainOf(Number(exchanged.join('')) / scale, unit)];
  });
}

const REPEAT_CONFIDENCE = 0.95;

/**
 * Whether repeats of one spot differ by more than the gauge's repeatability allows.
 * @param repeatability standard deviation of one reading; 0 where it is not known
 * @param maxError of the gauge; where only it is known, two readings differ by at most twice as much
 * @param resolution the step of the gauge, by which equal values may be shown apart
 */
export function repeatDoubt(
  repeats: readonly Grain[],
  gauge: { readonly repeatability: Grain; readonly maxError: Grain; readonly resolution: Grain },
): Doubt | undefined {
  const range = rangeOfValues(repeats);
  if (!range || repeats.length < 2) return undefined;
  const { repeatability, maxError, resolution } = gauge;
  const allowed =
    repeatability > 0
      ? roundToWhole(rangeQuantile(REPEAT_CONFIDENCE, repeats.length) * repeatability) + resolution
      : 2 * maxError;
  const spread = range.high - range.low;
  return allowed > 0 && spread > allowed ? { kind: 'repeat', spread, allowed } : undefined;
}
