/**
 * Half-shells whose rows name one place serve only with each other. Where that leaves one way to pair them, the pair is
 * one object of the search: a column, in place of two shells and a rule between them.
 */
import type { StockShell } from './stock.js';

/** Two halves that serve only with each other; one row above and below where its half-shells do. */
export interface FusedPair {
  readonly upper: StockShell;
  readonly lower: StockShell;
  readonly count: number;
}

export interface PartedShells {
  readonly pairs: readonly FusedPair[];
  /** Free halves, and mates of more than one pairing. */
  readonly singles: readonly StockShell[];
}

/** The only pairing of the half-shells of a place; undefined where there are several, or none. */
function onlyPairing(mates: readonly StockShell[]): FusedPair | undefined {
  const [first, second] = mates;
  if (!first || mates.length > 2) return undefined;
  if (!second) {
    const count = Math.floor(first.quantity / 2);
    return first.half === 'either' && count > 0 ? { upper: first, lower: first, count } : undefined;
  }
  if (first.engineType !== second.engineType || first.fit !== second.fit) return undefined;
  // Two `either` halves of one row would stand with each other as well.
  if (mates.some(({ half, quantity }) => half === 'either' && quantity > 1)) return undefined;
  const count = Math.min(first.quantity, second.quantity);
  if (first.half !== 'lower' && second.half !== 'upper') return { upper: first, lower: second, count };
  return first.half === 'upper' || second.half === 'lower'
    ? undefined
    : { upper: second, lower: first, count };
}

export function partedShells(shells: readonly StockShell[]): PartedShells {
  const places = new Map<string, StockShell[]>();
  for (const shell of shells) {
    if (shell.mates === undefined) continue;
    const mates = places.get(shell.mates);
    if (mates) mates.push(shell);
    else places.set(shell.mates, [shell]);
  }
  const pairs = [...places.values()].flatMap((mates) => onlyPairing(mates) ?? []);
  const fused = new Set(pairs.flatMap(({ upper, lower }) => [upper, lower]));
  return { pairs, singles: shells.filter((shell) => !fused.has(shell)) };
}
