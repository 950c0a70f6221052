/** The rules that every set keeps by itself. */
import { clearanceOf } from '../clearance.js';
import { fitVerdict } from '../conformity.js';
import { type Grain, mmOfGrain } from '../grain.js';
import { fitGuards } from '../guards.js';
import { clearanceVariance } from '../uncertainty.js';
import { type Breach, isAlike, type StockRows, setInWords, shellInWords } from './recheck-rows.js';
import { beyondMassSpread, usedTooOften } from './recheck-together.js';
import type { MatchedFit, RanAt, TakenShell } from './stock.js';

/** A rule that a set keeps whatever the others are. */
interface SetRule {
  readonly rule: string;
  /** What breaks it; undefined where nothing does. */
  readonly broken: (fit: MatchedFit, rows: StockRows) => string | undefined;
}

const inMm = (length: Grain) => `${mmOfGrain(length)} mm`;

/** The first reason that holds of either half. */
function ofHalves(
  fit: MatchedFit,
  reason: (taken: TakenShell, half: 'upper' | 'lower') => string | undefined,
): string | undefined {
  return reason(fit.upper, 'upper') ?? reason(fit.lower, 'lower');
}

function ranHere(ran: RanAt | undefined, { engine, journal }: MatchedFit): boolean {
  return ran?.engine === engine && ran.position === journal.position;
}

