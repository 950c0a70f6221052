/**
 * Classes of alike parts: parts that are equal in all values that a fit depends on are one class with a count.
 *
 * Where a part ran does not count here: fits that keep parts together name their parts one by one (kept-fits.ts). So
 * used shells form classes as well.
 */
import type { MeasuredPart } from '../uncertainty.js';
import { type FusedPair, partedShells } from './fused-pairs.js';
import { massRanks } from './mass-windows.js';
import { sizeTerms } from './size-terms.js';
import type {
  FitKind,
  Half,
  RanAt,
  Stock,
  StockEngine,
  StockJournal,
  StockNewShell,
  StockRod,
  StockShell,
} from './stock.js';
import { measuredAlike } from './verdicts.js';

export interface JournalClass extends FitKind {
  /** Places of the journals' engines in the ordered stock. */
  readonly engines: readonly number[];
  readonly part: MeasuredPart;
  /** Set for mains: the one bore that the journal sits in. */
  readonly caseBore: MeasuredPart | undefined;
  /** Whether every fit of its case bore is undecided. */
  readonly isUncorrected: boolean;
  /** Whether its engines cannot be completed, not even each alone. */
  readonly isHopeless: boolean;
  /** The case bore was measured with its shells in. */
  readonly hasShells: boolean;
  readonly journals: StockJournal[];
}

export interface RodClass {
  readonly engineType: string;
  readonly part: MeasuredPart;
  /** Rank of the mass among the rods of the type; undefined where mass plays no part. */
  readonly massRank: number | undefined;
  /** The only place where its rods serve; undefined where they serve anywhere. */
  readonly servesAt: RanAt | undefined;
  /** They were measured with their shells in. */
  readonly hasShells: boolean;
  readonly rods: StockRod[];
}

/** Half-shells alike, or pairs alike that are used as one. */
export interface ShellClass extends FitKind {
  readonly half: Half | 'pair';
  /** A half-shell; of pairs alike the halves of one. */
  readonly part: MeasuredPart;
  readonly otherPart: MeasuredPart;
  /** How many half-shells there are, those of pairs included; infinite for what can be bought. */
  readonly count: number;
  /** The rows of the stock; of pairs those of both halves. */
  readonly shells: readonly StockShell[];
  readonly pairs: readonly FusedPair[];
  readonly bought: StockNewShell | undefined;
  /** The place whose half-shells serve only with each other. */
  readonly mates: string | undefined;
  readonly isBrought: boolean;
}

export const BIG_END = 'big end';

export function keyOfKind({ engineType, fit }: FitKind): string {
  return JSON.stringify([engineType, fit]);
}

/** A text that is equal for parts that no fit can tell apart. */
export function keyOfPart(part: MeasuredPart): string {
  const { size, largest, smallest, systematic, readVariance, spots } = part;
  const { temperatureVariance, ownExpansion, gaugeExpansion } = part;
  const sources = systematic.map(({ gauge, maxError, isConstant }) => [gauge, maxError, isConstant]);
  const scatter = [readVariance, spots, temperatureVariance, ownExpansion];
  const expansion = gaugeExpansion && [gaugeExpansion.gauge, gaugeExpansion.contribution];
  return JSON.stringify([size, largest, smallest, scatter, expansion, sources]);
}

function groupsByKey<Row>(rows: readonly Row[], key: (row: Row) => string): Row[][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const name = key(row);
    const group = groups.get(name);
    if (group) group.push(row);
    else groups.set(name, [row]);
  }
  return [...groups.values()];
}

/** A journal can be filled only if it and its bore are measured; a rod serves a big end only. */
function isFillable({ part, caseBore, fit }: StockJournal): boolean {
  if (!part) return false;
  return caseBore ? caseBore.part !== undefined : fit === BIG_END;
}

/**
 * The journals that can be filled, alike ones together.
 * @param apart a text; journals of equal values are one class only where it is equal too
 */
export function journalClasses(
  engines: readonly StockEngine[],
  apart: (journal: StockJournal, engine: number, place: number) => string,
): JournalClass[] {
  const rows = engines.flatMap((engine, place) =>
    engine.journals.filter(isFillable).map((journal, at) => ({
      journal,
      engine: place,
      isHopeless: engine.isHopeless === true,
      key: JSON.stringify([
        keyOfKind(journal),
        keyOfPart(journal.part!),
        caseKey(journal),
        engine.isHopeless === true,
        apart(journal, place, at),
      ]),
    })),
  );
  return groupsByKey(rows, ({ key }) => key).map((group) => {
    const [{ journal, isHopeless }] = group as [(typeof rows)[number]];
    return {
      engines: group.map(({ engine }) => engine),
      engineType: journal.engineType,
      fit: journal.fit,
      part: journal.part!,
      caseBore: journal.caseBore?.part,
      isUncorrected: journal.caseBore?.isUncorrected === true,
      isHopeless,
      hasShells: journal.caseBore?.hasShells ?? false,
      journals: group.map((row) => row.journal),
    };
  });
}

