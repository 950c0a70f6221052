/**
 * Which parts make a fit: those that its row names, and for blank cells the part at that place
 * (Engine, Fit, Position). Where the book leaves a choice, the fit is unclear and says so; never a guess.
 */
import type { FitRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { FIT_SLOTS, FITS, type FitSlot, slotHeader } from '../input-sheets/fits.js';
import { kindsOfFit } from '../kinds/index.js';
import {
  type FitTerm,
  isOnFits,
  type KindOfFit,
  kindWithBore,
  TERM_SLOTS,
  termOf,
} from '../kinds/kind-of-fit.js';
import { sheetsOfTerm } from '../kinds/sheets-of-term.js';
import { SHELL_BEARING } from '../kinds/shell-bearing.js';
import { groupBy } from './context.js';
import { halfOf, onlyPart, shellsByPlace, tooMany, wrongHalves } from './half-shells.js';
import type { PartResult } from './part-result.js';
import { type FitPlace, type PartsOfBook, type PlacedFit, partsOf, type SlotParts } from './placed-fit.js';
import { ShellsInBores } from './shells-in-bores.js';
import { WordsOfFits } from './words-of-fits.js';

function placeKey({ engine, fit, position }: FitPlace): string {
  return [engine, fit, position].map(nameKey).join('\u0000');
}

/**
 * @param rows the user's Fits, or undefined to make one fit a part that leads its kind
 * @param keptStrips strip readings of a Fits sheet that is made anew
 */
export function placeFits(
  parts: PartsOfBook,
  rows: readonly FitRow[] | undefined,
  keptStrips: readonly FitRow[],
): PlacedFit[] {
  const inBores = new ShellsInBores(
    parts.map((own) => own.map(({ row }) => row)),
    rows,
  );
  const placer = new Placer(parts, inBores);
  const kept = firstOf(keptStrips, placeKey);
  const byLeaders = (kind: KindOfFit) =>
    leadersOf(kind, parts).map((leader) => placer.ofLeader(kind, leader, kept.get(placeKey(leader.row))));
  const kinds = kindsOfFit();
  return refuseOverused([
    ...(rows ? rows.map((row) => placer.ofRow(row)) : kinds.filter(isOnFits).flatMap(byLeaders)),
    // What is measured as a whole makes a fit each, whatever Fits says.
    ...kinds.filter((kind) => !isOnFits(kind)).flatMap(byLeaders),
  ]);
}

/** The usable parts that make a fit each. */
function leadersOf(kind: KindOfFit, parts: PartsOfBook): PartResult[] {
  const { sheets } = termOf(kind, kind.leader)!;
  return parts
    .ofAll(sheets)
    .filter(
      ({ row }) => row.usable && !(kind.leaderNeedsPlace && (row.engine === '' || row.position === '')),
    );
}

class Placer {
  private readonly words: WordsOfFits;
  /** Parts by sheet and place, and by sheet and name. */
  private readonly atPlace = new Map<string, Map<string, PartResult[]>>();
  private readonly named = new Map<string, Map<string, PartResult>>();

  constructor(
    private readonly parts: PartsOfBook,
    private readonly inBores: ShellsInBores,
  ) {
    this.words = new WordsOfFits(parts);
  }

  /** Parts of the sheets of a term that stand at a place. */
  private there({ sheets }: FitTerm, key: string): PartResult[] {
    return sheets.flatMap((sheet) => this.placesOf(sheet).get(key) ?? []);
  }

  /** Rows without an engine or a position stand at no place. */
  private placesOf(sheet: string): Map<string, PartResult[]> {
    const known = this.atPlace.get(sheet);
    if (known) return known;
    const placed = this.parts
      .of(sheet)
      .filter(({ row }) => row.usable && row.engine !== '' && row.position !== '');
    const found = groupBy(placed, ({ row }) => placeKey(row));
    this.atPlace.set(sheet, found);
    return found;
  }

  /** The first row of each name: a long list is looked into for every fit. */
  private namesOf(sheet: string): Map<string, PartResult> {
    const known = this.named.get(sheet) ?? firstOf(this.parts.of(sheet), ({ row }) => nameKey(row.name));
    this.named.set(sheet, known);
    return known;
  }

  /** The fit of one part that leads its kind, where the program makes the sheet. */
  ofLeader(kind: KindOfFit, leader: PartResult, source: FitRow | undefined): PlacedFit {
    const { engine, fit, position } = leader.row;
    const key = placeKey(leader.row);
    const unclear = this.faultsOf(fit, kind);
    const parts: SlotParts = {};
    for (const term of wholeTerms(kind)) {
      const there = this.there(term, key);
      if (term.slot === kind.leader) {
        parts[term.slot] = leader;
        if (there.length > 1) unclear.push(isOnFits(kind) ? tooMany(there) : sharedPlace(leader, there));
      } else {
        const part = onlyPart(there, unclear);
        if (part) parts[term.slot] = part;
      }
    }
    Object.assign(parts, this.halvesAt(kind, key, parts, {}, unclear));
    return { engine, fit, position, kind: kindWithBore(kind, parts.bore?.row), source, parts, unclear };
  }

  /** A fit that the user's row names, wholly or in part. */
  ofRow(source: FitRow): PlacedFit {
    const { engine, fit, position } = source;
    const meant = this.words.kindOf(fit);
    const kind = isOnFits(meant) ? meant : SHELL_BEARING;
    const unclear = this.faultsOf(fit, kind);
    const parts: SlotParts = {};
    const placed = { engine, fit, position, kind, source, parts, unclear };
    for (const slot of FIT_SLOTS) this.takeNamed(placed, slot, source[slot]);
    // A cell that was refused is not blank: nothing is put in its stead.
    if (source.bad.some(({ header }) => header !== FITS.columns.strip.header)) return placed;
    const key = placeKey(source);
    for (const term of wholeTerms(kind)) {
      if (source[term.slot as FitSlot] !== undefined) continue;
      const part = onlyPart(this.there(term, key), unclear);
      if (part) parts[term.slot] = part;
    }
    const typed = { upper: source.upper !== undefined, lower: source.lower !== undefined };
    Object.assign(parts, this.halvesAt(kind, key, parts, typed, unclear));
    if (kind.strategy === 'half-shells')
      unclear.push(...wrongHalves(parts), ...this.inBores.shellsElsewhere(parts));
    return { ...placed, kind: kindWithBore(kind, parts.bore?.row) };
  }

  private takeNamed(
    { kind, fit, parts, unclear }: PlacedFit & { readonly unclear: string[] },
    slot: FitSlot,
    name: string | undefined,
  ): void {
    if (name === undefined) return;
    const term = termOf(kind, slot);
    if (!term) {
      unclear.push(`${slotHeader(slot)} names ${name}, but a ${kind.name} has no such part`);
      return;
    }
    const sheets = sheetsOfTerm(term, fit);
    const sheet = sheets.find((own) => this.namesOf(own).has(nameKey(name)));
    const part = sheet && this.namesOf(sheet).get(nameKey(name));
    if (part) parts[slot] = part;
    else unclear.push(`${slotHeader(slot)} names ${name}, which no row of ${sheets.join(' or ')} has`);
  }

  private halvesAt(
    kind: KindOfFit,
    key: string,
    found: SlotParts,
    typed: { readonly upper?: boolean; readonly lower?: boolean },
    unclear: string[],
  ): SlotParts {
    if (kind.strategy !== 'half-shells' || (typed.upper && typed.lower)) return {};
    // The shells of a bore that was measured with them come from its own place, wherever it goes.
    const bore = found.bore?.row.hasShells ? found.bore.row : undefined;
    const there = this.there(termOf(kind, 'upper')!, bore ? placeKey(bore) : key).filter(
      (part) =>
        halfOf(part.row) !== undefined &&
        ![found.upper, found.lower].includes(part) &&
        this.inBores.boreOf(part.row) === bore,
    );
    return shellsByPlace(there, typed, unclear);
  }

  private faultsOf(fit: string, kind: KindOfFit): string[] {
    const fault = this.words.faultOf(fit);
    if (fault !== undefined) return [fault];
    const meant = this.words.kindOf(fit);
    return meant === kind
      ? []
      : [`Fit ${fit} is a ${meant.name}, not a ${kind.name}: name one of the two otherwise`];
  }
}

/** The terms of a kind but the halves of one place, in the order of the columns of Fits. */
function wholeTerms(kind: KindOfFit): FitTerm[] {
  return TERM_SLOTS.flatMap((slot) => {
    const isHalf = kind.strategy === 'half-shells' && (slot === 'upper' || slot === 'lower');
    return isHalf ? [] : (termOf(kind, slot) ?? []);
  });
}

/** Rows without names of their own are told by their numbers. */
function sharedPlace({ row }: PartResult, there: readonly PartResult[]): string {
  const rows = there.map((part) => part.row.row + 1).join(' and ');
  return `rows ${rows} of ${row.sheet} are for one place: give each a Position of its own`;
}

function firstOf<Row>(rows: readonly Row[], key: (row: Row) => string): Map<string, Row> {
  const first = new Map<string, Row>();
  for (const row of rows) {
    const own = key(row);
    if (!first.has(own)) first.set(own, row);
  }
  return first;
}

/** A part that more fits take than there are of it makes all of them unclear. */
function refuseOverused(fits: readonly PlacedFit[]): PlacedFit[] {
  const taken = new Map<PartResult, number>();
  for (const fit of fits) {
    for (const part of partsOf(fit)) taken.set(part, (taken.get(part) ?? 0) + 1);
  }
  const reasons = new Map<PartResult, string>();
  for (const [part, count] of taken) {
    const { name, quantity } = part.row;
    if (count > quantity) reasons.set(part, `${name} is taken ${count} times, with Quantity ${quantity}`);
  }
  return fits.map((fit) => {
    const { upper, lower } = fit.parts;
    // A shell with Quantity 1 on both halves has been named already.
    const parts = new Set(
      partsOf(fit).filter((part) => part !== upper || part !== lower || part.row.quantity > 1),
    );
    const overused = [...parts].flatMap((part) => reasons.get(part) ?? []);
    return overused.length === 0 ? fit : { ...fit, unclear: [...fit.unclear, ...overused] };
  });
}
