/** How a gauge set-up keeps what the verdicts promise, counted over simulated fits. */
import type { FitResult } from '../../src/engine/assess/fit.js';
import { chanceInRange } from '../../src/maths/conformity.js';
import { GRAINS_PER_MM } from '../../src/maths/grain.js';
import { drawsOf } from './draws.js';
import { expectedExcess } from './extremes.js';
import { judge, MAX, MIN, readFit } from './judge.js';
import type { GaugeSpec, SetUp } from './set-ups.js';
import { drawFit, type Target, type TrueFit, Workshop } from './workshop.js';

/** Counts over fits whose true place is spread evenly over the range and well beyond it. */
export interface EvenCounts {
  fits: number;
  inRange: number;
  tight: number;
  loose: number;
  undecided: number;
  /** Called so, and not so in truth. */
  falseInRange: number;
  falseTight: number;
  falseLoose: number;
  /** True misses by less than the guard of the fit, and how many of them were called `in range`. */
  nearMisses: number;
  falseNear: number;
  /** By Chance in range, tenth by tenth: fits, and how many of them are truly in range. */
  readonly deciles: Tenth[];
  /** The same if the chance were taken from extremes without their expected excess. */
  readonly correctedDeciles: Tenth[];
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
  /** The same if the guard inside a limit were held against its outside too. */
  refusedByInside: number;
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

/** In a micrometre. */
const GRAINS = GRAINS_PER_MM / 1000;

/** Each book is a workshop of its own, with new errors of its gauges. */
const FITS_PER_WORKSHOP = 2;
/** How far beyond the range fits are drawn, micrometres. */
const BEYOND = 30;

/** @param stated the gauges as the workbook states them, where that is not the truth */
export function promisesOf(
  setUp: SetUp,
  seed: number,
  sizes: Sizes,
  stated: readonly GaugeSpec[] = setUp.gauges,
): Promises {
  const draws = drawsOf(seed);
  const even: EvenCounts = {
    ...{ fits: 0, inRange: 0, tight: 0, loose: 0, undecided: 0, falseInRange: 0, falseTight: 0 },
    ...{ falseLoose: 0, nearMisses: 0, falseNear: 0 },
    deciles: tenths(),
    correctedDeciles: tenths(),
  };
  const onMin: LimitCounts = { fits: 0, inRange: 0, refused: 0, refusedByInside: 0 };
  const onMax: LimitCounts = { fits: 0, inRange: 0, refused: 0, refusedByInside: 0 };
  const run = (fits: number, target: () => Target, count: (fit: TrueFit, result: FitResult) => void) => {
    for (let done = 0; done < fits; done += FITS_PER_WORKSHOP) {
      const workshop = new Workshop(setUp, draws);
      const truths = Array.from({ length: FITS_PER_WORKSHOP }, () => drawFit(draws, setUp, target()));
      const results = judge(
        setUp,
        truths.map((fit) => readFit(workshop, fit)),
        stated,
      );
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

function tenths(): Tenth[] {
  return Array.from({ length: 10 }, () => ({ fits: 0, inside: 0, chances: 0 }));
}

function countLimit(counts: LimitCounts, result: FitResult, refusal: 'tight' | 'loose'): void {
  const { status, clearance, guards } = result;
  counts.fits += 1;
  if (status === 'in range') counts.inRange += 1;
  if (status === refusal) counts.refused += 1;
  const isRefused =
    refusal === 'tight'
      ? clearance!.tightest + guards.inside < MIN * GRAINS
      : clearance!.loosest - guards.inside > MAX * GRAINS;
  if (isRefused) counts.refusedByInside += 1;
}

function countEven(counts: EvenCounts, truth: TrueFit, result: FitResult): void {
  const { status, chance, guards, clearance, variance } = result;
  const guard = guards.inside;
  const isTight = truth.tightest < MIN;
  const isLoose = truth.loosest > MAX;
  const isInside = !isTight && !isLoose;
  const miss = Math.max(MIN - truth.tightest, truth.loosest - MAX);
  counts.fits += 1;
  if (status === 'in range') counts.inRange += 1;
  else if (status === 'tight') counts.tight += 1;
  else if (status === 'loose') counts.loose += 1;
  else if (status === 'undecided') counts.undecided += 1;
  else throw new Error(`a simulated fit is ${status}`);
  if (status === 'in range' && !isInside) counts.falseInRange += 1;
  if (status === 'tight' && !isTight) counts.falseTight += 1;
  if (status === 'loose' && !isLoose) counts.falseLoose += 1;
  if (!isInside && miss < guard / GRAINS) {
    counts.nearMisses += 1;
    if (status === 'in range') counts.falseNear += 1;
  }
  const excess = expectedExcess(result);
  const corrected = chanceInRange(
    { tightest: clearance!.tightest + excess, loosest: clearance!.loosest - excess },
    { min: MIN * GRAINS, max: MAX * GRAINS },
    Math.sqrt(variance),
  );
  countTenth(counts.deciles, chance!, isInside);
  countTenth(counts.correctedDeciles, corrected, isInside);
}

function countTenth(tenths: readonly Tenth[], chance: number, isInside: boolean): void {
  const tenth = tenths[Math.min(9, Math.floor(chance * 10))]!;
  tenth.fits += 1;
  tenth.chances += chance;
  if (isInside) tenth.inside += 1;
}
