/** The matched sets as rows: what each filled journal got, with all that is shown of it. */
import { clearanceOf } from '../../maths/clearance.js';
import { fitVerdict, guardOf } from '../../maths/conformity.js';
import type { Grain } from '../../maths/grain.js';
import type { MatchedFit, TakenShell } from '../../maths/matching/stock.js';
import { clearanceVariance, expandedUncertainty } from '../../maths/uncertainty.js';
import type { Assessment } from '../assess/assess.js';
import type { PartResult } from '../assess/part-result.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';

/** One matched fit with what is shown of it, lengths in grains. */
export interface MatchedRow {
  readonly fit: MatchedFit;
  readonly journal: PartResult;
  /** The rod or the case that the journal sits in. */
  readonly bore: PartResult;
  /** Undefined for a bought shell. */
  readonly shells: { readonly upper: PartResult | undefined; readonly lower: PartResult | undefined };
  readonly engine: string;
  readonly fitName: string;
  readonly position: string;
  readonly upper: string;
  readonly lower: string;
  readonly clearance: Grain;
  readonly tightest: Grain;
  readonly loosest: Grain;
  readonly guard: Grain;
  readonly clearanceU: Grain | undefined;
  readonly offAim: Grain;
  readonly status: string;
}

export function shellName(taken: TakenShell): string {
  return taken.from === 'stock' ? taken.shell.name : `new ${taken.shell.mark}`;
}

/** The first part of each name. */
function byName(parts: readonly PartResult[]): Map<string, PartResult> {
  return new Map(parts.toReversed().map((part) => [part.row.name, part]));
}

/** The filled journals in the order of the journals' rows. */
export function matchedRows({ matching, stock, context, parts }: Assessment): MatchedRow[] {
  if (!matching) return [];
  const [rods, shells] = [byName(parts.of(RODS.name)), byName(parts.of(SHELLS.name))];
  const shellOf = (taken: TakenShell) => (taken.from === 'stock' ? shells.get(taken.shell.name) : undefined);
  const rows = matching.fits.map((fit): MatchedRow => {
    const journal = stock.journals.get(fit.journal)!;
    const limits = context.limitsOf(journal.row.engineType, journal.row.fit)!;
    const clearance = clearanceOf(fit.parts);
    const variance = clearanceVariance(fit.parts);
    const guard = guardOf(stock.stock.confidence, Math.sqrt(variance));
    const range = { min: limits.clearanceMin!, max: limits.clearanceMax!, serviceLimit: limits.serviceLimit };
    return {
      fit,
      journal,
      bore: stock.cases.get(fit.journal) ?? rods.get(fit.bore.name)!,
      shells: { upper: shellOf(fit.upper), lower: shellOf(fit.lower) },
      engine: journal.row.engine,
      fitName: journal.row.fit,
      position: journal.row.position,
      upper: shellName(fit.upper),
      lower: shellName(fit.lower),
      ...clearance,
      guard,
      clearanceU: Object.values(fit.parts).some(({ systematic }) => systematic.length > 0)
        ? expandedUncertainty(variance)
        : undefined,
      offAim: clearance.clearance - context.aimOf(limits)!,
      status: fitVerdict(clearance, range, guard),
    };
  });
  return rows.sort((a, b) => a.journal.row.row - b.journal.row.row);
}
