/** The stock of a book for matching: what may be used, and why the rest may not. */
import { middle } from '../../maths/classes.js';
import { broughtShells } from '../../maths/matching/brought-shells.js';
import { BIG_END } from '../../maths/matching/part-classes.js';
import type {
  FitKind,
  RanAt,
  Stock,
  StockEngine,
  StockJournal,
  StockNewShell,
  StockRod,
  StockShell,
} from '../../maths/matching/stock.js';
import { CERTAIN } from '../../maths/uncertainty.js';
import type { LimitsRow, NewShellRow, PartRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import type { BadCell } from '../book/problems.js';
import { CASES } from '../input-sheets/cases.js';
import { JOURNALS } from '../input-sheets/journals.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';
import { SHELL_BEARING } from '../kinds/shell-bearing.js';
import { type Context, groupBy, kindKey } from './context.js';
import type { PartResult } from './part-result.js';
import type { PartsOfBook } from './placed-fit.js';
import { shellsInBoresOf } from './shells-in-bores.js';

/** A main keeps the case bore of its place; matching chooses only its shells. */
function isMain({ fit }: PartRow): boolean {
  return nameKey(fit) === CASES.fit;
}

/**
 * Why a part may not be matched; undefined where it may.
 * @param allowUndecided whether matching may make undecided fits
 */
export function reasonNotUsed(
  { row, status, isUncorrected }: PartResult,
  allowUndecided = false,
): string | undefined {
  if (!row.usable) return 'not usable';
  if (status === 'bad reading' || status === 'not measured' || status === 'beyond limits') return status;
  // Its fits are undecided, whatever their clearance.
  if (isUncorrected && !allowUndecided) return 'not corrected to 20 °C';
  if (row.engineType === undefined) return 'Engine type is blank';
  return undefined;
}

/** The same, and of shells that are in a bore that they stay in. */
export function reasonOutOfStock(part: PartResult, { book }: Context): string | undefined {
  const bore = shellsInBoresOf(book).boreOf(part.row);
  return bore ? `in ${bore.name}, which was measured with its shells in` : reasonNotUsed(part);
}

/** The refused cell of a Limits row without which no fit of it can be chosen. */
export function matchingFault(limits: LimitsRow | undefined, { book }: Context): BadCell | undefined {
  const needed = ['Clearance min', 'Clearance max', 'Aim', 'Mass spread'];
  // It parts `undecided` and `within service limit` from `loose`, and only these may be allowed.
  if (book.setup.allowUndecided || book.setup.allowWorn) needed.push('Service limit');
  return limits?.bad.find(({ header }) => needed.includes(header));
}

export interface BookStock {
  readonly stock: Stock;
  /** The results behind the names of the stock. */
  readonly journals: ReadonlyMap<StockJournal, PartResult>;
  readonly cases: ReadonlyMap<StockJournal, PartResult>;
}

/** @param now where parts are whose rows name no place, as far as that counts */
export function stockOf(
  parts: PartsOfBook,
  context: Context,
  now: ReadonlyMap<PartResult, RanAt> = new Map(),
): BookStock {
  const { book } = context;
  const { setup } = book;
  const ran = (part: PartResult) => ranAt(part.row) ?? now.get(part);
  const notUsed = (part: PartResult) => reasonNotUsed(part, setup.allowUndecided);
  const journals = new Map<StockJournal, PartResult>();
  const cases = new Map<StockJournal, PartResult>();
  const mains = parts.of(CASES.name).filter(({ row }) => isMain(row));
  const casesAt = groupBy(mains, ({ row }) => `${nameKey(row.engine)}\u0000${nameKey(row.position)}`);
  const matched = parts
    .of(JOURNALS.name)
    .filter(({ row }) => row.engine !== '' && SHELL_BEARING.words.includes(nameKey(row.fit)));
  const engines: StockEngine[] = [];
  for (const [name, group] of groupBy(matched, ({ row }) => nameKey(row.engine))) {
    const own: StockJournal[] = [];
    for (const part of group) {
      const { row } = part;
      const there = casesAt.get(`${nameKey(row.engine)}\u0000${nameKey(row.position)}`) ?? [];
      const housing = there[0];
      // A main whose case is not in the stock is outside.
      if (isMain(row) && !housing) continue;
      const housingIsUsable = housing && there.length === 1 && notUsed(housing) === undefined;
      const journal: StockJournal = {
        ...kindOf(row),
        name: row.name,
        position: nameKey(row.position),
        part: notUsed(part) === undefined ? part.measured : undefined,
        caseBore:
          isMain(row) && housing
            ? {
                name: housing.row.name,
                part: housingIsUsable ? housing.measured : undefined,
                ran: ran(housing),
                isUncorrected: housing.isUncorrected,
                ...(housing.row.hasShells && { hasShells: true }),
              }
            : undefined,
      };
      journals.set(journal, part);
      if (isMain(row) && housing) cases.set(journal, housing);
      own.push(journal);
    }
    if (own.length > 0) engines.push({ name, journals: own });
  }
  const usable = (list: readonly PartResult[]) =>
    list.flatMap((part) =>
      part.measured && notUsed(part) === undefined
        ? [{ row: part.row, part: part.measured, ran: ran(part) }]
        : [],
    );
  const rods = usable(parts.of(RODS.name)).map(({ row, part, ran: ranOn }) => ({
    name: row.name,
    engineType: nameKey(row.engineType!),
    part,
    mass: row.mass,
    ran: ranOn,
    ...(row.hasShells && { hasShells: true as const }),
  }));
  const inBores = shellsInBoresOf(book);
  const mates = setup.halvesStay ? matesOf(parts.of(SHELLS.name)) : () => undefined;
  const shells = usable(parts.of(SHELLS.name)).flatMap(({ row, part, ran: ranOn }) =>
    row.half === undefined || inBores.boreOf(row)
      ? []
      : [
          {
            ...kindOf(row),
            ...{ name: row.name, half: row.half, quantity: row.quantity },
            ...{ part, ran: ranOn, mates: mates(row) },
          },
        ],
  );
  const firstLimits = [
    ...new Map([...book.limits].reverse().map((row) => [kindKey(row.engineType, row.fit), row])).values(),
  ];
  return {
    journals,
    cases,
    stock: {
      kinds: firstLimits.map((row) => ({
        engineType: nameKey(row.engineType),
        fit: nameKey(row.fit),
        ...(matchingFault(row, context)
          ? { min: undefined, max: undefined }
          : { min: row.clearanceMin, max: row.clearanceMax }),
        serviceLimit: row.serviceLimit,
        aim: context.aimOf(row),
        halfDifference: setup.halfDifference,
        massSpread: row.massSpread ?? setup.massSpread,
      })),
      engines,
      rods,
      shells: [...shells, ...broughtShellsOf(rods, engines)],
      newShells: setup.buyNewShells ? book.newShells.flatMap((row) => newShellOf(row) ?? []) : [],
      confidence: setup.confidence,
      allowUndecided: setup.allowUndecided,
      allowWorn: setup.allowWorn,
      preferKeptPairs: setup.preferKeptPairs,
      rodsStay: setup.rodsStay,
      newWithUsed: setup.newWithUsed,
    },
  };
}

/** The shells in the bores that were measured with them, kind by kind. */
function broughtShellsOf(rods: readonly StockRod[], engines: readonly StockEngine[]): StockShell[] {
  const bores: FitKind[] = [
    ...rods.filter(({ hasShells }) => hasShells).map(({ engineType }) => ({ engineType, fit: BIG_END })),
    ...engines.flatMap(({ journals }) => journals.filter(({ caseBore }) => caseBore?.hasShells)),
  ];
  const kinds = groupBy(bores, ({ engineType, fit }) => kindKey(engineType, fit));
  return [...kinds.values()].flatMap((own) => broughtShells(own[0]!, own.length));
}

/** A shell as it is sold, at the middle of its walls; undefined for a row that cannot be read whole. */
export function newShellOf(row: NewShellRow): StockNewShell | undefined {
  const { mark, half, from, to, bad, price } = row;
  if (bad.length > 0 || !mark || from === undefined || to === undefined || from > to) return undefined;
  const part = { size: middle({ from, to }), smallest: from, largest: to, ...CERTAIN };
  return {
    engineType: nameKey(row.engineType),
    fit: nameKey(row.fit),
    mark,
    half: half ?? 'pair',
    part,
    price,
  };
}

/**
 * The place whose half-shells serve only with each other; undefined for one that alone names its place. Those that may
 * not be used count too: their mates are then not used either.
 */
function matesOf(shells: readonly PartResult[]): (row: PartRow) => string | undefined {
  const placeOf = (row: PartRow) =>
    row.engine === '' || row.position === ''
      ? undefined
      : [row.engine, row.fit, row.position].map(nameKey).join('\u0000');
  const counts = new Map<string | undefined, number>();
  for (const { row } of shells) {
    const place = placeOf(row);
    counts.set(place, (counts.get(place) ?? 0) + row.quantity);
  }
  return (row) => {
    const place = placeOf(row);
    return counts.get(place)! > 1 ? place : undefined;
  };
}

function kindOf(row: PartRow) {
  return { engineType: nameKey(row.engineType ?? ''), fit: nameKey(row.fit) };
}

function ranAt({ engine, position }: PartRow): RanAt | undefined {
  return engine === '' || position === ''
    ? undefined
    : { engine: nameKey(engine), position: nameKey(position) };
}
