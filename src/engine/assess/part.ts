/** One measured part: its sizes at 20 °C, form, class, uncertainty and verdict. */
import { classify } from '../../maths/classes.js';
import { partVerdict } from '../../maths/conformity.js';
import { toNumber } from '../../maths/decimal.js';
import { REFERENCE_CELSIUS, sizeAt20C } from '../../maths/expansion.js';
import { type Form, formOf } from '../../maths/form.js';
import { type Grain, grainOfRatio } from '../../maths/grain.js';
import { sameMark } from '../../maths/tables.js';
import {
  CERTAIN,
  expandedUncertainty,
  expansionContribution,
  type MeasuredPart,
  readVariance,
  sizeVariance,
  temperatureVariance,
} from '../../maths/uncertainty.js';
import type { LimitsRow, PartRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { reasonOf } from '../book/problems.js';
import { partSheet } from '../input-sheets/index.js';
import { limitHeader } from '../input-sheets/roles.js';
import { type Context, type GaugeUse, namedMaterial } from './context.js';
import {
  checkReasons,
  classesOfPart,
  limitChecks,
  NO_PART_GUARDS,
  partGuards,
  roleOf,
  unreadLimits,
} from './part-checks.js';
import {
  AssessedPart,
  type KnownOfPart,
  type PartResult,
  type PartStatus,
  type ReadSpot,
  readSpots,
} from './part-result.js';
import { assessPlaceRow } from './place-row.js';
import { shellsInBoresOf } from './shells-in-bores.js';
import { spotCounts } from './spots-of-fit.js';

/** Assesses the rows of one sheet together, since a part is named once in its sheet. */
export function assessParts(rows: readonly PartRow[], context: Context): PartResult[] {
  if (rows[0] && partSheet(rows[0].sheet).isOfPlaces) return rows.map((row) => assessPlaceRow(row, context));
  const named = new Map<string, number>();
  for (const { name } of rows) named.set(nameKey(name), (named.get(nameKey(name)) ?? 0) + 1);
  const counts = spotCounts(rows);
  return rows.map((row) => {
    const isNamedTwice = named.get(nameKey(row.name))! > 1 && row.name !== '';
    return assessPart(row, isNamedTwice, counts.get(nameKey(row.fit))!, context);
  });
}

function assessPart(row: PartRow, isNamedTwice: boolean, spotsOfFit: number, context: Context): PartResult {
  const limits = context.limitsOf(row.engineType, row.fit);
  const role = roleOf(row);
  const isJudged = role.checks.length > 0;
  const lookup = context.gaugeOf(row.gauge);
  const why: string[] = [];
  const faults = row.bad.map(reasonOf);
  if ('bad' in lookup) faults.push(...lookup.bad);
  else why.push(...lookup.why);
  const materialFault = context.materialFault(row, limits);
  if (materialFault) faults.push(reasonOf(materialFault));

  const gauge = 'bad' in lookup ? undefined : lookup.gauge;
  const expansion = context.expansionOf(row, limits);
  const celsius = row.celsius ?? context.reference;
  const isAt20C = celsius.numerator === context.reference.numerator * celsius.denominator;
  const steelFault = context.steelFault();
  if (steelFault && needsSteel(row, limits, gauge, isAt20C)) faults.push(reasonOf(steelFault));
  // Where steel is unknown, what is left does not depend on it.
  const gaugeExpansion = gauge?.expansion ?? context.material('steel') ?? NO_EXPANSION;
  const isUncorrected = expansion === undefined && !isAt20C && !steelFault;
  const known = { row, gauge, expansion, gaugeExpansion, limits, isUncorrected };
  const unmeasured = (status: PartStatus, reasons: readonly string[]) =>
    new AssessedPart(known, { status, why: reasons }, context.book.setup.confidence);
  if (faults.length > 0) return unmeasured('bad reading', [...faults, ...why]);
  why.push(...identityRemarks(row));
  const around = shellsInBoresOf(context.book).boreOf(row);
  if (around) why.push(`in ${around.name}, which was measured with its shells in: no wall is needed`);
  if (row.readings.length === 0) {
    if (isNamedTwice) return unmeasured('bad reading', [namedTwice(row), ...why]);
    return unmeasured('not measured', why);
  }

  const grains = row.readings.map(({ mm }) =>
    expansion === undefined
      ? grainOfRatio(mm)
      : sizeAt20C(mm, celsius, expansion.value, gaugeExpansion.value),
  );
  const spots = readSpots(row.readings, grains);
  const form = role.isShaped ? sizesOnly(formOf(spots)) : formOf(spots);
  const { size, largest, smallest, taper, outOfRound } = form;
  // Named one by one: of what is spread, each object would get a shape of its own, larger than itself.
  const measured = {
    size,
    largest,
    smallest,
    taper,
    outOfRound,
    ...uncertaintyOf(form.size, spots, known, toNumber(celsius) - REFERENCE_CELSIUS),
  };
  const { confidence } = context.book.setup;
  const guards = isJudged ? partGuards(measured, spots, confidence) : NO_PART_GUARDS;
  const checks = limitChecks(row, form, limits, guards);
  const { classes } = classesOfPart(row, context);
  const classification = classify(form.size, classes);
  if (
    row.mark !== undefined &&
    classification.text !== '' &&
    !classification.marks.some((mark) => sameMark(mark, row.mark!))
  ) {
    why.push(`marked ${row.mark}, measured class ${classification.text}`);
  }
  if (!gauge && row.gauge === undefined) why.push('uncertainty not given: no gauge');

  const unread = unreadLimits(row, limits);
  let status: PartStatus = isJudged ? partVerdict(checks) : 'measured';
  // A limit that cannot be read may not be passed over: only a failure stands without it.
  if (unread.length > 0 && status !== 'beyond limits') status = 'undecided';
  const isOpen = isUncorrected && (status === 'beyond limits' || status === 'within limits');
  if (isOpen) status = 'undecided';
  if (isUncorrected) why.unshift(materialWanted(row), ...unread.map(reasonOf));
  if (status === 'beyond limits' || (status === 'undecided' && !isUncorrected))
    why.unshift(...checkReasons(checks, status, context.book.setup.lengthUnit), ...unread.map(reasonOf));
  if (status === 'no limits') why.unshift(...noLimitsReasons(row, limits, context));
  if (isNamedTwice) {
    status = 'bad reading';
    why.unshift(namedTwice(row));
  }
  if (spots.length < spotsOfFit) why.push(`${spots.length} of ${spotsOfFit} spots read`);
  const sizeU = gauge && expandedUncertainty(sizeVariance(measured));
  const limitsAreRead = unread.length === 0;
  return new AssessedPart(
    known,
    { status, why, grains, classification, sizeU, measured, limitsAreRead },
    confidence,
  );
}

/** What is oval and tapered by design has no form to speak of. */
function sizesOnly({ size, largest, smallest }: Form): Form {
  return { size, largest, smallest, taper: undefined, outOfRound: undefined };
}

const NO_EXPANSION = { value: 0, error: 0 };

/** What a part brings to the uncertainty of its size and its fits; nothing where no gauge is named. */
function uncertaintyOf(
  size: Grain,
  spots: readonly ReadSpot[],
  { gauge, expansion, gaugeExpansion }: KnownOfPart,
  kelvin: number,
): Omit<MeasuredPart, 'size' | 'largest' | 'smallest'> {
  if (!gauge) return { ...CERTAIN, spots: spots.length };
  const repeats = Math.min(...spots.map(({ readings }) => readings.length));
  const error = expansion ? gaugeExpansion.error : 0;
  const gaugeContribution = expansionContribution(error, size, kelvin);
  return {
    spots: spots.length,
    readVariance: readVariance(gauge.random, repeats),
    temperatureVariance: temperatureVariance(expansion?.value ?? 0, size),
    ownExpansion: expansionContribution(expansion?.error ?? 0, size, kelvin),
    gaugeExpansion:
      gaugeContribution === 0
        ? undefined
        : { gauge: nameKey(gauge.rows[0]!.gauge), contribution: gaugeContribution },
    systematic: gauge.systematic,
  };
}

function materialWanted(row: PartRow): string {
  const { material } = roleOf(row);
  const header = material ? limitHeader(material) : 'its material';
  return `not corrected to 20 °C: type ${header} in Limits`;
}

/** Whether the expansion of steel counts: of the part for its temperature term, of part and gauge away from 20 °C. */
function needsSteel(
  row: PartRow,
  limits: LimitsRow | undefined,
  gauge: GaugeUse | undefined,
  isAt20C: boolean,
): boolean {
  const named = namedMaterial(row, limits);
  const isSteelPart = named === undefined && partSheet(row.sheet).material === 'steel';
  if (isSteelPart) return gauge !== undefined || !isAt20C;
  return !isAt20C && named !== undefined && gauge?.expansion === undefined;
}

function namedTwice({ name, sheet }: PartRow): string {
  return `${name} is named more than once in ${sheet}: give each part its own name`;
}

function noLimitsReasons(row: PartRow, limits: LimitsRow | undefined, context: Context): string[] {
  if (row.engineType === undefined) return ['name the Engine type: Limits has several'];
  if (!limits)
    return context.book.limits.length > 0
      ? [`Limits has no row for ${row.engineType || 'this engine type'}, ${row.fit}`]
      : [];
  return [`Limits types no limit of its own for the ${roleOf(row).noun}`];
}

/** What is odd about a row and changes no verdict. */
function identityRemarks(row: PartRow): string[] {
  const remarks: string[] = [];
  const hasHalves = 'half' in partSheet(row.sheet).columns;
  if (hasHalves && row.half === undefined) {
    remarks.push('Half is blank: the shell is not used; type upper, lower or either');
  }
  if (hasHalves && row.engineType === undefined) {
    remarks.push('name the Engine type: Limits has several');
  }
  if (!row.usable) remarks.push('marked as not usable');
  return remarks;
}
