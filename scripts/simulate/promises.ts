/** How a gauge set-up keeps what the verdicts promise, counted over simulated fits. */
import { fitVerdict } from '../../src/maths/conformity.js';
import { evenGuards } from '../../src/maths/guards.js';
import { type Draws, drawsOf } from './draws.js';
import { MAX, MIN, readFit, type ShiftOf, stepOf } from './judge.js';
import { CONFIDENCE, type Judgement, judgeByMaths, limitsAt } from './judge-by-maths.js';
import { GRAINS_PER_MICROMETRE } from './measured-part.js';
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
  /** Sums of the guards, micrometres. */
  inside: number;
  outside: number;
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

/** Fits on either limit. */
export interface LimitPair {
  readonly onMin: LimitCounts;
  readonly onMax: LimitCounts;
}

/** The limits lie anywhere between two steps of the gauges, in equal shares. */
export interface Promises extends LimitPair {
  readonly setUp: SetUp;
  readonly even: EvenCounts;
  /** The limits are whole steps of the gauges, as whole micrometres are. */
  readonly onStep: LimitPair;
}

export interface Sizes {
  /** Fits spread evenly. */
  readonly even: number;
  /** Fits on each limit. */
  readonly limit: number;
  /** Fits on each limit that is a whole step; none where left out. */
  readonly onStep?: number;
}

/** Places of a limit between two steps of the gauges. */
const PLACES = 20;
/** How far beyond the range fits are drawn, micrometres. */
const BEYOND = 30;

export interface Judged {
  readonly truth: TrueFit;
  readonly result: Judgement;
  /** By how much its limits lie above MIN and MAX, micrometres. */
  readonly shift: number;
}

/**
 * Fits judged one by one: each is measured in a workshop of its own, since fits by the same gauges err together and
 * would count for fewer than they are.
 * @param target where the true fit lies, with limits at MIN and MAX
 */
export function judgeFits(
  draws: Draws,
  setUp: SetUp,
  fits: number,
  target: () => Target,
  shiftOf: ShiftOf,
  stated: readonly GaugeSpec[],
  count: (judged: Judged) => void,
): void {
  for (let place = 0; place < fits; place++) {
    const shift = shiftOf(place);
    const truth = drawFit(draws, setUp, shifted(target(), shift));
    const readings = readFit(new Workshop(setUp, draws), truth);
    count({ truth, result: judgeByMaths(setUp, readings, stated, shift), shift });
  }
}

function shifted(target: Target, shift: number): Target {
  return 'tightest' in target ? { tightest: target.tightest + shift } : { loosest: target.loosest + shift };
}

const noCounts = (): LimitCounts => ({ fits: 0, inRange: 0, refused: 0 });

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
    ...{ inside: 0, outside: 0, falseInRange: 0, falseTight: 0, falseLoose: 0 },
    deciles: Array.from({ length: 10 }, () => ({ fits: 0, inside: 0, chances: 0 })),
  };
  const anywhere: ShiftOf = (place) => ((place % PLACES) * stepOf(setUp)) / PLACES;
  const run = (fits: number, target: () => Target, shiftOf: ShiftOf, count: (judged: Judged) => void) =>
    judgeFits(draws, setUp, fits, target, shiftOf, stated, count);
  const onLimits = (fits: number, shiftOf: ShiftOf): LimitPair => {
    const [onMin, onMax] = [noCounts(), noCounts()];
    run(
      fits,
      () => ({ tightest: MIN }),
      shiftOf,
      ({ result }) => countLimit(onMin, result, 'tight'),
    );
    run(
      fits,
      () => ({ loosest: MAX }),
      shiftOf,
      ({ result }) => countLimit(onMax, result, 'loose'),
    );
    return { onMin, onMax };
  };
  run(
    sizes.even,
    () => ({ tightest: MIN - BEYOND + draws.even() * (MAX - MIN + 2 * BEYOND) }),
    anywhere,
    (judged) => countEven(even, judged),
  );
  return {
    setUp,
    even,
    ...onLimits(sizes.limit, anywhere),
    onStep: onLimits(sizes.onStep ?? 0, () => 0),
  };
}

/** Counts a fit on a limit. */
export function countLimit(counts: LimitCounts, { status }: Judgement, refusal: 'tight' | 'loose'): void {
  counts.fits += 1;
  if (status === 'in range') counts.inRange += 1;
  if (status === refusal) counts.refused += 1;
}

function countEven(counts: EvenCounts, { truth, result, shift }: Judged): void {
  const { status, chance, clearance, variance, guards } = result;
  const isTight = truth.tightest < MIN + shift;
  const isLoose = truth.loosest > MAX + shift;
  const isInside = !isTight && !isLoose;
  counts.fits += 1;
  if (status === 'in range') counts.inRange += 1;
  else if (status === 'tight') counts.tight += 1;
  else if (status === 'loose') counts.loose += 1;
  else if (status === 'undecided') counts.undecided += 1;
  else throw new Error(`a simulated fit is ${status}`);
  counts.inside += guards.inside / GRAINS_PER_MICROMETRE;
  counts.outside += guards.outside / GRAINS_PER_MICROMETRE;
  const byOneGuard = fitVerdict(clearance, limitsAt(shift), evenGuards(CONFIDENCE, Math.sqrt(variance)));
  if (byOneGuard === 'undecided') counts.undecidedByOneGuard += 1;
  if (status === 'in range' && !isInside) counts.falseInRange += 1;
  if (status === 'tight' && !isTight) counts.falseTight += 1;
  if (status === 'loose' && !isLoose) counts.falseLoose += 1;
  const tenth = counts.deciles[Math.min(9, Math.floor(chance * 10))]!;
  tenth.fits += 1;
  tenth.chances += chance;
  if (isInside) tenth.inside += 1;
}
