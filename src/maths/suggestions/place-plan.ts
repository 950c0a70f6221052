/**
 * The cheapest addition that fills one journal, with parts that the crank may still take.
 *
 * The order of cost: nothing; new shells, by their price; a rod, with shells as before. Where no new shells are listed
 * for the fit, walls take their place: one, then two. Where some are listed, a wall that is not among them is hard to
 * find and comes last. Workshop convention, no published source: a shell is easier to get than a rod. Parts of the
 * matched sets stay where they are.
 */
import type { StockJournal } from '../matching/stock.js';
import { EmptyPlace, type Giving } from './empty-place.js';
import { costOf, type KindParts, listsShells, type PlacePlan } from './plan.js';
import type { SingleFitRules } from './rules.js';
import { withRod, withRodAndWalls } from './with-rod.js';
import { withNewShells, withNothing, withOneWall, withShellsInRod, withTwoWalls } from './with-shells.js';

/**
 * Undefined where no addition fills the journal.
 * @param unlisted whether walls may be asked for that none of the listed new shells has
 */
export function cheapestPlan(
  rules: SingleFitRules,
  kind: KindParts,
  journal: StockJournal,
  giving: Giving,
  unlisted: boolean,
): PlacePlan | undefined {
  if (!journal.part) return undefined;
  const place = new EmptyPlace(rules, kind, journal, giving);
  const bores = [...place.bores()];
  const isListed = listsShells(kind);
  const walls = () => withOneWall(place, bores) ?? withTwoWalls(place, bores);
  const draft =
    withShellsInRod(place) ??
    withNothing(place, bores) ??
    withNewShells(place, bores) ??
    (isListed ? undefined : walls()) ??
    withRod(place) ??
    (isListed && unlisted ? walls() : undefined) ??
    (isListed && !unlisted ? undefined : withRodAndWalls(place));
  return draft && { journal, ...draft, cost: costOf(draft, isListed) };
}
