/**
 * The best value of a stock by trying every set, for stocks of a few journals.
 *
 * Written from the rules alone: of the program under test it uses only the core's clearance, variance,
 * guard and verdict.
 */
import { clearanceOf } from '../../../src/maths/clearance.js';
import { fitVerdict } from '../../../src/maths/conformity.js';
import { fitGuards } from '../../../src/maths/guards.js';
import type {
  Stock,
  StockEngine,
  StockJournal,
  StockNewShell,
  StockRod,
  StockShell,
} from '../../../src/maths/matching/stock.js';
import { clearanceVariance, type MeasuredPart } from '../../../src/maths/uncertainty.js';

type Shell = StockShell | StockNewShell;

/** One allowed fit of a journal, by its very parts. */
export interface Option {
  readonly rod: StockRod | undefined;
  readonly upper: Shell;
  readonly lower: Shell;
  readonly distance: number;
  readonly kept: boolean;
  readonly stays: boolean;
  readonly inRange: boolean;
}

const isOwned = (shell: Shell): shell is StockShell => 'quantity' in shell;

/** Whether two halves may stand with each other, whatever their walls. */
function mayStandTogether(upper: Shell, lower: Shell, { newWithUsed }: Stock): boolean {
  const [isUsed, isUsedToo] = [isOwned(upper), isOwned(lower)];
  if (upper.half === 'pair' || lower.half === 'pair') return upper === lower;
  if (isUsed !== isUsedToo && !newWithUsed) return false;
  const matesOf = (shell: Shell) => (isOwned(shell) ? shell.mates : undefined);
  return matesOf(upper) === matesOf(lower);
}

export function optionsOf(stock: Stock, engine: StockEngine, journal: StockJournal): Option[] {
  const limits = stock.kinds.find(
    ({ engineType, fit }) => engineType === journal.engineType && fit === journal.fit,
  );
  if (!journal.part || limits?.min === undefined || limits.max === undefined) return [];
  const { min, max, serviceLimit, aim, halfDifference, massSpread } = limits;
  const here = (ran: { engine: string; position: string } | undefined) =>
    ran?.engine === engine.name && ran.position === journal.position;
  const bores: {
    rod: StockRod | undefined;
    part: MeasuredPart | undefined;
    kept: boolean;
    hasShells?: boolean | undefined;
  }[] = journal.caseBore
    ? [
        {
          rod: undefined,
          part: journal.caseBore.part,
          kept: here(journal.caseBore.ran),
          hasShells: journal.caseBore.hasShells,
        },
      ]
    : stock.rods
        .filter(
          (rod) =>
            rod.engineType === journal.engineType &&
            (massSpread === undefined || rod.mass !== undefined) &&
            (!stock.rodsStay || !rod.ran || here(rod.ran)),
        )
        .map((rod) => ({ rod, part: rod.part, kept: here(rod.ran), hasShells: rod.hasShells }));
  const shells: Shell[] = [...stock.shells, ...stock.newShells].filter(
    ({ engineType, fit }) => engineType === journal.engineType && fit === journal.fit,
  );
  const options: Option[] = [];
  const isIn = (shell: Shell) => isOwned(shell) && shell.isBrought === true;
  for (const { rod, part: bore, kept, hasShells = false } of bores) {
    for (const upper of shells) {
      for (const lower of shells) {
        if (!bore || upper.half === 'lower' || lower.half === 'upper') continue;
        if (upper === lower && isOwned(upper) && upper.quantity < 2) continue;
        if (!mayStandTogether(upper, lower, stock)) continue;
        // A bore measured with its shells in takes those, and they go nowhere else.
        if (isIn(upper) !== hasShells || isIn(lower) !== hasShells) continue;
        const difference = Math.abs(upper.part.size - lower.part.size);
        if (halfDifference !== undefined && difference > halfDifference) continue;
        const parts = { bore, journal: journal.part, upper: upper.part, lower: lower.part };
        const clearance = clearanceOf(parts);
        const guards = fitGuards(stock.confidence, clearanceVariance(parts));
        const verdict = journal.caseBore?.isUncorrected
          ? 'undecided'
          : fitVerdict(clearance, { min, max, serviceLimit }, guards);
        const allowed = [
          'in range',
          ...(stock.allowUndecided ? ['undecided'] : []),
          ...(stock.allowWorn ? ['within service limit'] : []),
        ];
        if (!allowed.includes(verdict)) continue;
        const ran =
          kept && (hasShells || (isOwned(upper) && here(upper.ran) && isOwned(lower) && here(lower.ran)));
        const distance = aim === undefined ? 0 : Math.abs(clearance.clearance - aim);
        const stays = rod !== undefined && kept;
        options.push({ rod, upper, lower, distance, kept: ran, stays, inRange: verdict === 'in range' });
      }
    }
  }
  return options;
}

