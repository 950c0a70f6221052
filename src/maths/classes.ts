/**
 * Size classes of selective fits, and the shell that brings a fit closest to its aim.
 *
 * Source: general principle of selective assembly (bore class and journal class give a shell class);
 * the table of marks is the engine maker's.
 */
import { add, exact, multiply, roundHalfAway } from './decimal.js';
import { type Grain, meanGrain } from './grain.js';

/** One size class: From ≤ size < To, the class with the largest To closed above. */
export interface SizeClass {
  readonly mark: string;
  readonly from: Grain;
  readonly to: Grain;
}

export interface Classification {
  /** Every mark whose class holds the size, in order of From; two or more in an overlap. */
  readonly marks: readonly string[];
  /** What is shown: `B`, `B/C`, `below A`, `above C`, `between A and B`; empty without classes. */
  readonly text: string;
}

/** A row whose From lies above its To holds no size and takes no part. */
export function isOrdered(row: SizeClass): boolean {
  return row.from <= row.to;
}

/** A table of classes made ready to look sizes up in. */
interface ReadyClasses {
  /** In order of From, then of To. */
  readonly rows: readonly SizeClass[];
  /** The class with the largest To. */
  readonly last: SizeClass | undefined;
  /** Sizes that fall alike share their classification. */
  readonly known: Map<string, Classification>;
}

/** A long list asks the same tables over and over. */
const ready = new WeakMap<readonly SizeClass[], ReadyClasses>();

function readyClasses(classes: readonly SizeClass[]): ReadyClasses {
  const made = ready.get(classes);
  if (made) return made;
  const rows = classes.filter(isOrdered).sort((a, b) => a.from - b.from || a.to - b.to);
  const last = rows.reduce<SizeClass | undefined>((a, b) => (a && a.to > b.to ? a : b), undefined);
  const found = { rows, last, known: new Map() };
  ready.set(classes, found);
  return found;
}

/** @param classes a table that stays as it is: what was found of it is kept */
export function classify(size: Grain, classes: readonly SizeClass[]): Classification {
  const { rows, last, known } = readyClasses(classes);
  const found = classificationIn(size, rows, last);
  const same = known.get(found.text);
  // Marks may hold the sign that joins them.
  if (same && same.marks.length === found.marks.length) return same;
  known.set(found.text, found);
  return found;
}

function classificationIn(
  size: Grain,
  rows: readonly SizeClass[],
  last: SizeClass | undefined,
): Classification {
  const [first] = rows;
  if (!first || !last) return { marks: [], text: '' };
  const holding = rows.filter(
    (row) => row.from <= size && (size < row.to || (size === row.to && row.to === last.to)),
  );
  if (holding.length > 0) {
    const marks = holding.map((row) => row.mark);
    return { marks, text: marks.join('/') };
  }
  if (size < first.from) return { marks: [], text: `below ${first.mark}` };
  if (size > last.to) return { marks: [], text: `above ${last.mark}` };
  const below = rows.filter((row) => row.to <= size).reduce((a, b) => (b.to >= a.to ? b : a));
  const above = rows.find((row) => row.from > size)!;
  return { marks: [], text: `between ${below.mark} and ${above.mark}` };
}

/** The middle of a class or of a new shell's wall, on the grain. */
export function middle({ from, to }: { readonly from: Grain; readonly to: Grain }): Grain {
  return meanGrain([from, to]);
}

/**
 * The shell class whose middle wall w brings bore − 2w − journal closest to the aim, the thicker at
 * a tie; undefined without candidates.
 */
export function shellClosestToAim(
  bore: Grain,
  journal: Grain,
  aim: Grain,
  candidates: readonly SizeClass[],
): SizeClass | undefined {
  let best: { row: SizeClass; distance: Grain; wall: Grain } | undefined;
  for (const row of candidates) {
    const wall = middle(row);
    const distance = Math.abs(bore - 2 * wall - journal - aim);
    if (!best || distance < best.distance || (distance === best.distance && wall > best.wall)) {
      best = { row, distance, wall };
    }
  }
  return best?.row;
}

/**
 * The clearance aimed for inside a range: min + share·(max − min), on the grain.
 * @param share 0..1, the middle is 0.5
 */
export function aimWithin(min: Grain, max: Grain, share: number): Grain {
  // The share is a decimal such as 0.35: in ratios the aim lies on a half only where it truly does.
  const part = multiply(exact(share), { numerator: BigInt(max - min), denominator: 1n });
  return roundHalfAway(add({ numerator: BigInt(min), denominator: 1n }, part));
}
