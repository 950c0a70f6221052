/**
 * Whether a space (bore less journal) and a pair of walls make an allowed fit.
 *
 * The guards depend on all four parts, so that they are no value of the space or of the pair alone. Parts that were
 * measured alike (gauges, spots, repeats) share what does not follow their sizes; what does, the terms of temperature and
 * of expansion, is kept beside them, and of many pairs together as its least and its greatest.
 */
import { fitVerdict, type ProvenFitVerdict } from '../conformity.js';
import { type Grain, roundToWhole } from '../grain.js';
import type { Guards } from '../guards.js';
import { normalQuantile } from '../normal.js';
import { deviationOfLargest, meanOfLargest } from '../order-statistics.js';
import { SAME_SIZE } from '../shared-gauges.js';
import { CERTAIN, clearanceVariance, type MeasuredPart } from '../uncertainty.js';
import type { SizeTerms, TermsRange } from './size-terms.js';
import type { KindLimits, Stock } from './stock.js';

/** Greatest relative error of a sum of variances in another order than the core's. */
const ORDER_OF_SUM = 1e-9;

export type ProvableLimits = KindLimits & { readonly min: Grain; readonly max: Grain };

export function isProvable(kind: KindLimits): kind is ProvableLimits {
  return kind.min !== undefined && kind.max !== undefined;
}

/** Which verdicts beside `in range` are allowed. */
export type AllowedVerdicts = Pick<Stock, 'allowUndecided' | 'allowWorn'>;

/**
 * The verdict of a fit; undefined where it is not allowed.
 * @param isUncorrected whether one of its parts was left as it was read, away from 20 °C
 */
export function allowedVerdict(
  clearance: { readonly tightest: Grain; readonly loosest: Grain },
  { min, max, serviceLimit }: ProvableLimits,
  guards: Guards,
  { allowUndecided, allowWorn }: AllowedVerdicts,
  isUncorrected = false,
): ProvenFitVerdict | undefined {
  const verdict = isUncorrected ? 'undecided' : fitVerdict(clearance, { min, max, serviceLimit }, guards);
  const isAllowed =
    verdict === 'in range' ||
    (allowUndecided && verdict === 'undecided') ||
    (allowWorn && verdict === 'within service limit');
  return isAllowed ? verdict : undefined;
}

/** Two parts, and a text that is equal for pairs that were measured alike. */
export interface MeasuredAlike {
  readonly key: string;
  readonly first: MeasuredPart;
  readonly second: MeasuredPart;
}

const keys = new WeakMap<MeasuredPart, string>();

function measureKey(part: MeasuredPart): string {
  let key = keys.get(part);
  if (key === undefined) {
    const { systematic, readVariance, spots } = part;
    const sources = systematic.map(({ gauge, maxError, isConstant }) => [gauge, maxError, isConstant]);
    key = JSON.stringify([readVariance, spots, sources]);
    keys.set(part, key);
  }
  return key;
}

/** @param second its sizes count beside the first's only in so far as one gauge's error is the same for both */
export function measuredAlike(first: MeasuredPart, second: MeasuredPart): MeasuredAlike {
  const isNear = Math.abs(first.size - second.size) < SAME_SIZE;
  return { key: `${measureKey(first)}|${measureKey(second)}|${isNear}`, first, second };
}

/** What is one for all spaces and pairs that were measured alike. */
interface Fixed {
  /** S of the gauges. */
  readonly gauges: number;
  /** Σ u_i². */
  readonly random: number;
  /** Σ s(m)²·u_i², and Σ c(m)·u_i. */
  readonly extreme: number;
  readonly excess: number;
}

function fixedOf(space: MeasuredAlike, pair: MeasuredAlike): Fixed {
  const part = ({ size, systematic, readVariance, spots }: MeasuredPart): MeasuredPart => ({
    ...CERTAIN,
    ...{ size, largest: size, smallest: size, systematic, readVariance, spots },
  });
  const { common, scatters } = clearanceVariance({
    bore: part(space.first),
    journal: part(space.second),
    upper: part(pair.first),
    lower: part(pair.second),
  });
  let [random, extreme, excess] = [0, 0, 0];
  for (const { variance, spots } of scatters) {
    random += variance;
    extreme += deviationOfLargest(spots) ** 2 * variance;
    excess += meanOfLargest(spots) * Math.sqrt(variance);
  }
  return { gauges: common, random, extreme, excess };
}

