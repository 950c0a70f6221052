/**
 * What to measure again, the reading that decides most first: a reading is worth the verdicts that wait
 * for it. Bad cells and missing readings come before readings that lie too near a limit.
 */
import { outcomeOf } from '../../maths/conformity.js';
import type { FitResult } from './fit.js';
import type { PartResult, ReadSpot } from './part.js';
import type { PartsOfBook, PlacedSlot } from './places.js';

export interface Remeasure {
  readonly sheet: string;
  readonly part: string;
  readonly spot: string;
  readonly why: string;
}

interface Wanted extends Remeasure {
  readonly rank: number;
  /** Verdicts that wait for the reading. */
  readonly verdicts: number;
}

export function remeasureList(parts: PartsOfBook, fits: readonly FitResult[]): Remeasure[] {
  const wanted: Wanted[] = [];
  const all = [...parts.journals, ...parts.rods, ...parts.cases, ...parts.shells];
  const fitsOf = new Map<PartResult, FitResult[]>();
  for (const fit of fits) {
    for (const part of new Set(Object.values(fit.parts))) {
      const own = fitsOf.get(part);
      if (own) own.push(fit);
      else fitsOf.set(part, [fit]);
    }
  }
  const waiting = (part: PartResult, status: FitResult['status']) =>
    (fitsOf.get(part) ?? []).filter((fit) => fit.status === status).length;
  for (const part of all) {
    const { row } = part;
    if (part.status === 'bad reading') {
      for (const { header, cell, found } of row.bad) {
        const why = `${cell}: found ${found}`;
        wanted.push({
          sheet: row.sheet,
          part: row.name,
          spot: header,
          why,
          rank: 0,
          verdicts: 1 + waiting(part, 'bad reading'),
        });
      }
    } else if (part.status === 'not measured') {
      wanted.push({
        sheet: row.sheet,
        part: row.name,
        spot: 'all',
        why: 'not measured',
        rank: 1,
        verdicts: 1 + waiting(part, 'not measured'),
      });
    } else if (part.status === 'undecided') {
      for (const check of part.checks) {
        if (outcomeOf(check) !== 'undecided') continue;
        const spot =
          check.quantity === 'smallest' ? extremeSpot(part, 'smallest') : extremeSpot(part, 'largest');
        const why =
          check.value === undefined
            ? `${check.quantity} needs more spots`
            : `${check.quantity} near ${check.limitName}`;
        wanted.push({ sheet: row.sheet, part: row.name, spot: spotName(spot), why, rank: 2, verdicts: 1 });
      }
    }
  }
  for (const fit of fits) {
    if (fit.status !== 'undecided' || !fit.clearance || !fit.limits) continue;
    const isTightSide = fit.clearance.tightest - fit.guard < fit.limits.clearanceMin!;
    const slots = (Object.keys(fit.parts) as PlacedSlot[]).filter((slot) => fit.parts[slot]?.measured);
    // The part whose own scatter is greatest gains most from repeats.
    slots.sort(
      (a, b) =>
        fit.parts[b]!.measured!.spotVariance - fit.parts[a]!.measured!.spotVariance || (a < b ? -1 : 1),
    );
    const slot = slots[0];
    if (!slot) continue;
    const part = fit.parts[slot]!;
    const wantsLargest = (slot === 'bore') !== isTightSide;
    wanted.push({
      sheet: part.row.sheet,
      part: part.row.name,
      spot: spotName(extremeSpot(part, wantsLargest ? 'largest' : 'smallest')),
      why: `${fit.engine} ${fit.fit} ${fit.position}: ${fit.why[0] ?? 'undecided'}`,
      rank: 2,
      verdicts: 1 + waiting(part, 'undecided'),
    });
  }
  return wanted
    .map((entry, order) => ({ ...entry, order }))
    .sort((a, b) => b.verdicts - a.verdicts || a.rank - b.rank || a.order - b.order)
    .map(({ sheet, part, spot, why }) => ({ sheet, part, spot, why }));
}

function extremeSpot(part: PartResult, which: 'largest' | 'smallest'): ReadSpot | undefined {
  return part.spots.find((spot) => spot.value === part.form?.[which]);
}

function spotName(spot: ReadSpot | undefined): string {
  if (!spot) return 'all';
  return spot.angle === undefined ? spot.station : `${spot.station} ${spot.angle}`;
}
