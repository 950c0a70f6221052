/**
 * What to measure again, the reading that decides most first: a reading is worth the verdicts that it is
 * expected to decide. Bad cells and missing readings decide theirs for certain; readings too near a limit
 * decide them with the chance that more repeats, or a better gauge, bring.
 */
import { STAND_INS } from '../book/reading-headers.js';
import { bestGauge, type GaugePlan, gaugesInUse, neededGauge } from './better-gauge.js';
import type { Context } from './context.js';
import { doubtShort } from './doubt-words.js';
import type { DoubtedReading } from './doubted-readings.js';
import type { FastenerResult } from './fastener.js';
import { fastenersWanted } from './fastener-remeasure.js';
import type { FitResult } from './fit.js';
import { answerWords, gaugeAdvice, type OpenFit } from './gauge-advice.js';
import {
  bestRepeats,
  chanceByRepeats,
  type OpenVerdicts,
  openVerdicts,
  type RepeatPlan,
} from './measuring-plan.js';
import type { PartResult } from './part-result.js';
import { type PartsOfBook, termPartsOf } from './placed-fit.js';
import {
  fitWords,
  NOT_MEASURED,
  outOf100,
  type Remeasure,
  reasonsOf,
  repeatsAtMost,
  repeatWords,
  spotNames,
} from './remeasure-words.js';
import { shellsInBoresOf } from './shells-in-bores.js';
import type { Wanted } from './wanted.js';

/** Where repeats decide a fit in fewer cases than this, a better gauge is named. */
const REPEATS_WILL_DO = 0.5;
/** Where they decide it in fewer cases than this, they are not asked for. */
const WORTH_REPEATING = 0.05;

/** What the list is made of. */
interface Found {
  readonly parts: PartsOfBook;
  readonly fits: readonly FitResult[];
  readonly fasteners: readonly FastenerResult[];
  readonly doubts: readonly DoubtedReading[];
}

export function remeasureList({ parts, fits, fasteners, doubts }: Found, context: Context): Remeasure[] {
  const all = parts.all();
  const open = openVerdicts(fits, context.book.setup.confidence);
  const inBores = shellsInBoresOf(context.book);
  const asked = all.filter(({ row, status }) => status !== 'not measured' || !inBores.boreOf(row));
  const wanted = [
    ...unread(asked, fits),
    ...doubted(doubts, fits, context),
    ...nearLimits(all, open, context),
    ...fastenersWanted(fasteners, context),
  ];
  return wanted
    .map((entry, order) => ({ ...entry, order }))
    .sort((a, b) => b.worth - a.worth || a.rank - b.rank || a.order - b.order)
    .map(({ sheet, parts: names, spot, why, worth }) => ({
      ...{ sheet, parts: names, spot, why },
      ...(worth === 0 && { isBeyondReadings: true }),
    }));
}

/** Bad cells, parts without readings, and checks that need more spots. */
function unread(all: readonly PartResult[], fits: readonly FitResult[]): Wanted[] {
  const fitsOf = new Map<PartResult, FitResult[]>();
  for (const fit of fits) {
    if (fit.status !== 'bad reading' && fit.status !== 'not measured') continue;
    for (const part of new Set(termPartsOf(fit))) fitsOf.set(part, [...(fitsOf.get(part) ?? []), fit]);
  }
  /** A fit that waits for two parts is decided by half for each. */
  const waiting = (part: PartResult) =>
    (fitsOf.get(part) ?? [])
      .filter(({ status }) => status === part.status)
      .reduce((sum, fit) => sum + 1 / new Set(termPartsOf(fit).filter(isUnread)).size, 0);
  const openByBlade = new Set(
    fits.flatMap(({ status, feelers, parts: { gap } }) =>
      status === 'undecided' && feelers && gap ? [gap] : [],
    ),
  );
  return all.flatMap((part): Wanted[] => {
    const { row } = part;
    const entry = (spot: string, why: string, rank: number, worth: number): Wanted => ({
      ...{ sheet: row.sheet, parts: [row.name], spot, why },
      ...{ rank, worth },
    });
    if (part.status === 'bad reading') {
      const worth = 1 + waiting(part);
      return row.bad.map(({ header, cell, found }) => entry(header, `${cell}: found ${found}`, 0, worth));
    }
    if (part.status === 'not measured') return [entry('all', NOT_MEASURED, 2, 1 + waiting(part))];
    const blade = untriedBlade(part);
    if (blade && openByBlade.has(part))
      return [entry(blade, 'not tried: the other blade alone does not decide', 1, 1)];
    if (part.status !== 'undecided') return [];
    return part.checks
      .filter(({ value }) => value === undefined)
      .map(({ quantity }) => entry('all', `${quantity} needs more spots`, 3, 1));
  });
}

/** Slips of the hand: each may change the verdict of its part, and of those of its fits that are not in range. */
function doubted(doubts: readonly DoubtedReading[], fits: readonly FitResult[], { book }: Context): Wanted[] {
  if (doubts.length === 0) return [];
  const open = new Map<PartResult, number>(doubts.map(({ part }) => [part, 0]));
  for (const fit of fits) {
    if (fit.clearance === undefined || fit.status === 'in range') continue;
    for (const part of new Set(termPartsOf(fit))) {
      const own = open.get(part);
      if (own !== undefined) open.set(part, own + 1);
    }
  }
  return doubts.map((doubt): Wanted => {
    const { part, reading } = doubt;
    return {
      ...{ sheet: part.row.sheet, parts: [part.row.name], spot: reading.column.header },
      why: doubtShort(doubt, book),
      ...{ rank: 1, worth: 1 + open.get(part)! },
    };
  });
}

