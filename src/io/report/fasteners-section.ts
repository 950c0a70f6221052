/**
 * Fasteners on the page, a table a group: the order of tightening and of loosening, torques in two units, angles, what is
 * to be renewed, boxes to tick. What the program does not give stands above them.
 */
import type { FastenerResult } from '../../engine/assess/fastener.js';
import { fastenerGroups, numbersOf } from '../../engine/assess/fastener-checks.js';
import { torqueOf, torqueText } from '../../engine/assess/torque-words.js';
import { FASTENER_CAUTION } from '../../engine/caution.js';
import { plainCell } from '../../engine/columns/cell-value.js';
import { FASTENER_COLUMNS } from '../../engine/columns/fastener-columns.js';
import { columnsOnPage } from '../../engine/columns/result-column.js';
import { FASTENERS } from '../../engine/input-sheets/fasteners.js';
import type { OutputCell } from '../../engine/workbook-model.js';
import { looseningPlace } from '../../maths/tightening-order.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';
import { type Element, h } from './elements.js';
import { type PageContext, tableIn } from './page-pieces.js';
import type { PageTable } from './page-table.js';
import { remeasureIn } from './remeasure-table.js';
import { remarksOf } from './result-tables.js';

/** What a mechanic ticks. */
const BOX = '\u2610';

export function fastenersSection(page: PageContext): Element[] {
  const { fasteners, remeasure } = page.assessment;
  if (fasteners.length === 0) return [];
  const results = new Map(fasteners.map((result) => [result.row, result]));
  const groups = fastenerGroups(fasteners.map(({ row }) => row)).map((rows) =>
    inOrder(rows.map((row) => results.get(row)!)),
  );
  const id = 'fasteners';
  return [
    h('section', { ariaLabelledBy: id }, [
      h('h2', { id }, FASTENERS.name),
      h('aside', { className: 'caution', ariaLabel: 'Caution about fasteners' }, [
        h(
          'ul',
          FASTENER_CAUTION.map((sentence) => h('li', sentence.replaceAll('`', ''))),
        ),
      ]),
      ...groups.flatMap((group) =>
        tableIn(
          page,
          groupTable(group, page),
          remarksOf(group, ({ row }) => row.name),
        ),
      ),
      ...remeasureIn(
        page,
        remeasure.filter(({ sheet }) => sheet === FASTENERS.name),
      ),
    ]),
  ];
}

/** In the order of tightening; those without a number behind, in the order of their rows. */
function inOrder(group: readonly FastenerResult[]): FastenerResult[] {
  const placeOf = ({ row: { number = Infinity } }: FastenerResult) => number;
  return [...group].sort((a, b) => (placeOf(a) === placeOf(b) ? 0 : placeOf(a) - placeOf(b)));
}

interface Column {
  readonly header: string;
  readonly cell: (fastener: FastenerResult) => OutputCell | undefined;
}

function groupTable(group: readonly FastenerResult[], { assessment, unit }: PageContext): PageTable {
  const { engine, group: name } = group[0]!.row;
  const numbers = numbersOf(group.map(({ row }) => row));
  const hasLength = group.some(({ row }) => row.length !== undefined);
  const isOther = ({ row }: FastenerResult) => {
    const typed = (row.torque ?? row.torqueAsPrinted)?.low.unit;
    return typed === 'lb·in' || typed === 'kgf·m';
  };
  const columns: Column[] = [
    { header: 'Tighten', cell: ({ row }) => whole(row.number) ?? text('no number') },
    {
      header: 'Loosen',
      cell: ({ row: { number } }) => whole(number && looseningPlace(number, numbers)),
    },
    { header: 'Thread', cell: ({ row }) => text(row.thread) },
    ...(hasLength
      ? [{ header: 'Length', cell: ({ row }: FastenerResult) => lengthCell(row.length, unit) }]
      : []),
    { header: 'Quantity', cell: ({ row }) => (row.quantity === 1 ? undefined : whole(row.quantity)) },
    { header: 'Torque, N·m', cell: ({ row }) => text(torqueOf(row, 'N·m')) },
    { header: 'Torque, lb·ft', cell: ({ row }) => text(torqueOf(row, 'lb·ft')) },
    {
      header: 'As typed',
      cell: (fastener) =>
        isOther(fastener)
          ? text(torqueText((fastener.row.torque ?? fastener.row.torqueAsPrinted)!))
          : undefined,
    },
    { header: 'Angle', cell: ({ row }) => text(row.angle === undefined ? undefined : `${row.angle}°`) },
    ...columnsOnPage(FASTENER_COLUMNS, 'measured').map(
      (column): Column => ({
        header: column.header,
        cell: (fastener) => plainCell(column, fastener, assessment),
      }),
    ),
    { header: 'Loosened', cell: () => text(BOX) },
    { header: 'Tightened', cell: () => text(BOX) },
    { header: 'Turned', cell: ({ row }) => text(row.angle === undefined ? undefined : BOX) },
  ];
  return {
    caption: [engine && `Engine ${engine}`, name].filter((word) => word !== '').join(', '),
    headers: columns.map(({ header }) => header),
    rows: group.map((fastener) => columns.map(({ cell }) => cell(fastener))),
    rowHeader: 0,
  };
}

function text(value: string | undefined): OutputCell | undefined {
  return value ? { value, format: 'plain' } : undefined;
}

function whole(value: number | undefined): OutputCell | undefined {
  return value === undefined ? undefined : { value, format: 'whole' };
}

function lengthCell(grain: number | undefined, unit: LengthUnit): OutputCell | undefined {
  return grain === undefined ? undefined : { value: inUnit(grain, unit), format: 'plain' };
}
