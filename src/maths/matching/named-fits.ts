/**
 * From counts of classes back to parts with names: the first names go to the first journals.
 *
 * Fits that keep their parts together name their parts themselves and are served first.
 */

import type { Gap } from './gaps.js';
import { ranOn } from './kept-fits.js';
import type { Column } from './model-columns.js';
import type { Problem } from './problem.js';
import type { MatchedFit, Stock, StockJournal, StockRod, StockShell, TakenShell } from './stock.js';
import type { Taken } from './taken.js';

interface Shells {
  readonly upper: TakenShell;
  readonly lower: TakenShell;
}

/** Hands out the parts of classes by name, each as often as it is there. */
class Store {
  private readonly used = new Map<object, number>();

  take<Part extends object>(part: Part): Part {
    this.used.set(part, (this.used.get(part) ?? 0) + 1);
    return part;
  }

  /** @throws RangeError when the class is used up: the model would be wrong. */
  first<Part extends object>(parts: readonly Part[], quantity: (part: Part) => number): Part {
    const free = parts.find((part) => (this.used.get(part) ?? 0) < quantity(part));
    if (!free) throw new RangeError('a class of parts is used up');
    return this.take(free);
  }
}

const ofOne = () => 1;
const ofShell = ({ quantity }: StockShell) => quantity;

function fitOf(
  problem: Problem,
  journal: StockJournal,
  rod: StockRod | undefined,
  shells: Shells,
): MatchedFit {
  const engine = problem.stock.engines.find(({ journals }) => journals.includes(journal))!;
  const bore = rod ?? { ...journal.caseBore!, part: journal.caseBore!.part! };
  const { upper, lower } = shells;
  const ran = [bore.ran, ...[upper, lower].map(ranOfShell)];
  return {
    engine: engine.name,
    journal,
    bore: { name: bore.name, part: bore.part, ran: bore.ran },
    upper,
    lower,
    parts: { bore: bore.part, upper: upper.shell.part, lower: lower.shell.part, journal: journal.part! },
    ranTogether: ran.every((place) => ranOn(place, engine, journal)),
  };
}

function ranOfShell(taken: TakenShell) {
  return taken.from === 'stock' ? taken.shell.ran : undefined;
}

type Of<Is extends Column['meaning']['is']> = Extract<Column['meaning'], { is: Is }>;

/** The columns of one meaning, each as often as it is taken, in an order that does not depend on the search. */
function listed<Is extends Column['meaning']['is']>(
  sets: readonly Taken[],
  is: Is,
  order: (meaning: Of<Is>) => readonly number[],
): Of<Is>[] {
  return sets
    .filter(({ column }) => column.meaning.is === is)
    .map(({ column, times }) => ({
      meaning: column.meaning as Of<Is>,
      times,
      order: order(column.meaning as Of<Is>),
    }))
    .sort((a, b) => {
      const place = a.order.findIndex((value, at) => value !== b.order[at]);
      return place < 0 ? 0 : a.order[place]! - b.order[place]!;
    })
    .flatMap(({ meaning, times }) => Array.from({ length: times }, () => meaning));
}

/** Every filled journal with its parts, in the order of engines and journals. */
export function namedFits(problem: Problem, sets: readonly Taken[]): MatchedFit[] {
  const { journals, rods, shells, kept, gaps, stock } = problem;
  const store = new Store();
  const filled = new Map<StockJournal, MatchedFit>();
  for (const { kept: place } of listed(sets, 'kept', (meaning) => [meaning.kept])) {
    const { journal, rod, upper, lower } = kept[place]!;
    if (rod) store.take(rod);
    for (const shell of [upper, lower]) store.take(shell);
    const taken = { upper: { from: 'stock', shell: upper }, lower: { from: 'stock', shell: lower } } as const;
    filled.set(journal, fitOf(problem, journal, rod, taken));
  }
  const pairs = new Map<number, { upper: number; lower: number }[]>();
  for (const pair of listed(sets, 'pair', ({ shape, upper, lower }) => [shape, upper, lower])) {
    pairs.set(pair.shape, [...(pairs.get(pair.shape) ?? []), pair]);
  }
  const shellOf = (place: number): TakenShell => {
    const { bought, shells: own } = shells[place]!;
    return bought ? { from: 'new', shell: bought } : { from: 'stock', shell: store.first(own, ofShell) };
  };
  const order = ({ gap, shape }: Of<'fit'>) => [gaps[gap]!.journal, gaps[gap]!.rod ?? 0, shape];
  for (const { gap, shape } of listed(sets, 'fit', order)) {
    const open: Gap = gaps[gap]!;
    const journal = journals[open.journal]!.journals.find((each) => !filled.has(each))!;
    const rod = open.rod === undefined ? undefined : store.first(rods[open.rod]!.rods, ofOne);
    const pair = pairs.get(shape)!.shift()!;
    filled.set(
      journal,
      fitOf(problem, journal, rod, { upper: shellOf(pair.upper), lower: shellOf(pair.lower) }),
    );
  }
  return stock.engines.flatMap((engine) => engine.journals.flatMap((journal) => filled.get(journal) ?? []));
}

/** Names of the engines whose journals are all filled; an engine without journals is none. */
export function completeEngines({ engines }: Stock, fits: readonly MatchedFit[]): string[] {
  const filled = new Set(fits.map(({ journal }) => journal));
  return engines
    .filter(({ journals }) => journals.length > 0 && journals.every((journal) => filled.has(journal)))
    .map(({ name }) => name);
}
