/** The rows of a stock as matched sets name them, for the second check. */
import type {
  FitKind,
  KindLimits,
  MatchedFit,
  Stock,
  StockJournal,
  StockNewShell,
  StockRod,
  StockShell,
  TakenShell,
} from './stock.js';

/** A rule that a result breaks. */
export interface Breach {
  readonly rule: string;
  /** The set that breaks it, the engine or the aim: `engine C3, big end 2`. */
  readonly where: string;
  readonly what: string;
}

/** Whether two rows are of one engine type and one fit. */
export function isAlike(a: FitKind, b: FitKind): boolean {
  return a.engineType === b.engineType && a.fit === b.fit;
}

export function setInWords({ engine, journal }: MatchedFit): string {
  return `engine ${engine}, ${journal.fit} ${journal.position}`;
}

export function shellInWords({ from, shell }: TakenShell): string {
  return from === 'new' ? `new shell ${shell.mark}` : `shell ${shell.name}`;
}

export class StockRows {
  private readonly journals: ReadonlyMap<string, ReadonlySet<StockJournal>>;
  private readonly rods = new Map<string, StockRod[]>();
  private readonly shells: ReadonlySet<StockShell>;
  private readonly newShells: ReadonlySet<StockNewShell>;

  constructor(readonly stock: Stock) {
    this.journals = new Map(stock.engines.map(({ name, journals }) => [name, new Set(journals)]));
    for (const rod of stock.rods) {
      const named = this.rods.get(rod.name);
      if (named) named.push(rod);
      else this.rods.set(rod.name, [rod]);
    }
    this.shells = new Set(stock.shells);
    this.newShells = new Set(stock.newShells);
  }

  hasJournal({ engine, journal }: MatchedFit): boolean {
    return this.journals.get(engine)?.has(journal) ?? false;
  }

  hasShell({ from, shell }: TakenShell): boolean {
    return from === 'new' ? this.newShells.has(shell) : this.shells.has(shell);
  }

  /** The rod of a set; undefined where its journal sits in a case, and where the stock has no such rod. */
  rodOf({ journal, bore }: MatchedFit): StockRod | undefined {
    if (journal.caseBore) return undefined;
    const named = this.rods.get(bore.name)?.filter(({ part }) => part === bore.part) ?? [];
    return named.find(({ engineType }) => engineType === journal.engineType) ?? named[0];
  }

  /** Of two rows of limits for one kind the first counts. */
  limitsOf(kind: FitKind): KindLimits | undefined {
    return this.stock.kinds.find((row) => isAlike(row, kind));
  }
}
