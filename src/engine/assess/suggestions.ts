/** What would complete the engines that are left over: the facts of the book that such a plan rests on. */
import type { Grain } from '../../maths/grain.js';
import { extremesGuards } from '../../maths/guards.js';
import type { FitKind, MatchResult, StockNewShell } from '../../maths/matching/stock.js';
import { type CrankPlan, crankPlans, type SuggestionFacts } from '../../maths/suggestions/crank-plan.js';
import type { KindParts } from '../../maths/suggestions/plan.js';
import { goesOn, SingleFitRules } from '../../maths/suggestions/rules.js';
import type { Measure, Window } from '../../maths/suggestions/windows.js';
import type { NewShellRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { CASES } from '../input-sheets/cases.js';
import { JOURNALS } from '../input-sheets/journals.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';
import { type Context, kindKey } from './context.js';
import type { PartsOfBook } from './placed-fit.js';
import { type BookStock, newShellOf } from './stock.js';
import { shellsOfStep, stepsOf } from './undersizes.js';
import { measuredAmong, measureOf, medianOf, rangeOf, sizesOf } from './usual-parts.js';

/** One plan for each engine that is not complete. */
export function crankPlansOf(
  parts: PartsOfBook,
  stock: BookStock,
  matching: MatchResult,
  context: Context,
): CrankPlan[] {
  return crankPlans(stock.stock, matching, factsOf(parts, stock, context));
}

/** The engine that the least addition completes; undefined where none can be. */
export function nextEngine({
  plans,
  stock,
}: {
  readonly plans: readonly CrankPlan[];
  readonly stock: BookStock;
}): string | undefined {
  const whole = plans.filter(({ open }) => open.length === 0);
  const [next] = [...whole].sort((a, b) => costOrder(a, b));
  return next && stock.journals.get(next.engine.journals[0]!)!.row.engine;
}

function costOrder(a: CrankPlan, b: CrankPlan): number {
  const at = a.cost.findIndex((value, place) => value !== b.cost[place]);
  return at < 0 ? 0 : a.cost[at]! - b.cost[at]!;
}

const bySide = (shells: readonly StockNewShell[]) => ({
  upper: shells.filter(({ half }) => goesOn(half, 'upper')),
  lower: shells.filter(({ half }) => goesOn(half, 'lower')),
});

function factsOf(parts: PartsOfBook, { stock, journals }: BookStock, context: Context): SuggestionFacts {
  const { newShells } = context.book;
  const rules = new SingleFitRules(stock);
  const known = new Map<string, KindParts | undefined>();
  const soldFor = ({ engineType, fit }: FitKind, rows: readonly NewShellRow[] = newShells) =>
    bySide(
      rows
        .filter((row) => kindKey(row.engineType, row.fit) === kindKey(engineType, fit))
        .flatMap((row) => newShellOf(row) ?? []),
    );
  return {
    partsOf: (kind) => {
      const key = kindKey(kind.engineType, kind.fit);
      if (!known.has(key)) known.set(key, kindParts(kind, parts, rules, soldFor(kind), context));
      return known.get(key);
    },
    undersizesOf: (kind) => {
      const own = parts.of(JOURNALS.name).filter(({ row }) => nameKey(row.fit) === kind.fit);
      const ofType = own.filter(({ row }) => nameKey(row.engineType ?? '') === kind.engineType);
      return stepsOf(context, kind.engineType, kind.fit).map(({ step, from, to }) => ({
        step,
        journal: { from, to },
        newShells: soldFor(kind, shellsOfStep(newShells, step)),
        measureJournal: measureOf(measuredAmong(ofType, own)),
      }));
    },
    // A journal that is beyond its limits is what grinding is for.
    groundFrom: (journal) => {
      const { row, status, form } = journals.get(journal)!;
      return row.usable && status !== 'bad reading' ? form?.smallest : undefined;
    },
  };
}

function kindParts(
  kind: FitKind,
  parts: PartsOfBook,
  rules: SingleFitRules,
  newShells: KindParts['newShells'],
  context: Context,
): KindParts | undefined {
  const limits = rules.limitsOf(kind);
  if (!limits) return undefined;
  const shells = parts.of(SHELLS.name);
  const bores = parts.of(kind.fit === CASES.fit ? CASES.name : RODS.name).filter(({ row }) => !row.hasShells);
  const boresOfType = bores.filter(({ row }) => nameKey(row.engineType ?? '') === kind.engineType);
  const shellsOfType = shells.filter(({ row }) => nameKey(row.engineType ?? '') === kind.engineType);
  const shellsOfKind = shellsOfType.filter(({ row }) => nameKey(row.fit) === kind.fit);
  const measureBore = measureOf(measuredAmong(boresOfType, bores));
  const bore = sizesOf(boresOfType);
  const sold = [...newShells.upper, ...newShells.lower].map(({ part }) => part.size).sort((a, b) => a - b);
  return {
    limits,
    measureBore,
    measureWall: measureOf(measuredAmong(shellsOfKind, shellsOfType, shells)),
    boreRange: boreRange(kind, rangeOf(bore), limits.max - limits.min, measureBore, context),
    usualBore: medianOf(bore),
    usualWall: medianOf(sizesOf(shellsOfKind)) ?? medianOf(sold),
    newShells,
  };
}

/** Within the bore's own limits by the guard; where none is typed, about as far as the bores of the stock go. */
function boreRange(
  { engineType, fit }: FitKind,
  known: Window | undefined,
  margin: Grain,
  measure: Measure,
  context: Context,
): Window {
  const { boreMin, boreMax } = context.limitsOf(engineType, fit) ?? {};
  const guard = (size: Grain) => extremesGuards(context.book.setup.confidence, measure(size)).inside;
  return {
    from: boreMin === undefined ? (known ? known.from - margin : 0) : boreMin + guard(boreMin),
    to:
      boreMax === undefined
        ? known
          ? known.to + margin
          : Number.POSITIVE_INFINITY
        : boreMax - guard(boreMax),
  };
}
