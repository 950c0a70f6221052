/** Fits of a bore and two shells that ran together on the same journal, each part by its own name. */

import type { FitParts } from '../clearance.js';
import { clearanceOf } from '../clearance.js';
import type { ProvenFitVerdict } from '../conformity.js';
import { fitGuards } from '../guards.js';
import { clearanceVariance, type MeasuredPart } from '../uncertainty.js';
import { BIG_END, keyOfKind } from './part-classes.js';
import type { RanAt, Stock, StockEngine, StockJournal, StockRod, StockShell } from './stock.js';
import { allowedVerdict, type ProvableLimits } from './verdicts.js';

export interface KeptFit {
  readonly engine: StockEngine;
  readonly journal: StockJournal;
  /** Undefined for a case bore. */
  readonly rod: StockRod | undefined;
  readonly upper: StockShell;
  readonly lower: StockShell;
  /** Whether it is `in range`; else it has another allowed verdict. */
  readonly isInRange: boolean;
}

interface KeptBore {
  readonly rod: StockRod | undefined;
  readonly bore: MeasuredPart | undefined;
  readonly hasShells: true | undefined;
}

export function ranOn(ran: RanAt | undefined, engine: StockEngine, journal: StockJournal): boolean {
  return ran !== undefined && ran.engine === engine.name && ran.position === journal.position;
}

/** The verdict of these parts where it is an allowed one, by the core's own clearance, variance and guard. */
export function verdictInStock(
  parts: FitParts<MeasuredPart>,
  limits: ProvableLimits,
  stock: Stock,
  isUncorrected = false,
): ProvenFitVerdict | undefined {
  const { halfDifference } = limits;
  if (halfDifference !== undefined && Math.abs(parts.upper.size - parts.lower.size) > halfDifference) {
    return undefined;
  }
  const guards = fitGuards(stock.confidence, clearanceVariance(parts));
  return allowedVerdict(clearanceOf(parts), limits, guards, stock, isUncorrected);
}

const placeKey = ({ engine, position }: RanAt, kind: string) => JSON.stringify([engine, position, kind]);

/** The parts of a stock by where they ran, so that each journal finds its own. */
function partsByPlace<Part extends { readonly ran: RanAt | undefined }>(
  parts: readonly Part[],
  kindOf: (part: Part) => string,
): (engine: StockEngine, journal: StockJournal) => readonly Part[] {
  const places = new Map<string, Part[]>();
  for (const part of parts) {
    if (!part.ran) continue;
    const key = placeKey(part.ran, kindOf(part));
    const own = places.get(key);
    if (own) own.push(part);
    else places.set(key, [part]);
  }
  return ({ name }, journal) =>
    places.get(placeKey({ engine: name, position: journal.position }, keyOfKind(journal))) ?? [];
}

/** Every allowed fit that keeps its parts together, in the order of the stock. */
export function keptFits(stock: Stock, limits: ReadonlyMap<string, ProvableLimits>): KeptFit[] {
  const fits: KeptFit[] = [];
  const brought = stock.shells.filter(({ isBrought }) => isBrought);
  const shellsOf = partsByPlace(stock.shells, keyOfKind);
  const rodsOf = partsByPlace(stock.rods, ({ engineType }) => keyOfKind({ engineType, fit: BIG_END }));
  for (const engine of stock.engines) {
    for (const journal of engine.journals) {
      const kindLimits = limits.get(keyOfKind(journal));
      if (!journal.part || !kindLimits) continue;
      const { caseBore, part } = journal;
      const withShells = { ...kindLimits, halfDifference: undefined };
      const bores: KeptBore[] = caseBore
        ? [
            {
              rod: undefined,
              bore: ranOn(caseBore.ran, engine, journal) ? caseBore.part : undefined,
              hasShells: caseBore.hasShells,
            },
          ]
        : rodsOf(engine, journal)
            .filter(({ mass }) => kindLimits.massSpread === undefined || mass !== undefined)
            .map((rod) => ({ rod, bore: rod.part, hasShells: rod.hasShells }));
      for (const { rod, bore, hasShells } of bores) {
        if (!bore) continue;
        // Shells in a bore ran wherever it ran.
        const shells = hasShells
          ? brought.filter((shell) => keyOfKind(shell) === keyOfKind(journal))
          : shellsOf(engine, journal);
        for (const upper of shells) {
          if (upper.half === 'lower') continue;
          for (const lower of shells) {
            if (lower.half === 'upper' || (upper === lower && upper.quantity < 2)) continue;
            const parts = { bore, journal: part, upper: upper.part, lower: lower.part };
            const given = hasShells ? withShells : kindLimits;
            const verdict = verdictInStock(parts, given, stock, caseBore?.isUncorrected);
            if (verdict) fits.push({ engine, journal, rod, upper, lower, isInRange: verdict === 'in range' });
          }
        }
      }
    }
  }
  return fits;
}
