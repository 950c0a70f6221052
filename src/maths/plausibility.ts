/**
 * Whether a reading can be right, judged by what is known before it: limits, the other spots of its part, the same
 * part of other engines, and earlier readings of the same spot. A doubt is no verdict: it asks to look again.
 *
 * Repeats: ISO 5725-6:1994, 4.1.4, critical range CR = f(n)·s, with f(n) the 95 % quantile of the range of n values.
 * The other margins are workshop convention, no published source: they catch a thimble read half a turn (0.5 mm) off,
 * a figure swapped or left out, and let worn and reground parts pass.
 *
 * All lengths in grains (0.001 µm).
 */
import { GRAINS_PER_MM, type Grain, roundToWhole } from './grain.js';
import { rangeQuantile } from './studentized-range.js';

export interface Range {
  readonly low: Grain;
  readonly high: Grain;
}

/** What is known of a spot before it is read. */
export interface Expectation {
  readonly kind: 'diameter' | 'wall' | 'bolt';
  /** A part may be worn beyond them, though not by much. */
  readonly limits: Range | undefined;
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

const MARGIN_MM = {
  limits: { least: 0.05, greatest: 0.25 },
  sisters: { diameter: 0.05, wall: 0.02, bolt: 0.5 },
  peers: 0.4,
} as const;

const grains = (mm: number): Grain => roundToWhole(mm * GRAINS_PER_MM);

export function rangeOfValues(values: readonly Grain[]): Range | undefined {
  return values.length === 0 ? undefined : { low: Math.min(...values), high: Math.max(...values) };
}

/** How far a value lies outside a range; 0 inside. */
function beyond({ low, high }: Range, value: Grain): Grain {
  return Math.max(low - value, value - high, 0);
}

/** What speaks against a reading; empty where nothing does. */
export function doubtsOf(value: Grain, { kind, limits, sisters, peers }: Expectation): Doubt[] {
  const doubts: Doubt[] = [];
  if (limits) {
    const { least, greatest } = MARGIN_MM.limits;
    const margin = Math.min(Math.max(limits.high - limits.low, grains(least)), grains(greatest));
    const excess = beyond(limits, value);
    if (excess > margin) doubts.push({ kind: 'limits', range: limits, beyond: excess });
  }
  const own = rangeOfValues(sisters);
  if (own) {
    const excess = beyond(own, value);
    if (excess > grains(MARGIN_MM.sisters[kind]))
      doubts.push({ kind: 'sisters', range: own, beyond: excess });
  }
  const others = rangeOfValues(peers);
  // Other engines may be reground: they count only where nothing nearer is known.
  if (others && !limits && !own) {
    const excess = beyond(others, value);
    if (excess > grains(MARGIN_MM.peers)) doubts.push({ kind: 'peers', range: others, beyond: excess });
  }
  return doubts;
}

/**
 * Slips of unit and decimal point: the factors by which a doubtful value would be one that nothing speaks against.
 * @returns undefined where no such factor helps
 */
export function slipOf(
  value: Grain,
  expectation: Expectation,
): 'inches' | 'millimetres' | 'decimal point' | undefined {
  const isUsual = (factor: number) => doubtsOf(roundToWhole(value * factor), expectation).length === 0;
  if (isUsual(25.4)) return 'inches';
  if (isUsual(1 / 25.4)) return 'millimetres';
  return [0.001, 0.01, 0.1, 10, 100, 1000].some(isUsual) ? 'decimal point' : undefined;
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
