/** What is missing of a fit, in words: parts, limits, gauges. */
import type { LimitsRow } from '../book/book.js';
import { reasonOf } from '../book/problems.js';
import { partSheet } from '../input-sheets/index.js';
import { isOnFits, TERM_SLOTS, termOf } from '../kinds/kind-of-fit.js';
import { nounOfTerm } from '../kinds/sheets-of-term.js';
import type { Context, GaugeUse } from './context.js';
import type { PartResult } from './part-result.js';
import type { PlacedFit } from './placed-fit.js';

/** Which parts of a fit are not there, and which were not measured; what is measured as a whole says so itself. */
export function missingParts({ kind, parts, fit }: PlacedFit): string[] {
  if (!isOnFits(kind)) return [];
  const terms = TERM_SLOTS.flatMap((slot) => termOf(kind, slot) ?? []);
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
  { kind, fit }: PlacedFit,
  limits: LimitsRow | undefined,
  context: Context,
): string {
  if (engineType === undefined) return 'name the Engine type: Limits has several';
  if (context.book.limits.length === 0) return 'the book has no sheet Limits';
  if (fit === '') return 'Fit is blank: name it as Limits does';
  if (!limits) return `Limits has no row for ${engineType || 'this engine type'}, ${fit}`;
  const blanks = [
    ...(limits.clearanceMin === undefined ? ['Clearance min'] : []),
    ...(limits.clearanceMax === undefined ? ['Clearance max'] : []),
  ];
  const bad = limits.bad.find(({ header }) => blanks.includes(header));
  if (bad) return reasonOf(bad);
  return kind.needsOneLimit
    ? `Limits gives neither ${blanks.join(' nor ')} for this ${kind.name}`
    : `Limits gives no ${blanks[0]} for this fit`;
}

export function uncertaintyRemarks(parts: readonly PartResult[], hasGauge: boolean): string[] {
  if (!hasGauge) {
    const isWhole = parts.length === 1 && partSheet(parts[0]!.row.sheet).isOfPlaces;
    return [`uncertainty not given: ${isWhole ? 'no gauge' : 'no part has a gauge'}`];
  }
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
