/** Why a fit has the verdict that it has, in words. */
import type { Clearance } from '../../maths/clearance.js';
import type { ProvenFitVerdict } from '../../maths/conformity.js';
import type { Grain } from '../../maths/grain.js';
import type { LengthUnit } from '../../maths/units.js';
import type { LimitsRow } from '../book/book.js';
import { reasonOf } from '../book/problems.js';
import { FIT_SLOTS } from '../input-sheets/fits.js';
import { termOf } from '../kinds/kind-of-fit.js';
import type { Context } from './context.js';
import type { PartResult } from './part-result.js';
import type { PlacedFit } from './places.js';
import { lengthText } from './words.js';

/** Which parts of a fit are not there, and which were not measured. */
export function missingParts({ kind, parts }: PlacedFit): string[] {
  const terms = FIT_SLOTS.flatMap((slot) => termOf(kind, slot) ?? []);
  const missing = terms.filter(({ slot }) => !parts[slot]).map(({ noun }) => noun);
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

/** What proves a verdict, or which limit is too near for one. */
export function verdictReasons(
  status: ProvenFitVerdict,
  { tightest, loosest }: Clearance,
  { min, max, serviceLimit }: { min: Grain; max: Grain; serviceLimit: Grain | undefined },
  guard: Grain,
  unit: LengthUnit,
): string[] {
  const text = (length: Grain) => lengthText(length, unit);
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

export function uncertaintyRemarks(parts: readonly PartResult[], hasGauge: boolean): string[] {
  if (!hasGauge) return ['uncertainty not given: no part has a gauge'];
  const without = parts.filter(({ gauge }) => gauge === undefined).map(({ row }) => row.name);
  return without.length > 0 ? [`uncertainty not given for ${without.join(', ')}`] : [];
}
