/** What the sheet Re-measure says of a reading: which spots, why, how often, and what it is expected to decide. */
import { outcomeOf } from '../../maths/conformity.js';
import { MOST_REPEATS } from '../../maths/measuring-plan.js';
import type { FitResult } from './fit.js';
import type { OpenVerdicts, RepeatPlan } from './measuring-plan.js';
import type { PartResult, ReadSpot } from './part-result.js';
import { termPartsOf } from './placed-fit.js';
import { countText } from './words.js';

export interface Remeasure {
  readonly sheet: string;
  /** Parts of one sheet that the same holds for. */
  readonly parts: readonly string[];
  readonly spot: string;
  readonly why: string;
  /** No reading with the gauges at hand would decide it. */
  readonly isBeyondReadings?: boolean;
}

/** Why a part without a reading is asked for. */
export const NOT_MEASURED = 'not measured';

/** The spots by the headers of their columns; first those that the extremes were read at. */
export function spotNames({ form }: PartResult, spots: readonly ReadSpot[]): string {
  const isExtreme = ({ value }: ReadSpot) => value === form?.largest || value === form?.smallest;
  const ordered = [...spots.filter(isExtreme), ...spots.filter((spot) => !isExtreme(spot))];
  return ordered
    .map(({ station, angle }) => (angle === undefined ? station : `${station} ${angle}`))
    .join(', ');
}

export function fitWords({ engine, fit, position, why }: FitResult): string {
  return `${engine} ${fit} ${position}: ${why[0] ?? 'undecided'}`;
}

/** The open verdicts of a plan that rest on one of its parts. */
export function reasonsOf(part: PartResult, { parts }: RepeatPlan, open: OpenVerdicts): string[] {
  const fits = (open.fitsOf.get(part) ?? []).filter(
    (fit) => parts.length === 1 || parts.every((other) => termPartsOf(fit).includes(other)),
  );
  const checks = part.status === 'undecided' ? part.checks : [];
  const own = checks
    .filter((check) => outcomeOf(check) === 'undecided' && check.value !== undefined)
    .map(({ quantity, limitName }) => `${quantity} near ${limitName}`)
    .join(', ');
  return [...fits.map(fitWords), ...(own === '' ? [] : [own])];
}

export function repeatWords({ parts, repeats, readings, open, decided }: RepeatPlan): string {
  const where = parts.length > 1 ? 'each spot of all parts of the fit' : 'each spot';
  const times = `read ${where} ${repeats} times in all (${countText(readings, 'reading')} more)`;
  const result =
    open === 1
      ? `which decides it in ${outOf100(decided)}`
      : `expected to decide ${decided.toFixed(1)} of ${open} verdicts`;
  return `${times}, ${result}`;
}

export function outOf100(chance: number): string {
  return `${Math.round(100 * chance)} of 100 cases`;
}

export function repeatsAtMost(chance: number): string {
  return `${MOST_REPEATS} readings of every spot would decide it in ${outOf100(chance)}`;
}
