/** What the sections of the page are put together from. */
import type { Assessment } from '../../engine/assess/assess.js';
import type { PartResult } from '../../engine/assess/part-result.js';
import { lengthText } from '../../engine/assess/words.js';
import type { PageTableOf } from '../../engine/columns/result-column.js';
import type { ResultTable } from '../../engine/columns/result-table.js';
import type { PartSheet } from '../../engine/input-sheets/input-sheet.js';
import type { Grain } from '../../maths/grain.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';
import { type Element, h } from './elements.js';
import {
  type PageTable,
  shownText,
  type TableStyles,
  tableElement,
  withoutEmptyColumns,
} from './page-table.js';
import { gaugesUsed, listTable, partTable, type Remark, remarksOf } from './result-tables.js';
import { visibleText } from './visible-text.js';

export interface PageContext {
  readonly assessment: Assessment;
  readonly unit: LengthUnit;
  readonly styles: TableStyles;
  readonly lists: ListRows;
}

/** The rows of the program's lists, each list made once for the whole page. */
export class ListRows {
  private readonly known = new Map<unknown, readonly unknown[]>();

  constructor(private readonly assessment: Assessment) {}

  of<Row>(table: ResultTable<Row>): readonly Row[] {
    const rows = (this.known.get(table) as readonly Row[] | undefined) ?? table.rows(this.assessment);
    this.known.set(table, rows);
    return rows;
  }
}

/** A table; nothing where it has no rows. */
export function tableIn(page: PageContext, table: PageTable, remarks: readonly Remark[] = []): Element[] {
  if (table.rows.length === 0) return [];
  return [tableElement(withoutEmptyColumns(table), page.styles), ...remarkList(remarks)];
}

export function remarkList(remarks: readonly Remark[]): Element[] {
  if (remarks.length === 0) return [];
  const items = remarks.map(({ names, why }) =>
    h('li', [h('b', visibleText(names.join(', '))), ': ', visibleText(why)]),
  );
  return [h('ul', { className: 'remarks' }, items)];
}

export function partsTable(
  page: PageContext,
  sheet: PartSheet,
  parts: readonly PartResult[],
  caption = sheet.plural,
): Element[] {
  const table = partTable(caption, sheet, parts, page.assessment);
  const gauges = gaugesUsed(parts).map((sentence) => h('p', { className: 'remarks' }, visibleText(sentence)));
  return [
    ...tableIn(
      page,
      table,
      remarksOf(parts, ({ row }) => row.name || `row ${row.row + 1}`),
    ),
    ...gauges,
  ];
}

/** What of one of the program's lists the page shows. */
export interface ShownList<Row> {
  /** The name of the list, where no other is given. */
  readonly caption?: string;
  readonly isWanted?: (row: Row) => boolean;
  readonly of?: PageTableOf;
}

export function listIn<Row>(
  page: PageContext,
  table: ResultTable<Row>,
  { caption = table.name, isWanted = () => true, of }: ShownList<Row> = {},
): Element[] {
  const rows = page.lists.of(table).filter(isWanted);
  return tableIn(page, listTable(caption, table, rows, page.assessment, of));
}

/** A length as a drawing names it: without needless zeros and, since its axis says it, without unit. */
export function bareLength(unit: LengthUnit): (grain: Grain) => string {
  return (grain) => lengthText(grain, unit).split(' ')[0]!;
}

/** A length with the decimals of the tables. */
export function tableLength(unit: LengthUnit): (grain: Grain) => string {
  const format = unit === 'in' ? 'in' : 'mm';
  return (grain) => shownText({ value: inUnit(grain, unit), format });
}
