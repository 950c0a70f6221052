/** The sheets that say what matching found: sets, what is not matched, where to pick, what to buy, what is left. */
import { clearanceOf } from '../../maths/clearance.js';
import { fitVerdict, guardOf } from '../../maths/conformity.js';
import type { Grain } from '../../maths/grain.js';
import type { MatchedFit, StockJournal, TakenShell } from '../../maths/matching/stock.js';
import { clearanceVariance, expandedUncertainty } from '../../maths/uncertainty.js';
import { inUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { PartResult } from '../assess/part.js';
import { matchingFault, reasonNotUsed } from '../assess/stock.js';
import { nameKey } from '../book/names.js';
import { reasonOf } from '../book/problems.js';
import type { Layout } from '../columns/layout.js';
import { GRAINS, lengthOf } from '../columns/live-terms.js';
import type { OutputSheet } from '../workbook-model.js';
import { ownSheet, type SheetColumn } from './own-sheet.js';

/** One matched fit with what is shown of it, lengths in grains. */
export interface MatchedRow {
  readonly fit: MatchedFit;
  readonly journal: PartResult;
  readonly engine: string;
  readonly fitName: string;
  readonly position: string;
  readonly upper: string;
  readonly lower: string;
  readonly clearance: Grain;
  readonly tightest: Grain;
  readonly loosest: Grain;
  readonly clearanceU: Grain | undefined;
  readonly offAim: Grain;
  readonly status: string;
}

export interface UnmatchedRow {
  readonly journal: PartResult;
  readonly why: string;
}

export function shellName(taken: TakenShell): string {
  return taken.from === 'stock' ? taken.shell.name : `new ${taken.shell.mark}`;
}

/** The filled journals in the order of the journals' rows. */
export function matchedRows({ matching, stock, context }: Assessment): MatchedRow[] {
  if (!matching) return [];
  const rows = matching.fits.map((fit): MatchedRow => {
    const journal = stock.journals.get(fit.journal)!;
    const limits = context.limitsOf(journal.row.engineType, journal.row.fit)!;
    const clearance = clearanceOf(fit.parts);
    const variance = clearanceVariance(fit.parts);
    const guard = guardOf(stock.stock.confidence, Math.sqrt(variance));
    const range = { min: limits.clearanceMin!, max: limits.clearanceMax!, serviceLimit: limits.serviceLimit };
    return {
      fit,
      journal,
      engine: journal.row.engine,
      fitName: journal.row.fit,
      position: journal.row.position,
      upper: shellName(fit.upper),
      lower: shellName(fit.lower),
      ...clearance,
      clearanceU: Object.values(fit.parts).some(({ systematic }) => systematic.length > 0)
        ? expandedUncertainty(variance)
        : undefined,
      offAim: clearance.clearance - context.aimOf(limits)!,
      status: fitVerdict(clearance, range, guard),
    };
  });
  return rows.sort((a, b) => a.journal.row.row - b.journal.row.row);
}

export function unmatchedRows({ matching, stock, context }: Assessment): UnmatchedRow[] {
  if (!matching) return [];
  const filled = new Set(matching.fits.map(({ journal }) => journal));
  return [...stock.journals]
    .filter(([journal]) => !filled.has(journal))
    .map(([journal, part]) => ({ journal: part, why: whyNot(journal, part) }));

  function whyNot(journal: StockJournal, part: PartResult): string {
    const own = reasonNotUsed(part);
    if (own) return `journal: ${own}`;
    const housing = stock.cases.get(journal);
    if (housing && !journal.caseBore?.part) {
      return `case ${housing.row.name}: ${reasonNotUsed(housing) ?? 'several cases stand at this place'}`;
    }
    const limits = context.limitsOf(part.row.engineType, part.row.fit);
    const refused = matchingFault(limits, context);
    if (refused) return reasonOf(refused);
    if (limits?.clearanceMin === undefined || limits.clearanceMax === undefined)
      return 'no limits for this fit';
    return journal.caseBore
      ? 'no pair of shells is left that gives an allowed fit'
      : 'no rod and pair of shells are left that give an allowed fit';
  }
}

export function matchingSheets(assessment: Assessment, layout: Layout): OutputSheet[] {
  if (!assessment.matching) return [];
  const matched = matchedRows(assessment);
  return [
    ownSheet('Matched sets', matchedColumns(assessment, layout), matched),
    ownSheet('Not matched', NOT_MATCHED, unmatchedRows(assessment)),
    ownSheet('Pick list', PICK_LIST, pickList(matched, assessment)),
    ownSheet('To buy', TO_BUY, toBuy(matched)),
    ownSheet('Left over', LEFT_OVER, leftOver(matched, assessment)),
  ];
}

/** The first part of each name. */
function byName(parts: readonly PartResult[]): Map<string, PartResult> {
  return new Map(parts.toReversed().map((part) => [part.row.name, part]));
}

function matchedColumns(assessment: Assessment, layout: Layout): SheetColumn<MatchedRow>[] {
  const unit = assessment.book.setup.lengthUnit;
  const format = unit === 'in' ? 'in' : 'mm';
  const { parts, stock } = assessment;
  const rods = byName(parts.rods);
  const shells = byName(parts.shells);
  /** Live where all four parts stand in the book; a bought shell has no cell. */
  const live = (row: MatchedRow, bore: string, wall: string, journal: string): string | undefined => {
    const { upper, lower } = row.fit;
    const housing = stock.cases.get(row.fit.journal) ?? rods.get(row.fit.bore.name);
    const walls = [upper, lower].map((taken) =>
      taken.from === 'stock' ? shells.get(taken.shell.name) : undefined,
    );
    if (!housing || !walls[0] || !walls[1]) return undefined;
    const cells = [
      layout.partCell(housing, bore),
      ...walls.map((part) => layout.partCell(part!, wall)),
      layout.partCell(row.journal, journal),
    ];
    return `IF(COUNT(${cells.join(',')})<4,"",${lengthOf(`ROUND((${cells.join('-')})*${GRAINS[unit]},0)`, unit)})`;
  };
  const length = (grain: Grain | undefined) => (grain === undefined ? undefined : inUnit(grain, unit));
  return [
    { header: 'Engine', width: 12, value: (row) => row.engine },
    { header: 'Fit', width: 10, value: (row) => row.fitName },
    { header: 'Position', width: 10, value: (row) => row.position },
    { header: 'Journal', width: 12, value: (row) => row.journal.row.name },
    { header: 'Bore', width: 12, value: (row) => row.fit.bore.name },
    { header: 'Upper shell', width: 12, value: (row) => row.upper },
    { header: 'Lower shell', width: 12, value: (row) => row.lower },
    {
      header: 'Clearance',
      width: 12,
      format,
      value: (row) => length(row.clearance),
      formula: (row) => live(row, 'Size', 'Wall', 'Size'),
    },
    {
      header: 'Tightest',
      width: 12,
      format,
      value: (row) => length(row.tightest),
      formula: (row) => live(row, 'Smallest', 'Largest', 'Largest'),
    },
    {
      header: 'Loosest',
      width: 12,
      format,
      value: (row) => length(row.loosest),
      formula: (row) => live(row, 'Largest', 'Smallest', 'Smallest'),
    },
    { header: 'Clearance U', width: 12, format, value: (row) => length(row.clearanceU) },
    { header: 'Off aim', width: 12, format, value: (row) => length(row.offAim) },
    { header: 'Status', width: 16, value: (row) => row.status },
    { header: 'Ran together', width: 13, value: (row) => (row.fit.ranTogether ? 'yes' : 'no') },
  ];
}

const NOT_MATCHED: SheetColumn<UnmatchedRow>[] = [
  { header: 'Engine', width: 12, value: ({ journal }) => journal.row.engine },
  { header: 'Fit', width: 10, value: ({ journal }) => journal.row.fit },
  { header: 'Position', width: 10, value: ({ journal }) => journal.row.position },
  { header: 'Journal', width: 14, value: ({ journal }) => journal.row.name },
  { header: 'Why', width: 60, format: 'text', value: ({ why }) => why },
];

interface Picked {
  readonly bin: string;
  readonly part: string;
  readonly kind: string;
  readonly engine: string;
  readonly position: string;
}

const PICK_LIST: SheetColumn<Picked>[] = [
  { header: 'Bin', width: 12, value: ({ bin }) => bin },
  { header: 'Part', width: 14, value: ({ part }) => part },
  { header: 'Kind', width: 16, value: ({ kind }) => kind },
  { header: 'For engine', width: 14, value: ({ engine }) => engine },
  { header: 'Position', width: 12, value: ({ position }) => position },
];

function pickList(rows: readonly MatchedRow[], { parts, stock }: Assessment): Picked[] {
  const rods = byName(parts.rods);
  const shellsByName = byName(parts.shells);
  const binOf = (known: ReadonlyMap<string, PartResult>, name: string) => known.get(name)?.row.bin ?? '';
  const picked = rows.flatMap(({ fit, journal, engine, position }): Picked[] => {
    const housing = stock.cases.get(fit.journal);
    const shells = (['upper', 'lower'] as const).flatMap((half) => {
      const taken = fit[half];
      if (taken.from === 'new') return [];
      const { name } = taken.shell;
      return [{ bin: binOf(shellsByName, name), part: name, kind: `${half} shell`, engine, position }];
    });
    return [
      { bin: journal.row.bin ?? '', part: journal.row.name, kind: 'journal', engine, position },
      housing
        ? { bin: housing.row.bin ?? '', part: housing.row.name, kind: 'case', engine, position }
        : { bin: binOf(rods, fit.bore.name), part: fit.bore.name, kind: 'rod', engine, position },
      ...shells,
    ];
  });
  const inOrder = (a: string, b: string) => a.localeCompare(b, 'en', { numeric: true });
  return picked.sort((a, b) => inOrder(a.bin, b.bin) || inOrder(a.kind, b.kind) || inOrder(a.part, b.part));
}

export interface Bought {
  readonly engineType: string;
  readonly fit: string;
  readonly half: string;
  readonly mark: string;
  quantity: number;
  readonly price: number;
  readonly places: string[];
}

const TO_BUY: SheetColumn<Bought>[] = [
  { header: 'Engine type', width: 14, value: ({ engineType }) => engineType },
  { header: 'Fit', width: 10, value: ({ fit }) => fit },
  { header: 'Half', width: 10, value: ({ half }) => half },
  { header: 'Mark', width: 10, value: ({ mark }) => mark },
  { header: 'Quantity', width: 10, format: 'whole', value: ({ quantity }) => quantity },
  { header: 'Price', width: 10, value: ({ price }) => price },
  { header: 'For', width: 40, format: 'text', value: ({ places }) => places.join(', ') },
];

/** One row a shell of New shells; the price is of one. */
export function toBuy(rows: readonly MatchedRow[]): Bought[] {
  const bought = new Map<unknown, Bought>();
  for (const { fit, engine, fitName, position, journal } of rows) {
    for (const half of ['upper', 'lower'] as const) {
      const taken = fit[half];
      if (taken.from !== 'new') continue;
      const { mark, price } = taken.shell;
      const entry = bought.get(taken.shell) ?? {
        engineType: journal.row.engineType ?? '',
        fit: fitName,
        half: taken.shell.half,
        mark,
        quantity: 0,
        price,
        places: [],
      };
      entry.quantity += 1;
      const place = `${engine} ${fitName} ${position}`;
      if (!entry.places.includes(place)) entry.places.push(place);
      bought.set(taken.shell, entry);
    }
  }
  return [...bought.values()];
}

export interface Left {
  readonly part: string;
  readonly kind: string;
  readonly bin: string;
}

const LEFT_OVER: SheetColumn<Left>[] = [
  { header: 'Part', width: 14, value: ({ part }) => part },
  { header: 'Kind', width: 30, value: ({ kind }) => kind },
  { header: 'Bin', width: 12, value: ({ bin }) => bin },
];

/** Rods and shells that no set takes; of a row with a quantity, how many remain. */
export function leftOver(rows: readonly MatchedRow[], { parts }: Assessment): Left[] {
  const taken = new Map<string, number>();
  const take = (key: string) => taken.set(key, (taken.get(key) ?? 0) + 1);
  for (const { fit } of rows) {
    take(`rod ${nameKey(fit.bore.name)}`);
    for (const shell of [fit.upper, fit.lower])
      if (shell.from === 'stock') take(`shell ${nameKey(shell.shell.name)}`);
  }
  const rods = parts.rods.filter(({ row }) => !taken.has(`rod ${nameKey(row.name)}`));
  const shells = parts.shells.flatMap(({ row }): Left[] => {
    const left = row.quantity - (taken.get(`shell ${nameKey(row.name)}`) ?? 0);
    if (left <= 0) return [];
    const kind = `${row.half ? `${row.half} ` : ''}shell${row.quantity > 1 ? `, ${left} of ${row.quantity}` : ''}`;
    return [{ part: row.name, kind, bin: row.bin ?? '' }];
  });
  return [...rods.map(({ row }) => ({ part: row.name, kind: 'rod', bin: row.bin ?? '' })), ...shells];
}
