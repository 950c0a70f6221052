/** One measured part: its sizes at 20 °C, form, class, uncertainty and verdict. */
import { type Classification, classify } from '../../maths/classes.js';
import { excess, type LimitCheck, outcomeOf, partGuards, partVerdict } from '../../maths/conformity.js';
import { sizeAt20C } from '../../maths/expansion.js';
import { type Form, formOf, type Spot, spotValue } from '../../maths/form.js';
import { type Grain, grainOfRatio } from '../../maths/grain.js';
import { sameMark } from '../../maths/tables.js';
import {
  expandedUncertainty,
  type MeasuredPart,
  sizeVariance,
  spotVariance,
  systematicVariance,
} from '../../maths/uncertainty.js';
import type { ClassOf, LimitsRow, PartRow, Reading } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { type BadCell, reasonOf } from '../book/problems.js';
import type { Context, GaugeUse } from './context.js';
import { lengthText } from './words.js';

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
  readonly guards: { readonly extremes: Grain; readonly form: Grain };
  readonly gauge: GaugeUse | undefined;
  /** 1e-6 per K; undefined where the readings are left uncorrected. */
  readonly expansion: number | undefined;
  /** 1e-6 per K; steel where no gauge is named. */
  readonly gaugeExpansion: number;
  readonly limits: LimitsRow | undefined;
}

const CLASS_OF: Readonly<Record<PartRow['sheet'], ClassOf>> = {
  Journals: 'journal',
  Rods: 'bore',
  Cases: 'bore',
  Shells: 'shell',
};

/** Assesses the rows of one sheet together, since a part is named once in its sheet. */
export function assessParts(rows: readonly PartRow[], context: Context): PartResult[] {
  const named = new Map<string, number>();
  for (const { name } of rows) named.set(nameKey(name), (named.get(nameKey(name)) ?? 0) + 1);
  return rows.map((row) => assessPart(row, named.get(nameKey(row.name))! > 1 && row.name !== '', context));
}

function assessPart(row: PartRow, isNamedTwice: boolean, context: Context): PartResult {
  const limits = context.limitsOf(row.engineType, row.fit);
  const of = CLASS_OF[row.sheet];
  const lookup = context.gaugeOf(row.gauge);
  const why: string[] = [];
  const faults = row.bad.map(reasonOf);
  if ('bad' in lookup) faults.push(...lookup.bad);
  else why.push(...lookup.why);
  const materialFault = of === 'shell' ? undefined : context.materialFault(limits, of);
  if (materialFault) faults.push(reasonOf(materialFault));

  const gauge = 'bad' in lookup ? undefined : lookup.gauge;
  const expansion = context.expansionOf(row, limits);
  const celsius = row.celsius ?? context.reference;
  const isAt20C = celsius.numerator === context.reference.numerator * celsius.denominator;
  const steelFault = context.steelFault();
  if (steelFault && needsSteel(row, limits, gauge, isAt20C)) faults.push(reasonOf(steelFault));
  // Where steel is unknown, what is left does not depend on it.
  const gaugeExpansion = gauge?.expansion ?? context.material('steel') ?? 0;
  const known = { row, gauge, expansion, gaugeExpansion, limits };
  const unmeasured = (status: PartStatus, reasons: readonly string[]) =>
    new AssessedPart(known, { status, why: reasons }, context.book.setup.confidence);
  if (faults.length > 0) return unmeasured('bad reading', [...faults, ...why]);
  why.push(...identityRemarks(row));
  if (row.readings.length === 0) {
    if (isNamedTwice) return unmeasured('bad reading', [namedTwice(row), ...why]);
    return unmeasured('not measured', why);
  }

  const grains = row.readings.map(({ mm }) =>
    expansion === undefined ? grainOfRatio(mm) : sizeAt20C(mm, celsius, expansion, gaugeExpansion),
  );
  const spots = spotsOf(row.readings, grains);
  if (row.sheet === 'Cases' && expansion === undefined && !isAt20C) {
    why.push('not corrected to 20 °C: Limits names no Bore material');
  }
  const form = formOf(spots);
  const systematic = gauge?.systematic ?? [];
  const variances = spotVariances(spots, known);
  const { size, largest, smallest, taper, outOfRound } = form;
  // Named one by one: of what is spread, each object would get a shape of its own, larger than itself.
  const measured = {
    size,
    largest,
    smallest,
    taper,
    outOfRound,
    systematic,
    spotVariance: Math.max(0, ...variances),
  };
  const guards = partGuards(
    context.book.setup.confidence,
    systematicVariance(systematic),
    measured.spotVariance,
  );
  const checks = of === 'shell' ? [] : limitChecks(of, form, limits, guards);
  const { classes } = context.classesOf(row.engineType, row.fit, of);
  const classification = classify(form.size, classes);
  if (
    row.mark !== undefined &&
    classification.text !== '' &&
    !classification.marks.some((mark) => sameMark(mark, row.mark!))
  ) {
    why.push(`marked ${row.mark}, measured class ${classification.text}`);
  }
  if (!gauge && row.gauge === undefined) why.push('uncertainty not given: no gauge');

  const unread = of === 'shell' ? [] : unreadLimits(of, limits);
  let status: PartStatus = of === 'shell' ? 'measured' : partVerdict(checks);
  // A limit that cannot be read may not be passed over: only a failure stands without it.
  if (unread.length > 0 && status !== 'beyond limits') status = 'undecided';
  if (status === 'beyond limits' || status === 'undecided')
    why.unshift(...checkReasons(checks, status, context), ...unread.map(reasonOf));
  if (status === 'no limits') why.unshift(...noLimitsReasons(row, of, limits, context));
  if (isNamedTwice) {
    status = 'bad reading';
    why.unshift(namedTwice(row));
  }
  const sizeU = gauge && expandedUncertainty(sizeVariance(systematic, variances));
  const limitsAreRead = unread.length === 0;
  return new AssessedPart(
    known,
    { status, why, grains, classification, sizeU, measured, limitsAreRead },
    context.book.setup.confidence,
  );
}

