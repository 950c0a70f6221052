/** The matched sets: what each filled journal got, judged as a fit. */
import { type Clearance, fitOf } from '../../maths/clearance.js';
import { chanceInRange, fitVerdict, type ProvenFitVerdict } from '../../maths/conformity.js';
import type { Grain } from '../../maths/grain.js';
import { fitGuards, type Guards } from '../../maths/guards.js';
import type { MatchedFit, MatchResult, TakenShell } from '../../maths/matching/stock.js';
import { expandedUncertainty, totalVariance, varianceOf } from '../../maths/uncertainty.js';
import type { LimitsRow, PartRow } from '../book/book.js';
import type { FitSlot } from '../input-sheets/fits.js';
import { partSheet } from '../input-sheets/index.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';
import { type FitTerm, type KindOfFit, kindWithBore } from '../kinds/kind-of-fit.js';
import { SHELL_BEARING } from '../kinds/shell-bearing.js';
import type { Context } from './context.js';
import { type Halves, halfOf, shellsByPlace } from './half-shells.js';
import type { PartResult } from './part-result.js';
import type { FitPlace, PartsOfBook, SlotParts } from './placed-fit.js';
import { shellsInBoresOf } from './shells-in-bores.js';
import type { BookStock } from './stock.js';

/** One matched set at the place of its journal, lengths in grains. */
export interface MatchedSet extends FitPlace {
  readonly kind: KindOfFit;
  /** What matching found. */
  readonly found: MatchedFit;
  /** The journal that was filled. */
  readonly journal: PartResult;
  /** The parts of the stock by their slots; a bought one has none. */
  readonly parts: SlotParts;
  /**
   * What is in each slot: the name of a part, or `new` and the mark of one that is bought; blank for a shell that is in
   * the bore and that no row names.
   */
  readonly names: Readonly<Record<FitSlot, string>>;
  readonly limits: LimitsRow;
  readonly clearance: Clearance;
  readonly guards: Guards;
  /** Undefined where no part has a gauge. */
  readonly clearanceU: Grain | undefined;
  /** Clearance less aim. */
  readonly offAim: Grain;
  readonly status: ProvenFitVerdict;
  /** The probability that it lies in its range. */
  readonly chance: number;
}

/** One set a filled journal, in the order of the journals' rows. */
export function matchedSets(
  { fits }: MatchResult,
  stock: BookStock,
  parts: PartsOfBook,
  context: Context,
): MatchedSet[] {
  const [rods, shells] = [byName(parts.of(RODS.name)), byName(parts.of(SHELLS.name))];
  const shellOf = (taken: TakenShell) =>
    taken.from === 'stock' && !taken.shell.isBrought ? shells.get(taken.shell.name) : undefined;
  const halvesIn = halvesByBore(parts, context);
  const sets = fits.map((found): MatchedSet => {
    const { journal: filled, bore, upper, lower } = found;
    const journal = stock.journals.get(filled)!;
    const housing = stock.cases.get(filled) ?? rods.get(bore.name);
    const own: Record<FitSlot, PartResult | undefined> = {
      journal,
      bore: housing,
      upper: shellOf(upper),
      lower: shellOf(lower),
      ...(housing?.row.hasShells && halvesIn(housing.row)),
    };
    const names = {
      journal: journal.row.name,
      bore: bore.name,
      upper: own.upper?.row.name ?? nameOfShell(upper),
      lower: own.lower?.row.name ?? nameOfShell(lower),
    };
    const kind = kindWithBore(SHELL_BEARING, housing?.row);
    return { ...judged(found, kind, journal, stock, context), found, journal, parts: present(own), names };
  });
  return sets.sort((a, b) => a.journal.row.row - b.journal.row.row);
}

/** The sets of complete engines, where there is one; else all: what is picked and bought. */
export function setsToMake(sets: readonly MatchedSet[], matching: MatchResult | undefined): MatchedSet[] {
  const complete = new Set(matching?.completeEngines);
  return complete.size === 0 ? [...sets] : sets.filter(({ found }) => complete.has(found.engine));
}

/** The shells that are in the bores which were measured with them, as their rows name them. */
function halvesByBore(parts: PartsOfBook, { book }: Context): (bore: PartRow) => Halves {
  const inBores = shellsInBoresOf(book);
  const shells = new Map<PartRow, PartResult[]>();
  for (const part of parts.of(SHELLS.name)) {
    const bore = halfOf(part.row) && inBores.boreOf(part.row);
    if (bore) shells.set(bore, [...(shells.get(bore) ?? []), part]);
  }
  return (bore) => shellsByPlace(shells.get(bore) ?? [], {}, []);
}

function judged(
  found: MatchedFit,
  kind: KindOfFit,
  { row }: PartResult,
  { stock }: BookStock,
  context: Context,
) {
  const { engineType, engine, fit, position } = row;
  const limits = context.limitsOf(engineType, fit)!;
  const range = { min: limits.clearanceMin!, max: limits.clearanceMax!, serviceLimit: limits.serviceLimit };
  const terms = kind.terms.map(({ slot, sign }) => ({ sign, part: found.parts[slot as FitSlot] }));
  const clearance = fitOf(terms);
  const variance = varianceOf(terms);
  const guards = fitGuards(stock.confidence, variance);
  const hasGauge = terms.some(({ part }) => part.systematic.length > 0);
  return {
    ...{ engine, fit, position, kind, limits, clearance, guards },
    clearanceU: hasGauge ? expandedUncertainty(totalVariance(variance)) : undefined,
    offAim: clearance.clearance - context.aimOf(limits)!,
    status: found.journal.caseBore?.isUncorrected ? 'undecided' : fitVerdict(clearance, range, guards),
    chance: chanceInRange(clearance, range, Math.sqrt(totalVariance(variance))),
  };
}

/** What a part of a set is called: by its own sheet where its slot takes parts of several. */
export function nounInSet({ noun, sheets }: FitTerm, part: PartResult): string {
  return noun === undefined || sheets.length > 1 ? partSheet(part.row.sheet).noun : noun;
}

function nameOfShell(taken: TakenShell): string {
  return taken.from === 'stock' ? taken.shell.name : `new ${taken.shell.mark}`;
}

/** The first part of each name. */
function byName(parts: readonly PartResult[]): Map<string, PartResult> {
  return new Map(parts.toReversed().map((part) => [part.row.name, part]));
}

function present(parts: Readonly<Record<string, PartResult | undefined>>): SlotParts {
  return Object.fromEntries(Object.entries(parts).filter(([, part]) => part));
}
