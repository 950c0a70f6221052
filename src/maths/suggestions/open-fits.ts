/**
 * Which fits of a whole stock are allowed, whatever the sets take: where a part could go, and why no part can go on a
 * journal.
 */
import type { FitParts } from '../clearance.js';
import type { Grain } from '../grain.js';
import { withItsShells } from '../matching/brought-shells.js';
import type { FitKind, Stock, StockJournal, StockRod, StockShell } from '../matching/stock.js';
import type { MeasuredPart } from '../uncertainty.js';
import { outward } from './outward.js';
import {
  type AnyShell,
  type GivenLimits,
  goesOn,
  type Side,
  SingleFitRules,
  sameKind,
  wishOf,
} from './rules.js';

/** Why no set of the stock can fill a journal; `taken`: some could. */
export type Obstacle =
  | 'no rod'
  | 'no mass'
  | 'no upper shell'
  | 'no lower shell'
  | 'half difference'
  | 'no fit'
  /** Its case bore was measured with its shells in, and they do not suit. */
  | 'shells in'
  | 'taken';

interface Entry<Row> {
  readonly row: Row;
}

/** A bore that a journal may sit in. */
interface OpenBore {
  readonly part: MeasuredPart;
  readonly hasShells?: true;
}

interface SizedShells {
  readonly entries: readonly Entry<AnyShell>[];
  readonly least: Grain;
  readonly greatest: Grain;
}

export class OpenFits {
  private readonly rules: SingleFitRules;
  private readonly shells = new Map<string, SizedShells>();
  private readonly rods = new Map<string, readonly Entry<StockRod>[]>();
  /** Of rods that may be used, by engine type. */
  private readonly bores = new Map<string, readonly OpenBore[]>();
  private engineOf: ReadonlyMap<StockJournal, string> | undefined;
  /** By kind and place: the lower halves that serve only with the others of the place. */
  private readonly mates = new Map<string, readonly Entry<AnyShell>[]>();

  constructor(private readonly stock: Stock) {
    this.rules = new SingleFitRules(stock);
  }

  /** Why no set of the stock fills the journal, even if it were the only one. */
  obstacleOf(journal: StockJournal): Obstacle {
    const limits = this.rules.limitsOf(journal);
    const bores = this.boresOf(journal);
    if (bores.length === 0) {
      return this.rodsOf(journal.engineType).length > 0 ? 'no mass' : 'no rod';
    }
    const brought = bores.filter(({ hasShells }) => hasShells);
    if (limits && brought.some((bore) => this.hasPair(journal, bore, limits))) return 'taken';
    if (brought.length === bores.length) return journal.caseBore ? 'shells in' : 'no fit';
    for (const side of ['upper', 'lower'] as const) {
      if (this.shellsOf(journal, side).entries.length === 0) return `no ${side} shell`;
    }
    if (!limits) return 'no fit';
    if (bores.some((bore) => this.hasPair(journal, bore, limits))) return 'taken';
    const anyPair = { ...limits, halfDifference: undefined };
    const isByHalves = limits.halfDifference !== undefined;
    return isByHalves && bores.some((bore) => this.hasPair(journal, bore, anyPair))
      ? 'half difference'
      : 'no fit';
  }

  /** The rods that make an allowed fit on a journal with some pair of the stock's shells. */
  rodsFor(journal: StockJournal): StockRod[] {
    const limits = this.rules.limitsOf(journal);
    if (!limits || journal.caseBore) return [];
    return this.stock.rods.filter(
      (rod) =>
        rod.engineType === journal.engineType &&
        this.mayServe(rod, journal) &&
        (limits.massSpread === undefined || rod.mass !== undefined) &&
        this.hasPair(journal, rod, limits),
    );
  }

  /** The shells that make an allowed fit on a journal, as one half, with some bore and other half of the stock. */
  shellsFor(journal: StockJournal, side: Side): StockShell[] {
    return this.stock.shells.filter(
      (shell) => sameKind(shell, journal) && !shell.isBrought && this.isOpenToShell(journal, shell, side),
    );
  }

  isOpenToRod(journal: StockJournal, rod: StockRod): boolean {
    const limits = this.rules.limitsOf(journal);
    if (!limits || journal.caseBore || rod.engineType !== journal.engineType) return false;
    if (limits.massSpread !== undefined && rod.mass === undefined) return false;
    if (!this.mayServe(rod, journal)) return false;
    return this.hasPair(journal, rod, limits);
  }

  isOpenToShell(journal: StockJournal, shell: StockShell, side: Side): boolean {
    const limits = this.rules.limitsOf(journal);
    const { part: journalPart, caseBore } = journal;
    if (!limits || !journalPart || !sameKind(shell, journal) || !goesOn(shell.half, side)) return false;
    const others = this.shellsOf(journal, side === 'upper' ? 'lower' : 'upper');
    const fits = (bore: MeasuredPart, other: MeasuredPart) => {
      const [upper, lower] = side === 'upper' ? [shell.part, other] : [other, shell.part];
      return this.rules.allows({ bore, upper, lower, journal: journalPart }, limits);
    };
    const rods = this.rodsOf(journal.engineType).filter(({ row }) => !row.hasShells);
    if (caseBore?.hasShells) return false;
    const bores = caseBore ? [caseBore.part] : [rods[0]?.row.part, rods.at(-1)?.row.part];
    const [least, greatest] = [bores[0]?.size, bores.at(-1)?.size];
    if (least === undefined || greatest === undefined) return false;
    const without = journalPart.size + shell.part.size + wishOf(limits);
    const reach = this.reachOf(limits);
    // Other halves that some bore leaves room for.
    const [middle, span] = [(least + greatest) / 2 - without, (greatest - least) / 2 + reach];
    for (const { row } of outward(others.entries, middle, span)) {
      if (row === shell && shell.quantity < 2) continue;
      const [upper, lower] = side === 'upper' ? [shell, row] : [row, shell];
      if (!this.rules.mayStand(upper, lower)) continue;
      if (!this.rules.pairs(shell.part, row.part, limits)) continue;
      if (caseBore) {
        if (caseBore.part && fits(caseBore.part, row.part)) return true;
        continue;
      }
      for (const rod of outward(rods, without + row.part.size, reach)) {
        if (limits.massSpread !== undefined && rod.row.mass === undefined) continue;
        if (!this.mayServe(rod.row, journal)) continue;
        if (fits(rod.row.part, row.part)) return true;
      }
    }
    return false;
  }

