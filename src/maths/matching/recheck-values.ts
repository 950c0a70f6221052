/** What a result says of its sets, counted again from the sets: complete engines, and what every aim reached. */
import { type Clearance, clearanceOf, type FitParts, type Sizes } from '../clearance.js';
import { fitVerdict } from '../conformity.js';
import { exact, toNumber } from '../decimal.js';
import { GRAINS_PER_MM, type Grain, roundToWhole } from '../grain.js';
import { fitGuards } from '../guards.js';
import { clearanceVariance } from '../uncertainty.js';
import type { Breach, StockRows } from './recheck-rows.js';
import type { MatchedFit, MatchResult, StageResult, Stock } from './stock.js';

type AimOfResult = StageResult['aim'];

const COMPLETE = 'an engine is complete where each of its journals is filled';
const HOPELESS = 'an engine that the whole stock cannot complete is not complete';
const AIMS = 'the aims are pursued in their order';
const REACHED = 'what an aim reached is what its sets amount to';
const BOUND = 'no sets do better than the proven best';
const REASON = 'a gap that stays has its reason';
const GRID = 'a grid is of whole grains, and of 1 µm at most';

/** 1 µm. */
const COARSEST_GRID: Grain = GRAINS_PER_MM / 1000;

/** Aims that ask for the most. */
const MOST: readonly AimOfResult[] = [
  'complete engines',
  'filled journals of engines that could be completed',
  'filled journals beyond them',
  'fits in range',
  'pairs kept together',
  'rods that stay',
];

function completeEnginesOf({ engines }: Stock, fits: readonly MatchedFit[]): string[] {
  const filled = new Set(fits.map(({ journal }) => journal));
  return engines
    .filter(({ journals }) => journals.length > 0 && journals.every((journal) => filled.has(journal)))
    .map(({ name }) => name);
}

function brokenByEngines(complete: readonly string[], said: readonly string[]): Breach[] {
  const breach = (engine: string, what: string): Breach => ({
    rule: COMPLETE,
    where: `engine ${engine}`,
    what,
  });
  return [
    ...complete
      .filter((engine) => !said.includes(engine))
      .map((engine) => breach(engine, 'it is complete, and not named')),
    ...said
      .filter((engine) => !complete.includes(engine))
      .map((engine) => breach(engine, 'it is named as complete, and is not')),
    ...said
      .filter((engine, place) => said.indexOf(engine) !== place)
      .map((engine) => breach(engine, 'it is named twice')),
  ];
}

function aimsInOrder({ newShells, allowWorn, preferKeptPairs }: Stock, hasHopeless: boolean): AimOfResult[] {
  const kept = ['pairs kept together', 'rods that stay'] as const;
  return [
    'complete engines',
    ...(hasHopeless ? (['filled journals of engines that could be completed'] as const) : []),
    'filled journals beyond them',
    ...(newShells.length > 0 ? (['price of bought shells'] as const) : []),
    ...(allowWorn ? (['fits in range'] as const) : []),
    ...(preferKeptPairs
      ? ([...kept, 'distance from the aim'] as const)
      : (['distance from the aim', ...kept] as const)),
  ];
}

/**
 * A sum of typed decimals: 0.1 + 0.2 is 0.3. Denominators are powers of ten, so that the greatest is a multiple of
 * each.
 */
function sumOfDecimals(values: readonly number[]): number {
  const ratios = values.map(exact);
  let denominator = 1n;
  for (const each of ratios) if (each.denominator > denominator) denominator = each.denominator;
  let numerator = 0n;
  for (const each of ratios) numerator += each.numerator * (denominator / each.denominator);
  return toNumber({ numerator, denominator });
}

/** The distance from the aim; on a grid every size and the aim are rounded to it first. */
function offAim(parts: FitParts<Sizes>, aim: Grain, grid: Grain): Grain {
  const onGrid = (length: Grain) => roundToWhole(length / grid) * grid;
  const sizes = ({ size }: Sizes): Sizes => ({ size: onGrid(size), largest: 0, smallest: 0 });
  const { clearance }: Clearance = clearanceOf({
    bore: sizes(parts.bore),
    upper: sizes(parts.upper),
    lower: sizes(parts.lower),
    journal: sizes(parts.journal),
  });
  return Math.abs(clearance - onGrid(aim));
}

