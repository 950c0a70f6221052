/** Where the parts of a matched stock are: which set holds which. */
import type { StockJournal, StockRod, StockShell } from '../../maths/matching/stock.js';
import type { Assessment } from '../assess/assess.js';
import type { MatchedSet } from '../assess/matched-sets.js';
import type { PartResult } from '../assess/part-result.js';
import { partsOf } from '../assess/placed-fit.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';
import { setWords } from '../words/stock-words.js';

export class Whereabouts {
  private readonly sets: ReadonlyMap<StockJournal, MatchedSet>;
  private readonly holders = new Map<PartResult, MatchedSet[]>();
  private readonly rods: ReadonlyMap<string, PartResult>;
  private readonly shells: ReadonlyMap<string, PartResult>;

  constructor(private readonly assessment: Assessment) {
    const { sets } = assessment;
    this.sets = new Map(sets.map((set) => [set.found.journal, set]));
    const named = (parts: readonly PartResult[]) => new Map(parts.map((part) => [part.row.name, part]));
    this.rods = named(assessment.parts.of(RODS.name));
    this.shells = named(assessment.parts.of(SHELLS.name));
    for (const set of sets) {
      for (const part of partsOf(set)) this.holders.set(part, [...(this.holders.get(part) ?? []), set]);
    }
  }

  setOf(journal: StockJournal): MatchedSet | undefined {
    return this.sets.get(journal);
  }

  /** The sets that hold a rod or a shell; one that holds it on both halves twice. */
  holdersOf(part: PartResult): readonly MatchedSet[] {
    return this.holders.get(part) ?? [];
  }

  placeOf(journal: StockJournal): string {
    const { row } = this.assessment.stock.journals.get(journal)!;
    return `${row.engine} ${row.fit} ${row.position}`;
  }

  rowOfRod({ name }: StockRod): PartResult {
    return this.rods.get(name)!;
  }

  rowOfShell({ name }: StockShell): PartResult {
    return this.shells.get(name)!;
  }

  /** Where a rod or a row of shells is: the places of its sets, and what of it is left. */
  whereIs(part: PartResult): string {
    const places = this.holdersOf(part).map(({ found }) => `at ${this.placeOf(found.journal)}`);
    const left = part.row.quantity - places.length;
    if (left <= 0) return places.join(', ');
    return [...places, part.row.quantity > 1 ? `${left} left over` : 'left over'].join(', ');
  }

  /** What a set is made of, with its clearance and verdict. */
  setText(set: MatchedSet): string {
    return setWords(set, this.assessment.book.setup.lengthUnit);
  }
}