/** What the row of a part looks up. */
type Known = Pick<PartResult, 'row' | 'gauge' | 'expansion' | 'gaugeExpansion' | 'limits'>;

interface Found {
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

/** A long list has many parts: what follows from the rest is computed again when it is asked for, and not kept. */
class AssessedPart implements PartResult {
  readonly row: PartRow;
  readonly status: PartStatus;
  readonly why: readonly string[];
  readonly classification: Classification | undefined;
  readonly sizeU: Grain | undefined;
  readonly measured: (MeasuredPart & Form) | undefined;
  readonly limitsAreRead: boolean;
  readonly gauge: GaugeUse | undefined;
  readonly expansion: number | undefined;
  readonly gaugeExpansion: number;
  readonly limits: LimitsRow | undefined;
  private readonly grains: readonly Grain[];

  constructor(
    { row, gauge, expansion, gaugeExpansion, limits }: Known,
    found: Found,
    private readonly confidence: number,
  ) {
    this.row = row;
    this.gauge = gauge;
    this.expansion = expansion;
    this.gaugeExpansion = gaugeExpansion;
    this.limits = limits;
    this.status = found.status;
    // A copy is as long as its content; a list that grew has room to spare.
    this.why = found.why.length > 0 ? found.why.slice() : NOTHING;
    this.grains = found.grains ?? NOTHING;
    this.classification = found.classification;
    this.sizeU = found.sizeU;
    this.measured = found.measured;
    this.limitsAreRead = found.limitsAreRead ?? true;
  }

  get spots(): readonly ReadSpot[] {
    return this.grains.length > 0 ? spotsOf(this.row.readings, this.grains) : NOTHING;
  }

  get form(): Form | undefined {
    if (!this.measured) return undefined;
    const { size, largest, smallest, taper, outOfRound } = this.measured;
    return { size, largest, smallest, taper, outOfRound };
  }

  get contributions(): readonly number[] {
    if (!this.measured) return NOTHING;
    const variances = spotVariances(this.spots, this);
    return [
      ...this.measured.systematic.map(({ maxError }) => maxError / Math.sqrt(3)),
      ...variances.map((variance) => Math.sqrt(variance) / variances.length),
    ];
  }

  get checks(): readonly LimitCheck[] {
    const of = CLASS_OF[this.row.sheet];
    return this.measured && of !== 'shell'
      ? limitChecks(of, this.measured, this.limits, this.guards)
      : NOTHING;
  }

