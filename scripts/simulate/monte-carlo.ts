/**
 * The propagated uncertainty of the core against draws from the distributions of its inputs, by the method of
 * JCGM 101:2008 (clause 7, propagation of distributions; clause 8, comparison with the law of propagation).
 *
 * In grains, as the core computes.
 */
import { REFERENCE_CELSIUS } from '../../src/maths/expansion.js';
import { formOf, type Spot } from '../../src/maths/form.js';
import {
  clearanceVariance,
  type MeasuredPart,
  sizeVariance,
  TEMPERATURE_DIFFERENCE_KELVIN,
  totalVariance,
} from '../../src/maths/uncertainty.js';
import type { Draws } from './draws.js';
import { chainOf, expansionErrorOf, expansionOf, measuredPart, randomOf } from './measured-part.js';
import { type SetUp, SLOTS, type Slot } from './set-ups.js';

const NOMINAL: Readonly<Record<Slot, number>> = {
  journal: 50_000_000,
  bore: 53_040_000,
  upper: 1_500_000,
  lower: 1_500_000,
};
const SIGN: Readonly<Record<Slot, 1 | -1>> = { bore: 1, upper: -1, lower: -1, journal: -1 };

/** What the draws say of one quantity, beside what the core says. */
export interface Comparison {
  readonly quantity: string;
  readonly case: string;
  /** Standard uncertainty by the core. */
  readonly propagated: number;
  /** Mean and standard deviation of the error, by the draws. */
  readonly bias: number;
  readonly deviation: number;
  /** Share of the errors within ± 1.96 times the propagated uncertainty; 0.95 where the model holds. */
  readonly covered: number;
  /** How far the ends of the 95 % interval of the draws lie from those of the propagated one. */
  readonly endsOff: number;
  /** How far they may, at two digits of the uncertainty (7.9.2 of JCGM 101). */
  readonly tolerance: number;
}

/** Half a unit of the last of two significant digits. */
function toleranceOf(uncertainty: number): number {
  return 0.5 * 10 ** (Math.floor(Math.log10(uncertainty)) - 1);
}

/** The 97.5 % point of the standard normal distribution. */
const HALF_WIDTH = 1.959964;

/** Errors of a quantity, gathered one by one. */
function compare(
  quantity: string,
  words: string,
  propagated: number,
  draws: number,
  error: () => number,
): Comparison {
  const errors = Float64Array.from({ length: draws }, error);
  let [sum, squares, within] = [0, 0, 0];
  for (const value of errors) {
    sum += value;
    squares += value * value;
    if (Math.abs(value) <= HALF_WIDTH * propagated) within += 1;
  }
  const bias = sum / draws;
  errors.sort();
  const [low, high] = [0.025, 0.975].map((share) => errors[Math.floor(share * (draws - 1))]!);
  return {
    quantity,
    case: words,
    propagated,
    bias,
    deviation: Math.sqrt((squares - sum * bias) / (draws - 1)),
    covered: within / draws,
    endsOff: Math.max(Math.abs(low! + HALF_WIDTH * propagated), Math.abs(high! - HALF_WIDTH * propagated)),
    tolerance: toleranceOf(propagated),
  };
}

/** The random error of one spot. */
function spotError(draws: Draws, setUp: SetUp, slot: Slot): number {
  const { resolution, repeatability } = randomOf(setUp, slot);
  let scatter = 0;
  // Each reading is rounded to the resolution; the core counts that once, since it need not average out.
  for (let repeat = 0; repeat < setUp.repeats; repeat++) scatter += draws.normal(repeatability);
  return scatter / setUp.repeats + draws.rectangular(resolution / 2);
}

/** The error of a whole part that is warmer than its gauge, or colder. */
function temperatureError(draws: Draws, setUp: SetUp, slot: Slot): number {
  const kelvin = draws.normal(TEMPERATURE_DIFFERENCE_KELVIN);
  return kelvin * expansionOf(setUp, slot) * 1e-6 * NOMINAL[slot];
}

