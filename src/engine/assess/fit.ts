/** One fit: its clearance, uncertainty, verdict, and the shells that its marks and sizes ask for. */
import { type SizeClass, shellClosestToAim } from '../../maths/classes.js';
import { type Clearance, clearanceOf, type FitParts } from '../../maths/clearance.js';
import { chanceInRange, fitVerdict, guardOf, type ProvenFitVerdict } from '../../maths/conformity.js';
import type { Grain } from '../../maths/grain.js';
import { selectedShell } from '../../maths/tables.js';
import { clearanceVariance, expandedUncertainty, type MeasuredPart } from '../../maths/uncertainty.js';
import type { LimitsRow } from '../book/book.js';
import { reasonOf } from '../book/problems.js';
import type { Context } from './context.js';
import type { PartResult } from './part.js';
import type { PlacedFit } from './places.js';
import { lengthText } from './words.js';

export type FitStatus = 'bad reading' | 'unclear' | 'not measured' | 'no limits' | ProvenFitVerdict;

export interface FitResult extends PlacedFit {
  readonly engineType: string | undefined;
  readonly limits: LimitsRow | undefined;
  readonly aim: Grain | undefined;
  readonly clearance: Clearance | undefined;
  /** Whether the clearance is a strip reading. */
  readonly isStrip: boolean;
  /** u_c², grains²; 0 for a strip reading. */
  readonly variance: number;
  readonly guard: Grain;
  /** Undefined where no part has a gauge, and for a strip reading. */
  readonly clearanceU: Grain | undefined;
  readonly chance: number | undefined;
  readonly shellByMarks: string | undefined;
  readonly shellBySize: string | undefined;
  /** The shells among which Shell by size chooses. */
  readonly candidates: readonly SizeClass[];
  readonly status: FitStatus;
  /** False where the Service limit is refused, so that the clearance alone does not give the verdict. */
  readonly limitsAreRead: boolean;
  readonly why: readonly string[];
}

const NOTHING: readonly never[] = [];

export function assessFit(placed: PlacedFit, context: Context): FitResult {
  const { parts, source } = placed;
  const { journal, bore } = parts;
  const { confidence } = context.book.setup;
  const engineType = engineTypeOf(placed, context);
  const limits = context.limitsOf(engineType, placed.fit);
  const aim = context.aimOf(limits);
  const why: string[] = [];
  const determined = Object.values(parts).filter((part, at, all) => all.indexOf(part) === at);
  const bad = determined.filter(({ status }) => status === 'bad reading');
  const measured = fitPartsOf(placed.parts);
  const isUnclear = placed.unclear.length > 0;
  // A bad strip reading costs only a fit that would go by it; any other bad cell leaves the parts unknown.
  const rowIsBad = source?.bad.some(({ header }) => header !== 'Strip reading' || !measured) ?? false;

  const isKnown = bad.length === 0 && !isUnclear && !rowIsBad;
  const strip = !measured && isKnown ? source?.strip : undefined;
  const isStrip = strip !== undefined;
  const clearance = !isKnown
    ? undefined
    : measured
      ? clearanceOf(measured)
      : isStrip
        ? { clearance: strip, tightest: strip, loosest: strip }
        : undefined;
  const variance = clearance && measured ? clearanceVariance(measured) : 0;
  const guard = guardOf(confidence, Math.sqrt(variance));
  const hasGauge = determined.some(({ gauge }) => gauge !== undefined);
  const candidates = context.candidatesOf(engineType, placed.fit);

  let status: FitStatus;
  let chance: number | undefined;
  if (bad.length > 0 || rowIsBad) {
    status = 'bad reading';
    why.push(
      ...bad.flatMap(({ row, why: [reason] }) =>
        reason === undefined ? [] : [row.name === '' ? reason : `${row.name}: ${reason}`],
      ),
    );
  } else if (isUnclear) {
    status = 'unclear';
  } else if (!clearance) {
    status = 'not measured';
    why.push(...missingParts(placed));
  } else if (limits?.clearanceMin === undefined || limits.clearanceMax === undefined) {
    status = 'no limits';
    why.push(noLimits(engineType, placed, limits, context));
  } else {
    const range = { min: limits.clearanceMin, max: limits.clearanceMax, serviceLimit: limits.serviceLimit };
    status = fitVerdict(clearance, range, guard);
    const unread = limits.bad.find(({ header }) => header === 'Service limit');
    if (status === 'loose' && unread) {
      // Beyond the range, but the limit that decides is not known.
      status = 'undecided';
      why.push(reasonOf(unread));
    }
    chance = chanceInRange(clearance, range, Math.sqrt(variance));
    why.push(...verdictReasons(status, clearance, range, guard, context));
  }
  why.push(...placed.unclear);
  for (const cell of source?.bad ?? []) why.push(reasonOf(cell));
  if (isStrip) why.push('by the strip reading');
  else if (clearance && measured) why.push(...gaugeRemarks(determined, hasGauge));
  const sizes = { bore: bore?.form?.size, journal: journal?.form?.size };
  const aimFault = context.aimFault(limits);
  if (aimFault && sizes.bore !== undefined && sizes.journal !== undefined)
    why.push(`no Shell by size: ${reasonOf(aimFault)}`);
  const { engine, fit, position, unclear } = placed;
  // Named one by one: of what is spread, each object would get a shape of its own, larger than itself.
  return {
    engine,
    fit,
    position,
    source,
    parts,
    unclear,
    engineType,
    limits,
    aim,
    clearance,
    isStrip,
    variance,
    guard,
    clearanceU: clearance && !isStrip && hasGauge ? expandedUncertainty(variance) : undefined,
    chance,
    shellByMarks: shellByMarks(journal, bore, engineType, placed.fit, context),
    shellBySize:
      sizes.bore === undefined || sizes.journal === undefined || aim === undefined
        ? undefined
        : shellClosestToAim(sizes.bore, sizes.journal, aim, candidates)?.mark,
    candidates,
    status,
    limitsAreRead: !limits?.bad.some(({ header }) => header === 'Service limit'),
    // A copy is as long as its content; a list that grew has room to spare.
    why: why.length > 0 ? why.slice() : NOTHING,
  };
}