/** The least and the greatest square of the sum of a value and one of a range. */
function squares(value: number, least: number, greatest: number): readonly [number, number] {
  const [from, to] = [value + least, value + greatest];
  const ends = [from ** 2, to ** 2];
  return [from <= 0 && to >= 0 ? 0 : Math.min(...ends), Math.max(...ends)];
}

/** The terms that follow the sizes, of a space with any pair of a range: the least and the greatest. */
function termsBetween(space: SizeTerms, { least, greatest }: TermsRange): readonly [number, number] {
  let from = space.own + least.own;
  let to = space.own + greatest.own;
  const add = ([low, high]: readonly [number, number]) => {
    from += low;
    to += high;
  };
  add(squares(space.inner, least.inner, greatest.inner));
  const sums = new Map<string, [number, number]>();
  const put = (gauge: string, low: number, high: number) => {
    const known = sums.get(gauge) ?? [0, 0];
    sums.set(gauge, [known[0] + low, known[1] + high]);
  };
  for (const { gauge, contribution } of space.gauges) put(gauge, contribution, contribution);
  for (const [at, { gauge, contribution }] of least.gauges.entries()) {
    put(gauge, contribution, greatest.gauges[at]!.contribution);
  }
  for (const [low, high] of sums.values()) add(squares(0, low, high));
  return [from, to];
}

/** A space or pair as far as the guards go. */
export interface MeasuredSpace {
  readonly alike: MeasuredAlike;
  readonly terms: SizeTerms;
}

export interface MeasuredPairs {
  readonly alike: MeasuredAlike;
  readonly terms: TermsRange;
}

/** The guards of any of the fits: the least and the greatest. */
export interface GuardsRange {
  readonly least: Guards;
  readonly greatest: Guards;
}

/** Whether all of the guards that the verdicts of a kind rest on are one. */
export function isOne(
  { least, greatest }: GuardsRange,
  { max, serviceLimit = max }: ProvableLimits,
  { allowUndecided, allowWorn }: AllowedVerdicts,
): boolean {
  // A fit that has to be in range is so by its inside guard alone, unless the Service limit lies below Clearance max.
  const isByOutside = allowUndecided || allowWorn || serviceLimit < max;
  const isOutsideOne = least.outside === greatest.outside || !isByOutside;
  return least.inside === greatest.inside && isOutsideOne;
}

/** The guards of fits of a stock. */
export class StockGuards {
  private readonly quantile: number;
  private readonly fixed = new Map<string, Fixed>();

  constructor(private readonly stock: AllowedVerdicts & Pick<Stock, 'confidence'>) {
    this.quantile = normalQuantile(stock.confidence);
  }

  private fixedOf(space: MeasuredAlike, pair: MeasuredAlike): Fixed {
    const key = `${space.key}/${pair.key}`;
    const known = this.fixed.get(key) ?? fixedOf(space, pair);
    this.fixed.set(key, known);
    return known;
  }

  between(space: MeasuredSpace, pairs: MeasuredPairs): GuardsRange {
    const fixed = this.fixedOf(space.alike, pairs.alike);
    const [from, to] = termsBetween(space.terms, pairs.terms);
    return {
      least: this.guardsAt(fixed, from, 1 - ORDER_OF_SUM),
      greatest: this.guardsAt(fixed, to, 1 + ORDER_OF_SUM),
    };
  }

  private guardsAt({ gauges, random, extreme, excess }: Fixed, terms: number, doubt: number): Guards {
    const common = gauges + terms;
    const inside = this.quantile * Math.sqrt((common + random) * doubt);
    const outside = Math.max(inside, this.quantile * Math.sqrt((common + extreme) * doubt) + excess);
    return { inside: roundToWhole(inside), outside: roundToWhole(outside) };
  }

  /** The values of a pair's own terms, between two, at which a guard of a fit with the space steps. */
  stepsBetween(space: MeasuredSpace, pair: MeasuredAlike, from: number, to: number): number[] {
    const fixed = this.fixedOf(space.alike, pair);
    const other = fixed.gauges + space.terms.own;
    const low = this.guardsAt(fixed, space.terms.own + from, 1);
    const high = this.guardsAt(fixed, space.terms.own + to, 1);
    const steps: number[] = [];
    for (let guard = low.inside; guard < high.inside; guard++) {
      steps.push(((guard + 0.5) / this.quantile) ** 2 - other - fixed.random);
    }
    const isByOutside = this.stock.allowUndecided || this.stock.allowWorn;
    for (let guard = low.outside; isByOutside && guard < high.outside; guard++) {
      steps.push(((guard + 0.5 - fixed.excess) / this.quantile) ** 2 - other - fixed.extreme);
    }
    return steps;
  }
}
