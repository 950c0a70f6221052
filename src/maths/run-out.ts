/**
 * Total indicator reading of a turned part: at one station the largest less the smallest reading of the dial, of the
 * part the greatest of its stations. Readings are signed, from wherever the dial's zero stood.
 *
 * Source: TM 10-3930-664-24, p. 3-41 (0, +.003, −.002 and +.003 in are a total of .005 in).
 */
import type { FormGroups, Spot } from './form.js';
import { spotValue } from './form.js';
import type { Grain } from './grain.js';

export interface RunOut {
  readonly runOut: Grain;
  /** The stations with two spots or more, and how many of these one has at most. */
  readonly shape: FormGroups;
}

/** Undefined where no station was read at two spots. */
export function runOutOf(spots: readonly Spot[]): RunOut | undefined {
  const stations = new Map<string, Grain[]>();
  for (const spot of spots) {
    const own = stations.get(spot.station) ?? [];
    stations.set(spot.station, own);
    own.push(spotValue(spot));
  }
  const groups = [...stations.values()].filter(({ length }) => length > 1);
  if (groups.length === 0) return undefined;
  return {
    runOut: Math.max(...groups.map(rangeOfReadings)),
    shape: { groups: groups.length, spots: Math.max(...groups.map(({ length }) => length)) },
  };
}

/** A total that the dial showed by itself is the difference of two readings. */
export const TOTAL_SHAPE: FormGroups = { groups: 1, spots: 2 };

export function rangeOfReadings(readings: readonly Grain[]): Grain {
  return Math.max(...readings) - Math.min(...readings);
}
