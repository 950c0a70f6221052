/**
 * The sizes of a part that is still to be found, with which a fit would be allowed.
 *
 * Such a part is taken as alike at every spot and measured once, with the gauge that measures its kind:
 * its size, largest and smallest are one, and its guard is that of such a reading.
 */
import { clearanceOf, type FitParts } from '../clearance.js';
import type { Grain } from '../grain.js';
import type { MeasuredPart } from '../uncertainty.js';
import type { GivenLimits, SingleFitRules } from './rules.js';

/** Both ends included. */
export interface Window {
  readonly from: Grain;
  readonly to: Grain;
}

/** A part of this size at every spot, as its kind is measured. */
export type Measure = (size: Grain) => MeasuredPart;

/** How often the size enters the clearance: +1 a bore, −1 a wall or a journal, −2 both walls alike. */
export type Sensitivity = 1 | -1 | -2;

/** How far the guard of a fit may move an end. It changes with the size, by far less than this. */
const REACH: Grain = 200;

export function intersect(a: Window, b: Window): Window | undefined {
  const [from, to] = [Math.max(a.from, b.from), Math.min(a.to, b.to)];
  return from <= to ? { from, to } : undefined;
}

export function middleOf({ from, to }: Window): number {
  return (from + to) / 2;
}

/**
 * The sizes from the first to the last with which the fit is allowed; undefined where none is.
 * @param fitWith the fit with the sought part, or both halves alike, of a size
 */
export function windowOf(
  rules: SingleFitRules,
  limits: GivenLimits,
  fitWith: (size: Grain) => FitParts<MeasuredPart>,
  sensitivity: Sensitivity,
): Window | undefined {
  const { min, max } = limits;
  const without = clearanceOf(fitWith(0));
  const count = Math.abs(sensitivity);
  const centre = Math.round(((min + max) / 2 - (without.tightest + without.loosest) / 2) / sensitivity);
  if (centre <= 0) return undefined;
  const { inside, outside } = rules.guardsOf(fitWith(centre));
  const guard = rules.allowsUndecided ? -outside : inside;
  const [least, greatest] = [min + guard - without.tightest, max - guard - without.loosest];
  const first =
    sensitivity > 0
      ? { from: least, to: greatest }
      : { from: Math.ceil(-greatest / count), to: Math.floor(-least / count) };
  // A fit near the Service limit may be undecided too. Common practice, no source: a part is not chosen to be so far
  // out of range.
  const isAllowed = (size: Grain) => {
    const parts = fitWith(size);
    return rules.suits(parts, limits) && clearanceOf(parts).loosest - rules.guardsOf(parts).outside <= max;
  };
  const from = edge(isAllowed, first.from, first.to, 1);
  const to = edge(isAllowed, first.to, first.from, -1);
  return from === undefined || to === undefined || from > to ? undefined : { from, to };
}

/** The first allowed size near `start`, seen in a direction. */
function edge(
  isAllowed: (size: Grain) => boolean,
  start: Grain,
  end: Grain,
  step: 1 | -1,
): Grain | undefined {
  if ((end - start) * step < -REACH) return undefined;
  let size = start;
  if (isAllowed(size)) {
    while (Math.abs(size - start) < REACH && isAllowed(size - step)) size -= step;
    return size;
  }
  while (Math.abs(size - start) < REACH) {
    size += step;
    if (isAllowed(size)) return size;
  }
  return undefined;
}
