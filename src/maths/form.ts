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

/** The groups of two or more values, of which a difference can be formed. */
function groupsOf(spots: readonly Spot[], key: (spot: Spot) => string | number): Grain[][] {
  const angled = spots.filter((spot) => spot.angle !== undefined);
  return groupValues(angled, key).filter((group) => group.length > 1);
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
  const groups = groupsOf(spots, of === 'taper' ? byAngle : byStation);
  if (groups.length === 0) return undefined;
  return { groups: groups.length, spots: Math.max(...groups.map(({ length }) => length)) };
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

function groupValues(spots: readonly Spot[], key: (spot: Spot) => string | number): Grain[][] {
  const groups = new Map<string | number, Grain[]>();
  for (const spot of spots) {
    const name = key(spot);
    groups.set(name, [...(groups.get(name) ?? []), spotValue(spot)]);
  }
  return [...groups.values()];
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
    taper: greatestRange(groupsOf(spots, byAngle)),
    outOfRound: greatestRange(groupsOf(spots, byStation)),
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
