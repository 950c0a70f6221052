/** Additions of a rod, with shells that are there or that can be bought. */
import type { EmptyPlace } from './empty-place.js';
import { outward } from './outward.js';
import { compareCosts, costOf, type Draft } from './plan.js';
import type { PooledShell } from './pool.js';
import type { AnyShell, Side } from './rules.js';
import { middleOf, windowOf } from './windows.js';

/** Most shells of each half that are tried with each other. */
const PAIR_TRIES = 16;

/** A rod for the cheapest pair, with the bore nearest to the usual one. */
export function withRod(place: EmptyPlace): Draft | undefined {
  if (place.journal.caseBore) return undefined;
  const { usualBore, usualWall, newShells } = place.kind;
  const { pool, mass } = place.giving;
  const middle =
    usualBore ?? (usualWall === undefined ? undefined : place.journalPart.size + place.wish + 2 * usualWall);
  let best: { draft: Draft; rank: number[] } | undefined;
  const offer = (shells: Omit<Draft, 'rod'>, upper: AnyShell, lower: AnyShell) => {
    if (!place.rules.mayStand(upper, lower)) return;
    if (!place.rules.pairs(upper.part, lower.part, place.kind.limits)) return;
    const window = place.boreWindow(upper.part, lower.part);
    if (!window) return;
    const draft: Draft = {
      ...shells,
      rod: undefined,
      added: [{ is: 'rod', window, mass }, ...shells.added],
    };
    const unusual = middle === undefined ? 0 : Math.abs(middleOf(window) - middle);
    const rank = [...costOf(draft, true), unusual];
    if (!best || compareCosts(rank, best.rank) < 0) best = { draft, rank };
  };
  const half = middle === undefined ? (usualWall ?? 0) : (middle - place.journalPart.size - place.wish) / 2;
  const near = (side: Side) => {
    const found: PooledShell[] = [];
    for (const entry of outward(pool[side], half)) {
      if (place.free(entry) > 0) found.push(entry);
      if (found.length === PAIR_TRIES) break;
    }
    return found;
  };
  const uppers = near('upper');
  // Beside those that are near, the mates of the upper halves, wherever their walls lie.
  const mates = new Set(uppers.map(({ row }) => row.mates).filter((mate) => mate !== undefined));
  const isMate = (entry: PooledShell) => mates.has(entry.row.mates!) && place.free(entry) > 0;
  const lowers = [...new Set([...near('lower'), ...pool.lower.filter(isMate)])];
  for (const upper of uppers) {
    for (const lower of lowers) {
      if (upper === lower && place.free(upper) < 2) continue;
      offer({ added: [], upper, lower }, upper.row, lower.row);
    }
  }
  if (!best) {
    for (const shell of newShells.upper) {
      const added = { is: 'new shell', side: 'upper', shell } as const;
      for (const lower of lowers) offer({ added: [added], upper: undefined, lower }, shell, lower.row);
      for (const second of newShells.lower) {
        const both = [added, { is: 'new shell', side: 'lower', shell: second } as const];
        offer({ added: both, upper: undefined, lower: undefined }, shell, second);
      }
    }
    for (const shell of newShells.lower) {
      const added = { is: 'new shell', side: 'lower', shell } as const;
      for (const upper of uppers) offer({ added: [added], upper, lower: undefined }, upper.row, shell);
    }
  }
  return best?.draft;
}

/** A rod with any shells: only the bore less both walls is given. */
export function withRodAndWalls(place: EmptyPlace): Draft | undefined {
  if (place.journal.caseBore) return undefined;
  const { usualWall, measureWall } = place.kind;
  const { mass } = place.giving;
  const walls = measureWall(usualWall ?? 0);
  const free = windowOf(
    place.rules,
    place.kind.limits,
    (size) => place.parts(place.kind.measureBore(size), walls, walls),
    1,
  );
  if (!free) return undefined;
  const window = { from: free.from - 2 * walls.size, to: free.to - 2 * walls.size };
  return {
    added: [{ is: 'rod and walls', window, mass }],
    rod: undefined,
    upper: undefined,
    lower: undefined,
  };
}
