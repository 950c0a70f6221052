/** A part held against the limits that its role gives it. */
import { excess, type LimitCheck, outcomeOf } from '../../maths/conformity.js';
import { type Form, formGroups, type Spot } from '../../maths/form.js';
import type { Grain } from '../../maths/grain.js';
import { extremesGuards, formGuards, type Guards, NO_GUARDS } from '../../maths/guards.js';
import type { MeasuredPart } from '../../maths/uncertainty.js';
import type { LengthUnit } from '../../maths/units.js';
import type { LimitsRow, PartRow } from '../book/book.js';
import type { BadCell } from '../book/problems.js';
import { partSheet } from '../input-sheets/index.js';
import {
  BORE_WITH_SHELLS,
  limitHeader,
  ROLES,
  type RoleCheck,
  type RoleRecord,
} from '../input-sheets/roles.js';
import type { Context, UsableClasses } from './context.js';
import { lengthText } from './words.js';

/** The guards of one part, by what is checked of it. */
export type PartGuards = Readonly<Record<RoleCheck['quantity'], Guards>>;

export const NO_PART_GUARDS: PartGuards = {
  smallest: NO_GUARDS,
  largest: NO_GUARDS,
  'out of round': NO_GUARDS,
  taper: NO_GUARDS,
};

export function partGuards(part: MeasuredPart, spots: readonly Spot[], confidence: number): PartGuards {
  const extremes = extremesGuards(confidence, part);
  const form = (of: 'out of round' | 'taper') =>
    formGuards(confidence, part.readVariance, formGroups(spots, of));
  return {
    smallest: extremes,
    largest: extremes,
    'out of round': form('out of round'),
    taper: form('taper'),
  };
}

/** Looks up what the sheet of a part makes of it, and the shells in it. */
export function roleOf({ sheet, hasShells }: Pick<PartRow, 'sheet' | 'hasShells'>): RoleRecord {
  return hasShells ? BORE_WITH_SHELLS : ROLES[partSheet(sheet).role];
}

const NO_CLASSES: UsableClasses = { classes: [], rows: [] };

/** The classes that the size of a part may fall in. */
export function classesOfPart(row: PartRow, context: Context): UsableClasses {
  const { classOf } = roleOf(row);
  return classOf === undefined ? NO_CLASSES : context.classesOf(row.engineType, row.fit, classOf);
}

/** A check, and the limit that counts for it. */
interface CountingLimit {
  readonly check: RoleCheck;
  readonly header: string;
  /** Undefined where it was refused. */
  readonly limit: Grain | undefined;
  readonly refused: BadCell | undefined;
}

/** Of the limits of a check the first that is typed, or that was refused. */
function countingLimit(check: RoleCheck, limits: LimitsRow): CountingLimit | undefined {
  for (const key of check.limits) {
    const header = limitHeader(key);
    const limit = limits[key];
    const refused = limits.bad.find((bad) => bad.header === header);
    if (typeof limit === 'number' || refused) {
      return { check, header, limit: typeof limit === 'number' ? limit : undefined, refused };
    }
  }
  return undefined;
}

/** Looked up once for each row of Limits: thousands of parts may share one. */
const counting = new WeakMap<LimitsRow, Map<RoleRecord, readonly CountingLimit[]>>();

function countingLimits(role: RoleRecord, limits: LimitsRow): readonly CountingLimit[] {
  const ofRow = counting.get(limits) ?? new Map<RoleRecord, readonly CountingLimit[]>();
  counting.set(limits, ofRow);
  const known = ofRow.get(role) ?? role.checks.flatMap((check) => countingLimit(check, limits) ?? []);
  ofRow.set(role, known);
  return known;
}

function checkedValue({ quantity }: RoleCheck, form: Form): Grain | undefined {
  switch (quantity) {
    case 'smallest':
      return form.smallest;
    case 'largest':
      return form.largest;
    case 'out of round':
      return form.outOfRound;
    case 'taper':
      return form.taper;
  }
}

/** The checks of a part against the limits that are typed and could be read. */
export function limitChecks(
  row: PartRow,
  form: Form,
  limits: LimitsRow | undefined,
  guards: PartGuards,
): LimitCheck[] {
  if (!limits) return [];
  const checks: LimitCheck[] = [];
  for (const { check, header, limit } of countingLimits(roleOf(row), limits)) {
    if (limit === undefined) continue;
    const { quantity, side } = check;
    checks.push({
      quantity,
      value: checkedValue(check, form),
      side,
      limitName: header,
      limit,
      guards: guards[quantity],
    });
  }
  return checks;
}

/** Refused cells among the limits that count for a part. */
export function unreadLimits(row: PartRow, limits: LimitsRow | undefined): BadCell[] {
  if (!limits) return [];
  return countingLimits(roleOf(row), limits).flatMap(({ refused }) => refused ?? []);
}

/** Which checks fail and by how much, or which stay open and why. */
export function checkReasons(
  checks: readonly LimitCheck[],
  status: 'beyond limits' | 'undecided',
  unit: LengthUnit,
): string[] {
  const wanted = status === 'beyond limits' ? 'fails' : 'undecided';
  return checks
    .filter((check) => outcomeOf(check) === wanted)
    .map((check) => {
      const limit = `${check.limitName} ${lengthText(check.limit, unit)}`;
      const beyond = excess(check);
      if (beyond === undefined)
        return `can't work out ${check.quantity} yet for ${limit}: ${moreSpots(check)}`;
      const side = check.side === 'at least' ? 'under' : 'over';
      if (status === 'beyond limits')
        return `${check.quantity} is ${lengthText(beyond, unit)} ${side} ${limit}`;
      return (
        `${check.quantity} ${lengthText(check.value!, unit)} is ${lengthText(Math.abs(beyond), unit)} from ${limit}, ` +
        `nearer than we can measure (±${lengthText(nearGuard(check), unit)})`
      );
    });
}

/** Form is a difference: of two stations along the axis, or of two angles around it. */
function moreSpots({ quantity }: LimitCheck): string {
  return quantity === 'taper' ? 'read a second station' : 'read a second angle';
}

/** The guard on the side of the limit on which the value lies. */
function nearGuard(check: LimitCheck): Grain {
  return (excess(check) ?? 0) > 0 ? check.guards.outside : check.guards.inside;
}