const SET_RULES: readonly SetRule[] = [
  {
    rule: 'a set fills a journal of its engine',
    broken: (fit, rows) => (rows.hasJournal(fit) ? undefined : 'the engine has no such journal'),
  },
  {
    rule: 'parts that are unmeasured, bad readings, beyond limits or not usable are not used',
    broken: ({ journal }) => {
      if (!journal.part) return 'the journal cannot be used';
      return journal.caseBore && !journal.caseBore.part ? 'its case bore cannot be used' : undefined;
    },
  },
  {
    rule: 'every part is of the stock, a new shell one of those for sale',
    broken: (fit, rows) => {
      if (!fit.journal.caseBore && !rows.rodOf(fit)) return `${fit.bore.name} is not a rod of the stock`;
      return ofHalves(fit, (taken) => {
        if (rows.hasShell(taken)) return undefined;
        return `${shellInWords(taken)} is not ${taken.from === 'new' ? 'for sale' : 'in the stock'}`;
      });
    },
  },
  {
    rule: 'a fit is computed from the sizes of its own parts',
    broken: (fit) => {
      const { journal, bore, parts } = fit;
      if (journal.part && parts.journal !== journal.part) return 'the journal has the values of another part';
      if (parts.bore !== bore.part) return `bore ${bore.name} has the values of another part`;
      return ofHalves(fit, ({ shell }, half) =>
        parts[half] === shell.part ? undefined : `the ${half} shell has the values of another part`,
      );
    },
  },
  {
    rule: 'engine types and fits never mix',
    broken: (fit, rows) => {
      const rod = rows.rodOf(fit);
      if (rod && rod.engineType !== fit.journal.engineType)
        return `rod ${rod.name} is of another engine type`;
      if (rod && fit.journal.fit !== 'big end') return `rod ${rod.name} does not go on it`;
      return ofHalves(fit, ({ shell }, half) =>
        isAlike(shell, fit.journal) ? undefined : `the ${half} shell is of another fit`,
      );
    },
  },
  {
    rule: 'a main keeps the case bore of its place',
    broken: ({ journal: { caseBore }, bore }) => {
      if (!caseBore?.part) return undefined;
      const isOwn = bore.name === caseBore.name && bore.part === caseBore.part;
      return isOwn ? undefined : `${bore.name} is not the bore of its case`;
    },
  },
  {
    rule: 'a bore measured with its shells in keeps them, and they serve nowhere else',
    broken: (fit, rows) => {
      const bore = fit.journal.caseBore ?? rows.rodOf(fit);
      const hasShells = bore?.hasShells ?? false;
      return ofHalves(fit, (taken, half) => {
        const isOwn = taken.from === 'stock' && (taken.shell.isBrought ?? false);
        if (isOwn === hasShells) return undefined;
        return hasShells
          ? `the ${half} shell is not the one that ${fit.bore.name} was measured with`
          : `the ${half} shell is in another bore`;
      });
    },
  },
  {
    rule: 'upper goes up, lower down, either both',
    broken: (fit) =>
      ofHalves(fit, ({ shell }, half) =>
        shell.half === half || shell.half === 'either' || shell.half === 'pair'
          ? undefined
          : `the ${half} shell is marked ${shell.half}`,
      ),
  },
  {
    rule: 'half-shells whose rows name one place serve only with each other',
    broken: (fit) => {
      const [upper, lower] = [fit.upper, fit.lower].map((taken) =>
        taken.from === 'stock' ? taken.shell.mates : undefined,
      );
      if (upper === lower) return undefined;
      return `${shellInWords(fit.upper)} and ${shellInWords(fit.lower)} are not of one place`;
    },
  },
  {
    rule: 'a pair bought as one is used as one',
    broken: ({ upper, lower }) => {
      const isPair = [upper, lower].some(({ shell }) => shell.half === 'pair');
      return isPair && upper.shell !== lower.shell ? 'it has one half of a bought pair' : undefined;
    },
  },
  {
    rule: 'a new half stands only with a new half, unless New with used allows it',
    broken: ({ upper, lower }, { stock }) =>
      stock.newWithUsed || upper.from === lower.from ? undefined : 'it has a new half and a used one',
  },
  {
    rule: 'a rod that ran on a journal serves there only, where Rods stay',
    broken: (fit, rows) => {
      const rod = rows.rodOf(fit);
      if (!rows.stock.rodsStay || !rod?.ran || ranHere(rod.ran, fit)) return undefined;
      return `rod ${rod.name} ran on ${rod.ran.engine} ${rod.ran.position}`;
    },
  },
  {
    rule: 'a pair beyond Half difference is not made',
    broken: ({ journal, parts: { upper, lower } }, rows) => {
      const most = rows.limitsOf(journal)?.halfDifference;
      const difference = Math.abs(upper.size - lower.size);
      if (most === undefined || difference <= most) return undefined;
      return `its pair of shells is not allowed: the walls differ by ${inMm(difference)}, at most by ${inMm(most)}`;
    },
  },
  {
    rule: 'a fit needs Clearance min and max',
    broken: ({ journal }, rows) => {
      const limits = rows.limitsOf(journal);
      return limits?.min === undefined || limits.max === undefined ? 'its limits are not given' : undefined;
    },
  },
  {
    rule: 'a fit is in range, or undecided or within its service limit where Undecided fits or Worn fits allows it',
    broken: ({ journal, parts }, rows) => {
      const { min, max, serviceLimit } = rows.limitsOf(journal) ?? {};
      if (min === undefined || max === undefined) return undefined;
      const { confidence, allowUndecided, allowWorn } = rows.stock;
      const clearance = clearanceOf(parts);
      const guards = fitGuards(confidence, clearanceVariance(parts));
      const verdict = journal.caseBore?.isUncorrected
        ? 'undecided'
        : fitVerdict(clearance, { min, max, serviceLimit }, guards);
      if (verdict === 'in range' || (allowUndecided && verdict === 'undecided')) return undefined;
      if (allowWorn && verdict === 'within service limit') return undefined;
      const extremes = `${mmOfGrain(clearance.tightest)} to ${inMm(clearance.loosest)}`;
      return `its clearance of ${extremes} is ${verdict}, with a guard of ${inMm(guards.inside)}`;
    },
  },
  {
    rule: 'parts ran together where bore and both shells ran at the very place',
    broken: (fit, rows) => {
      const bore = fit.journal.caseBore ?? rows.rodOf(fit);
      const shells = [fit.upper, fit.lower].map((taken) =>
        taken.from === 'new' ? undefined : taken.shell.isBrought ? bore?.ran : taken.shell.ran,
      );
      const ranTogether = [bore?.ran, ...shells].every((ran) => ranHere(ran, fit));
      if (ranTogether === fit.ranTogether) return undefined;
      return ranTogether
        ? 'its parts ran together, and it says that they did not'
        : 'its parts did not run together, and it says that they did';
    },
  },
  {
    rule: 'a rod stays where it ran on the very journal',
    broken: (fit, rows) => {
      const stays = ranHere(rows.rodOf(fit)?.ran, fit);
      if (stays === fit.rodStays) return undefined;
      return stays
        ? 'its rod stays, and it says that it does not'
        : 'its rod moves, and it says that it stays';
    },
  },
];

/** What the sets break, set by set, then what they break together. */
export function brokenBySets(fits: readonly MatchedFit[], rows: StockRows): Breach[] {
  const single = fits.flatMap((fit) =>
    SET_RULES.flatMap(({ rule, broken }): Breach[] => {
      const what = broken(fit, rows);
      return what === undefined ? [] : [{ rule, where: setInWords(fit), what }];
    }),
  );
  return [...single, ...usedTooOften(fits, rows), ...beyondMassSpread(fits, rows)];
}
