/**
 * Size and form of one part from the readings of its spots.
 *
 * Taper and out of round are differences of two-point diameters, as workshop manuals define them
 * (measure front and rear for taper, and at 90° for out of round). Two-point readings cannot see a
 * three-lobed form of constant diameter (ISO 14405-1, two-point size).
 */
import { type Grain, meanGrain } from './grain.js';

/** One place of one part: repeated readings, each at 20 °C on the grain. */
export interface Spot {
  readonly station: string;
  /** Degrees; undefined for a wall, which has no angle. */
  readonly angle: number | undefined;
  readonly readings: readonly Grain[];
}

export interface Form {
  /** The mean of the spots. */
  readonly size: Grain;
  readonly largest: Grain;
  readonly smallest: Grain;
  /** Undefined where no angle was read at two stations. */
  readonly taper: Grain | undefined;
  /** Undefined where no station was read at two angles. */
  readonly outOfRound: Grain | undefined;
}

/** The value of a spot: the mean of its repeats. */
export function spotValue(spot: Spot): Grain {
  return meanGrain(spot.readings);
}

const byStation = ({ station }: Spot) => station;
const byAngle = ({ angle }: Spot) => angle!;

/** How many differences a value of form is the greatest of, and of how many spots each is at most. */
export interface FormGroups {
  readonly groups: number;
  readonly spots: number;
}

/** The groups behind out of round and taper; undefined where the value cannot be formed. */
export function formGroups(spots: readonly Spot[], of: 'out of round' | 'taper'): FormGroups | undefined {
  const key = of === 'taper' ? byAngle : byStation;
  const counts = new Map<string | number, number>();
  for (const spot of spots) {
    if (spot.angle !== undefined) counts.set(key(spot), (counts.get(key(spot)) ?? 0) + 1);
  }
  let [groups, most] = [0, 0];
  for (const count of counts.values()) {
    if (count < 2) continue;
    groups += 1;
    most = Math.max(most, count);
  }
  return groups === 0 ? undefined : { groups, spots: most };
}

/** The greatest range within the groups; undefined where there is none. */
function greatestRange(groups: Iterable<readonly Grain[]>): Grain | undefined {
  let greatest: Grain | undefined;
  for (const group of groups) {
    const range = Math.max(...group) - Math.min(...group);
    if (greatest === undefined || range > greatest) greatest = range;
  }
  return greatest;
}

/** The groups of two or more values, of which a difference can be formed. */
function groupsOf(
  spots: readonly Spot[],
  values: readonly Grain[],
  key: (spot: Spot) => string | number,
): Grain[][] {
  const groups = new Map<string | number, Grain[]>();
  spots.forEach((spot, at) => {
    if (spot.angle === undefined) return;
    const group = groups.get(key(spot));
    if (group) group.push(values[at]!);
    else groups.set(key(spot), [values[at]!]);
  });
  return [...groups.values()].filter(({ length }) => length > 1);
}

/**
 * Size, extremes and form of the spots that were read.
 * @throws RangeError when no spot has a reading.
 */
export function formOf(spots: readonly Spot[]): Form {
  const values = spots.map(spotValue);
  return {
    size: meanGrain(values),
    largest: Math.max(...values),
    smallest: Math.min(...values),
    taper: greatestRange(groupsOf(spots, values, byAngle)),
    outOfRound: greatestRange(groupsOf(spots, values, byStation)),
  };
}

/**
 * The spots of a part that was read at the same angles at every station, station by station.
 * @throws RangeError when the stations cannot share the readings evenly.
 */
export function spotsByStation(readings: readonly Grain[], stations: number): Spot[] {
  const angles = readings.length / stations;
  if (!Number.isInteger(angles)) throw new RangeError('the stations cannot share the readings evenly');
  return readings.map((reading, place) => ({
    station: String(Math.floor(place / angles)),
    angle: place % angles,
    readings: [reading],
  }));
}