/** What the sets amount to for an aim, in the units of the result. */
function reachedBy(
  aim: AimOfResult,
  { fits, hopelessEngines, grid = 1 }: MatchResult,
  complete: readonly string[],
  rows: StockRows,
): number {
  switch (aim) {
    case 'complete engines':
      return complete.length;
    case 'filled journals beyond them': {
      const engines = new Set(complete);
      return fits.filter(({ engine }) => !engines.has(engine)).length;
    }
    case 'filled journals of engines that could be completed': {
      const engines = new Set([...complete, ...hopelessEngines]);
      return fits.filter(({ engine }) => !engines.has(engine)).length;
    }
    case 'fits in range':
      return fits.filter((fit) => isInRange(fit, rows)).length;
    case 'rods that stay':
      return fits.filter(({ rodStays }) => rodStays).length;
    case 'pairs kept together':
      return fits.filter(({ ranTogether }) => ranTogether).length;
    case 'price of bought shells':
      return sumOfDecimals(
        fits.flatMap(({ upper, lower }) =>
          // A pair has one price for both halves.
          (upper.shell.half === 'pair' ? [upper] : [upper, lower]).flatMap((taken) =>
            taken.from === 'new' ? [taken.shell.price] : [],
          ),
        ),
      );
    case 'distance from the aim':
      return fits.reduce((sum, { journal, parts }) => {
        const wished = rows.limitsOf(journal)?.aim;
        return wished === undefined ? sum : sum + offAim(parts, wished, grid);
      }, 0);
  }
}

function isInRange({ journal, parts }: MatchedFit, rows: StockRows): boolean {
  const { min, max, serviceLimit } = rows.limitsOf(journal) ?? {};
  if (min === undefined || max === undefined || journal.caseBore?.isUncorrected) return false;
  const guards = fitGuards(rows.stock.confidence, clearanceVariance(parts));
  return fitVerdict(clearanceOf(parts), { min, max, serviceLimit }, guards) === 'in range';
}

/** What a result says of its sets and is not so. */
export function brokenByValues(result: MatchResult, rows: StockRows): Breach[] {
  const { stock } = rows;
  const { fits, completeEngines, stages, grid } = result;
  const complete = completeEnginesOf(stock, fits);
  const breaches = brokenByEngines(complete, completeEngines);
  for (const engine of result.hopelessEngines)
    if (complete.includes(engine))
      breaches.push({ rule: HOPELESS, where: `engine ${engine}`, what: 'it is complete' });
  const order = aimsInOrder(stock, result.hopelessEngines.length > 0).join(', ');
  const found = stages.map(({ aim }) => aim).join(', ');
  if (found !== order)
    breaches.push({ rule: AIMS, where: 'the result', what: `its aims are ${found}, not ${order}` });
  if (grid !== undefined && !(Number.isInteger(grid) && grid > 1 && grid <= COARSEST_GRID))
    breaches.push({ rule: GRID, where: 'the result', what: `its grid is of ${grid} grains` });
  for (const { aim, reached, bound, gapStays } of stages) {
    const counted = reachedBy(aim, result, complete, rows);
    if (reached !== counted)
      breaches.push({ rule: REACHED, where: aim, what: `it says ${reached}, its sets amount to ${counted}` });
    if (MOST.includes(aim) ? reached > bound : reached < bound)
      breaches.push({ rule: BOUND, where: aim, what: `it reached ${reached}, its proven best is ${bound}` });
    if ((reached === bound) !== (gapStays === undefined))
      breaches.push({
        rule: REASON,
        where: aim,
        what: gapStays ? 'a reason without a gap' : 'a gap without a reason',
      });
  }
  return breaches;
}
