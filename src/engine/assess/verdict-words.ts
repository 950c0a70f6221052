/** Why a fit has the verdict that it has, in words. */
import type { Clearance } from '../../maths/clearance.js';
import { type FitLimits, openEnded } from '../../maths/conformity.js';
import type { Feelers } from '../../maths/feelers.js';
import type { Grain } from '../../maths/grain.js';
import type { Guards } from '../../maths/guards.js';
import type { LengthUnit } from '../../maths/units.js';
import type { KindOfFit } from '../kinds/kind-of-fit.js';
import type { FitStatus } from './fit-verdicts.js';
import { lengthText } from './words.js';

/** What a verdict of a fit rests on. */
export interface FitFacts {
  readonly kind: KindOfFit;
  /** Undefined of a gap that one blade was tried in. */
  readonly clearance: Clearance | undefined;
  readonly feelers: Feelers | undefined;
  readonly range: FitLimits;
  readonly guards: Guards;
  readonly chance: number | undefined;
}

type Text = (length: Grain) => string;

/** A value and what it is called. */
interface Named {
  readonly name: string;
  readonly value: Grain;
}

/** What proves a verdict; of an undecided fit first what is known, then which limit is too near. */
export function verdictReasons(status: FitStatus, facts: FitFacts, unit: LengthUnit): string[] {
  const text = (length: Grain) => lengthText(length, unit);
  const { min, max, serviceLimit } = facts.range;
  const roof = serviceLimit ?? max;
  const roofName = serviceLimit === undefined ? 'Clearance max' : 'Service limit';
  switch (status) {
    case 'tight': {
      const { name, value } = breakingMin(facts);
      return [`${name} is ${text(min! - value)} under Clearance min ${text(min!)}`];
    }
    case 'loose':
    case 'beyond limits': {
      const { name, value } = breakingRoof(facts);
      return [`${name} is ${text(value - roof!)} over ${roofName} ${text(roof!)}`];
    }
    case 'within service limit': {
      const { name, value } = breakingRoof(facts);
      return [
        `${name} is ${text(value - max!)} over Clearance max ${text(max!)}, under Service limit ${text(roof!)}`,
      ];
    }
    case 'undecided':
      return [...whatIsKnown(facts), ...(facts.feelers ? openBetween(facts, text) : nearLimits(facts, text))];
    default:
      return [];
  }
}

/** By feelers all that is left of the gap has to lie beyond a limit, so its far end does. */
function breakingMin({ kind, clearance, feelers }: FitFacts): Named {
  if (feelers) return { name: 'Stops', value: feelers.stops! };
  return { name: kind.strategy === 'dial' ? 'run-out' : 'tightest', value: clearance!.tightest };
}

function breakingRoof({ kind, clearance, feelers }: FitFacts): Named {
  if (feelers) return { name: 'Goes', value: feelers.goes! };
  return { name: kind.strategy === 'dial' ? 'run-out' : 'loosest', value: clearance!.loosest };
}

function isLooserThanNew({ clearance, feelers, range, guards }: FitFacts): boolean {
  const value = feelers ? feelers.goes : clearance!.loosest;
  const { max } = openEnded(range);
  return range.serviceLimit !== undefined && value !== undefined && value - guards.outside > max;
}

function whatIsKnown(facts: FitFacts): string[] {
  if (isLooserThanNew(facts)) {
    return ['looser than new parts may be (proved); the service limit is not proved'];
  }
  if (facts.chance === undefined) return [];
  const percent = Math.round(100 * facts.chance);
  return [
    facts.chance >= 0.5 ? `probably in range: ${percent} %` : `probably not in range: chance ${percent} %`,
  ];
}

/** The limits that an extreme lies nearer to than can be measured, on whichever side. */
function nearLimits(facts: FitFacts, text: Text): string[] {
  const { min, max, serviceLimit } = facts.range;
  const { inside, outside } = facts.guards;
  const low = breakingMin(facts);
  const high = breakingRoof(facts);
  const near = ({ name, value }: Named, limitName: string, limit: Grain, guard: Grain) =>
    `${name} ${text(value)} is ${text(Math.abs(value - limit))} from ${limitName} ${text(limit)}, ` +
    `nearer than we can measure (±${text(guard)})`;
  const open: string[] = [];
  if (min !== undefined && low.value - inside < min) {
    open.push(near(low, 'Clearance min', min, low.value < min ? outside : inside));
  }
  if (isLooserThanNew(facts)) {
    if (high.value + inside > serviceLimit!) {
      open.push(near(high, 'Service limit', serviceLimit!, high.value > serviceLimit! ? outside : inside));
    }
  } else if (max !== undefined && high.value + inside > max) {
    open.push(near(high, 'Clearance max', max, high.value > max ? outside : inside));
  }
  return open;
}

/** Which limits lie between the blades, or nearer to one of them than it is known. */
function openBetween(facts: FitFacts, text: Text): string[] {
  const { goes, stops } = facts.feelers!;
  if (goes === undefined || stops === undefined) {
    const [tried, other] = goes === undefined ? ['Stops', 'Goes'] : ['Goes', 'Stops'];
    return [`${tried} ${text((goes ?? stops)!)} alone does not decide it: try the other blade (${other})`];
  }
  const { inside, outside } = facts.guards;
  const { min, max, serviceLimit } = facts.range;
  const limits = [
    { name: 'Clearance min', limit: min },
    isLooserThanNew(facts)
      ? { name: 'Service limit', limit: serviceLimit }
      : { name: 'Clearance max', limit: max },
  ];
  return limits.flatMap(({ name, limit }) => {
    if (limit === undefined) return [];
    if (goes < limit && limit < stops)
      return [`${name} ${text(limit)} lies between Goes ${text(goes)} and Stops ${text(stops)}`];
    const [blade, value] =
      Math.abs(goes - limit) < Math.abs(stops - limit) ? ['Goes', goes] : ['Stops', stops];
    const guard = Math.max(inside, outside);
    if (Math.abs(value - limit) > guard) return [];
    return [
      `${blade} ${text(value)} is nearer to ${name} ${text(limit)} than we can measure (±${text(guard)})`,
    ];
  });
}
