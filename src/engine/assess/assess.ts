/** Everything that is computed of one book: parts, fits, tables, matched sets, what to measure again. */
import { matchStock } from '../../maths/matching/match.js';
import type { MatchResult, StockJournal } from '../../maths/matching/stock.js';
import type { CrankPlan } from '../../maths/suggestions/crank-plan.js';
import { obstaclesOf, type Standing } from '../../maths/suggestions/obstacles.js';
import type { Book } from '../book/book.js';
import { Context } from './context.js';
import { doubtReason } from './doubt-words.js';
import { type DoubtedReading, doubtedReadings } from './doubted-readings.js';
import { assessFasteners, type FastenerResult } from './fastener.js';
import { assessFit, type FitResult } from './fit.js';
import { type GaugeStudy, gaugeStudies } from './gauge-study.js';
import { type LeftPart, leftOver } from './left-over.js';
import { type MatchedSet, matchedSets, setsToMake } from './matched-sets.js';
import { type NeighbourResult, neighbourResults } from './neighbours.js';
import { assessParts } from './part.js';
import type { PartsOfBook } from './placed-fit.js';
import { placeFits } from './places.js';
import { placesNow } from './places-now.js';
import { remeasureList } from './remeasure.js';
import type { Remeasure } from './remeasure-words.js';
import { shellsInBoresOf } from './shells-in-bores.js';
import { type BookStock, stockOf } from './stock.js';
import { crankPlansOf } from './suggestions.js';
import { assessTables, type TableResults } from './table-checks.js';
import { type Bought, fastenersToBuy, toBuy } from './to-buy.js';

export interface Assessment {
  readonly book: Book;
  readonly context: Context;
  readonly parts: PartsOfBook;
  readonly fits: readonly FitResult[];
  readonly fasteners: readonly FastenerResult[];
  readonly tables: TableResults;
  readonly spreads: readonly NeighbourResult[];
  /** Readings that look like a slip of the hand, in the order of sheets and rows. */
  readonly doubts: readonly DoubtedReading[];
  readonly remeasure: readonly Remeasure[];
  readonly studies: readonly GaugeStudy[];
  readonly stock: BookStock;
  /** Undefined where the book has no engine to match, or a setting that matching needs was refused. */
  readonly matching: MatchResult | undefined;
  /** What matching found, as fits; these and what follows from them are empty where nothing was matched. */
  readonly sets: readonly MatchedSet[];
  /** What the sets need that the stock does not have, and the fasteners that are to be renewed. */
  readonly toBuy: readonly Bought[];
  readonly leftOver: readonly LeftPart[];
  /** What stands in the way of the empty journals that could be used. */
  readonly obstacles: ReadonlyMap<StockJournal, Standing>;
  /** What would complete the engines that are not; empty where nothing was matched. */
  readonly plans: readonly CrankPlan[];
  /** Books that were to be of the stock and could not be read. */
  readonly missingBooks: readonly string[];
  /** The time that matching was given. */
  readonly seconds: number;
}

export interface AssessOptions {
  /** Seconds that matching may take. */
  readonly seconds: number;
  readonly onProgress?: ((message: string) => void) | undefined;
  readonly missingBooks?: readonly string[];
}

/** What is computed of a book without matching its parts. */
export type Measured = Pick<
  Assessment,
  'book' | 'context' | 'parts' | 'fits' | 'fasteners' | 'doubts' | 'remeasure'
>;

export function assessMeasured(book: Book): Measured {
  const context = new Context(book);
  const parts = book.parts.map((rows) => assessParts(rows, context));
  const fits = placeFits(parts, book.fits, book.keptStrips).map((placed) => assessFit(placed, context));
  const fasteners = assessFasteners(book, context);
  const doubts = doubtedReadings(parts, fits, context);
  for (const doubt of doubts) doubt.part.addRemarks([doubtReason(doubt, book)]);
  const remeasure = remeasureList({ parts, fits, fasteners, doubts }, context);
  return { book, context, parts, fits, fasteners, doubts, remeasure };
}

export async function assessBook(book: Book, options: AssessOptions): Promise<Assessment> {
  const { seconds, onProgress, missingBooks = [] } = options;
  const measured = assessMeasured(book);
  const { context, parts, fits, fasteners } = measured;
  const stock = stockOf(parts, context, placesNow(fits));
  const matching =
    stock.stock.engines.length > 0 && book.setup.bad.length === 0
      ? await matchStock(stock.stock, { seconds, ...(onProgress && { onProgress }) })
      : undefined;
  const sets = matching ? matchedSets(matching, stock, parts, context) : [];
  return {
    ...measured,
    tables: assessTables(context),
    spreads: neighbourResults(fits),
    studies: gaugeStudies(book),
    stock,
    matching,
    sets,
    toBuy: [...toBuy(setsToMake(sets, matching)), ...fastenersToBuy(fasteners, book.setup.lengthUnit)],
    leftOver: matching ? leftOver(sets, parts) : [],
    obstacles: matching ? obstaclesOf(stock.stock, matching.fits) : new Map(),
    plans: matching ? crankPlansOf(parts, stock, matching, context) : [],
    missingBooks,
    seconds,
  };
}

/** Whether everything is proved good: what exit code 0 promises. */
export function isAllGood({ book, fits, parts, fasteners, tables }: Assessment): boolean {
  const inBores = shellsInBoresOf(book);
  const good = new Set(['within limits', 'no limits', 'measured']);
  return (
    book.setup.bad.length === 0 &&
    fits.every(({ status }) => status === 'in range') &&
    fasteners.every(({ status }) => good.has(status)) &&
    parts
      .all()
      .every(
        ({ row, status }) =>
          good.has(status) || (status === 'not measured' && inBores.boreOf(row) !== undefined),
      ) &&
    Object.values(tables).every((rows) => rows.every(({ status }) => status === 'consistent'))
  );
}