  private boresOf(journal: StockJournal): readonly OpenBore[] {
    const { caseBore, engineType } = journal;
    if (caseBore) {
      const { part, hasShells } = caseBore;
      return part ? [{ part, ...(hasShells && { hasShells }) }] : [];
    }
    const known = this.stock.rodsStay ? undefined : this.bores.get(engineType);
    if (known) return known;
    const needsMass = this.rules.limitsOf(journal)?.massSpread !== undefined;
    const rods = this.rodsOf(engineType).filter(
      ({ row }) => (!needsMass || row.mass !== undefined) && this.mayServe(row, journal),
    );
    const bores = rods.map(({ row }) => row);
    this.bores.set(engineType, bores);
    return bores;
  }

  private mayServe(rod: StockRod, journal: StockJournal): boolean {
    if (!this.stock.rodsStay) return true;
    this.engineOf ??= new Map(
      this.stock.engines.flatMap(({ name, journals }) => journals.map((own) => [own, name] as const)),
    );
    return this.rules.mayServe(rod, this.engineOf.get(journal) ?? '', journal);
  }

  private rodsOf(engineType: string): readonly Entry<StockRod>[] {
    const known = this.rods.get(engineType);
    if (known) return known;
    const own = this.stock.rods.filter((rod) => rod.engineType === engineType).map((row) => ({ row }));
    own.sort((a, b) => a.row.part.size - b.row.part.size);
    this.rods.set(engineType, own);
    return own;
  }

  /** Shells that are there or may be bought. */
  private shellsOf({ engineType, fit }: FitKind, side: Side): SizedShells {
    const key = JSON.stringify([engineType, fit, side]);
    const known = this.shells.get(key);
    if (known) return known;
    const rows: AnyShell[] = [...this.stock.shells, ...this.stock.newShells].filter(
      (shell) =>
        sameKind(shell, { engineType, fit }) &&
        goesOn(shell.half, side) &&
        !('isBrought' in shell && shell.isBrought),
    );
    const entries = rows.map((row) => ({ row })).sort((a, b) => a.row.part.size - b.row.part.size);
    const least = entries[0]?.row.part.size ?? 0;
    const sizes = { entries, least, greatest: entries.at(-1)?.row.part.size ?? 0 };
    this.shells.set(key, sizes);
    return sizes;
  }

  /** The lower halves that may stand beside an upper one, and maybe others. */
  private lowersBeside(kind: FitKind, upper: AnyShell, { entries }: SizedShells): readonly Entry<AnyShell>[] {
    const mates = 'quantity' in upper ? upper.mates : undefined;
    const key = JSON.stringify([kind.engineType, kind.fit, mates]);
    const known = this.mates.get(key);
    if (known) return known;
    const own = entries.filter(({ row }) => ('quantity' in row ? row.mates : undefined) === mates);
    this.mates.set(key, own);
    return own;
  }

  /**
   * How far the clearance of an allowed fit may lie from the wish; an undecided one may pass the range by its guard.
   */
  private reachOf(limits: GivenLimits): Grain {
    const wish = wishOf(limits);
    const roof = limits.serviceLimit ?? limits.max;
    const range = Math.max(roof - wish, wish - limits.min);
    return this.rules.allowsOutside
      ? 2 * range + (roof - limits.min)
      : Math.max(limits.max - wish, wish - limits.min);
  }

  private hasPair(journal: StockJournal, { part: bore, hasShells }: OpenBore, limits: GivenLimits): boolean {
    const { part } = journal;
    if (!part) return false;
    if (hasShells) return this.rules.suits(withItsShells(bore, part), limits);
    const [uppers, lowers] = [this.shellsOf(journal, 'upper'), this.shellsOf(journal, 'lower')];
    const walls = bore.size - part.size - wishOf(limits);
    const reach = this.reachOf(limits);
    // Out of reach of the thinnest pair, or of the thickest.
    if (walls + reach < uppers.least + lowers.least || walls - reach > uppers.greatest + lowers.greatest) {
      return false;
    }
    for (const { row: upper } of outward(uppers.entries, walls / 2)) {
      const beside = this.lowersBeside(journal, upper, lowers);
      for (const { row: lower } of outward(beside, walls - upper.part.size, reach)) {
        if (upper === lower && 'quantity' in upper && upper.quantity < 2) continue;
        if (!this.rules.mayStand(upper, lower)) continue;
        const fit: FitParts<MeasuredPart> = { bore, upper: upper.part, lower: lower.part, journal: part };
        if (this.rules.allows(fit, limits)) return true;
      }
    }
    return false;
  }
}
