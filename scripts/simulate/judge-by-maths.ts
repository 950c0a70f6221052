/**
 * The verdict of one simulated fit by the program's own maths alone, without a workbook around it: some ten times
 * faster, and held against the verdicts of workbooks by tests/simulation/judge-by-maths.test.ts.
 */
import { bearingTerms, type Clearance, fitOf } from '../../src/maths/clearance.js';
import { chanceInRange, fitVerdict, type ProvenFitVerdict } from '../../src/maths/conformity.js';
import { exact } from '../../src/maths/decimal.js';
import { BUILT_IN_EXPANSION, sizeAt20C } from '../../src/maths/expansion.js';
import { meanGrain } from '../../src/maths/grain.js';
import { fitGuards, type Guards } from '../../src/maths/guards.js';
import { type MeasuredPart, totalVariance, varianceOf } from '../../src/maths/uncertainty.js';
import { type FitReadings, MAX, MIN, type Readings } from './judge.js';
import { expansionOf, GRAINS_PER_MICROMETRE, measuredPart } from './measured-part.js';
import type { GaugeSpec, SetUp, Slot } from './set-ups.js';

export interface Judgement {
  readonly status: ProvenFitVerdict;
  readonly chance: number;
  readonly clearance: Clearance;
  /** u_c², grains². */
  readonly variance: number;
  readonly guards: Guards;
}

/** What Confidence is where Setup says nothing. */
export const CONFIDENCE = 0.95;

/** A part as it is read: `A 0` and `A 0 #2` are one spot. */
function partOf(setUp: SetUp, slot: Slot, readings: Readings, stated: readonly GaugeSpec[]): MeasuredPart {
  const [celsius, part, gauge] = [
    exact(setUp.celsius[slot]),
    expansionOf(setUp, slot),
    BUILT_IN_EXPANSION.steel!,
  ];
  const spots = new Map<string, number[]>();
  for (const [header, millimetres] of Object.entries(readings)) {
    const spot = header.split(' #')[0]!;
    const values = spots.get(spot) ?? [];
    values.push(sizeAt20C(exact(millimetres), celsius, part, gauge));
    spots.set(spot, values);
  }
  const values = [...spots.values()].map(meanGrain);
  const [size, largest, smallest] = [meanGrain(values), Math.max(...values), Math.min(...values)];
  return measuredPart(setUp, slot, { size, largest, smallest, spots: spots.size }, stated);
}

/**
 * @param stated the gauges as the workbook states them
 * @param shift by how much the limits lie above MIN and MAX, micrometres
 */
export function judgeByMaths(
  setUp: SetUp,
  readings: FitReadings,
  stated: readonly GaugeSpec[] = setUp.gauges,
  shift = 0,
): Judgement {
  const part = (slot: Slot) => partOf(setUp, slot, readings[slot], stated);
  const terms = bearingTerms({
    bore: part('bore'),
    upper: part('upper'),
    lower: part('lower'),
    journal: part('journal'),
  });
  const [clearance, uncertainty] = [fitOf(terms), varianceOf(terms)];
  const [variance, guards] = [totalVariance(uncertainty), fitGuards(CONFIDENCE, uncertainty)];
  const limits = limitsAt(shift);
  const chance = chanceInRange(clearance, limits, Math.sqrt(variance));
  return { status: fitVerdict(clearance, limits, guards), chance, clearance, variance, guards };
}

/** The limits of the clearance, grains. */
export function limitsAt(shift: number): { readonly min: number; readonly max: number } {
  const grains = (micrometres: number) => Math.round((micrometres + shift) * GRAINS_PER_MICROMETRE);
  return { min: grains(MIN), max: grains(MAX) };
}
