/** Why a part is where it is: which fits were open to it, and what took them. */
import type { StockJournal } from '../../maths/matching/stock.js';
import { OpenFits } from '../../maths/suggestions/open-fits.js';
import { goesOn, type Side, sameKind } from '../../maths/suggestions/rules.js';
import type { Assessment } from '../assess/assess.js';
import type { PartResult } from '../assess/part-result.js';
import { reasonOutOfStock } from '../assess/stock.js';
import type { PartRow } from '../book/book.js';
import { CASES } from '../input-sheets/cases.js';
import { JOURNALS } from '../input-sheets/journals.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';
import { unmatchedRows } from '../words/not-matched.js';
import { Whereabouts } from './whereabouts.js';

/** A fit or a part that is open to the part in question. */
export interface OpenTo {
  readonly name: string;
  /** Where that part is, or what stands at that place. */
  readonly now: string;
}

export interface OpenList {
  /** What is listed, in the plural: `rods of its engine type`. */
  readonly what: string;
  /** As which half, where it matters. */
  readonly as: Side | undefined;
  /** How many there are that may be used. */
  readonly of: number;
  readonly open: readonly OpenTo[];
}

export interface Explanation {
  readonly sheet: PartRow['sheet'];
  readonly part: string;
  readonly now: string;
  readonly lists: readonly OpenList[];
  /** Whether the masses of the rods limit the choice too, which the lists pass over. */
  readonly asksForMass: boolean;
}

/** @param rows of the assessed book */
export function explain(rows: readonly PartRow[], assessment: Assessment): Explanation[] {
  const results = new Map(assessment.parts.all().map((part) => [part.row, part]));
  const explainer = new Explainer(assessment);
  return rows.map((row) => explainer.explain(results.get(row)!));
}

class Explainer {
  private readonly open: OpenFits;
  private readonly where: Whereabouts;
  private readonly stockJournals: readonly StockJournal[];

  constructor(private readonly assessment: Assessment) {
    this.open = new OpenFits(assessment.stock.stock);
    this.where = new Whereabouts(assessment);
    this.stockJournals = [...assessment.stock.journals.keys()];
  }

  explain(part: PartResult): Explanation {
    const { sheet, name } = part.row;
    return { sheet, part: name, ...this.factsOf(part) };
  }

  private factsOf(part: PartResult): Omit<Explanation, 'sheet' | 'part'> {
    const nothing = { lists: [], asksForMass: false };
    if (!this.assessment.matching) return { ...nothing, now: 'is not matched: no sets were made' };
    switch (part.row.sheet) {
      case JOURNALS.name: {
        const journal = this.journalOf(part);
        return journal
          ? this.ofJournal(journal, part)
          : {
              ...nothing,
              now: `is outside matching, which is of big ends, and of mains whose case is there`,
            };
      }
      case CASES.name: {
        const { cases } = this.assessment.stock;
        const journal = this.stockJournals.find((each) => cases.get(each) === part);
        if (!journal) return { ...nothing, now: 'is outside matching: no main journal stands at its place' };
        const facts = this.ofJournal(journal, this.assessment.stock.journals.get(journal)!);
        return { ...facts, now: `is the housing of journal ${journal.name}, which ${facts.now}` };
      }
      case RODS.name:
        return this.ofRod(part);
      case SHELLS.name:
        return this.ofShell(part);
      default:
        return { ...nothing, now: 'is outside matching, which is of shell bearings' };
    }
  }

  private journalOf(part: PartResult): StockJournal | undefined {
    const { journals } = this.assessment.stock;
    return this.stockJournals.find((journal) => journals.get(journal) === part);
  }

