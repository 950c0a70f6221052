/**
 * Which parts make a fit: those that its row names, and for blank cells the part at that place
 * (Engine, Fit, Position). Where the book leaves a choice, the fit is unclear and says so; never a guess.
 */
import type { Half } from '../../maths/matching/stock.js';
import type { FitRow, PartRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { groupBy } from './context.js';
import type { PartResult } from './part.js';

export interface FitPlace {
  readonly engine: string;
  readonly fit: string;
  readonly position: string;
}

export type PlacedSlot = 'journal' | 'bore' | 'upper' | 'lower';

export interface PlacedFit extends FitPlace {
  readonly source: FitRow | undefined;
  readonly parts: Partial<Record<PlacedSlot, PartResult>>;
  /** Why the parts are not determined; empty where they are. */
  readonly unclear: readonly string[];
}

export interface PartsOfBook {
  readonly journals: readonly PartResult[];
  readonly rods: readonly PartResult[];
  readonly cases: readonly PartResult[];
  readonly shells: readonly PartResult[];
}

const SLOT_WORDS: Readonly<Record<PlacedSlot, string>> = {
  journal: 'Journal',
  bore: 'Bore',
  upper: 'Upper shell',
  lower: 'Lower shell',
};

function placeKey({ engine, fit, position }: FitPlace): string {
  return [engine, fit, position].map(nameKey).join('\u0000');
}

function isHalfRefused({ half, bad }: PartRow): boolean {
  return half === undefined && bad.some(({ header }) => header === 'Half');
}

/** A shell whose Half was refused stands at its place all the same, so that its fit names the cell. */
function halfOf(row: PartRow): Half | undefined {
  return isHalfRefused(row) ? 'either' : row.half;
}

/** Rows without an engine or a position stand at no place. */
function byPlace(parts: readonly PartResult[]): Map<string, PartResult[]> {
  const placed = parts.filter(({ row }) => row.usable && row.engine !== '' && row.position !== '');
  return groupBy(placed, ({ row }) => placeKey(row));
}

/**
 * @param rows the user's Fits, or undefined to make one fit a journal
 * @param keptStrips strip readings of a Fits sheet that is made anew
 */
export function placeFits(
  parts: PartsOfBook,
  rows: readonly FitRow[] | undefined,
  keptStrips: readonly FitRow[],
): PlacedFit[] {
  const places = {
    journals: byPlace(parts.journals),
    bores: byPlace([...parts.rods, ...parts.cases]),
    shells: byPlace(parts.shells.filter(({ row }) => halfOf(row) !== undefined)),
  };
  if (rows) {
    const named = {
      journals: byName(parts.journals),
      rods: byName(parts.rods),
      cases: byName(parts.cases),
      shells: byName(parts.shells),
    };
    return refuseOverused(rows.map((row) => placeRow(row, named, places)));
  }
  const kept = firstOf(keptStrips, placeKey);
  const fits = parts.journals
    .filter(({ row }) => row.usable)
    .map((journal) => placeJournal(journal, kept.get(placeKey(journal.row)), places));
  return refuseOverused(fits);
}

interface Places {
  readonly journals: Map<string, PartResult[]>;
  readonly bores: Map<string, PartResult[]>;
  readonly shells: Map<string, PartResult[]>;
}

type Names = Readonly<Record<keyof PartsOfBook, ReadonlyMap<string, PartResult>>>;

/** The first row of each name: a long list is looked into for every fit. */
function byName(parts: readonly PartResult[]): Map<string, PartResult> {
  return firstOf(parts, ({ row }) => nameKey(row.name));
}

function firstOf<Row>(rows: readonly Row[], key: (row: Row) => string): Map<string, Row> {
  const first = new Map<string, Row>();
  for (const row of rows) {
    const own = key(row);
    if (!first.has(own)) first.set(own, row);
  }
  return first;
}

/** The fit of one journal where the program makes the sheet. */
function placeJournal(journal: PartResult, source: FitRow | undefined, places: Places): PlacedFit {
  const { engine, fit, position } = journal.row;
  const key = placeKey(journal.row);
  const unclear: string[] = [];
  const found: PlacedFit['parts'] = { journal };
  const there = places.journals.get(key) ?? [];
  if (there.length > 1) unclear.push(tooMany('Journals', there));
  const bore = onlyPart(places.bores.get(key), unclear);
  if (bore) found.bore = bore;
  Object.assign(found, shellsByPlace(places.shells.get(key) ?? [], {}, unclear));
  return { engine, fit, position, source, parts: found, unclear };
}

/** A fit that the user's row names, wholly or in part. */
function placeRow(source: FitRow, names: Names, places: Places): PlacedFit {
  const { engine, fit, position } = source;
  const key = placeKey(source);
  const unclear: string[] = [];
  const found: PlacedFit['parts'] = {};
  const named = (slot: PlacedSlot, name: string | undefined, lists: readonly (keyof PartsOfBook)[]) => {
    if (name === undefined) return;
    const list = lists.find((list) => names[list].has(nameKey(name)));
    const part = list && names[list].get(nameKey(name));
    if (part) found[slot] = part;
    else unclear.push(`${SLOT_WORDS[slot]} names ${name}, which no row of ${listsOf(slot, fit)} has`);
  };
  named('journal', source.journal, ['journals']);
  named('bore', source.bore, boreLists(fit));
  named('upper', source.upper, ['shells']);
  named('lower', source.lower, ['shells']);
  // A cell that was refused is not blank: nothing is put in its stead.
  const isRefused = source.bad.some(({ header }) => header !== 'Strip reading');
  if (isRefused) return { engine, fit, position, source, parts: found, unclear };
  if (source.journal === undefined) {
    const journal = onlyPart(places.journals.get(key), unclear);
    if (journal) found.journal = journal;
  }
  if (source.bore === undefined) {
    const bore = onlyPart(places.bores.get(key), unclear);
    if (bore) found.bore = bore;
  }
  const typed = { upper: source.upper !== undefined, lower: source.lower !== undefined };
  if (!typed.upper || !typed.lower) {
    const there = (places.shells.get(key) ?? []).filter(
      (part) => part !== found.upper && part !== found.lower,
    );
    Object.assign(found, shellsByPlace(there, typed, unclear));
  }
  unclear.push(...wrongHalves(found));
  return { engine, fit, position, source, parts: found, unclear };
}

function boreLists(fit: string): (keyof PartsOfBook)[] {
  if (nameKey(fit) === 'big end') return ['rods'];
  return nameKey(fit) === 'main' ? ['cases'] : ['rods', 'cases'];
}

function listsOf(slot: PlacedSlot, fit: string): string {
  if (slot === 'journal') return 'Journals';
  if (slot !== 'bore') return 'Shells';
  if (nameKey(fit) === 'big end') return 'Rods';
  return nameKey(fit) === 'main' ? 'Cases' : 'Rods or Cases';
}

function onlyPart(there: readonly PartResult[] | undefined, unclear: string[]): PartResult | undefined {
  if (!there || there.length < 2) return there?.[0];
  unclear.push(tooMany(there[0]!.row.sheet, there));
  return undefined;
}

function tooMany(sheet: string, there: readonly PartResult[]): string {
  return `${there.map(({ row }) => row.name).join(', ')} of ${sheet} all stand at this place: name one in Fits`;
}

/** Fills the halves that no cell names from the shells at the place, in row order. */
function shellsByPlace(
  there: readonly PartResult[],
  typed: { upper?: boolean; lower?: boolean },
  unclear: string[],
): Partial<Record<'upper' | 'lower', PartResult>> {
  const of = (half: Half) => there.filter(({ row }) => halfOf(row) === half);
  if (typed.upper || typed.lower) {
    // One named half leaves the other to the part whose Half is exactly that, which a refused cell may have said.
    const half = typed.upper ? 'lower' : 'upper';
    const part = onlyPart([...of(half), ...there.filter(({ row }) => isHalfRefused(row))], unclear);
    return part ? { [half]: part } : {};
  }
  const found: Partial<Record<'upper' | 'lower', PartResult>> = {};
  const [uppers, lowers, eithers] = [of('upper'), of('lower'), of('either')];
  const free = (uppers.length === 0 ? 1 : 0) + (lowers.length === 0 ? 1 : 0);
  if (uppers.length > 1 || lowers.length > 1 || eithers.length > free) {
    unclear.push(tooMany('Shells', there));
    return {};
  }
  if (uppers[0]) found.upper = uppers[0];
  if (lowers[0]) found.lower = lowers[0];
  const rest = [...eithers];
  if (rest.length === 1 && free === 2 && rest[0]!.row.quantity > 1) rest.push(rest[0]!);
  for (const half of ['upper', 'lower'] as const) {
    if (found[half]) continue;
    const next = rest.shift();
    if (next) found[half] = next;
  }
  return found;
}

function wrongHalves({ upper, lower }: PlacedFit['parts']): string[] {
  const faults: string[] = [];
  for (const [half, part] of [
    ['upper', upper],
    ['lower', lower],
  ] as const) {
    if (!part) continue;
    const { row } = part;
    if (isHalfRefused(row)) continue;
    if (row.half === undefined) faults.push(`shell ${row.name} has no Half: type upper, lower or either`);
    else if (row.half !== half && row.half !== 'either')
      faults.push(`shell ${row.name} is ${row.half}, named as ${half}`);
  }
  if (upper && upper === lower && upper.row.quantity < 2) {
    faults.push(`shell ${upper.row.name} stands on both halves with Quantity ${upper.row.quantity}`);
  }
  return faults;
}

/** A part that more fits take than there are of it makes all of them unclear. */
function refuseOverused(fits: readonly PlacedFit[]): PlacedFit[] {
  const taken = new Map<PartResult, number>();
  for (const { parts } of fits) {
    for (const part of Object.values(parts)) taken.set(part, (taken.get(part) ?? 0) + 1);
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
      Object.values(fit.parts).filter((part) => part !== upper || part !== lower || part.row.quantity > 1),
    );
    const overused = [...parts].flatMap((part) => reasons.get(part) ?? []);
    return overused.length === 0 ? fit : { ...fit, unclear: [...fit.unclear, ...overused] };
  });
}
