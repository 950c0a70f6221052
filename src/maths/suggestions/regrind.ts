/**
 * Grinding all journals of one fit on a crank to the next undersize, with the shells of that step.
 *
 * Each journal keeps the rod that it has, or the case that it sits in; an empty one takes a rod that is
 * free. All are ground to one window of sizes: the one in which each of them makes an allowed fit with
 * some pair of the step's shells.
 */
import type { FitParts } from '../clearance.js';
import type { Grain } from '../grain.js';
import type { MatchedFit, StockJournal, StockNewShell } from '../matching/stock.js';
import type { MeasuredPart } from '../uncertainty.js';
import { freeCount, hasMass } from './empty-place.js';
import { massRange } from './mass-range.js';
import { outward } from './outward.js';
import type { KindParts } from './plan.js';
import type { Pool, PooledRod } from './pool.js';
import { priceOfHalves, type Side, type SingleFitRules } from './rules.js';
import { intersect, type Measure, type Window, windowOf } from './windows.js';

/** One undersize of the engine maker, with the shells that are sold for it. */
export interface Undersize {
  readonly step: string;
  /** What a journal may measure after grinding. */
  readonly journal: Window;
  readonly newShells: Readonly<Record<Side, readonly StockNewShell[]>>;
  readonly measureJournal: Measure;
}

export interface GroundPlace {
  readonly journal: StockJournal;
  /** The free rod that it takes; undefined where it keeps its own bore. */
  readonly rod: PooledRod | undefined;
  readonly upper: StockNewShell;
  readonly lower: StockNewShell;
}

export interface Regrind {
  readonly step: string;
  /** What every journal of the fit is ground to. */
  readonly window: Window;
  readonly places: readonly GroundPlace[];
  /** Of all its shells. */
  readonly price: number;
}

export interface GroundSite {
  readonly journal: StockJournal;
  readonly groundFrom: Grain | undefined;
  readonly fit: MatchedFit | undefined;
}

export interface GroundCrank {
  readonly engine: string;
  readonly journals: readonly GroundSite[];
  readonly pool: Pool;
  readonly used: ReadonlyMap<object, number>;
  readonly masses: readonly number[];
}

/** Most free rods that are tried for an empty journal. */
const ROD_TRIES = 16;

/** The next step that all journals of the fit can be ground to; undefined where there is none. */
export function regrindPlan(
  rules: SingleFitRules,
  parts: KindParts,
  undersizes: readonly Undersize[],
  crank: GroundCrank,
): Regrind | undefined {
  // What new shells would make of a bore is not known where it was measured with its own.
  if (crank.journals.some(hasShellsIn)) return undefined;
  const smallest = crank.journals.map(({ groundFrom }) => groundFrom);
  if (smallest.some((size) => size === undefined)) return undefined;
  const steps = [...undersizes].sort((a, b) => b.journal.to - a.journal.to);
  for (const undersize of steps) {
    // Grinding only removes material.
    const window = intersect(undersize.journal, { from: 0, to: Math.min(...(smallest as Grain[])) });
    const regrind = window && groundTo(rules, parts, undersize, window, crank);
    if (regrind) return regrind;
  }
  return undefined;
}

interface Option {
  readonly place: GroundPlace;
  readonly window: Window;
  readonly price: number;
}