/** In tenths of grams the masses of the tests are whole. */
const tenths = (mass: number) => Math.round(mass * 10);

/** The engines that no sets complete, though they have the whole stock for themselves. */
function hopelessEngines(stock: Stock): Set<number> {
  const isHopeless = (place: number) => {
    const engine = stock.engines[place]!;
    if (engine.journals.length === 0) return false;
    const alone = { ...stock, engines: [engine], newShells: stock.newShells };
    return bestByTryingAll(alone, new Set())[0] === 0;
  };
  return new Set([...stock.engines.keys()].filter(isHopeless));
}

/** What the best sets reach, aim by aim in the order of the rules. */
export function bestByTryingAll(
  stock: Stock,
  hopeless: ReadonlySet<number> = hopelessEngines(stock),
): number[] {
  const journals = stock.engines.flatMap((engine, place) =>
    engine.journals.map((journal) => ({
      engine: place,
      journal,
      options: optionsOf(stock, engine, journal),
    })),
  );
  const used = new Map<object, number>();
  const chosen: (Option | undefined)[] = [];
  const masses = stock.engines.map((): number[] => []);
  let best: number[] | undefined;

  const judge = () => {
    const filled = stock.engines.map(
      (_, place) => journals.filter((each, at) => each.engine === place && chosen[at] !== undefined).length,
    );
    const isComplete = stock.engines.map(
      ({ journals: own }, place) => own.length > 0 && filled[place] === own.length,
    );
    const complete = isComplete.filter(Boolean).length;
    const beyond = filled.reduce((sum, count, place) => sum + (isComplete[place] ? 0 : count), 0);
    const open = filled.reduce(
      (sum, count, place) => sum + (isComplete[place] || hopeless.has(place) ? 0 : count),
      0,
    );
    const taken = chosen.filter((option) => option !== undefined);
    const bought = taken
      .flatMap(({ upper, lower }) => (upper.half === 'pair' ? [upper] : [upper, lower]))
      .filter((shell) => !isOwned(shell));
    const cents = bought.reduce((sum, shell) => sum + Math.round(100 * (shell as StockNewShell).price), 0);
    const distance = taken.reduce((sum, option) => sum + option.distance, 0);
    const kept = taken.filter((option) => option.kept).length;
    const stayed = taken.filter((option) => option.stays).length;
    const inRange = taken.filter((option) => option.inRange).length;
    const last = stock.preferKeptPairs ? [-kept, -stayed, distance] : [distance, -kept, -stayed];
    const value = [
      -complete,
      ...(hopeless.size > 0 ? [-open] : []),
      -beyond,
      ...(stock.newShells.length > 0 ? [cents] : []),
      ...(stock.allowWorn ? [-inRange] : []),
      ...last,
    ];
    const differs = best ? value.findIndex((each, place) => each !== best![place]) : 0;
    if (!best || (differs >= 0 && value[differs]! < best[differs]!)) best = value;
  };

  const use = (part: object, quantity: number): boolean => {
    used.set(part, (used.get(part) ?? 0) + 1);
    return used.get(part)! <= quantity;
  };
  const putBack = (part: object) => used.set(part, used.get(part)! - 1);

  const next = (at: number): void => {
    const site = journals[at];
    if (!site) {
      judge();
      return;
    }
    const spread = stock.kinds.find(
      ({ engineType, fit }) => engineType === site.journal.engineType && fit === site.journal.fit,
    )?.massSpread;
    for (const option of [undefined, ...site.options]) {
      chosen[at] = option;
      if (!option) {
        next(at + 1);
        continue;
      }
      const parts: object[] = [option.rod, option.upper, option.lower].filter((part) => part !== undefined);
      const free = parts.map((part) => {
        const row = part as Partial<StockShell & StockNewShell>;
        return use(part, row.price !== undefined ? Number.POSITIVE_INFINITY : (row.quantity ?? 1));
      });
      const own = masses[site.engine]!;
      const weighs = spread !== undefined && option.rod !== undefined;
      if (weighs) own.push(tenths(option.rod.mass!));
      const balanced = !weighs || Math.max(...own) - Math.min(...own) <= tenths(spread);
      if (balanced && free.every(Boolean)) next(at + 1);
      if (weighs) own.pop();
      for (const part of parts) putBack(part);
    }
  };
  next(0);
  return best!.map((value) => (value === 0 ? 0 : value));
}
