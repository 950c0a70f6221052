/** With which gauge a fit would be decided that more readings with the gauges it has would not decide. */
import { guardOf } from '../../maths/conformity.js';
import {
  chanceFitDecided,
  guardThatDecides,
  maxErrorFor,
  readingsNeeded,
  spotVarianceWith,
} from '../../maths/measuring-plan.js';
import { normalQuantile } from '../../maths/normal.js';
import { type MeasuredPart, type SystematicSource, varianceOf } from '../../maths/uncertainty.js';
import { nameKey } from '../book/names.js';
import type { FitSlot } from '../input-sheets/fits.js';
import type { Context, GaugeUse } from './context.js';
import { type FitResult, measuredTerms } from './fit.js';
import { spotsOf } from './measuring-plan.js';
import type { PartResult } from './part-result.js';

/** A gauge of the book that would decide a fit, on one of its parts. */
export interface GaugePlan {
  readonly part: PartResult;
  readonly gauge: string;
  /** Readings that it takes: every spot once. */
  readonly readings: number;
  readonly chance: number;
}

/** Gauges that the book uses for each kind of part: nobody measures a bore with a micrometer for journals. */
export type GaugesInUse = ReadonlyMap<string, readonly string[]>;

export function gaugesInUse(parts: readonly PartResult[]): GaugesInUse {
  const found = new Map<string, Map<string, string>>();
  for (const { row, gauge } of parts) {
    if (!gauge) continue;
    const own = found.get(row.sheet) ?? new Map<string, string>();
    own.set(nameKey(row.gauge!), gauge.rows[0]!.gauge);
    found.set(row.sheet, own);
  }
  return new Map([...found].map(([sheet, names]) => [sheet, [...names.values()]]));
}

export function bestGauge(fit: FitResult, context: Context, inUse: GaugesInUse): GaugePlan | undefined {
  let best: GaugePlan | undefined;
  for (const { slot } of fit.kind.terms) {
    const part = fit.parts[slot]!;
    for (const name of inUse.get(part.row.sheet) ?? []) {
      const lookup = context.gaugeOf(name);
      if ('bad' in lookup || !lookup.gauge || nameKey(name) === nameKey(part.row.gauge ?? '')) continue;
      const chance = chanceWith(fit, slot, lookup.gauge, context);
      const plan = { part, gauge: name, readings: readingsNeeded(onceEach(part), 1), chance };
      if (!best || plan.chance > best.chance) best = plan;
    }
  }
  return best;
}

const onceEach = (part: PartResult) => part.spots.map(({ value }) => ({ repeats: 0, value }));

function chanceWith(fit: FitResult, slot: FitSlot, gauge: GaugeUse, context: Context): number {
  const part = fit.parts[slot]!;
  const before = part.measured!;
  const spots = spotsOf(part).map(({ value }) => ({ repeats: 1, value }));
  const after: MeasuredPart = {
    ...before,
    systematic: gauge.systematic,
    spotVariance: spotVarianceWith(spots, gauge.random, part.expansion ?? 0, 1),
  };
  const at = fit.kind.terms.findIndex((term) => term.slot === slot);
  const variance = varianceOf(measuredTerms(fit)!.with(at, { sign: fit.kind.terms[at]!.sign, part: after }));
  // What differs between both readings: their scatter, and the gauges that stand behind one of them only.
  const apart = before.spotVariance + after.spotVariance + differing(before.systematic, after.systematic);
  const { clearanceMin, clearanceMax, serviceLimit } = fit.limits!;
  return chanceFitDecided(
    fit.clearance!,
    { min: clearanceMin!, max: clearanceMax!, serviceLimit },
    guardOf(context.book.setup.confidence, Math.sqrt(variance)),
    Math.sqrt(apart),
  );
}

function differing(before: readonly SystematicSource[], after: readonly SystematicSource[]): number {
  const without = (these: readonly SystematicSource[], others: readonly SystematicSource[]) =>
    these.filter(({ gauge }) => !others.some((other) => other.gauge === gauge));
  return [...without(before, after), ...without(after, before)].reduce(
    (sum, { maxError }) => sum + maxError ** 2 / 3,
    0,
  );
}

/** The gauge behind a fit that counts most, and the max error with which it would decide the fit as it was read. */
export interface NeededGauge {
  readonly part: PartResult;
  readonly gauge: string;
  /** Grains; undefined where no max error of this gauge alone is small enough. */
  readonly maxError: number | undefined;
}

export function neededGauge(fit: FitResult, context: Context): NeededGauge | undefined {
  const sources = new Map<
    string,
    { part: PartResult; gauge: string; maxError: number; sensitivity: number }
  >();
  for (const { slot, sign } of fit.kind.terms) {
    const part = fit.parts[slot]!;
    for (const row of part.gauge?.rows ?? []) {
      const known = sources.get(nameKey(row.gauge));
      const sensitivity = (known?.sensitivity ?? 0) + sign;
      sources.set(nameKey(row.gauge), {
        part: known?.part ?? part,
        gauge: row.gauge,
        maxError: row.maxError!,
        sensitivity,
      });
    }
  }
  const weight = ({ maxError, sensitivity }: { maxError: number; sensitivity: number }) =>
    Math.abs(maxError * sensitivity);
  const [most] = [...sources.values()].sort((a, b) => weight(b) - weight(a));
  if (!most || weight(most) === 0) return undefined;
  const { clearanceMin, clearanceMax, serviceLimit } = fit.limits!;
  const guard = guardThatDecides(fit.clearance!, { min: clearanceMin!, max: clearanceMax!, serviceLimit });
  const z = normalQuantile(context.book.setup.confidence);
  const wanted = guard < 0 ? -1 : (guard / z) ** 2;
  const { part, gauge, maxError, sensitivity } = most;
  return { part, gauge, maxError: maxErrorFor(wanted, fit.variance, maxError, sensitivity) };
}
