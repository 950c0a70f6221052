/** An argument that is a part of a fit: one size, or a range of its spots. */
import type { Sizes } from '../src/maths/clearance.js';
import { formOf } from '../src/maths/form.js';
import type { Grain } from '../src/maths/grain.js';
import type { ArgumentRecord } from './definition.js';

export const partArgument = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'lengths',
    allowed: { above: 0 },
    blank: 'refused',
  }) as const satisfies ArgumentRecord;

/** Mean, largest and smallest of the spots. */
export function sizesOfReadings(readings: readonly Grain[]): Sizes {
  return formOf(readings.map((reading) => ({ station: '', angle: undefined, readings: [reading] })));
}