function caseKey({ caseBore }: StockJournal): string {
  if (!caseBore) return '';
  return JSON.stringify([
    keyOfPart(caseBore.part!),
    caseBore.isUncorrected === true,
    caseBore.hasShells ?? false,
  ]);
}

/**
 * Rods by values. Where their type has a mass spread they are told apart by mass as well, and those without a mass are
 * left out.
 * @param groupsOf groups of masses by which to tell them apart in place of the masses
 */
export function rodClasses(stock: Stock, groupsOf?: (rod: StockRod) => readonly number[]): RodClass[] {
  const ranks = massRanks(stock);
  const usable = stock.rods.filter((rod) => !ranks.has(rod.engineType) || rod.mass !== undefined);
  const rankOf = (rod: StockRod) => (groupsOf ? undefined : ranks.get(rod.engineType)?.rankOf(rod.mass!));
  const massKey = groupsOf ?? rankOf;
  const servesAt = (rod: StockRod) => (stock.rodsStay ? rod.ran : undefined);
  return groupsByKey(usable, (rod) =>
    JSON.stringify([
      rod.engineType,
      keyOfPart(rod.part),
      rod.hasShells ?? false,
      massKey(rod),
      servesAt(rod),
    ]),
  ).map((rods) => ({
    engineType: rods[0]!.engineType,
    part: rods[0]!.part,
    massRank: rankOf(rods[0]!),
    servesAt: servesAt(rods[0]!),
    hasShells: rods[0]!.hasShells ?? false,
    rods,
  }));
}

/** What tells pairs apart that are used as one: the sums of their walls, and how these were measured. */
function keyOfPair({ upper, lower }: FusedPair): string {
  const [a, b] = [upper.part, lower.part];
  const sums = [a.size + b.size, a.largest + b.largest, a.smallest + b.smallest];
  const { own, inner, gauges } = sizeTerms([
    { sign: -1, part: a },
    { sign: -1, part: b },
  ]);
  return JSON.stringify([keyOfKind(upper), sums, measuredAlike(a, b).key, own, inner, gauges]);
}

/** Shells by values and half, pairs by their values; each mark for sale is a class of its own. */
export function shellClasses(stock: Stock): ShellClass[] {
  const { singles, pairs } = partedShells(stock.shells);
  const owned = groupsByKey(singles, (shell) =>
    JSON.stringify([
      keyOfKind(shell),
      shell.half,
      keyOfPart(shell.part),
      shell.mates,
      shell.isBrought ?? false,
    ]),
  ).map((shells) => ({
    engineType: shells[0]!.engineType,
    fit: shells[0]!.fit,
    half: shells[0]!.half,
    part: shells[0]!.part,
    otherPart: shells[0]!.part,
    count: shells.reduce((sum, { quantity }) => sum + quantity, 0),
    shells,
    pairs: [],
    bought: undefined,
    mates: shells[0]!.mates,
    isBrought: shells[0]!.isBrought ?? false,
  }));
  const asOne = groupsByKey(pairs, keyOfPair).map((alike) => ({
    engineType: alike[0]!.upper.engineType,
    fit: alike[0]!.upper.fit,
    half: 'pair' as const,
    part: alike[0]!.upper.part,
    otherPart: alike[0]!.lower.part,
    count: 2 * alike.reduce((sum, { count }) => sum + count, 0),
    shells: [...new Set(alike.flatMap(({ upper, lower }) => [upper, lower]))],
    pairs: alike,
    bought: undefined,
    mates: undefined,
    isBrought: false,
  }));
  const bought = stock.newShells.map((shell) => ({
    engineType: shell.engineType,
    fit: shell.fit,
    half: shell.half,
    part: shell.part,
    otherPart: shell.part,
    count: Number.POSITIVE_INFINITY,
    shells: [],
    pairs: [],
    bought: shell,
    mates: undefined,
    isBrought: false,
  }));
  // Pairs last: a table of single halves with each other has no place for them.
  const isPair = ({ half }: ShellClass) => half === 'pair';
  const all: ShellClass[] = [...owned, ...bought, ...asOne];
  return [...all.filter((each) => !isPair(each)), ...all.filter(isPair)];
}
