/**
 * Fits that are settled from the start, where what ran together goes before the distance from the aim.
 *
 * Where every journal is filled without buying, and each that can keep its parts keeps them, no aim up to there can be
 * reached better. So these journals and their parts are left out, and only the rest is searched. Of a stock that mostly
 * stays as it is, this is little.
 */
import { type KeptFit, keptFits } from './kept-fits.js';
import { massRanks, withinMassSpread } from './mass-windows.js';
import { namedFit } from './named-fits.js';
import { keyOfKind } from './part-classes.js';
import type { MatchedFit, Stock, StockJournal, StockShell, TakenShell } from './stock.js';
import { isProvable, type ProvableLimits } from './verdicts.js';

/** A smaller share of settled journals is not worth a search of the rest that may be in vain. */
const LEAST_SHARE = 0.2;

export interface Settled {
  readonly fits: readonly MatchedFit[];
  /** The stock without their journals and parts. */
  readonly rest: Stock;
  /** How many journals of the rest could keep their parts. */
  readonly keptInRest: number;
  /** Fits of the rest as fits of the stock. */
  readonly ofStock: (fits: readonly MatchedFit[]) => MatchedFit[];
}

/** Whether two fits are one, with its halves in the other order; as mates they have no other partner. */
function isMirrored(a: KeptFit, b: KeptFit): boolean {
  return a.rod === b.rod && a.upper === b.lower && a.lower === b.upper && a.upper.mates !== undefined;
}

/** The journals that can keep their parts, each with the only way to do so; undefined where it has several. */
function onlyFits(kept: readonly KeptFit[]): Map<StockJournal, KeptFit | undefined> {
  const only = new Map<StockJournal, KeptFit | undefined>();
  for (const fit of kept) {
    const known = only.get(fit.journal);
    if (known && isMirrored(known, fit)) continue;
    only.set(fit.journal, only.has(fit.journal) ? undefined : fit);
  }
  return only;
}

/** Whether the fits use no part more often than it is there. */
function areTogetherPossible(fits: readonly KeptFit[]): boolean {
  const used = new Map<object | string, number>();
  const take = (part: object | string, most: number) => {
    const times = (used.get(part) ?? 0) + 1;
    used.set(part, times);
    return times <= most;
  };
  return fits.every(({ journal, rod, upper, lower }) => {
    const bore = rod ? take(rod, 1) : take(journal.caseBore!.name, 1);
    return bore && take(upper, upper.quantity) && take(lower, lower.quantity);
  });
}

/** The settled journals: of a crank whose rods are weighed all, or none. */
function settledFits(stock: Stock, only: ReadonlyMap<StockJournal, KeptFit | undefined>): KeptFit[] {
  const weighed = new Set(massRanks(stock).keys());
  return stock.engines.flatMap(({ journals }) => {
    const isWeighed = (journal: StockJournal) => !journal.caseBore && weighed.has(journal.engineType);
    const stays = (engineType: string): boolean => {
      const own = journals.filter((journal) => isWeighed(journal) && journal.engineType === engineType);
      const rods = own.map((journal) => only.get(journal)?.rod);
      const { massSpread } = stock.kinds.find((kind) => keyOfKind(kind) === keyOfKind(own[0]!))!;
      if (rods.some((rod) => rod?.mass === undefined) || massSpread === undefined) return false;
      return withinMassSpread(
        rods.map((rod) => rod!.mass!),
        massSpread,
      );
    };
    const types = new Set(journals.filter(isWeighed).map(({ engineType }) => engineType));
    const cranksThatStay = new Set([...types].filter(stays));
    return journals
      .filter((journal) => !isWeighed(journal) || cranksThatStay.has(journal.engineType))
      .flatMap((journal) => only.get(journal) ?? []);
  });
}

function withoutParts(stock: Stock, fits: readonly KeptFit[]): Pick<Settled, 'rest' | 'ofStock'> {
  const journals = new Set(fits.map(({ journal }) => journal));
  const rods = new Set(fits.map(({ rod }) => rod));
  const taken = new Map<object, number>();
  for (const { upper, lower } of fits)
    for (const shell of [upper, lower]) taken.set(shell, (taken.get(shell) ?? 0) + 1);
  const originals = new Map<object, StockShell>();
  const rest = {
    ...stock,
    engines: stock.engines
      .map((engine) => ({ ...engine, journals: engine.journals.filter((own) => !journals.has(own)) }))
      .filter((engine) => engine.journals.length > 0),
    rods: stock.rods.filter((rod) => !rods.has(rod)),
    shells: stock.shells.flatMap((shell) => {
      const used = taken.get(shell) ?? 0;
      if (used === 0) return [shell];
      if (used >= shell.quantity) return [];
      const left = { ...shell, quantity: shell.quantity - used };
      originals.set(left, shell);
      return [left];
    }),
  };
  const original = (taken: TakenShell): TakenShell =>
    taken.from === 'new' ? taken : { from: 'stock', shell: originals.get(taken.shell) ?? taken.shell };
  const ofStock = (own: readonly MatchedFit[]) =>
    own.map((fit) => ({ ...fit, upper: original(fit.upper), lower: original(fit.lower) }));
  return { rest, ofStock };
}

/**
 * The fits that are settled where the rest can be filled whole and keeps what it can; undefined where there are few.
 * @param stock in the order of names
 */
export function settledOf(stock: Stock): Settled | undefined {
  if (!stock.preferKeptPairs) return undefined;
  const limits = new Map<string, ProvableLimits>();
  for (const kind of stock.kinds) if (isProvable(kind)) limits.set(keyOfKind(kind), kind);
  const only = onlyFits(keptFits(stock, limits));
  const fits = settledFits(stock, only);
  const journals = stock.engines.reduce((sum, engine) => sum + engine.journals.length, 0);
  const isInRange = fits.every((fit) => fit.isInRange);
  if (fits.length < LEAST_SHARE * journals || fits.length === 0) return undefined;
  if (!areTogetherPossible(fits) || (stock.allowWorn && !isInRange)) return undefined;
  return {
    fits: fits.map(({ engine, journal, rod, upper, lower }) =>
      namedFit(engine, journal, {
        rod,
        upper: { from: 'stock', shell: upper },
        lower: { from: 'stock', shell: lower },
      }),
    ),
    ...withoutParts(stock, fits),
    keptInRest: only.size - fits.length,
  };
}
