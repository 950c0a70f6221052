/**
 * The cheapest addition that fills one journal, with parts that the crank may still take.
 *
 * Cheap is, in this order: nothing; new shells, by their price; a rod, with shells as before. Where no
 * new shells are listed for the fit, walls stand in their place: one, then two. Where some are, a wall
 * that is not among them is hard to find, and comes last. Workshop convention, no published source: a
 * shell is had more easily than a rod. The sets as they stand are not moved.
 */
import type { StockJournal } from '../matching/stock.js';
import { costOf, type KindParts, listsShells, type PlacePlan } from './plan.js';
import type { FitRules } from './rules.js';
import { type Giving, Site } from './site.js';
import { withRod, withRodAndWalls } from './with-rod.js';
import { withNewShells, withNothing, withOneWall, withTwoWalls } from './with-shells.js';

/**
 * Undefined where no addition fills the journal.
 * @param unlisted whether walls may be asked for that none of the listed new shells has
 */
export function cheapestPlan(
  rules: FitRules,
  kind: KindParts,
  journal: StockJournal,
  giving: Giving,
  unlisted: boolean,
): PlacePlan | undefined {
  if (!journal.part) return undefined;
  const site = new Site(rules, kind, journal, giving);
  const bores = [...site.bores()];
  const isListed = listsShells(kind);
  const walls = () => withOneWall(site, bores) ?? withTwoWalls(site, bores);
  const draft =
    withNothing(site, bores) ??
    withNewShells(site, bores) ??
    (isListed ? undefined : walls()) ??
    withRod(site) ??
    (isListed && unlisted ? walls() : undefined) ??
    (isListed && !unlisted ? undefined : withRodAndWalls(site));
  return draft && { journal, ...draft, cost: costOf(draft, isListed) };
}
