/**
 * The rows of the model: what each journal, bore, shell and crank allows.
 *
 *   e_k           engine k is complete
 *   r             a run of rods in order of mass
 *   y_k,w         the rods of engine k lie in the mass window w
 *   z_u,l         pairs made of shell classes u and l
 *   x_j,b,s       journals of class j in rods of class b with a pair of shape s (in whole-number programs in two
 *                 halves, seats.ts)
 *   v             a fit whose parts ran together, by its named parts
 *   f_k           where cranks are filled as a whole: all fits of crank k, in place of its x and v
 *
 *   journal j     Σ x + Σ v ≤ how many;  and ≥ how many · e_k
 *   rod b         Σ x + Σ v ≤ how many
 *   rod b on k    Σ x + Σ v ≤ how many · Σ of y_k,w over the windows that hold b;   Σ_w y_k,w ≤ 1
 *   crank k       Σ f ≤ 1;  and Σ of the full ones ≥ e_k
 *   rods by mass  runs of rods that hold all cranks, in rows of their own (mass-lines.ts)
 *   shell         Σ z + Σ v ≤ how many (a pair of two of one class counts two)
 *   shape s       Σ x ≤ Σ z
 *
 * Shapes link spaces with pairs, which keeps the model small: with a column for each fit of journal, bore, upper and
 * lower ten cranks would have some ten million columns.
 */
import { MassLines } from './mass-lines.js';
import type { Problem } from './problem.js';
import type { Space } from './spaces.js';

export interface ModelRow {
  readonly lower: number;
  readonly upper: number;
}

/** The index of each row, by what it limits; undefined where no row is needed. */
export interface RowPlaces {
  readonly journal: readonly number[];
  /** Undefined for journals of engines that can never be complete. */
  readonly completion: readonly (number | undefined)[];
  readonly rod: readonly number[];
  /** Of one engine and rod class; undefined where mass plays no part. */
  readonly rodOnEngine: (engine: number, rod: number) => number | undefined;
  /** By engine and engine type: one window of mass a crank. */
  readonly oneWindow: readonly CrankWindows[];
  readonly massLines: MassLines;
  /** Undefined for shells that can be bought. */
  readonly shell: readonly (number | undefined)[];
  readonly shape: readonly number[];
  /** Case bores that several journals claim. */
  readonly sharedBore: ReadonlyMap<string, number>;
  /** Parts that kept fits of several journals claim, by their rows of the stock. */
  readonly contested: ReadonlyMap<object, number>;
  /** By space whose rods stay: the rows that say how many may. */
  readonly ofHome: ReadonlyMap<Space, readonly number[]>;
  /** Cranks that are filled as a whole. */
  readonly fillings: readonly CrankRows[];
}

export interface CrankRows {
  readonly engine: number;
  readonly engineType: string;
  readonly one: number;
  /** Undefined for engines that can never be complete. */
  readonly complete: number | undefined;
}

export interface CrankWindows {
  readonly engine: number;
  readonly engineType: string;
  readonly row: number;
  /** How many rods the crank can take. */
  readonly pins: number;
}

export const UNLIMITED = Number.POSITIVE_INFINITY;

/** The engines of which each journal has an allowed space, less the hopeless ones. */
export function completableEngines({ stock, journals, spaces }: Problem): Set<number> {
  const open = new Map<number, number>();
  for (const journal of new Set(spaces.map((space) => space.journal))) {
    for (const engine of journals[journal]!.engines) open.set(engine, (open.get(engine) ?? 0) + 1);
  }
  const completable = new Set<number>();
  for (const [place, engine] of stock.engines.entries()) {
    if (engine.isHopeless) continue;
    if (engine.journals.length > 0 && open.get(place) === engine.journals.length) completable.add(place);
  }
  return completable;
}

/** Parts that kept fits, or rods that stay, of more than one journal name, with how often each may serve. */
function contestedParts({ kept, homes }: Problem): Map<object, number> {
  const claims = new Map<object, { quantity: number; journals: Set<object> }>();
  const claim = (part: object, quantity: number, journal: object) => {
    const known = claims.get(part) ?? { quantity, journals: new Set() };
    known.journals.add(journal);
    claims.set(part, known);
  };
  for (const { journal, rod } of homes) claim(rod, 1, journal);
  for (const { journal, upper, lower } of kept) {
    claim(upper, upper.quantity, journal);
    claim(lower, lower.quantity, journal);
  }
  return new Map(
    [...claims]
      .filter(([, { journals }]) => journals.size > 1)
      .map(([part, { quantity }]) => [part, quantity]),
  );
}

