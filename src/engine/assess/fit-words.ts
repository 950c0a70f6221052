/** Why a fit has the verdict that it has, in words. */
import type { Clearance } from '../../maths/clearance.js';
import type { ProvenFitVerdict } from '../../maths/conformity.js';
import type { Grain } from '../../maths/grain.js';
import type { Guards } from '../../maths/guards.js';
import type { LengthUnit } from '../../maths/units.js';
import type { LimitsRow } from '../book/book.js';
import { reasonOf } from '../book/problems.js';
import { FIT_SLOTS } from '../input-sheets/fits.js';
import { termOf } from '../kinds/kind-of-fit.js';
import { nounOfTerm } from '../kinds/sheets-of-term.js';
import type { Context, GaugeUse } from './context.js';
import type { PartResult } from './part-result.js';
import type { PlacedFit } from './places.js';
import { lengthText } from './words.js';

/** Which parts of a fit are not there, and which were not measured. */
export function missingParts({ kind, parts, fit }: PlacedFit): string[] {
  const terms = FIT_SLOTS.flatMap((slot) => termOf(kind, slot) ?? []);
  const missing = terms.filter(({ slot }) => !parts[slot]).map((term) => nounOfTerm(term, fit));
  const unread = terms.flatMap(({ slot }) =>
    parts[slot] && !parts[slot].measured ? [parts[slot].row.name] : [],
  );
  return [
    ...(missing.length > 0 ? [`no ${missing.join(', no ')} at this place`] : []),
    ...(unread.length > 0 ? [`not measured: ${[...new Set(unread)].join(', ')}`] : []),
  ];
}

/** Which limit is not there, and where it should be. */
export function noLimitsReason(
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

/** What a verdict of a fit rests on. */
export interface FitFacts {
  readonly clearance: Clearance;
  readonly range: { readonly min: Grain; readonly max: Grain; readonly serviceLimit: Grain | undefined };
  readonly guards: Guards;
  readonly chance: number;
}

/** What proves a verdict; of an undecided fit first what is known, then which limit is too near. */
export function verdictReasons(status: ProvenFitVerdict, facts: FitFacts, unit: LengthUnit): string[] {
  const text = (length: Grain) => lengthText(length, unit);
  const { tightest, loosest } = facts.clearance;
  const { min, max, serviceLimit } = facts.range;
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
    case 'undecided':
      return [whatIsKnown(facts), ...nearLimits(facts, text)];
    default:
      return [];
  }
}

function isLooserThanNew({ clearance, range, guards }: FitFacts): boolean {
  return range.serviceLimit !== undefined && clearance.loosest - guards.outside > range.max;
}

function whatIsKnown(facts: FitFacts): string {
  if (isLooserThanNew(facts)) {
    return 'looser than new parts may be (proved); the service limit is not proved';
  }
  const percent = Math.round(100 * facts.chance);
  return facts.chance >= 0.5
    ? `probably in range: ${percent} %`
    : `probably not in range: chance ${percent} %`;
}

/** The limits that an extreme lies nearer to than can be measured, on whichever side. */
function nearLimits(facts: FitFacts, text: (length: Grain) => string): string[] {
  const { tightest, loosest } = facts.clearance;
  const { min, max, serviceLimit } = facts.range;
  const { inside, outside } = facts.guards;
  const near = (which: string, value: Grain, limitName: string, limit: Grain, guard: Grain) =>
    `${which} ${text(value)} is ${text(Math.abs(value - limit))} from ${limitName} ${text(limit)}, ` +
    `nearer than we can measure (±${text(guard)})`;
  const open: string[] = [];
  if (tightest - inside < min) {
    open.push(near('tightest', tightest, 'Clearance min', min, tightest < min ? outside : inside));
  }
  if (isLooserThanNew(facts)) {
    if (loosest + inside > serviceLimit!) {
      const guard = loosest > serviceLimit! ? outside : inside;
      open.push(near('loosest', loosest, 'Service limit', serviceLimit!, guard));
    }
  } else if (loosest + inside > max) {
    open.push(near('loosest', loosest, 'Clearance max', max, loosest > max ? outside : inside));
  }
  return open;
}

export function uncertaintyRemarks(parts: readonly PartResult[], hasGauge: boolean): string[] {
  if (!hasGauge) return ['uncertainty not given: no part has a gauge'];
  const without = parts.filter(({ gauge }) => gauge === undefined).map(({ row }) => row.name);
  return [
    ...(without.length > 0 ? [`uncertainty not given for ${without.join(', ')}`] : []),
    ...new Set(parts.flatMap(({ gauge }) => (gauge && gauge.circle.length > 0 ? [circleRemark(gauge)] : []))),
  ];
}

/** A circle may be as long as Gauges: so many of its names are enough to find it. */
const NAMED_OF_CIRCLE = 4;

function circleRemark({ circle }: GaugeUse): string {
  if (circle.length === 1) return `gauge ${circle[0]} is set from itself: check Set from in Gauges`;
  const more = circle.length > NAMED_OF_CIRCLE ? ` and ${circle.length - NAMED_OF_CIRCLE} more` : '';
  const names = `${circle.slice(0, NAMED_OF_CIRCLE).join(', ')}${more}`;
  return `gauges ${names} are set from each other in a circle: check Set from in Gauges`;
}
