/**
 * From classes back to named parts: the first names go to the first journals.
 *
 * Fits that keep their parts together, and rods that stay, need certain parts of a class, and are served first.
 */
import type { Home } from './homes.js';
import { type KeptFit, ranOn } from './kept-fits.js';
import type { Problem } from './problem.js';
import { type Choice, NO_ROD } from './sites.js';
import type {
  MatchedFit,
  RanAt,
  Stock,
  StockEngine,
  StockJournal,
  StockRod,
  StockShell,
  TakenShell,
} from './stock.js';
import type { WorkingSets } from './working-sets.js';

/** The parts of a fit, by name. */
interface Named {
  readonly rod: StockRod | undefined;
  readonly upper: TakenShell;
  readonly lower: TakenShell;
}

/** Hands out the parts of classes by name, each as often as the stock has it. */
class Store {
  private readonly used = new Map<object, number>();
  /** By class: how many parts at the beginning of its list are used up. */
  private readonly passed = new Map<object, number>();

  constructor(private readonly problem: Problem) {}

  private isFree(part: StockRod | StockShell): boolean {
    return (this.used.get(part) ?? 0) < ('quantity' in part ? part.quantity : 1);
  }

  private areFree(upper: StockShell, lower: StockShell): boolean {
    const isTwice = upper === lower && (this.used.get(upper) ?? 0) + 2 > upper.quantity;
    return !isTwice && this.isFree(upper) && this.isFree(lower);
  }

  private take<Part extends StockRod | StockShell>(part: Part): Part {
    this.used.set(part, (this.used.get(part) ?? 0) + 1);
    return part;
  }

  /** @throws RangeError where the class is used up: the sets are wrong then. */
  private first<Part extends StockRod | StockShell>(parts: readonly Part[]): Part {
    let place = this.passed.get(parts) ?? 0;
    while (place < parts.length && !this.isFree(parts[place]!)) place++;
    this.passed.set(parts, place);
    const part = parts[place];
    if (!part) throw new RangeError('a class of parts is used up');
    return this.take(part);
  }

  /** The parts that ran together; undefined where another journal has one of them. */
  takeKept({ rod, upper, lower }: KeptFit): Named | undefined {
    if ((rod && !this.isFree(rod)) || !this.areFree(upper, lower)) return undefined;
    return {
      rod: rod && this.take(rod),
      upper: { from: 'stock', shell: this.take(upper) },
      lower: { from: 'stock', shell: this.take(lower) },
    };
  }

  private shell(place: number): TakenShell {
    const { bought, shells } = this.problem.shells[place]!;
    return bought ? { from: 'new', shell: bought } : { from: 'stock', shell: this.first(shells) };
  }

  /** A rod that ran on the journal; undefined where it is in use. */
  takeHome(homes: readonly Home[], rod: number): StockRod | undefined {
    const own = homes.find(
      (home) => this.problem.rods[rod]!.rods.includes(home.rod) && this.isFree(home.rod),
    );
    return own && this.take(own.rod);
  }

  /** @throws RangeError where the pairs of the class are used up: the sets are wrong then. */
  private pair(place: number): Pick<Named, 'upper' | 'lower'> {
    const { bought, pairs } = this.problem.shells[place]!;
    if (bought) return { upper: { from: 'new', shell: bought }, lower: { from: 'new', shell: bought } };
    const free = pairs.find(({ upper, lower }) => this.areFree(upper, lower));
    if (!free) throw new RangeError('a class of pairs is used up');
    return {
      upper: { from: 'stock', shell: this.take(free.upper) },
      lower: { from: 'stock', shell: this.take(free.lower) },
    };
  }

  /** @param own the rod, where it is taken already */
  takeAny({ rod, upper, lower }: Choice, own: StockRod | undefined): Named {
    const isPair = this.problem.shells[upper]!.half === 'pair';
    return {
      rod: own ?? (rod === NO_ROD ? undefined : this.first(this.problem.rods[rod]!.rods)),
      ...(isPair ? this.pair(upper) : { upper: this.shell(upper), lower: this.shell(lower) }),
    };
  }
}

/** Shells in a bore ran wherever it ran. */
function ranOfShell(taken: TakenShell, bore: RanAt | undefined) {
  if (taken.from === 'new') return undefined;
  return taken.shell.isBrought ? bore : taken.shell.ran;
}

/** A journal of an engine with its parts. */
export function namedFit(
  engine: StockEngine,
  journal: StockJournal,
  { rod, upper, lower }: Named,
): MatchedFit {
  const bore = rod ?? { ...journal.caseBore!, part: journal.caseBore!.part! };
  const ran = [bore.ran, ranOfShell(upper, bore.ran), ranOfShell(lower, bore.ran)];
  return {
    engine: engine.name,
    journal,
    bore: { name: bore.name, part: bore.part, ran: bore.ran },
    upper,
    lower,
    parts: { bore: bore.part, upper: upper.shell.part, lower: lower.shell.part, journal: journal.part! },
    ranTogether: ran.every((place) => ranOn(place, engine, journal)),
    rodStays: rod !== undefined && ranOn(rod.ran, engine, journal),
  };
}

/** Every filled journal with its parts, in the order of engines and journals. */
export function namedFits({ table, choices }: WorkingSets): MatchedFit[] {
  const { problem, sites } = table;
  const store = new Store(problem);
  const named = new Map<number, Named>();
  for (const [site, choice] of choices.entries()) {
    if (!choice) continue;
    for (const { kept, rod, upper, lower } of table.togetherAt(site)) {
      if (named.has(site) || rod !== choice.rod || upper !== choice.upper || lower !== choice.lower) continue;
      const parts = store.takeKept(problem.kept[kept]!);
      if (parts) named.set(site, parts);
    }
  }
  const homesAt = new Map<StockJournal, Home[]>();
  for (const home of problem.homes) homesAt.set(home.journal, [...(homesAt.get(home.journal) ?? []), home]);
  const rods = new Map<number, StockRod>();
  for (const [site, choice] of choices.entries()) {
    if (!choice || named.has(site) || choice.rod === NO_ROD) continue;
    const rod = store.takeHome(homesAt.get(sites[site]!.journal) ?? [], choice.rod);
    if (rod) rods.set(site, rod);
  }
  return choices.flatMap((choice, site) => {
    if (!choice) return [];
    const { engine, journal } = sites[site]!;
    const parts = named.get(site) ?? store.takeAny(choice, rods.get(site));
    return [namedFit(problem.stock.engines[engine]!, journal, parts)];
  });
}

/** Names of the engines whose journals are all filled; an engine without journals is none. */
export function completeEngines({ engines }: Stock, fits: readonly MatchedFit[]): string[] {
  const filled = new Set(fits.map(({ journal }) => journal));
  return engines
    .filter(({ journals }) => journals.length > 0 && journals.every((journal) => filled.has(journal)))
    .map(({ name }) => name);
}