/** One row for each list of rods of which an engine can keep one at most. */
function rowsByRod(
  { homes, neverTogether }: Problem,
  atMost: (upper: number) => number,
): Map<object, readonly number[]> {
  const keeps = new Set(homes.map(({ rod }) => rod));
  const rows = new Map<object, number[]>();
  for (const list of neverTogether) {
    const own = list.filter((rod) => keeps.has(rod));
    if (own.length < 2) continue;
    const row = atMost(1);
    for (const rod of own) rows.set(rod, [...(rows.get(rod) ?? []), row]);
  }
  return rows;
}

/** The rows of the spaces whose rods stay: beside their own those of each single rod. */
function homeRows(
  { spaces, journals, rods }: Problem,
  ofRods: readonly ReadonlyMap<object, readonly number[]>[],
  atMost: (upper: number) => number,
): Map<Space, readonly number[]> {
  const rows = new Map<Space, readonly number[]>();
  for (const space of spaces) {
    const { homes, journal, rod } = space;
    if (!homes) continue;
    const most = Math.min(journals[journal]!.journals.length, rods[rod!]!.rods.length);
    const own = homes.length < most ? [atMost(homes.length)] : [];
    const [first] = homes;
    const ofRod = homes.length === 1 ? ofRods.flatMap((each) => each.get(first!.rod) ?? []) : [];
    rows.set(space, [...own, ...ofRod]);
  }
  return rows;
}

export function modelRowsOf(problem: Problem): { rows: ModelRow[]; places: RowPlaces } {
  const { journals, rods, shells, shapes, windows, stock } = problem;
  const rows: ModelRow[] = [];
  const atMost = (upper: number) => rows.push({ lower: -UNLIMITED, upper }) - 1;
  const atLeastNone = () => rows.push({ lower: 0, upper: UNLIMITED }) - 1;
  const completable = completableEngines(problem);
  const onEngine = new Map<string, number>();
  const oneWindow: CrankWindows[] = [];
  for (const engine of stock.engines.keys()) {
    for (const engineType of windows.keys()) {
      const own = journals.filter(
        (each) => each.engines.includes(engine) && each.engineType === engineType && !each.caseBore,
      );
      if (own.length === 0) continue;
      const pins = own.reduce((sum, each) => sum + each.journals.length, 0);
      oneWindow.push({ engine, engineType, row: atMost(1), pins });
      for (const [rod, each] of rods.entries()) {
        if (each.engineType === engineType) onEngine.set(`${engine},${rod}`, atMost(0));
      }
    }
  }
  const isFilledWhole = ({ engineType, caseBore }: Problem['journals'][number]) =>
    problem.fillings.has(engineType) && !caseBore;
  const whole = journals.filter(isFilledWhole);
  const fillings = [...stock.engines.keys()].flatMap((engine) =>
    [...problem.fillings.keys()]
      .filter((type) => whole.some((each) => each.engineType === type && each.engines.includes(engine)))
      .map((engineType) => ({
        engine,
        engineType,
        one: atMost(1),
        complete: completable.has(engine) ? atLeastNone() : undefined,
      })),
  );
  const contested = new Map([...contestedParts(problem)].map(([part, most]) => [part, atMost(most)]));
  const contestedRods = new Map([...contested].map(([part, row]) => [part, [row]]));
  const places: RowPlaces = {
    journal: journals.map((each) => atMost(each.journals.length)),
    completion: journals.map((each) =>
      !isFilledWhole(each) && each.engines.some((engine) => completable.has(engine))
        ? atLeastNone()
        : undefined,
    ),
    rod: rods.map((each) => atMost(each.rods.length)),
    rodOnEngine: (engine, rod) => onEngine.get(`${engine},${rod}`),
    oneWindow,
    massLines: new MassLines(problem, (upper) => rows.push({ lower: -UNLIMITED, upper }) - 1),
    shell: shells.map(({ count }) => (Number.isFinite(count) ? atMost(count) : undefined)),
    shape: shapes.map(() => atMost(0)),
    sharedBore: new Map([...problem.sharedBores].map((name) => [name, atMost(1)])),
    contested,
    ofHome: homeRows(problem, [contestedRods, rowsByRod(problem, atMost)], atMost),
    fillings,
  };
  return { rows, places };
}
