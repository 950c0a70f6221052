/** What the sections of the page are put together from. */
import type { Assessment } from '../../engine/assess/assess.js';
import type { PartResult } from '../../engine/assess/part-result.js';
import { lengthText } from '../../engine/assess/words.js';
import type { MatchedRow } from '../../engine/sheets/matched-rows.js';
import type { OutputSheet } from '../../engine/workbook-model.js';
import type { Grain } from '../../maths/grain.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';
import { type Element, h } from './elements.js';
import {
  cellText,
  type PageTable,
  type TableStyles,
  tableElement,
  tableOfSheet,
  withoutEmptyColumns,
} from './page-table.js';
import { gaugeRemarks, partTable, type Remark, remarksOf } from './result-tables.js';
import { visibleText } from './visible-text.js';

export interface PageContext {
  readonly assessment: Assessment;
  readonly unit: LengthUnit;
  readonly styles: TableStyles;
  readonly matched: readonly MatchedRow[];
  /** The program's own sheets about matching, by name, as the workbook gets them. */
  readonly sheets: ReadonlyMap<string, OutputSheet>;
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

export function partsTable(page: PageContext, caption: string, parts: readonly PartResult[]): Element[] {
  const table = partTable(caption, parts, page.unit);
  const gauges = gaugeRemarks(parts).map((sentence) =>
    h('p', { className: 'remarks' }, visibleText(sentence)),
  );
  return [
    ...tableIn(
      page,
      table,
      remarksOf(parts, ({ row }) => row.name || `row ${row.row + 1}`),
    ),
    ...gauges,
  ];
}

/** Rows of one of the program's sheets; those of one engine where `engine` says which column names it. */
export function sheetTable(
  page: PageContext,
  name: string,
  caption: string,
  rowHeader: string,
  isWanted?: { readonly header: string; readonly test: (value: string) => boolean },
): PageTable | undefined {
  const sheet = page.sheets.get(name);
  if (!sheet) return undefined;
  const table = tableOfSheet(sheet, caption, 0);
  const at = isWanted ? table.headers.indexOf(isWanted.header) : -1;
  const rows = isWanted
    ? table.rows.filter((row) => isWanted.test(row[at] ? cellText(row[at]) : ''))
    : table.rows;
  return { ...table, rows, rowHeader: Math.max(0, table.headers.indexOf(rowHeader)) };
}

/** A length as a drawing names it: without needless zeros and, since its axis says it, without unit. */
export function bareLength(unit: LengthUnit): (grain: Grain) => string {
  return (grain) => lengthText(grain, unit).split(' ')[0]!;
}

/** A length with the decimals of the tables. */
export function tableLength(unit: LengthUnit): (grain: Grain) => string {
  const format = unit === 'in' ? 'in' : 'mm';
  return (grain) => cellText({ value: inUnit(grain, unit), format });
}
