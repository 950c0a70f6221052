/** One fit: its clearance, uncertainty, verdict, and the shells that its marks and sizes ask for. */
import { type SizeClass, shellClosestToAim } from '../../maths/classes.js';
import { type Clearance, fitOf, type SignedTerm } from '../../maths/clearance.js';
import { chanceInRange } from '../../maths/conformity.js';
import type { Feelers } from '../../maths/feelers.js';
import type { Grain } from '../../maths/grain.js';
import type { Guards } from '../../maths/guards.js';
import { selectedShell } from '../../maths/tables.js';
import {
  expandedUncertainty,
  type FitVariance,
  type MeasuredPart,
  totalVariance,
  varianceOf,
} from '../../maths/uncertainty.js';
import type { LimitsRow } from '../book/book.js';
import { reasonOf } from '../book/problems.js';
import { isOnFits } from '../kinds/kind-of-fit.js';
import type { Context } from './context.js';
import { bladeVariance, type FitStatus, guardsOfFit, hasItsLimits, verdictOfFit } from './fit-verdicts.js';
import { missingParts, noLimitsReason, uncertaintyRemarks } from './fit-words.js';
import type { PartResult } from './part-result.js';
import { type PlacedFit, termPartsOf } from './placed-fit.js';
import { verdictReasons } from './verdict-words.js';

