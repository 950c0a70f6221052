/** The parts that a user means by a name or a place. */
import { distance } from 'fastest-levenshtein';
import type { PartRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { listOf, quoted } from '../book/problems.js';
import { kindsOfFit } from '../kinds/index.js';
import { termOf } from '../kinds/kind-of-fit.js';

/** How many of the nearest names are told. */
const NEAREST = 3;

function wordsKey(text: string): string {
  return nameKey(text).replaceAll(/\s+/g, ' ');
}

function placeOf({ engine, fit, position }: PartRow): string {
  return `${engine} ${fit} ${position}`;
}

/** The parts that stand for their place: those that make a fit each. */
function placesOf(rows: readonly PartRow[]): PartRow[] {
  const leading = new Set(kindsOfFit().flatMap((kind) => termOf(kind, kind.leader)!.sheets));
  return rows.filter(({ sheet, engine, position }) => leading.has(sheet) && engine !== '' && position !== '');
}

/**
 * The parts of that name; where there is none, the part that stands for that place (`E1 big end 3`); else the parts
 * whose name got its book's name before it.
 */
export function partsMeant(query: string, rows: readonly PartRow[]): PartRow[] {
  const key = wordsKey(query);
  if (key === '') return [];
  const named = rows.filter(({ name }) => wordsKey(name) === key);
  if (named.length > 0) return named;
  const placed = placesOf(rows).filter((row) => wordsKey(placeOf(row)) === key);
  return placed.length > 0 ? placed : rows.filter(({ name }) => wordsKey(name).endsWith(` ${key}`));
}

/**
 * The sentence for a name that no part has.
 * @param others names that are no parts' and can be asked for
 */
export function unknownPart(query: string, rows: readonly PartRow[], others: readonly string[] = []): string {
  const places = placesOf(rows).map(placeOf);
  const known = [...new Set([...rows.map(({ name }) => name), ...places, ...others])].filter(
    (name) => name.trim() !== '',
  );
  const key = wordsKey(query);
  const nearest = known
    .map((name) => ({ name, off: distance(key, wordsKey(name)) }))
    .sort((a, b) => a.off - b.off || (a.name < b.name ? -1 : 1))
    .slice(0, NEAREST)
    .map(({ name }) => quoted(name));
  const expected = places[0] === undefined ? 'a part' : `a part, or a place such as ${quoted(places[0])}`;
  const remedy = nearest.length > 0 ? `the nearest are ${listOf(nearest)}` : 'the books have no parts';
  return `--explain: found the name ${quoted(query)}, which no part has; expected ${expected}; ${remedy}.`;
}
