/** The value of sets for an aim, and changes that are kept only where they improve it. */
import type { Aim } from './aims.js';
import type { WorkingSets } from './working-sets.js';

/** The value of the sets for an aim, in its steps, to be minimised. */
export function aimValueOf({ amount, sign, step }: Aim, sets: WorkingSets): number {
  const { table, choices } = sets;
  const { complete, open, beyond } = sets.value();
  if (amount === 'completeEngines') return 0 - complete;
  if (amount === 'filledOpen') return 0 - open;
  if (amount === 'filledBeyond') return 0 - beyond;
  const sum = choices.reduce((total, choice, site) => {
    if (!choice) return total;
    if (amount === 'price') return total + table.price(choice.upper, choice.lower);
    if (amount === 'distance') return total + table.distance(site, choice);
    if (amount === 'stayed') return total + Number(table.stays(site, choice.rod));
    if (amount === 'inRange') return total + Number(table.isInRange(site, choice));
    return total + Number(table.isKept(site, choice.rod, choice.upper, choice.lower));
  }, 0);
  return (sign * sum) / step + 0;
}

/** Lexicographic order: whether the first value that differs is lower. */
function isBetter(values: readonly number[], than: readonly number[]): boolean {
  const place = values.findIndex((value, at) => value !== than[at]);
  return place >= 0 && values[place]! < than[place]!;
}

/** Makes a change, and takes it back unless the sets are better for it. */
export function tryOut(sets: WorkingSets, change: () => void, values: () => readonly number[]): void {
  const before = [...sets.choices];
  const old = values();
  change();
  if (!isBetter(values(), old)) sets.copyFrom(before);
}