function groundTo(
  rules: SingleFitRules,
  parts: KindParts,
  undersize: Undersize,
  range: Window,
  crank: GroundCrank,
): Regrind | undefined {
  const used = new Map(crank.used);
  const masses = [...crank.masses];
  const options: Option[][] = [];
  // Journals with a bore first: an empty one then takes the rod that suits their window best.
  const sites = [...crank.journals].sort((a, b) => Number(!hasBore(a)) - Number(!hasBore(b)));
  for (const site of sites) {
    const own = ownBore(site);
    if (own) {
      options.push(optionsOf(rules, parts, undersize, range, site.journal, undefined, own));
      continue;
    }
    const wished = parts.usualBore ?? 0;
    const free: Option[][] = [];
    for (const rod of outward(crank.pool.rods, wished)) {
      if (freeCount(rod, { engine: crank.engine, used }) < 1) continue;
      if (!hasMass(rod.row.mass, massRange(masses, parts.limits.massSpread))) continue;
      if (!rules.mayServe(rod.row, crank.engine, site.journal)) continue;
      free.push(optionsOf(rules, parts, undersize, range, site.journal, rod, rod.row.part));
      if (free.length === ROD_TRIES) break;
    }
    const best = free
      .map((own) => ({ own, common: commonWindow([...options, own]) }))
      .filter(({ common }) => common)
      .sort((a, b) => width(b.common!.window) - width(a.common!.window))[0];
    const rod = best?.own[0]?.place.rod;
    if (!best || !rod) return undefined;
    used.set(rod, (used.get(rod) ?? 0) + 1);
    if (rod.row.mass !== undefined) masses.push(rod.row.mass);
    options.push(best.own);
  }
  const common = commonWindow(options);
  return common && { step: undersize.step, ...common };
}

function hasBore(site: GroundSite): boolean {
  return ownBore(site) !== undefined;
}

function hasShellsIn({ journal, fit }: GroundSite): boolean {
  const pair = [fit?.upper, fit?.lower];
  return (
    journal.caseBore?.hasShells ?? pair.some((shell) => shell?.from === 'stock' && shell.shell.isBrought)
  );
}

function ownBore({ journal, fit }: GroundSite): MeasuredPart | undefined {
  return journal.caseBore ? journal.caseBore.part : fit?.bore.part;
}

function width({ from, to }: Window): Grain {
  return to - from;
}

/** Every pair of the step's shells with the sizes that it allows on one journal. */
function optionsOf(
  rules: SingleFitRules,
  { limits }: KindParts,
  { newShells, measureJournal }: Undersize,
  range: Window,
  journal: StockJournal,
  rod: PooledRod | undefined,
  bore: MeasuredPart,
): Option[] {
  return newShells.upper.flatMap((upper) =>
    newShells.lower.flatMap((lower): Option[] => {
      if (!rules.mayStand(upper, lower) || !rules.pairs(upper.part, lower.part, limits)) return [];
      const fitWith = (size: Grain): FitParts<MeasuredPart> => {
        return { bore, upper: upper.part, lower: lower.part, journal: measureJournal(size) };
      };
      const allowed = windowOf(rules, limits, fitWith, -1);
      const window = allowed && intersect(allowed, range);
      const price = priceOfHalves(upper, lower);
      return window ? [{ place: { journal, rod, upper, lower }, window, price }] : [];
    }),
  );
}

/** The widest window that some option of every journal holds. */
function commonWindow(options: readonly (readonly Option[])[]): Omit<Regrind, 'step'> | undefined {
  let best: Omit<Regrind, 'step'> | undefined;
  const starts = new Set(options.flat().map(({ window }) => window.from));
  for (const start of [...starts].sort((a, b) => a - b)) {
    const chosen: Option[] = [];
    for (const own of options) {
      const holding = own.filter(({ window }) => window.from <= start && start <= window.to);
      // The option with the greatest upper end; of equal ones the cheaper, then the one with more alike halves.
      holding.sort((a, b) => b.window.to - a.window.to || a.price - b.price || unlike(a) - unlike(b));
      if (holding[0]) chosen.push(holding[0]);
    }
    if (chosen.length < options.length) continue;
    const window = { from: start, to: Math.min(...chosen.map(({ window: { to } }) => to)) };
    if (best && width(window) <= width(best.window)) continue;
    const price = chosen.reduce((sum, option) => sum + option.price, 0);
    best = { window, places: chosen.map(({ place }) => place), price };
  }
  return best;
}

function unlike({ place: { upper, lower } }: Option): number {
  return Math.abs(upper.part.size - lower.part.size);
}