/** What the parts of one fit share, drawn once: errors of gauges, and of expansions. */
function sharedErrors(draws: Draws, setUp: SetUp) {
  const gauges = new Map<string, number>();
  const expansions = new Map<string, number>();
  const drawn = (known: Map<string, number>, key: string, half: number) => {
    const error = known.get(key) ?? draws.rectangular(half);
    known.set(key, error);
    return error;
  };
  return (slot: Slot) => {
    const group = slot === 'journal' || slot === 'bore' ? slot : 'wall';
    const ofGauges = chainOf(setUp, slot).reduce(
      (sum, { gauge, maxError, isConstant }) =>
        sum + drawn(gauges, isConstant ? gauge : `${gauge}, ${group}`, maxError),
      0,
    );
    const kelvin = setUp.celsius[slot] - REFERENCE_CELSIUS;
    const growth =
      drawn(expansions, slot === 'bore' ? 'bore' : 'others', expansionErrorOf(setUp, slot)) -
      drawn(expansions, `gauge ${setUp.uses[slot]}`, setUp.expansionError.steel);
    return ofGauges + growth * 1e-6 * NOMINAL[slot] * kelvin;
  };
}

function uncertaintyOf(setUp: SetUp, slot: Slot, spots = 1): MeasuredPart {
  const [size, largest, smallest] = [NOMINAL[slot], NOMINAL[slot], NOMINAL[slot]];
  return measuredPart(setUp, slot, { size, largest, smallest, spots });
}

export function clearanceComparison(setUp: SetUp, draws: Draws, count: number): Comparison {
  const part = (slot: Slot) => uncertaintyOf(setUp, slot);
  const parts = {
    bore: part('bore'),
    upper: part('upper'),
    lower: part('lower'),
    journal: part('journal'),
  };
  return compare('clearance', setUp.name, Math.sqrt(totalVariance(clearanceVariance(parts))), count, () => {
    const shared = sharedErrors(draws, setUp);
    return SLOTS.reduce((sum, slot) => {
      const own = temperatureError(draws, setUp, slot) + spotError(draws, setUp, slot);
      return sum + SIGN[slot] * (shared(slot) + own);
    }, 0);
  });
}

/** The size of a journal of four spots. */
export function sizeComparison(setUp: SetUp, draws: Draws, count: number): Comparison {
  const u = Math.sqrt(sizeVariance(uncertaintyOf(setUp, 'journal', 4)));
  return compare('size', `${setUp.name}, 4 spots`, u, count, () => {
    let sum = 0;
    for (let spot = 0; spot < 4; spot++) sum += spotError(draws, setUp, 'journal');
    return sharedErrors(draws, setUp)('journal') + temperatureError(draws, setUp, 'journal') + sum / 4;
  });
}

/**
 * Out of round or taper of a journal: the true form is so many times the standard uncertainty √2·u_i of a
 * difference of two spots. What the spots share cancels.
 */
export function formComparison(
  quantity: 'out of round' | 'taper',
  setUp: SetUp,
  draws: Draws,
  count: number,
  { stations, angles, trueForm }: { stations: number; angles: number; trueForm: number },
): Comparison {
  const propagated = Math.SQRT2 * Math.sqrt(uncertaintyOf(setUp, 'journal').readVariance);
  const form = trueForm * propagated;
  // One spot stands out by the whole of the form; the other spots are alike.
  const truth = (station: number, angle: number) =>
    NOMINAL.journal + (station === 0 && angle === 0 ? form : 0);
  const words = `${stations} stations × ${angles} angles, true ${trueForm} u`;
  return compare(quantity, words, propagated, count, () => {
    const spots: Spot[] = [];
    for (let station = 0; station < stations; station++) {
      for (let angle = 0; angle < angles; angle++) {
        const value = truth(station, angle) + spotError(draws, setUp, 'journal');
        spots.push({ station: String(station), angle, readings: [value] });
      }
    }
    const { taper, outOfRound } = formOf(spots);
    return (quantity === 'taper' ? taper! : outOfRound!) - form;
  });
}

/** The tightest clearance of truly round and parallel parts with so many spots each. */
export function tightestComparison(
  setUp: SetUp,
  draws: Draws,
  count: number,
  spots: Readonly<Record<Slot, number>>,
): Comparison {
  const { propagated } = clearanceComparison(setUp, draws, 2);
  const words = `${setUp.name}, ${SLOTS.map((slot) => `${slot} ${spots[slot]}`).join(', ')} spots`;
  return compare('tightest', words, propagated, count, () => {
    const shared = sharedErrors(draws, setUp);
    return SLOTS.reduce((sum, slot) => {
      const values = Array.from({ length: spots[slot] }, () => spotError(draws, setUp, slot));
      const extreme = slot === 'bore' ? Math.min(...values) : Math.max(...values);
      return sum + SIGN[slot] * (shared(slot) + temperatureError(draws, setUp, slot) + extreme);
    }, 0);
  });
}
