/** A row of Gaps or Run-outs: what was measured of the assembly as a whole. It is judged as a fit, not by itself. */
import { type Feelers, gapOfFeelers } from '../../maths/feelers.js';
import { formOf, type Spot } from '../../maths/form.js';
import { type Grain, grainOfRatio } from '../../maths/grain.js';
import { runOutOf, TOTAL_SHAPE } from '../../maths/run-out.js';
import { CERTAIN, type MeasuredPart, readVariance } from '../../maths/uncertainty.js';
import type { PartRow, Reading } from '../book/book.js';
import { reasonOf } from '../book/problems.js';
import { isStandIn, STAND_INS } from '../book/reading-headers.js';
import { partSheet } from '../input-sheets/index.js';
import type { Context, GaugeUse } from './context.js';
import { NO_PART_GUARDS } from './part-checks.js';
import { type PartResult, type ReadSpot, readSpots } from './part-result.js';

const NO_EXPANSION = { value: 0, error: 0 };

export function assessPlaceRow(row: PartRow, context: Context): PartResult {
  const lookup = context.gaugeOf(row.gauge);
  const faults = [...row.bad.map(reasonOf), ...('bad' in lookup ? lookup.bad : [])];
  const gauge = 'bad' in lookup ? undefined : lookup.gauge;
  const known = {
    row,
    gauge,
    limits: context.limitsOf(row.engineType, row.fit),
    classification: undefined,
    sizeU: undefined,
    contributions: [],
    checks: [],
    limitsAreRead: true,
    guards: NO_PART_GUARDS,
    // What is measured at one go is of the assembly as it lies there.
    isUncorrected: false,
    expansion: undefined,
    gaugeExpansion: NO_EXPANSION,
    // What others tell of a part, its slips, is not looked for among gaps.
    addRemarks: () => undefined,
  } as const;
  const why = 'bad' in lookup ? [] : lookup.why;
  if (faults.length > 0)
    return {
      ...known,
      status: 'bad reading',
      why: [...faults, ...why],
      spots: [],
      form: undefined,
      measured: undefined,
    };
  const found = partSheet(row.sheet).role === 'gap' ? gapOfRow(row, gauge) : runOutOfRow(row, gauge);
  return { ...known, ...found, why: [...why, ...found.why] };
}

type FoundOfRow = Pick<
  PartResult,
  'status' | 'why' | 'spots' | 'form' | 'measured' | 'feelers' | 'dialShape'
>;

/** Readings of spots, without what stands in for them. */
function spotsOf({ readings }: PartRow): ReadSpot[] {
  const own = readings.filter(({ column }) => !isStandIn(column));
  return readSpots(
    own,
    own.map(({ mm }) => grainOfRatio(mm)),
  );
}

function standInOf({ readings }: PartRow, station: string): Grain | undefined {
  const found: Reading | undefined = readings.find(({ column }) => column.station === station);
  return found && grainOfRatio(found.mm);
}

function gapOfRow(row: PartRow, gauge: GaugeUse | undefined): FoundOfRow {
  const spots = spotsOf(row);
  const feelers: Feelers = {
    goes: standInOf(row, STAND_INS.goes),
    stops: standInOf(row, STAND_INS.stops),
  };
  const hasFeelers = feelers.goes !== undefined || feelers.stops !== undefined;
  if (spots.length > 0) {
    const { size, largest, smallest } = formOf(spots);
    const scatter = { spots: spots.length, readVariance: variance(gauge, fewestRepeats(spots)) };
    return {
      ...{ status: 'measured', why: hasFeelers ? ['readings and feelers: the readings count'] : [], spots },
      ...ofSizes({ size, largest, smallest }, scatter, gauge),
    };
  }
  const gap = gapOfFeelers(feelers);
  if (!gap) {
    const nothing = { why: [], spots, form: undefined, measured: undefined };
    return hasFeelers
      ? { ...nothing, status: 'measured', feelers }
      : { ...nothing, status: 'not measured', why: ['neither a reading nor a feeler'] };
  }
  const { clearance: size, tightest: smallest, loosest: largest } = gap;
  const scatter = { spots: 1, readVariance: variance(gauge, 1) };
  return {
    ...{ status: 'measured', why: [], spots, feelers },
    ...ofSizes({ size, largest, smallest }, scatter, gauge),
  };
}

/** A run-out is a difference of two readings of one dial, whose error is in both. */
function runOutOfRow(row: PartRow, gauge: GaugeUse | undefined): FoundOfRow {
  const spots = spotsOf(row);
  const total = standInOf(row, STAND_INS.total);
  const byReadings = runOutOf(spots);
  const value = byReadings?.runOut ?? total;
  if (value === undefined)
    return { status: 'not measured', why: onceOnly(spots), spots, form: undefined, measured: undefined };
  const repeats = byReadings ? fewestRepeats(spots) : 1;
  const scatter = { spots: 1, readVariance: 2 * variance(gauge, repeats) };
  return {
    status: 'measured',
    why: byReadings && total !== undefined ? ['readings and Total: the readings count'] : [],
    spots: byReadings ? spots : [],
    dialShape: byReadings?.shape ?? TOTAL_SHAPE,
    ...ofSizes({ size: value, largest: value, smallest: value }, scatter, undefined),
  };
}

const onceOnly = (spots: readonly Spot[]) =>
  spots.length > 0
    ? ['no station was read at two angles: a run-out is a difference']
    : ['neither readings nor a Total'];

function fewestRepeats(spots: readonly Spot[]): number {
  return Math.min(...spots.map(({ readings }) => readings.length));
}

function variance(gauge: GaugeUse | undefined, repeats: number): number {
  return gauge ? readVariance(gauge.random, repeats) : 0;
}

function ofSizes(
  sizes: Pick<MeasuredPart, 'size' | 'largest' | 'smallest'>,
  scatter: Pick<MeasuredPart, 'spots' | 'readVariance'>,
  gauge: GaugeUse | undefined,
): Pick<PartResult, 'form' | 'measured'> {
  return {
    form: { ...sizes, taper: undefined, outOfRound: undefined },
    measured: { ...CERTAIN, ...sizes, ...scatter, systematic: gauge?.systematic ?? [] },
  };
}
