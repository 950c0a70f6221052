/** A fit and the parts that it is made of, before anything is computed of it. */
import type { FitRow } from '../book/book.js';
import type { BySheet } from '../book/by-sheet.js';
import { type KindOfFit, TERM_SLOTS, type TermSlot, termOf } from '../kinds/kind-of-fit.js';
import type { PartResult } from './part-result.js';

export interface FitPlace {
  readonly engine: string;
  readonly fit: string;
  readonly position: string;
}

/** The parts of a fit, by the slots that its kind has. */
export type SlotParts = Partial<Record<TermSlot, PartResult>>;

export interface PlacedFit extends FitPlace {
  readonly kind: KindOfFit;
  readonly source: FitRow | undefined;
  readonly parts: SlotParts;
  /** Why the parts are not determined; empty where they are. */
  readonly unclear: readonly string[];
}

export type PartsOfBook = BySheet<PartResult>;

/** The parts whose sizes make the fit: shells that are in a measured bore are not among them. */
export function termPartsOf({ kind, parts }: Pick<PlacedFit, 'kind' | 'parts'>): PartResult[] {
  return TERM_SLOTS.flatMap((slot) => (termOf(kind, slot) && parts[slot]) ?? []);
}

/** The parts of a fit, one on both halves twice. */
export function partsOf({ parts }: Pick<PlacedFit, 'parts'>): PartResult[] {
  return TERM_SLOTS.flatMap((slot) => parts[slot] ?? []);
}