  private ofJournal(journal: StockJournal, part: PartResult): Omit<Explanation, 'sheet' | 'part'> {
    const { stock } = this.assessment.stock;
    const set = this.where.setOf(journal);
    const unmatched = unmatchedRows(this.assessment).find((row) => row.journal === part);
    const place = this.where.placeOf(journal);
    const now = set
      ? `at ${place} has ${this.where.setText(set)}`
      : `at ${place} is empty: ${unmatched?.why ?? 'no set was made'}`;
    if (!journal.part || (journal.caseBore && !journal.caseBore.part))
      return { now, lists: [], asksForMass: false };
    const rods = journal.caseBore
      ? []
      : [
          {
            what: 'rods of its engine type',
            as: undefined,
            of: stock.rods.filter(({ engineType }) => engineType === journal.engineType).length,
            open: this.open.rodsFor(journal).map((rod) => this.openPart(this.where.rowOfRod(rod))),
          },
        ];
    const shells = (['upper', 'lower'] as const).map((side) => ({
      what: 'rows of shells of its engine type and fit',
      as: side,
      of: stock.shells.filter(
        (shell) => !shell.isBrought && sameKind(shell, journal) && goesOn(shell.half, side),
      ).length,
      open: this.open.shellsFor(journal, side).map((shell) => this.openPart(this.where.rowOfShell(shell))),
    }));
    return { now, lists: [...rods, ...shells], asksForMass: !journal.caseBore && this.asksForMass(journal) };
  }

  private ofRod(part: PartResult): Omit<Explanation, 'sheet' | 'part'> {
    const { stock } = this.assessment.stock;
    const rod = stock.rods.find(({ name }) => name === part.row.name);
    if (this.reasonOf(part) !== undefined || !rod) return this.notUsed(part);
    const places = this.stockJournals.filter(
      (journal) => !journal.caseBore && journal.part && journal.engineType === rod.engineType,
    );
    const open = places.filter((journal) => this.open.isOpenToRod(journal, rod));
    const list = {
      what: 'big ends of its engine type',
      as: undefined,
      of: places.length,
      open: open.map((journal) => this.openPlace(journal, part)),
    };
    return {
      now: this.nowOf(part),
      lists: [list],
      asksForMass: places[0] !== undefined && this.asksForMass(places[0]),
    };
  }

  private ofShell(part: PartResult): Omit<Explanation, 'sheet' | 'part'> {
    const { stock } = this.assessment.stock;
    const shell = stock.shells.find(({ name, isBrought }) => !isBrought && name === part.row.name);
    if (this.reasonOf(part) !== undefined || !shell) return this.notUsed(part);
    const places = this.stockJournals.filter((journal) => journal.part && sameKind(journal, shell));
    const sides = (['upper', 'lower'] as const).filter(
      (side) => shell.half === side || shell.half === 'either',
    );
    const lists = sides.map((as) => ({
      what: `${part.row.fit} journals of its engine type`,
      as,
      of: places.length,
      open: places
        .filter((journal) => this.open.isOpenToShell(journal, shell, as))
        .map((journal) => this.openPlace(journal, part, as)),
    }));
    return { now: this.nowOf(part), lists, asksForMass: false };
  }

  private reasonOf(part: PartResult): string | undefined {
    return reasonOutOfStock(part, this.assessment.context);
  }

  private notUsed(part: PartResult): Omit<Explanation, 'sheet' | 'part'> {
    const reason = this.reasonOf(part) ?? (part.row.half === undefined ? 'Half is blank' : 'it has no sizes');
    return { now: `may not be matched: ${reason}`, lists: [], asksForMass: false };
  }

  /** Where a rod or a row of shells is, and beside what. */
  private nowOf(part: PartResult): string {
    const sets = this.where.holdersOf(part).map((set) => {
      return `in the set of ${this.where.placeOf(set.found.journal)} (${this.where.setText(set)})`;
    });
    const left = part.row.quantity - sets.length;
    const rest = part.row.quantity > 1 ? `${left} of ${part.row.quantity} left over` : 'left over';
    return `is ${[...sets, ...(left > 0 ? [rest] : [])].join(', ')}`;
  }

  private openPart(part: PartResult): OpenTo {
    return { name: part.row.name, now: this.where.whereIs(part) };
  }

  private openPlace(journal: StockJournal, part: PartResult, as?: Side): OpenTo {
    const set = this.where.setOf(journal);
    const name = this.where.placeOf(journal);
    if (!set) return { name, now: 'empty' };
    const there = set.parts[as ?? 'bore'];
    if (there === part) return { name, now: 'its own' };
    return { name, now: `has ${as === undefined ? 'rod' : `${as} shell`} ${set.names[as ?? 'bore']}` };
  }

  private asksForMass(journal: StockJournal): boolean {
    const { kinds } = this.assessment.stock.stock;
    return kinds.find((kind) => sameKind(kind, journal))?.massSpread !== undefined;
  }
}