export interface FitResult extends PlacedFit {
  readonly engineType: string | undefined;
  readonly limits: LimitsRow | undefined;
  readonly aim: Grain | undefined;
  readonly clearance: Clearance | undefined;
  /** The blades by which a gap is judged. */
  readonly feelers: Feelers | undefined;
  /** Whether the clearance is a strip reading. */
  readonly isStrip: boolean;
  /** u_c², grains². */
  readonly variance: number;
  readonly guards: Guards;
  /** A part of it was left as it was read, away from 20 °C: nothing is proved of the fit. */
  readonly isUncorrected: boolean;
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
const NO_SIZES = { bore: undefined, journal: undefined };

export function assessFit(placed: PlacedFit, context: Context): FitResult {
  const { kind, parts, source } = placed;
  const { journal, bore } = parts;
  const { confidence } = context.book.setup;
  const engineType = engineTypeOf(placed, context);
  const limits = context.limitsOf(engineType, placed.fit);
  const aim = context.aimOf(limits);
  const why: string[] = [];
  const determined = [...new Set(termPartsOf(placed))];
  const bad = determined.filter(({ status }) => status === 'bad reading');
  const measured = measuredTerms(placed);
  const isUnclear = placed.unclear.length > 0;
  // A bad strip reading costs only a fit that would go by it; any other bad cell leaves the parts unknown.
  const rowIsBad = source?.bad.some(({ header }) => header !== 'Strip reading' || !measured) ?? false;

  const isKnown = bad.length === 0 && !isUnclear && !rowIsBad;
  const strip = !measured && isKnown && placed.kind.standIn ? source?.[placed.kind.standIn] : undefined;
  const isStrip = strip !== undefined;
  const clearance = !isKnown
    ? undefined
    : measured
      ? fitOf(measured)
      : isStrip
        ? { clearance: strip, tightest: strip, loosest: strip }
        : undefined;
  const feelers = isKnown ? parts.gap?.feelers : undefined;
  const uncertainty =
    clearance && measured
      ? varianceOf(measured)
      : feelers
        ? bladeVariance(parts.gap!.gauge)
        : stripVariance(isStrip, context);
  const variance = totalVariance(uncertainty);
  const guards = guardsOfFit(placed, uncertainty, confidence);
  const isUncorrected = measured !== undefined && determined.some((part) => part.isUncorrected);
  const hasGauge = determined.some(({ gauge }) => gauge !== undefined);
  const candidates = context.candidatesOf(engineType, placed.fit);

  let status: FitStatus;
  let chance: number | undefined;
  if (bad.length > 0 || rowIsBad) {
    status = 'bad reading';
    why.push(
      ...bad.flatMap(({ row, why: [reason] }) =>
        reason === undefined ? [] : [row.name === '' || !isOnFits(kind) ? reason : `${row.name}: ${reason}`],
      ),
    );
  } else if (isUnclear) {
    status = 'unclear';
  } else if (!clearance && !feelers) {
    status = 'not measured';
    why.push(...missingParts(placed));
  } else if (!limits || !hasItsLimits(placed.kind, limits)) {
    status = 'no limits';
    why.push(noLimitsReason(engineType, placed, limits, context));
  } else {
    const range = { min: limits.clearanceMin, max: limits.clearanceMax, serviceLimit: limits.serviceLimit };
    status = isUncorrected ? 'undecided' : verdictOfFit({ kind, clearance, feelers }, range, guards);
    const unread = limits.bad.find(({ header }) => header === 'Service limit');
    const isOpen = (status === 'loose' || status === 'beyond limits') && unread;
    if (isOpen) {
      status = 'undecided';
      why.push(reasonOf(unread), 'looser than new parts may be (proved); the service limit is not proved');
    }
    chance = clearance && chanceInRange(clearance, range, Math.sqrt(variance));
    const facts = { kind, clearance, feelers, range, guards, chance };
    if (isUncorrected) why.push(...determined.flatMap(uncorrectedReason));
    else if (!isOpen) why.push(...verdictReasons(status, facts, context.book.setup.lengthUnit));
  }
  why.push(...placed.unclear);
  for (const cell of source?.bad ?? []) why.push(reasonOf(cell));
  if (source?.strip !== undefined && !placed.kind.standIn)
    why.push(`Strip reading does not count: a ${placed.kind.name} is judged by its parts`);
  if (isStrip) why.push('by the strip reading');
  else if ((clearance && measured) || feelers) {
    if (bore?.row.hasShells) why.push(`${bore.row.name} was measured with its shells in`);
    why.push(...uncertaintyRemarks(determined, hasGauge));
  }
  if (!isOnFits(kind))
    why.push(...(status === 'bad reading' ? NOTHING : (parts[kind.leader]?.why ?? NOTHING)));
  const choosesShells = placed.kind.strategy === 'half-shells';
  const sizes = choosesShells ? { bore: bore?.form?.size, journal: journal?.form?.size } : NO_SIZES;
  const aimFault = context.aimFault(limits);
  if (aimFault && sizes.bore !== undefined && sizes.journal !== undefined)
    why.push(`no Shell by size: ${reasonOf(aimFault)}`);
  const { engine, fit, position, unclear } = placed;
  // Named one by one: of what is spread, each object would get a shape of its own, larger than itself.
  return {
    engine,
    fit,
    position,
    kind,
    source,
    parts,
    unclear,
    engineType,
    limits,
    aim,
    clearance,
    feelers,
    isStrip,
    variance,
    guards,
    isUncorrected,
    clearanceU: clearance && (isStrip || hasGauge) ? expandedUncertainty(variance) : undefined,
    chance,
    shellByMarks: placed.kind.isSelected
      ? shellByMarks(journal, bore, engineType, placed.fit, context)
      : undefined,
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

/** The parts of a fit with their signs, once all are measured. */
export function measuredTerms({ kind, parts }: PlacedFit): SignedTerm<MeasuredPart>[] | undefined {
  const terms: SignedTerm<MeasuredPart>[] = [];
  for (const { slot, sign } of kind.terms) {
    const part = parts[slot]?.measured;
    if (!part) return undefined;
    terms.push({ sign, part });
  }
  return terms;
}

/** A strip is read to a step of its scale (a rectangular distribution, JCGM 100:2008, 4.3.7). */
function stripVariance(isStrip: boolean, { book }: Context): FitVariance {
  const variance = isStrip ? book.setup.stripStep ** 2 / 12 : 0;
  return { common: 0, scatters: [{ variance, spots: 1 }] };
}

function uncorrectedReason({ isUncorrected, row, why }: PartResult): string[] {
  return isUncorrected ? [`${row.name}: ${why.find((reason) => reason.startsWith('not corrected'))}`] : [];
}

/** A row's engine type is its journal's, else its bore's; of what is measured as a whole, its own. */
function engineTypeOf({ kind, parts }: PlacedFit, context: Context): string | undefined {
  const known = isOnFits(kind) ? (parts.journal ?? parts.bore) : parts[kind.leader];
  return known ? known.row.engineType : context.book.onlyEngineType;
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
