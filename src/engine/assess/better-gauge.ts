/** With which gauge a fit would be decided that more readings with the gauges it has would not decide. */
import type { SignedTerm } from '../../maths/clearance.js';
import { fitVerdict } from '../../maths/conformity.js';
import { toNumber } from '../../maths/decimal.js';
import { REFERENCE_CELSIUS } from '../../maths/expansion.js';
import { fitGuards } from '../../maths/guards.js';
import { chanceFitDecided, FINEST_GAUGE, maxErrorFor, readingsNeeded } from '../../maths/measuring-plan.js';
import type { SystematicSource } from '../../maths/shared-gauges.js';
import {
  expansionContribution,
  type FitVariance,
  type MeasuredPart,
  readVariance,
  varianceByError,
  varianceOf,
} from '../../maths/uncertainty.js';
import { nameKey } from '../book/names.js';
import type { TermSlot } from '../kinds/kind-of-fit.js';
import type { Context, GaugeUse } from './context.js';
import { type FitResult, measuredTerms } from './fit.js';
import { rangeOfLimits } from './fit-verdicts.js';
import { repeatsOfSpots } from './measuring-plan.js';
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

/** The best of the book's gauges that reach the part, for one part of a fit. */
export function bestGauge(fit: FitResult, context: Context, inUse: GaugesInUse): GaugePlan | undefined {
  let best: GaugePlan | undefined;
  // The error of a dial cancels in the difference of its readings.
  if (fit.kind.strategy === 'dial') return undefined;
  for (const { slot } of fit.kind.terms) {
    const part = fit.parts[slot]!;
    for (const name of inUse.get(part.row.sheet) ?? []) {
      const lookup = context.gaugeOf(name);
      if ('bad' in lookup || !lookup.gauge || nameKey(name) === nameKey(part.row.gauge ?? '')) continue;
      if (!context.reaches(lookup.gauge, part.form!.size)) continue;
      const chance = chanceWith(fit, slot, lookup.gauge, context);
      const plan = { part, gauge: name, readings: readingsNeeded(repeatsOfSpots(part).fill(0), 1), chance };
      if (!best || plan.chance > best.chance) best = plan;
    }
  }
  return best;
}

function chanceWith(fit: FitResult, slot: TermSlot, gauge: GaugeUse, context: Context): number {
  const part = fit.parts[slot]!;
  const before = part.measured!;
  const after: MeasuredPart = {
    ...before,
    systematic: gauge.systematic,
    readVariance: readVariance(gauge.random, 1),
    gaugeExpansion: gaugeTerm(part, gauge),
  };
  const at = fit.kind.terms.findIndex((term) => term.slot === slot);
  const { sign } = fit.kind.terms[at]!;
  const variance = varianceOf(measuredTerms(fit)!.with(at, { sign, part: after }));
  // What differs between both readings: their scatter, and the gauges that stand behind one of them only.
  const apart = before.readVariance + after.readVariance + differing(before.systematic, after.systematic);
  return chanceFitDecided(
    fit.clearance!,
    rangeOfLimits(fit.limits!),
    fitGuards(context.book.setup.confidence, variance),
    Math.sqrt(apart),
  );
}

/** The expansion of a gauge that measures a part at the temperature at which it was measured before. */
function gaugeTerm({ row: { celsius }, expansion, measured }: PartResult, gauge: GaugeUse) {
  const kelvin = celsius && expansion ? toNumber(celsius) - REFERENCE_CELSIUS : 0;
  const contribution = expansionContribution(gauge.expansion?.error ?? 0, measured!.size, kelvin);
  return contribution === 0 ? undefined : { gauge: nameKey(gauge.rows[0]!.gauge), contribution };
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
  /** Grains; undefined where no max error of this gauge alone is small enough for a workshop. */
  readonly maxError: number | undefined;
  /** No one gauge would do, and the finest gauges of a workshop on every part would. */
  readonly severalDo: boolean;
}

export function neededGauge(fit: FitResult, context: Context): NeededGauge | undefined {
  if (fit.kind.strategy === 'dial') return undefined;
  const terms = measuredTerms(fit)!;
  const sources = new Map(
    fit.kind.terms.flatMap(({ slot }) => {
      const part = fit.parts[slot]!;
      return (part.gauge?.rows ?? []).map((row) => [nameKey(row.gauge), { part, row }] as const);
    }),
  );
  const weights = [...sources].map(([key, { part, row }]) => ({
    key,
    ...{ part, gauge: row.gauge, maxError: row.maxError! },
    rest: varianceByError(terms, key)(0).common,
  }));
  const [most] = weights.sort((a, b) => a.rest - b.rest);
  if (!most || most.maxError === 0) return undefined;
  const { confidence } = context.book.setup;
  const { key, part, gauge } = most;
  const varianceWith = varianceByError(terms, key);
  const isDecided = (variance: FitVariance) =>
    fitVerdict(fit.clearance!, rangeOfLimits(fit.limits!), fitGuards(confidence, variance)) !== 'undecided';
  const maxError = maxErrorFor(most.maxError, (error) => isDecided(varianceWith(error)));
  return { part, gauge, maxError, severalDo: maxError === undefined && isDecided(withFinest(terms)) };
}

/** The fit as the finest gauges of a workshop would read it. */
function withFinest(terms: readonly SignedTerm<MeasuredPart>[]): FitVariance {
  const finest = (source: SystematicSource) => ({
    ...source,
    maxError: Math.min(source.maxError, FINEST_GAUGE),
  });
  return varianceOf(
    terms.map(({ sign, part }) => ({
      sign,
      part: { ...part, systematic: part.systematic.map(finest) },
    })),
  );
}
