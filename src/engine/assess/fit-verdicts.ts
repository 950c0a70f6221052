/** What differs between kinds of fit in their guards and verdicts. */
import type { Clearance } from '../../maths/clearance.js';
import { type FitLimits, fitVerdict, type ProvenFitVerdict } from '../../maths/conformity.js';
import { type Feelers, feelerVerdict } from '../../maths/feelers.js';
import { fitGuards, formGuards, type Guards } from '../../maths/guards.js';
import {
  CERTAIN,
  commonVariance,
  type FitVariance,
  readVariance,
  totalVariance,
} from '../../maths/uncertainty.js';
import type { LimitsRow } from '../book/book.js';
import type { KindOfFit } from '../kinds/kind-of-fit.js';
import type { GaugeUse } from './context.js';
import type { PlacedFit } from './placed-fit.js';

export type FitStatus =
  | 'bad reading'
  | 'unclear'
  | 'not measured'
  | 'no limits'
  | ProvenFitVerdict
  /** A run-out over its roof. */
  | 'beyond limits';

/** Verdicts that limits and guards give. */
export const PROVEN: ReadonlySet<FitStatus> = new Set<FitStatus>([
  'tight',
  'loose',
  'beyond limits',
  'in range',
  'within service limit',
  'undecided',
]);

/** The limits of the value of a fit. */
export function rangeOfLimits({ clearanceMin, clearanceMax, serviceLimit }: LimitsRow): FitLimits {
  return { min: clearanceMin, max: clearanceMax, serviceLimit };
}

/** Whether the limits are there that a fit of the kind needs; one that was refused is not left out. */
export function hasItsLimits(kind: KindOfFit, { clearanceMin, clearanceMax, bad }: LimitsRow): boolean {
  if (!kind.needsOneLimit) return clearanceMin !== undefined && clearanceMax !== undefined;
  const isRefused = bad.some(({ header }) => header === 'Clearance min' || header === 'Clearance max');
  return !isRefused && (clearanceMin !== undefined || clearanceMax !== undefined);
}

/** A run-out is a range of readings, and has the guards of form. */
export function guardsOfFit(
  { kind, parts }: Pick<PlacedFit, 'kind' | 'parts'>,
  variance: FitVariance,
  confidence: number,
): Guards {
  if (kind.strategy !== 'dial') return fitGuards(confidence, variance);
  return formGuards(confidence, totalVariance(variance) / 2, parts['run-out']?.dialShape);
}

/** Of a gap that only one blade was tried in. */
export function bladeVariance(gauge: GaugeUse | undefined): FitVariance {
  const scatter = gauge ? readVariance(gauge.random, 1) : 0;
  return {
    common: commonVariance({ ...CERTAIN, systematic: gauge?.systematic ?? [] }),
    scatters: [{ variance: scatter, spots: 1 }],
  };
}

/** What is known of a fit whose limits are. */
interface JudgedFit {
  readonly kind: KindOfFit;
  readonly clearance: Clearance | undefined;
  readonly feelers: Feelers | undefined;
}

export function verdictOfFit(
  { kind, clearance, feelers }: JudgedFit,
  limits: FitLimits,
  guards: Guards,
): ProvenFitVerdict | 'beyond limits' {
  if (feelers) return feelerVerdict(feelers, limits, guards);
  const verdict = fitVerdict(clearance!, limits, guards);
  return verdict === 'loose' && kind.strategy === 'dial' ? 'beyond limits' : verdict;
}
