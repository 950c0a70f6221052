/** Names that mean different things in two books of one stock, and what they are called in the stock. */
import type { Book, GaugeRow } from '../book/book.js';
import { dataRowsOf } from '../book/data-rows.js';
import { materialLookup, STEEL } from '../book/materials.js';
import { nameKey } from '../book/names.js';
import { Row } from '../book/row.js';
import { partSheets } from '../input-sheets/index.js';
import { columnsOf, type InputSheet } from '../input-sheets/input-sheet.js';
import type { NameQuantity } from '../input-sheets/quantities.js';
import { kindsOfFit } from '../kinds/index.js';
import { termOf } from '../kinds/kind-of-fit.js';
import { meaningOf } from './row-meaning.js';

/** A book, and what goes before a name of its own where another book has the same. */
export interface Source {
  readonly book: Book;
  readonly label: string;
}

/** What a name means in a book. */
interface Meaning {
  /** What must be equal for the name to mean one thing. */
  readonly meaning: string;
  /** Whether the book says itself what the name means: only there it can be another name. */
  readonly isDefined: boolean;
}

export class NameClashes {
  /** Of each name, its meaning in each book that has it, by the book's label. */
  private readonly names = new Map<string, Map<string, Meaning>>();

  /** Of a name that a book has twice, the first counts. */
  add(kind: string, name: string, { label }: Source, meaning: string, isDefined = true): void {
    if (name === '') return;
    const key = keyOf(kind, name);
    const owners = this.names.get(key) ?? new Map<string, Meaning>();
    this.names.set(key, owners);
    if (!owners.has(label)) owners.set(label, { meaning, isDefined });
  }

  /** The name in the stock. */
  nameOf(kind: string, name: string, { label }: Source): string {
    const owners = this.names.get(keyOf(kind, name));
    const own = owners?.get(label);
    if (!own?.isDefined) return name;
    return [...owners!.values()].some(({ meaning }) => meaning !== own.meaning) ? `${label} ${name}` : name;
  }
}

const keyOf = (kind: string, name: string) => `${kind}\u0000${nameKey(name)}`;

/** What a name is the name of; undefined where it is its own: a mark, a position. */
export function kindOfName({ name }: InputSheet, { of }: NameQuantity): string | undefined {
  return of === 'part' ? `part of ${name}` : of;
}

export function findClashes(sources: readonly Source[]): NameClashes {
  const found = new NameClashes();
  const leading = new Set(kindsOfFit().flatMap((kind) => termOf(kind, kind.leader)!.sheets));
  for (const source of sources) {
    const { book, label } = source;
    for (const sheet of partSheets()) {
      for (const { name, engine } of book.parts.of(sheet.name)) {
        if (!sheet.isOfPlaces) found.add(`part of ${sheet.name}`, name, source, label);
        // An engine is where the parts are that lead its fits, such as its journals, or what is measured on it: a rod or shell
        // that ran there, or a case beside it, names it only.
        if (leading.has(sheet.name)) found.add('engine', engine, source, label);
      }
    }
    for (const gauge of book.gauges) found.add('gauge', gauge.gauge, source, chainMeaning(gauge, book));
    const knows = materialLookup(book.materials);
    const defined = new Set(book.materials.map(({ material }) => nameKey(material)));
    for (const name of materialNames(book)) {
      // Steel goes without saying where nothing is named, and so cannot have two names.
      if (nameKey(name) === STEEL) continue;
      found.add('material', name, source, JSON.stringify(knows(name) ?? null), defined.has(nameKey(name)));
    }
  }
  for (const [name, owners] of enginesOfFasteners(sources)) {
    // One book may have the journals of an engine and another its bolts; bolts of two books are of two engines.
    if (owners.length > 1) for (const source of owners) found.add('engine', name, source, source.label);
  }
  return found;
}

/** The books that have fasteners of an engine, by its name. */
function enginesOfFasteners(sources: readonly Source[]): Map<string, Source[]> {
  const owners = new Map<string, Source[]>();
  for (const source of sources) {
    for (const name of new Set(source.book.fasteners.map(({ engine }) => nameKey(engine))))
      owners.set(name, [...(owners.get(name) ?? []), source]);
  }
  return owners;
}

/** A gauge is what it is, and what set its zero. */
function chainMeaning(gauge: GaugeRow, { gauges }: Book): string {
  const chain = [gauge];
  for (let last: GaugeRow | undefined = gauge; last; ) {
    const name: string | undefined = last.setFrom;
    last = name === undefined ? undefined : gauges.find((other) => nameKey(other.gauge) === nameKey(name));
    if (last && chain.includes(last)) break;
    if (last) chain.push(last);
  }
  return chain.map(meaningOf).join();
}

/** Every material that a book names, defined in Materials or not. */
function materialNames(book: Book): string[] {
  return [...book.tables.values()].flatMap((table) => {
    const headers = columnsOf(table.record).flatMap(({ header, quantity }) =>
      quantity.kind === 'name' && quantity.of === 'material' && table.columns.has(header) ? [header] : [],
    );
    if (headers.length === 0) return [];
    return dataRowsOf(table).flatMap((row) =>
      headers.flatMap((header) => new Row(table, row).name(header) ?? []),
    );
  });
}