  get guards(): PartResult['guards'] {
    if (!this.measured) return { extremes: 0, form: 0 };
    const { systematic, spotVariance } = this.measured;
    return partGuards(this.confidence, systematicVariance(systematic), spotVariance);
  }
}

function spotVariances(
  spots: readonly ReadSpot[],
  { gauge, expansion }: Pick<PartResult, 'gauge' | 'expansion'>,
): number[] {
  return gauge
    ? spots.map(({ readings, value }) => spotVariance(gauge.random, readings.length, expansion ?? 0, value))
    : [];
}

/** Whether the expansion of steel counts: of the part for its temperature term, of part and gauge away from 20 °C. */
function needsSteel(
  row: PartRow,
  limits: LimitsRow | undefined,
  gauge: GaugeUse | undefined,
  isAt20C: boolean,
): boolean {
  const named = row.sheet === 'Journals' ? limits?.journalMaterial : limits?.boreMaterial;
  const isSteelPart = row.sheet === 'Shells' || (row.sheet !== 'Cases' && named === undefined);
  if (isSteelPart) return gauge !== undefined || !isAt20C;
  return !isAt20C && named !== undefined && gauge?.expansion === undefined;
}

function namedTwice({ name, sheet }: PartRow): string {
  return `${name} is named more than once in ${sheet}: give each part its own name`;
}

/** Spots in the order of the sheet's columns, each with its repeats. */
function spotsOf(readings: readonly Reading[], grains: readonly Grain[]): ReadSpot[] {
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

function limitChecks(
  of: 'journal' | 'bore',
  form: Form,
  limits: LimitsRow | undefined,
  guards: { extremes: Grain; form: Grain },
): LimitCheck[] {
  if (!limits) return [];
  const worn = limits.wearLimit !== undefined || limits.bad.some(({ header }) => header === 'Wear limit');
  const lower =
    of === 'journal'
      ? { name: worn ? 'Wear limit' : 'Journal min', limit: worn ? limits.wearLimit : limits.journalMin }
      : { name: 'Bore min', limit: limits.boreMin };
  const upper =
    of === 'journal'
      ? { name: 'Journal max', limit: limits.journalMax }
      : { name: 'Bore max', limit: limits.boreMax };
  const check = (
    quantity: string,
    value: Grain | undefined,
    side: LimitCheck['side'],
    { name, limit }: { name: string; limit: Grain | undefined },
    guard: Grain,
  ): LimitCheck[] => (limit === undefined ? [] : [{ quantity, value, side, limitName: name, limit, guard }]);
  return [
    ...check('smallest', form.smallest, 'at least', lower, guards.extremes),
    ...check('largest', form.largest, 'at most', upper, guards.extremes),
    ...check(
      'out of round',
      form.outOfRound,
      'at most',
      { name: 'Out-of-round limit', limit: limits.outOfRoundLimit },
      guards.form,
    ),
    ...check('taper', form.taper, 'at most', { name: 'Taper limit', limit: limits.taperLimit }, guards.form),
  ];
}

/** The limits that a part of this kind must keep, by their headers. */
const LIMITS_OF = {
  journal: ['Journal min', 'Journal max', 'Wear limit', 'Out-of-round limit', 'Taper limit'],
  bore: ['Bore min', 'Bore max', 'Out-of-round limit', 'Taper limit'],
} as const;

/** Refused cells among the limits of a part. */
function unreadLimits(of: 'journal' | 'bore', limits: LimitsRow | undefined): BadCell[] {
  const own: readonly string[] = LIMITS_OF[of];
  return (limits?.bad ?? []).filter(({ header }) => own.includes(header));
}

/** Which checks fail and by how much, or which stay open and why. */
function checkReasons(
  checks: readonly LimitCheck[],
  status: 'beyond limits' | 'undecided',
  context: Context,
): string[] {
  const unit = context.book.setup.lengthUnit;
  const wanted = status === 'beyond limits' ? 'fails' : 'undecided';
  return checks
    .filter((check) => outcomeOf(check) === wanted)
    .map((check) => {
      const limit = `${check.limitName} ${lengthText(check.limit, unit)}`;
      const beyond = excess(check);
      if (beyond === undefined) return `${check.quantity} cannot be formed from these readings for ${limit}`;
      const side = check.side === 'at least' ? 'under' : 'over';
      if (status === 'beyond limits')
        return `${check.quantity} is ${lengthText(beyond, unit)} ${side} ${limit}`;
      return `${check.quantity} within the guard ${lengthText(check.guard, unit)} of ${limit}`;
    });
}

function noLimitsReasons(
  row: PartRow,
  of: 'journal' | 'bore' | 'shell',
  limits: LimitsRow | undefined,
  context: Context,
): string[] {
  if (row.engineType === undefined) return ['name the Engine type: Limits has several'];
  if (!limits)
    return context.book.limits.length > 0
      ? [`Limits has no row for ${row.engineType || 'this engine type'}, ${row.fit}`]
      : [];
  return [`Limits types no limit of its own for the ${of}`];
}

/** What is odd about a row and changes no verdict. */
function identityRemarks(row: PartRow): string[] {
  const remarks: string[] = [];
  if (row.sheet === 'Shells' && row.half === undefined) {
    remarks.push('Half is blank: the shell is not used; type upper, lower or either');
  }
  if (row.sheet === 'Shells' && row.engineType === undefined) {
    remarks.push('name the Engine type: Limits has several');
  }
  if (!row.usable) remarks.push('marked as not usable');
  return remarks;
}