/** The four parts of a fit, once all are measured. */
function fitPartsOf({ journal, bore, upper, lower }: PlacedFit['parts']): FitParts<MeasuredPart> | undefined {
  if (!journal?.measured || !bore?.measured || !upper?.measured || !lower?.measured) return undefined;
  return { bore: bore.measured, upper: upper.measured, lower: lower.measured, journal: journal.measured };
}

/** A row's engine type is its journal's, else its bore's. */
function engineTypeOf({ parts }: PlacedFit, context: Context): string | undefined {
  const known = parts.journal ?? parts.bore;
  return known ? known.row.engineType : context.book.onlyEngineType;
}

function missingParts({ parts }: PlacedFit): string[] {
  const words = { journal: 'journal', bore: 'bore', upper: 'upper shell', lower: 'lower shell' } as const;
  const slots = Object.keys(words) as (keyof typeof words)[];
  const missing = slots.filter((slot) => !parts[slot]).map((slot) => words[slot]);
  const unread = slots.flatMap((slot) =>
    parts[slot] && !parts[slot].measured ? [parts[slot].row.name] : [],
  );
  return [
    ...(missing.length > 0 ? [`no ${missing.join(', no ')} at this place`] : []),
    ...(unread.length > 0 ? [`not measured: ${[...new Set(unread)].join(', ')}`] : []),
  ];
}

function noLimits(
  engineType: string | undefined,
  { fit }: PlacedFit,
  limits: LimitsRow | undefined,
  context: Context,
): string {
  if (engineType === undefined) return 'name the Engine type: Limits has several';
  if (context.book.limits.length === 0) return 'the book has no sheet Limits';
  if (fit === '') return 'Fit is blank: name it as Limits does';
  if (!limits) return `Limits has no row for ${engineType || 'this engine type'}, ${fit}`;
  const blank = limits.clearanceMin === undefined ? 'Clearance min' : 'Clearance max';
  const bad = limits.bad.find(({ header }) => header === blank);
  return bad ? reasonOf(bad) : `Limits gives no ${blank} for this fit`;
}

function verdictReasons(
  status: FitStatus,
  { tightest, loosest }: Clearance,
  { min, max, serviceLimit }: { min: Grain; max: Grain; serviceLimit: Grain | undefined },
  guard: Grain,
  context: Context,
): string[] {
  const text = (length: Grain) => lengthText(length, context.book.setup.lengthUnit);
  const roof = serviceLimit ?? max;
  const roofName = serviceLimit === undefined ? 'Clearance max' : 'Service limit';
  switch (status) {
    case 'tight':
      return [`tightest is ${text(min - tightest)} under Clearance min ${text(min)}`];
    case 'loose':
      return [`loosest is ${text(loosest - roof)} over ${roofName} ${text(roof)}`];
    case 'within service limit':
      return [
        `loosest is ${text(loosest - max)} over Clearance max ${text(max)}, under Service limit ${text(roof)}`,
      ];
    case 'undecided': {
      const open: string[] = [];
      if (tightest - guard < min) open.push(nearness('tightest', tightest, 'Clearance min', min));
      if (loosest + guard > max && loosest - guard <= max)
        open.push(nearness('loosest', loosest, 'Clearance max', max));
      else if (loosest - guard > max && serviceLimit !== undefined && loosest + guard > serviceLimit) {
        open.push(nearness('loosest', loosest, 'Service limit', serviceLimit));
      }
      return open;
    }
    default:
      return [];
  }

  function nearness(which: string, value: Grain, limitName: string, limit: Grain): string {
    return `${which} ${text(value)} within the guard ${text(guard)} of ${limitName} ${text(limit)}`;
  }
}

function gaugeRemarks(parts: readonly PartResult[], hasGauge: boolean): string[] {
  if (!hasGauge) return ['uncertainty not given: no part has a gauge'];
  const without = parts.filter(({ gauge }) => gauge === undefined).map(({ row }) => row.name);
  return without.length > 0 ? [`uncertainty not given for ${without.join(', ')}`] : [];
}

/** The mark stamped on a part, else its measured class where that is one. */
export function markOf(part: PartResult | undefined): string | undefined {
  if (part?.row.mark !== undefined) return part.row.mark;
  const marks = part?.classification?.marks ?? [];
  return marks.length === 1 ? marks[0] : undefined;
}

function shellByMarks(
  journal: PartResult | undefined,
  bore: PartResult | undefined,
  engineType: string | undefined,
  fit: string,
  context: Context,
): string | undefined {
  const [journalMark, boreMark] = [markOf(journal), markOf(bore)];
  if (journalMark === undefined || boreMark === undefined) return undefined;
  return selectedShell(context.selectionOf(engineType, fit), journalMark, boreMark);
}
