/** Results as tables: the columns of the workbook, the `Why` of parts and fits gathered as remarks below. */
import type { Assessment } from '../../engine/assess/assess.js';
import type { FitResult } from '../../engine/assess/fit.js';
import type { PartResult } from '../../engine/assess/part-result.js';
import { plainCell } from '../../engine/columns/cell-value.js';
import { columnsOfKind } from '../../engine/columns/columns-of-kind.js';
import { partColumns } from '../../engine/columns/part-columns.js';
import { columnsOnPage, type PageTableOf, type ResultColumn } from '../../engine/columns/result-column.js';
import type { ResultTable } from '../../engine/columns/result-table.js';
import { FIT_SLOTS, FITS, slotHeader } from '../../engine/input-sheets/fits.js';
import type { PartSheet } from '../../engine/input-sheets/input-sheet.js';
import type { OutputCell, OutputFormat } from '../../engine/workbook-model.js';
import type { Grain } from '../../maths/grain.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';
import type { PageTable } from './page-table.js';

/** A page has room for one row a part; what is odd about it stands below the table, once for all that share it. */
export interface Remark {
  readonly names: readonly string[];
  readonly why: string;
}

/** What the user typed of a row, beside its results. */
interface TypedColumn<Row> {
  readonly header: string;
  readonly cell: (row: Row) => OutputCell | undefined;
}

/** What was measured of the parts of one sheet, and what it proves. */
export function partTable(
  caption: string,
  sheet: PartSheet,
  parts: readonly PartResult[],
  assessment: Assessment,
): PageTable {
  const typed: TypedColumn<PartResult>[] = [
    { header: 'Part', cell: ({ row }) => text(row.name) },
    { header: 'Position', cell: ({ row }) => text(row.position) },
    ...('half' in sheet.columns ? [{ header: 'Half', cell: ({ row }: PartResult) => text(row.half) }] : []),
    ...('quantity' in sheet.columns
      ? [
          {
            header: 'Quantity',
            cell: ({ row }: PartResult) => (row.quantity === 1 ? undefined : number(row.quantity, 'whole')),
          },
        ]
      : []),
    { header: 'Mark', cell: ({ row }) => text(row.mark) },
  ];
  return tableOf(caption, typed, columnsOnPage(partColumns(sheet), 'measured'), parts, assessment);
}

/** What was measured of the fits, and what it proves. */
export function fitTable(caption: string, fits: readonly FitResult[], assessment: Assessment): PageTable {
  const unit = assessment.book.setup.lengthUnit;
  const typed: TypedColumn<FitResult>[] = [
    POSITION,
    { header: FITS.columns.strip.header, cell: ({ source }) => length(source?.strip, unit) },
  ];
  return tableOf(caption, typed, fitColumnsIn('measured', fits), fits, assessment);
}

/** What the fits are made of, and the shells that marks and sizes ask for. */
export function fittedParts(caption: string, fits: readonly FitResult[], assessment: Assessment): PageTable {
  const parts = FIT_SLOTS.map(
    (slot): TypedColumn<FitResult> => ({
      header: slotHeader(slot),
      cell: (fit) => text(fit.parts[slot]?.row.name),
    }),
  );
  const typed = [POSITION, ...parts];
  return tableOf(caption, typed, fitColumnsIn('chosen', fits), fits, assessment);
}

/** Fits of one word are of one kind. */
function fitColumnsIn(table: PageTableOf, [first]: readonly FitResult[]): readonly ResultColumn<FitResult>[] {
  return first ? columnsOnPage(columnsOfKind(first.kind), table) : [];
}

const POSITION: TypedColumn<FitResult> = { header: 'Position', cell: ({ position }) => text(position) };

/** Rows of one of the program's lists; all columns that the page shows, or those of one table of it. */
export function listTable<Row>(
  caption: string,
  { columns, rowName }: ResultTable<Row>,
  rows: readonly Row[],
  assessment: Assessment,
  of?: PageTableOf,
): PageTable {
  const table = tableOf(caption, [], columnsOnPage(columns, of), rows, assessment);
  return { ...table, rowHeader: table.headers.indexOf(rowName) };
}

/** What the rows' `Why` says, each sentence once, in the order in which they first stand. */
export function remarksOf<Row extends { readonly why: readonly string[] }>(
  rows: readonly Row[],
  nameOf: (row: Row) => string,
): Remark[] {
  const names = new Map<string, string[]>();
  for (const row of rows) {
    for (const why of new Set(row.why)) names.set(why, [...(names.get(why) ?? []), nameOf(row)]);
  }
  return [...names].map(([why, own]) => ({ why, names: own }));
}

/** With which gauge the parts were measured, each gauge once. */
export function gaugesUsed(parts: readonly PartResult[]): string[] {
  const names = new Map<string, string[]>();
  for (const { row } of parts) {
    if (row.gauge !== undefined) names.set(row.gauge, [...(names.get(row.gauge) ?? []), row.name]);
  }
  return [...names].map(([gauge, own]) =>
    own.length === parts.length ? `Gauge: ${gauge}` : `Gauge ${gauge}: ${own.join(', ')}`,
  );
}

function tableOf<Row>(
  caption: string,
  typed: readonly TypedColumn<Row>[],
  results: readonly ResultColumn<Row>[],
  rows: readonly Row[],
  assessment: Assessment,
): PageTable {
  return {
    caption,
    headers: [...typed, ...results].map(({ header }) => header),
    rows: rows.map((row) => [
      ...typed.map(({ cell }) => cell(row)),
      ...results.map((column) => plainCell(column, row, assessment)),
    ]),
    rowHeader: 0,
  };
}

function text(value: string | undefined): OutputCell | undefined {
  return value ? { value, format: 'plain' } : undefined;
}

function number(value: number | undefined, format: OutputFormat): OutputCell | undefined {
  return value === undefined ? undefined : { value, format };
}

function length(grain: Grain | undefined, unit: LengthUnit): OutputCell | undefined {
  return grain === undefined ? undefined : number(inUnit(grain, unit), unit === 'in' ? 'in' : 'mm');
}
