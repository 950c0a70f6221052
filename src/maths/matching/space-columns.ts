/** What a filled journal uses of the rows of the model, and what it counts for every aim. */
import type { Amounts } from './aims.js';
import type { RowEntry } from './mass-lines.js';
import type { RowPlaces } from './model-rows.js';
import type { Problem } from './problem.js';
import type { Space } from './spaces.js';

/** What the entries of a filled journal are made of. */
interface Rows {
  readonly problem: Problem;
  readonly places: RowPlaces;
}

/** The rows in which a filled journal counts one, whatever its shells. */
function spaceRows({ problem, places }: Rows, space: Space): (number | undefined)[] {
  const { journal, rod } = space;
  const { engines, journals: alike } = problem.journals[journal]!;
  return [
    places.journal[journal],
    places.completion[journal],
    rod === undefined ? places.sharedBore.get(alike[0]!.caseBore?.name ?? '') : places.rod[rod],
    rod === undefined ? undefined : places.rodOnEngine(engines[0]!, rod),
    ...(places.ofHome.get(space) ?? []),
  ];
}

/** What a filled journal counts, whatever its shells. */
export function amountsOfSpace({ problem }: Pick<Rows, 'problem'>, { journal, homes }: Space): Amounts {
  return {
    filledBeyond: 1,
    ...(!problem.journals[journal]!.isHopeless && { filledOpen: 1 }),
    ...(homes && { stayed: 1 }),
  };
}

const massEntries = ({ places }: Rows, { rod }: Space): readonly RowEntry[] =>
  rod === undefined ? [] : places.massLines.ofRod(rod);

/** The row entries of a filled journal, whatever its shells. */
export function spaceEntries(model: Rows, space: Space): RowEntry[] {
  const once = spaceRows(model, space).flatMap((row): RowEntry[] => (row === undefined ? [] : [[row, 1]]));
  return [...once, ...massEntries(model, space)];
}

/** Σ of dual times entry over the rows of a filled journal. */
export function worthOfSpace(model: Rows, space: Space, duals: Float64Array): number {
  let worth = 0;
  for (const row of spaceRows(model, space)) if (row !== undefined) worth += duals[row]!;
  for (const [row, value] of massEntries(model, space)) worth += duals[row]! * value;
  return worth;
}

/** How far a fit of this space lies from the aim; 0 where there is no aim. */
export function distanceOf(space: Space, pairSize: number): number {
  const { aim } = space.limits;
  return aim === undefined ? 0 : Math.abs(space.size - pairSize - aim);
}

/** How many times a space is available: as often as there are journals and bores of its classes. */
export function timesOf({ journals, rods }: Problem, { journal, rod }: Space): number {
  const bores = rod === undefined ? Number.POSITIVE_INFINITY : rods[rod]!.rods.length;
  return Math.min(journals[journal]!.journals.length, bores);
}

/** What a fit counts besides, by its shells. */
export function amountsOfPair({ problem }: Pick<Rows, 'problem'>, space: number, shape: number): Amounts {
  const { spaces, shapes, rules, stock } = problem;
  return {
    distance: distanceOf(spaces[space]!, shapes[shape]!.size),
    ...(stock.allowWorn && rules.isInRange(space, shape) && { inRange: 1 }),
  };
}
