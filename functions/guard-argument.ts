/** An argument that is a guard: how far from a limit a value has to lie to prove something. */
import type { ArgumentRecord } from './definition.js';

const GUARD = { quantity: 'length', allowed: { from: 0 } } as const;

export const neededGuard = <const Name extends string>(name: Name, meaning: string) =>
  ({ name, meaning, ...GUARD, blank: 'refused' }) as const satisfies ArgumentRecord;

/** Without it there is no guard. */
export const optionalGuard = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    ...GUARD,
    blank: 'allowed',
    blankMeans: '0, no guard',
    optional: true,
    default: 0,
  }) as const satisfies ArgumentRecord;
