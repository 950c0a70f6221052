/** Additions of shells alone, to a bore that is there. */
import type { FitParts } from '../clearance.js';
import { withItsShells } from '../matching/brought-shells.js';
import type { MeasuredPart } from '../uncertainty.js';
import { type Bore, type EmptyPlace, hasMass, TRIES, TRIES_OF_EACH } from './empty-place.js';
import { outward } from './outward.js';
import { compareCosts, costOf, type Draft } from './plan.js';
import { middleOf, windowOf } from './windows.js';

/** A rod that brings its shells, one that is left over before one from another crank. */
export function withShellsInRod(place: EmptyPlace): Draft | undefined {
  if (place.journal.caseBore) return undefined;
  const { pool, mass } = place.giving;
  const open = pool.rodsWithShells.filter(
    (rod) =>
      place.free(rod) > 0 &&
      hasMass(rod.row.mass, mass) &&
      place.rules.mayServe(rod.row, place.giving.engine, place.journal) &&
      place.rules.suits(withItsShells(rod.row.part, place.journalPart), place.kind.limits),
  );
  const rod = open.find(({ holder }) => !holder) ?? open[0];
  return rod && { added: [], rod, upper: undefined, lower: undefined };
}

/** A bore and a pair that are there, with the fewest parts from other cranks. */
export function withNothing(place: EmptyPlace, bores: readonly Bore[]): Draft | undefined {
  let best: { draft: Draft; taken: number } | undefined;
  let found = 0;
  for (const { rod, part } of bores.slice(0, TRIES_OF_EACH)) {
    const half = (part.size - place.journalPart.size - place.wish) / 2;
    let tried = 0;
    for (const upper of outward(place.giving.pool.upper, half)) {
      if (place.free(upper) < 1) continue;
      if (tried++ === TRIES_OF_EACH) break;
      for (const lower of place.beside(part, upper.row, 'lower')) {
        if (lower === upper && place.free(lower) < 2) continue;
        const taken = [rod, upper, lower].filter((entry) => entry?.holder).length;
        if (!best || taken < best.taken) best = { draft: { added: [], rod, upper, lower }, taken };
        if (taken === 0 || ++found === TRIES) return best.draft;
        if (!lower.holder) break;
      }
    }
  }
  return best?.draft;
}

export function withNewShells(place: EmptyPlace, bores: readonly Bore[]): Draft | undefined {
  let best: { draft: Draft; rank: number[] } | undefined;
  const offer = (draft: Draft, fit: FitParts<MeasuredPart>) => {
    const { bore, upper, lower, journal } = fit;
    const off = Math.abs(bore.size - upper.size - lower.size - journal.size - place.wish);
    const rank = [...costOf(draft, true), off];
    if (!best || compareCosts(rank, best.rank) < 0) best = { draft, rank };
  };
  const { newShells, limits } = place.kind;
  for (const { rod, part: bore } of bores) {
    for (const side of ['upper', 'lower'] as const) {
      const other = side === 'upper' ? 'lower' : 'upper';
      for (const shell of newShells[side]) {
        const added = { is: 'new shell', side, shell } as const;
        for (const entry of place.beside(bore, shell, other)) {
          const [upper, lower] = side === 'upper' ? [shell, entry.row] : [entry.row, shell];
          offer(
            {
              added: [added],
              rod,
              upper: side === 'upper' ? undefined : entry,
              lower: side === 'upper' ? entry : undefined,
            },
            place.parts(bore, upper.part, lower.part),
          );
          break;
        }
        if (side === 'lower') continue;
        for (const second of newShells.lower) {
          const fit = place.parts(bore, shell.part, second.part);
          if (!place.rules.mayStand(shell, second) || !place.rules.allows(fit, limits)) continue;
          const both = [added, { is: 'new shell', side: 'lower', shell: second } as const];
          offer({ added: both, rod, upper: undefined, lower: undefined }, fit);
        }
      }
    }
  }
  return best?.draft;
}

/** One wall beside a half that is there, the pair as alike as it can be. */
export function withOneWall(place: EmptyPlace, bores: readonly Bore[]): Draft | undefined {
  const { limits } = place.kind;
  let best: { draft: Draft; unlike: number } | undefined;
  for (const { rod, part: bore } of bores) {
    const half = (bore.size - place.journalPart.size - place.wish) / 2;
    for (const side of ['upper', 'lower'] as const) {
      const other = side === 'upper' ? 'lower' : 'upper';
      let tried = 0;
      for (const entry of outward(place.giving.pool[other], half)) {
        if (tried++ === TRIES) break;
        if (place.free(entry) < 1 || !place.rules.mayTakeAnyMate(entry.row)) continue;
        const there = entry.row.part;
        const window = place.wallWindow(bore, there, side);
        if (!window) continue;
        const unlike = Math.abs(middleOf(window) - there.size);
        // Nobody sets halves that differ by more than the whole range of the clearance: common practice, no source.
        if (unlike > limits.max - limits.min) continue;
        if (!best || unlike < best.unlike) {
          const shells =
            side === 'upper' ? { upper: undefined, lower: entry } : { upper: entry, lower: undefined };
          best = { draft: { added: [{ is: 'wall', side, window }], rod, ...shells }, unlike };
        }
        break;
      }
    }
  }
  return best?.draft;
}

export function withTwoWalls(place: EmptyPlace, bores: readonly Bore[]): Draft | undefined {
  const { limits, measureWall, usualWall } = place.kind;
  let best: { draft: Draft; unusual: number } | undefined;
  for (const { rod, part: bore } of bores) {
    const window = windowOf(
      place.rules,
      limits,
      (size) => place.parts(bore, measureWall(size), measureWall(size)),
      -2,
    );
    if (!window) continue;
    const unusual = usualWall === undefined ? 0 : Math.abs(middleOf(window) - usualWall);
    if (best && unusual >= best.unusual) continue;
    const { halfDifference } = limits;
    const width = window.to - window.from;
    const apart = halfDifference !== undefined && halfDifference < width ? halfDifference : undefined;
    const added = [{ is: 'walls', window, apart } as const];
    best = { draft: { added, rod, upper: undefined, lower: undefined }, unusual };
  }
  return best?.draft;
}