/** The blade of a gap that was not tried, where only the other was. */
function untriedBlade({ feelers }: PartResult): string | undefined {
  if (!feelers) return undefined;
  if (feelers.goes === undefined) return STAND_INS.goes;
  return feelers.stops === undefined ? STAND_INS.stops : undefined;
}

/** What was typed in place of readings; undefined of a fit that rests on readings. */
function standInOf({ feelers, parts }: FitResult): string | undefined {
  if (feelers) return `${STAND_INS.goes}, ${STAND_INS.stops}`;
  return parts['run-out']?.spots.length === 0 ? STAND_INS.total : undefined;
}

/** Repeats of what stands in for readings are no column of the sheet: readings decide it. */
function byStandIn(fit: FitResult): Wanted {
  const { row } = termPartsOf(fit)[0]!;
  const advice = fit.feelers
    ? 'try blades closer to each other, or read the gap with a dial'
    : 'read the dial at several angles of each station';
  return {
    ...{ sheet: row.sheet, parts: [row.name], spot: standInOf(fit)! },
    why: `${fitWords(fit)}; ${advice}`,
    ...{ rank: 4, worth: 0 },
  };
}

function isUnread({ status }: PartResult): boolean {
  return status === 'bad reading' || status === 'not measured';
}

/** For each open verdict the readings that decide most: repeats of one of its parts or of all, or a better gauge. */
function nearLimits(all: readonly PartResult[], open: OpenVerdicts, context: Context): Wanted[] {
  const inUse = gaugesInUse(all);
  const single = new Map<PartResult, RepeatPlan | undefined>();
  const ofPart = (part: PartResult) => {
    if (!single.has(part)) single.set(part, bestRepeats([part], open));
    return single.get(part);
  };
  const words = new Map<RepeatPlan, string>();
  const wanted: Wanted[] = [];
  const undecidable: OpenFit[] = [];
  for (const fit of open.fits) {
    if (standInOf(fit) !== undefined) {
      wanted.push(byStandIn(fit));
      continue;
    }
    const own = [...new Set(termPartsOf(fit))];
    const plans = [...own.map(ofPart), own.length > 1 ? bestRepeats(own, open) : undefined];
    const best = plans
      .filter((plan) => plan !== undefined)
      .reduce<RepeatPlan | undefined>((a, b) => (a && worthOf(a) >= worthOf(b) ? a : b), undefined);
    const chance = chanceByRepeats(fit, open);
    const gauge = chance < REPEATS_WILL_DO ? bestGauge(fit, context, inUse) : undefined;
    if (gauge && gauge.chance > Math.max(chance, best ? worthOf(best) * gauge.readings : 0)) {
      wanted.push(withGauge(fit, gauge, chance));
    } else {
      const isUnlikely = chance < REPEATS_WILL_DO;
      const needed = isUnlikely ? neededGauge(fit, context) : undefined;
      if (best && chance >= WORTH_REPEATING) {
        const advice = isUnlikely ? [repeatsAtMost(chance), ...answerWords([{ needed }], context)] : [];
        words.set(best, words.get(best) || advice.join('; '));
      } else undecidable.push({ fit, needed, chance, part: needed?.part ?? termPartsOf(fit)[0]! });
    }
  }
  for (const part of all) {
    const plan = part.status === 'undecided' ? ofPart(part) : undefined;
    if (plan && !words.has(plan)) words.set(plan, '');
  }
  return [
    ...wanted,
    ...[...words].flatMap(([plan, needed]) => rowsOf(plan, needed, open)),
    ...gaugeAdvice(undecidable, context).map((entry) => ({ ...entry, rank: 5, worth: 0 })),
  ];
}

function worthOf({ decided, readings }: RepeatPlan): number {
  return decided / readings;
}

function rowsOf(plan: RepeatPlan, needed: string, open: OpenVerdicts): Wanted[] {
  return plan.parts.flatMap((part): Wanted[] => {
    const spots = part.spots.filter(({ readings }) => readings.length < plan.repeats);
    if (spots.length === 0) return [];
    return [
      {
        ...{ sheet: part.row.sheet, parts: [part.row.name], spot: spotNames(part, spots) },
        why: [...reasonsOf(part, plan, open), repeatWords(plan), ...(needed ? [needed] : [])].join('; '),
        ...{ rank: 4, worth: worthOf(plan) },
      },
    ];
  });
}

function withGauge(fit: FitResult, { part, gauge, readings, chance }: GaugePlan, repeats: number): Wanted {
  return {
    ...{ sheet: part.row.sheet, parts: [part.row.name], spot: spotNames(part, part.spots) },
    why: `${fitWords(fit)}; ${repeatsAtMost(repeats)}; measured with gauge ${gauge} it is decided in ${outOf100(chance)}`,
    ...{ rank: 4, worth: chance / readings },
  };
}
