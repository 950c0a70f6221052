/** What is found of one measured part. */
import type { Classification } from '../../maths/classes.js';
import type { LimitCheck } from '../../maths/conformity.js';
import type { Feelers } from '../../maths/feelers.js';
import { type Form, type FormGroups, type Spot, spotValue } from '../../maths/form.js';
import type { Grain } from '../../maths/grain.js';
import type { MeasuredPart } from '../../maths/uncertainty.js';
import type { Expansion, LimitsRow, PartRow, Reading } from '../book/book.js';
import type { GaugeUse } from './context.js';
import { limitChecks, NO_PART_GUARDS, type PartGuards, partGuards } from './part-checks.js';

export type PartStatus =
  | 'bad reading'
  | 'not measured'
  | 'no limits'
  | 'beyond limits'
  | 'within limits'
  | 'undecided'
  | 'measured';

export interface ReadSpot extends Spot {
  readonly value: Grain;
}

export interface PartResult {
  readonly row: PartRow;
  readonly status: PartStatus;
  readonly why: readonly string[];
  readonly spots: readonly ReadSpot[];
  /** Undefined where the row is bad or has no readings. */
  readonly form: Form | undefined;
  readonly classification: Classification | undefined;
  /** Twice the standard uncertainty of the size; undefined without a gauge. */
  readonly sizeU: Grain | undefined;
  /** The standard contributions whose root sum of squares is the uncertainty of the size, grains. */
  readonly contributions: readonly number[];
  /** What the part brings to a fit; undefined where it has no sizes. */
  readonly measured: MeasuredPart | undefined;
  readonly checks: readonly LimitCheck[];
  /** False where a limit of the part is refused, so that its checks alone do not give the verdict. */
  readonly limitsAreRead: boolean;
  readonly guards: PartGuards;
  /** Its material is not typed, and it was measured away from 20 °C: nothing is proved of it. */
  readonly isUncorrected: boolean;
  readonly gauge: GaugeUse | undefined;
  /** Undefined where the readings are left uncorrected. */
  readonly expansion: Expansion | undefined;
  /** That of steel where no gauge is named. */
  readonly gaugeExpansion: Expansion;
  readonly limits: LimitsRow | undefined;
  /** Of a gap that was tried with blades, where no reading counts. */
  readonly feelers?: Feelers;
  /** Of a run-out, the stations that it is the greatest of. */
  readonly dialShape?: FormGroups;
  /** Says in `why` what only the other parts and the fits of the book tell; before anything is made of the part. */
  addRemarks(remarks: readonly string[]): void;
}

/** What the row of a part looks up. */
export type KnownOfPart = Pick<
  PartResult,
  'row' | 'gauge' | 'expansion' | 'gaugeExpansion' | 'limits' | 'isUncorrected'
>;

/** What is found of a part. */
export interface FoundOfPart {
  readonly status: PartStatus;
  readonly why: readonly string[];
  /** Of each reading, in their order. */
  readonly grains?: readonly Grain[];
  readonly classification?: Classification;
  readonly sizeU?: Grain | undefined;
  readonly measured?: MeasuredPart & Form;
  readonly limitsAreRead?: boolean;
}

const NOTHING: readonly never[] = [];

/** The guards asked for last: checks and guards of a part are asked for one after the other. */
let last: { readonly part: AssessedPart; readonly guards: PartGuards } | undefined;

/** A long list has many parts: what follows from the rest is computed again when it is asked for, and not kept. */
export class AssessedPart implements PartResult {
  readonly row: PartRow;
  readonly status: PartStatus;
  why: readonly string[];
  readonly classification: Classification | undefined;
  readonly sizeU: Grain | undefined;
  readonly measured: (MeasuredPart & Form) | undefined;
  readonly limitsAreRead: boolean;
  readonly gauge: GaugeUse | undefined;
  readonly expansion: Expansion | undefined;
  readonly gaugeExpansion: Expansion;
  readonly isUncorrected: boolean;
  readonly limits: LimitsRow | undefined;
  private readonly grains: readonly Grain[];

  constructor(
    { row, gauge, expansion, gaugeExpansion, limits, isUncorrected }: KnownOfPart,
    found: FoundOfPart,
    private readonly confidence: number,
  ) {
    this.row = row;
    this.gauge = gauge;
    this.expansion = expansion;
    this.gaugeExpansion = gaugeExpansion;
    this.limits = limits;
    this.isUncorrected = isUncorrected;
    this.status = found.status;
    // A copy is as long as its content; a list that grew has room to spare.
    this.why = found.why.length > 0 ? found.why.slice() : NOTHING;
    this.grains = found.grains ?? NOTHING;
    this.classification = found.classification;
    this.sizeU = found.sizeU;
    this.measured = found.measured;
    this.limitsAreRead = found.limitsAreRead ?? true;
  }

  addRemarks(remarks: readonly string[]): void {
    this.why = [...this.why, ...remarks];
  }

  get spots(): readonly ReadSpot[] {
    return this.grains.length > 0 ? readSpots(this.row.readings, this.grains) : NOTHING;
  }

  get form(): Form | undefined {
    if (!this.measured) return undefined;
    const { size, largest, smallest, taper, outOfRound } = this.measured;
    return { size, largest, smallest, taper, outOfRound };
  }

  get contributions(): readonly number[] {
    if (!this.measured) return NOTHING;
    const { systematic, temperatureVariance, ownExpansion, gaugeExpansion, readVariance, spots } =
      this.measured;
    return [
      ...systematic.map(({ maxError }) => maxError / Math.sqrt(3)),
      Math.sqrt(temperatureVariance),
      Math.abs(ownExpansion),
      Math.abs(gaugeExpansion?.contribution ?? 0),
      Math.sqrt(readVariance / spots),
    ].filter((contribution) => contribution > 0);
  }

  get checks(): readonly LimitCheck[] {
    return this.measured ? limitChecks(this.row, this.measured, this.limits, this.guards) : NOTHING;
  }

  get guards(): PartGuards {
    if (!this.measured) return NO_PART_GUARDS;
    if (last?.part !== this) last = { part: this, guards: this.computeGuards(this.measured) };
    return last.guards;
  }

  private computeGuards(measured: MeasuredPart): PartGuards {
    return partGuards(measured, this.spots, this.confidence);
  }
}

/** Spots in the order of the sheet's columns, each with its repeats. */
export function readSpots(readings: readonly Reading[], grains: readonly Grain[]): ReadSpot[] {
  const spots: { station: string; angle: number | undefined; readings: Grain[]; value: Grain }[] = [];
  readings.forEach(({ column: { station, angle } }, at) => {
    const grain = grains[at]!;
    // They are few: looking through them costs less than a key for each.
    const spot = spots.find((known) => known.station === station && known.angle === angle);
    if (spot) spot.readings.push(grain);
    else spots.push({ station, angle, readings: [grain], value: grain });
  });
  for (const spot of spots) if (spot.readings.length > 1) spot.value = spotValue(spot);
  return spots;
}
