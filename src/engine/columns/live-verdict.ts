/** The verdict of a gap or a run-out as a built-in formula, whichever of the limits there are. All terms in grains. */
import type { Guards } from '../../maths/guards.js';
import type { FitResult } from '../assess/fit.js';
import type { Layout } from './layout.js';

/** Limits as terms; undefined where there is none. */
export interface LimitTerms {
  readonly min: string | undefined;
  readonly max: string | undefined;
  readonly service: string | undefined;
}

/** The extremes as terms; of feelers one may not have been tried. */
export interface ExtremeTerms {
  readonly low: string | undefined;
  readonly high: string | undefined;
}

export function limitTerms({ limits }: FitResult, layout: Layout): LimitTerms {
  const term = (header: string, value: number | undefined) =>
    value === undefined ? undefined : layout.limitTerm(limits!, header, value);
  return {
    min: term('Clearance min', limits?.clearanceMin),
    max: term('Clearance max', limits?.clearanceMax),
    service: term('Service limit', limits?.serviceLimit),
  };
}

/** @param over the word for what lies over its roof */
export function verdictByReadings(
  { low, high }: ExtremeTerms,
  { min, max, service }: LimitTerms,
  { inside, outside }: Guards,
  over: string,
): string {
  const roof = service ?? max;
  const clearOfMin = min === undefined ? [] : [`${low}-${inside}>=${min}`];
  const isWorn = service !== undefined && max !== undefined;
  return firstThatHolds([
    [min === undefined ? undefined : [`${low}+${outside}<${min}`], 'tight'],
    [roof === undefined ? undefined : [`${high}-${outside}>${roof}`], over],
    [[...clearOfMin, ...(max === undefined ? [] : [`${high}+${inside}<=${max}`])], 'in range'],
    [
      isWorn ? [...clearOfMin, `${high}-${outside}>${max}`, `${high}+${inside}<=${service}`] : undefined,
      'within service limit',
    ],
  ]);
}

export function verdictByFeelers(
  { low, high }: ExtremeTerms,
  { min, max, service }: LimitTerms,
  { inside, outside }: Guards,
): string {
  const roof = service ?? max;
  const isTight = min !== undefined && high !== undefined;
  const isLoose = roof !== undefined && low !== undefined;
  const isInRange = (min === undefined || low !== undefined) && (max === undefined || high !== undefined);
  const isWorn = service !== undefined && max !== undefined && low !== undefined && high !== undefined;
  return firstThatHolds([
    [isTight ? [`${high}+${outside}<${min}`] : undefined, 'tight'],
    [isLoose ? [`${low}-${outside}>${roof}`] : undefined, 'loose'],
    [
      isInRange
        ? [
            ...(min === undefined ? [] : [`${low}-${inside}>=${min}`]),
            ...(max === undefined ? [] : [`${high}+${inside}<=${max}`]),
          ]
        : undefined,
      'in range',
    ],
    [
      isWorn ? [`${low}-${outside}>${max}`, `${high}+${inside}<=${service}`] : undefined,
      'within service limit',
    ],
  ]);
}

/** Nested conditions, the first of which that holds gives its word; undefined conditions cannot hold. */
function firstThatHolds(levels: readonly (readonly [readonly string[] | undefined, string])[]): string {
  return levels.reduceRight((otherwise, [conditions, word]) => {
    if (conditions === undefined) return otherwise;
    const all = conditions.length === 1 ? conditions[0]! : `AND(${conditions.join(',')})`;
    return `IF(${all},"${word}",${otherwise})`;
  }, '"undecided"');
}
