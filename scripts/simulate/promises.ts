/** How a gauge set-up keeps what the verdicts promise, counted over simulated fits. */
import type { FitResult } from '../../src/engine/assess/fit.js';
import { fitVerdict } from '../../src/maths/conformity.js';
import { GRAINS_PER_MM } from '../../src/maths/grain.js';
import { evenGuards } from '../../src/maths/guards.js';
import { drawsOf } from './draws.js';
import { type FitReadings, judge, MAX, MIN, readFit } from './judge.js';
import type { GaugeSpec, SetUp } from './set-ups.js';
import { drawFit, type Target, type TrueFit, Workshop } from './workshop.js';

/** Counts over fits whose true place is spread evenly over the range and well beyond it. */
export interface EvenCounts {
  fits: number;
  inRange: number;
  tight: number;
  loose: number;
  undecided: number;
  /** Undecided if what breaks a limit had the guard of what keeps it. */
  undecidedByOneGuard: number;
  /** Called so, and not so in truth. */
  falseInRange: number;
  falseTight: number;
  falseLoose: number;
  /** By Chance in range, tenth by tenth: fits, and how many of them are truly in range. */
  readonly deciles: Tenth[];
}

export interface Tenth {
  fits: number;
  inside: number;
  /** Sum of the chances that they were given. */
  chances: number;
}

/** Counts over fits whose true tightest lies on Clearance min, or whose true loosest lies on Clearance max. */
export interface LimitCounts {
  fits: number;
  inRange: number;
  /** `tight` on Clearance min, `loose` on Clearance max. */
  refused: number;
}

export interface Promises {
  readonly setUp: SetUp;
  readonly even: EvenCounts;
  readonly onMin: LimitCounts;
  readonly onMax: LimitCounts;
}

export interface Sizes {
  /** Fits spread evenly. */
  readonly even: number;
  /** Fits on each limit. */
  readonly limit: number;
}

const GRAINS_PER_MICROMETRE = GRAINS_PER_MM / 1000;
const RANGE = { min: MIN * GRAINS_PER_MICROMETRE, max: MAX * GRAINS_PER_MICROMETRE };

/** Each workshop has its own errors of its gauges. */
const FITS_PER_WORKSHOP = 2;
const FITS_PER_BOOK = 200;
/** How far beyond the range fits are drawn, micrometres. */
const BEYOND = 30;
/** What Confidence is where Setup says nothing. */
const CONFIDENCE = 0.95;

/** @param stated the gauges as the workbook states them, where that is not the truth */
export function promisesOf(
  setUp: SetUp,
  seed: number,
  sizes: Sizes,
  stated: readonly GaugeSpec[] = setUp.gauges,
): Promises {
  const draws = drawsOf(seed);
  const even: EvenCounts = {
    ...{ fits: 0, inRange: 0, tight: 0, loose: 0, undecided: 0, undecidedByOneGuard: 0 },
    ...{ falseInRange: 0, falseTight: 0, falseLoose: 0 },
    deciles: Array.from({ length: 10 }, () => ({ fits: 0, inside: 0, chances: 0 })),
  };
  const onMin: LimitCounts = { fits: 0, inRange: 0, refused: 0 };
  const onMax: LimitCounts = { fits: 0, inRange: 0, refused: 0 };
  const run = (fits: number, target: () => Target, count: (fit: TrueFit, result: FitResult) => void) => {
    for (let done = 0; done < fits; done += FITS_PER_BOOK) {
      const truths: TrueFit[] = [];
      const readings: FitReadings[] = [];
      while (truths.length < Math.min(FITS_PER_BOOK, fits - done)) {
        const workshop = new Workshop(setUp, draws);
        for (let own = 0; own < FITS_PER_WORKSHOP; own++) {
          const truth = drawFit(draws, setUp, target());
          truths.push(truth);
          readings.push(readFit(workshop, truth));
        }
      }
      const results = judge(setUp, readings, stated, (place) => Math.floor(place / FITS_PER_WORKSHOP));
      for (const [place, result] of results.entries()) count(truths[place]!, result);
    }
  };
  run(
    sizes.even,
    () => ({ tightest: MIN - BEYOND + draws.even() * (MAX - MIN + 2 * BEYOND) }),
    (fit, result) => countEven(even, fit, result),
  );
  run(
    sizes.limit,
    () => ({ tightest: MIN }),
    (_, result) => countLimit(onMin, result, 'tight'),
  );
  run(
    sizes.limit,
    () => ({ loosest: MAX }),
    (_, result) => countLimit(onMax, result, 'loose'),
  );
  return { setUp, even, onMin, onMax };
}

function countLimit(counts: LimitCounts, { status }: FitResult, refusal: 'tight' | 'loose'): void {
  counts.fits += 1;
  if (status === 'in range') counts.inRange += 1;
  if (status === refusal) counts.refused += 1;
}

function countEven(counts: EvenCounts, truth: TrueFit, result: FitResult): void {
  const { status, chance, clearance, variance } = result;
  const isTight = truth.tightest < MIN;
  const isLoose = truth.loosest > MAX;
  const isInside = !isTight && !isLoose;
  counts.fits += 1;
  if (status === 'in range') counts.inRange += 1;
  else if (status === 'tight') counts.tight += 1;
  else if (status === 'loose') counts.loose += 1;
  else if (status === 'undecided') counts.undecided += 1;
  else throw new Error(`a simulated fit is ${status}`);
  const byOneGuard = fitVerdict(
    clearance!,
    { ...RANGE, serviceLimit: undefined },
    evenGuards(CONFIDENCE, Math.sqrt(variance)),
  );
  if (byOneGuard === 'undecided') counts.undecidedByOneGuard += 1;
  if (status === 'in range' && !isInside) counts.falseInRange += 1;
  if (status === 'tight' && !isTight) counts.falseTight += 1;
  if (status === 'loose' && !isLoose) counts.falseLoose += 1;
  const tenth = counts.deciles[Math.min(9, Math.floor(chance! * 10))]!;
  tenth.fits += 1;
  tenth.chances += chance!;
  if (isInside) tenth.inside += 1;
}
