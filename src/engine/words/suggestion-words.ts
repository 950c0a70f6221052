/** What would fill an empty journal, in a sentence. */
import type { Grain } from '../../maths/grain.js';
import type { MatchedFit, StockJournal } from '../../maths/matching/stock.js';
import type { Added, MassRange, PlacePlan } from '../../maths/suggestions/plan.js';
import type { Pooled } from '../../maths/suggestions/pool.js';
import type { Regrind } from '../../maths/suggestions/regrind.js';
import type { Window } from '../../maths/suggestions/windows.js';
import { grainOf, type LengthUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import { timesPrice } from '../assess/to-buy.js';
import { lengthText } from '../assess/words.js';
import { listed } from './listed.js';

/** One sentence a journal; a journal that nothing fills has none. */
export function suggestionsOf(assessment: Assessment): Map<StockJournal, string> {
  const words = new SuggestionWords(assessment);
  const sentences = new Map<StockJournal, string>();
  for (const plan of assessment.plans) {
    for (const place of plan.places) sentences.set(place.journal, words.ofPlace(place));
    for (const regrind of plan.regrinds) {
      const empty = regrind.places.filter(({ journal }) => !words.isFilled(journal));
      for (const [at, { journal }] of empty.entries()) {
        const first = empty[0]!.journal;
        const sentence =
          at === 0 ? words.ofRegrind(regrind) : `needs the grinding named at ${words.placeOf(first)}`;
        sentences.set(journal, `${sentence}${words.ofGroundPlace(regrind, journal)}`);
      }
    }
  }
  return sentences;
}

/** Both ends of a window, so written that a part of just that size is inside it. */
export function windowText(
  { from, to }: { from: Grain; to: Grain },
  unit: LengthUnit,
): { from: string; to: string } {
  return { from: inward(from, unit, 1), to: inward(to, unit, -1) };
}

/** Inches in six decimals are coarser than the grain: the end is moved into the window where it is rounded. */
function inward(end: Grain, unit: LengthUnit, step: 1 | -1): string {
  const text = (size: Grain) => lengthText(size, unit);
  const shown = (size: Grain) => grainOf(Number.parseFloat(text(size)), unit);
  let size = end;
  while ((shown(size) - end) * step < 0) size += step;
  return text(size);
}

function countedPairs(words: string, times: number): string {
  return times === 1 ? words : words.replace('a pair', `${times} pairs`);
}

class SuggestionWords {
  private readonly unit: LengthUnit;
  private readonly filled: ReadonlySet<StockJournal>;

  constructor(private readonly assessment: Assessment) {
    this.unit = assessment.book.setup.lengthUnit;
    this.filled = new Set(assessment.matching?.fits.map(({ journal }) => journal));
  }

  isFilled(journal: StockJournal): boolean {
    return this.filled.has(journal);
  }

  placeOf(journal: StockJournal): string {
    const { row } = this.assessment.stock.journals.get(journal)!;
    return `${row.fit} ${row.position}`;
  }

  ofPlace({ added, rod, upper, lower }: PlacePlan): string {
    const there = [
      ...this.there('rod', rod),
      ...this.there('upper shell', upper),
      ...this.there('lower shell', lower),
    ];
    if (added.length === 0) {
      const isLeft = [rod, upper, lower].every((entry) => !entry?.holder);
      return `could be filled by ${listed(there)}${isLeft ? this.passedOver() : ''}`;
    }
    const beside = there.length > 0 ? `, with ${listed(there)}` : '';
    return `needs ${listed(this.ofAdded(added))}${beside}`;
  }

  /** Why no set was made of parts that no set holds. */
  private passedOver(): string {
    return this.assessment.matching?.grid === undefined
      ? ': the search was ended before it found them; give it more with --seconds'
      : ': the grid on which the stock was matched passed them over';
  }

  ofRegrind({ step, window, places, price }: Regrind): string {
    const [first] = places;
    const { row } = this.assessment.stock.journals.get(first!.journal)!;
    const marks = new Map<string, number>();
    const count = (words: string) => marks.set(words, (marks.get(words) ?? 0) + 1);
    for (const { upper, lower } of places) {
      if (upper.half === 'pair') count(`a pair of mark ${upper.mark}`);
      else for (const { mark } of [upper, lower]) count(`of mark ${mark}`);
    }
    const shells = [...marks].map(([words, times]) =>
      words.startsWith('a pair') ? countedPairs(words, times) : `${times} ${words}`,
    );
    return (
      `needs all of the crank's ${row.fit} journals (${places.length}) ground to undersize ${step}, ` +
      `each ${this.between('to a size', window)}, with new shells: ${listed(shells)}, price ${price} in all`
    );
  }

  /** The rod that comes to a ground journal. */
  ofGroundPlace({ places }: Regrind, journal: StockJournal): string {
    const rod = places.find((place) => place.journal === journal)?.rod;
    return rod ? `; here with ${this.there('rod', rod)[0]}` : '';
  }

  private between(what: string, window: Window): string {
    const { from, to } = windowText(window, this.unit);
    return from === to ? `${what} of ${from}` : `${what} from ${from} to ${to}`;
  }

  private there(kind: string, entry: Pooled<{ readonly name: string }> | undefined): string[] {
    if (!entry) return [];
    const name = `${kind} ${entry.row.name}`;
    return [entry.holder ? `${name} (now at ${this.where(entry.holder)})` : name];
  }

  private where({ journal }: MatchedFit): string {
    return `${this.assessment.stock.journals.get(journal)!.row.engine} ${this.placeOf(journal)}`;
  }

  private ofAdded(added: readonly Added[]): string[] {
    const [first, second] = added.filter((each) => each.is === 'new shell');
    const others = added.filter((each) => each.is !== 'new shell').map((each) => this.ofOne(each));
    if (!first) return others;
    if (first.shell.half === 'pair')
      return [...others, `a new pair of shells of mark ${first.shell.mark} (price ${first.shell.price})`];
    if (second?.shell.mark === first.shell.mark && second.shell.price === first.shell.price) {
      const { mark, price } = first.shell;
      const both = `a new upper and a new lower shell of mark ${mark} (price ${price} each, ${timesPrice(price, 2)} in all)`;
      return [...others, both];
    }
    return [...others, this.ofOne(first), ...(second ? [this.ofOne(second)] : [])];
  }

  private ofOne(added: Added): string {
    switch (added.is) {
      case 'new shell':
        return `a new ${added.side} shell of mark ${added.shell.mark} (price ${added.shell.price})`;
      case 'wall':
        return this.between(
          `${added.side === 'upper' ? 'an upper' : 'a lower'} shell with a wall`,
          added.window,
        );
      case 'walls': {
        const apart =
          added.apart === undefined ? '' : ` and at most ${lengthText(added.apart, this.unit)} apart`;
        return `${this.between('an upper and a lower shell, each with a wall', added.window)}${apart}`;
      }
      case 'rod':
        return `${this.between('a rod with a bore', added.window)}${massWords(added.mass)}`;
      case 'rod and walls':
        return (
          `a rod and a pair of shells, ${this.between('the bore less both walls', added.window)}` +
          massWords(added.mass)
        );
    }
  }
}

function massWords(mass: MassRange | undefined): string {
  if (!mass) return '';
  if (mass.from === undefined || mass.to === undefined) return ' and a known mass';
  return mass.from === mass.to
    ? ` and a mass of ${mass.from} g`
    : ` and a mass from ${mass.from} to ${mass.to} g`;
}
