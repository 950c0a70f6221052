/** Parts and fits as tables: the columns of the workbook, its `Why` gathered as remarks below. */

import type { FitResult } from '../../engine/assess/fit.js';
import type { PartResult } from '../../engine/assess/part-result.js';
import type { OutputCell, OutputFormat } from '../../engine/workbook-model.js';
import type { Grain } from '../../maths/grain.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';
import type { PageTable } from './page-table.js';

interface Column<Row> {
  readonly header: string;
  readonly cell: (row: Row) => OutputCell | undefined;
}

/** A page has room for one row a part; what is odd about it stands below the table, once for all that share it. */
export interface Remark {
  readonly names: readonly string[];
  readonly why: string;
}

export function partTable(caption: string, parts: readonly PartResult[], unit: LengthUnit): PageTable {
  const isShells = parts.every(({ row }) => row.sheet === 'Shells');
  const form = (key: 'size' | 'largest' | 'smallest' | 'taper' | 'outOfRound') => (part: PartResult) =>
    length(part.form?.[key], unit);
  const columns: Column<PartResult>[] = [
    { header: 'Part', cell: ({ row }) => text(row.name) },
    { header: 'Position', cell: ({ row }) => text(row.position) },
    ...(isShells
      ? [
          { header: 'Half', cell: ({ row }: PartResult) => text(row.half) },
          {
            header: 'Quantity',
            cell: ({ row }: PartResult) => (row.quantity === 1 ? undefined : number(row.quantity, 'whole')),
          },
        ]
      : []),
    { header: 'Mark', cell: ({ row }) => text(row.mark) },
    { header: isShells ? 'Wall' : 'Size', cell: form('size') },
    { header: 'Largest', cell: form('largest') },
    { header: 'Smallest', cell: form('smallest') },
    { header: 'Taper', cell: isShells ? () => undefined : form('taper') },
    { header: 'Out of round', cell: isShells ? () => undefined : form('outOfRound') },
    { header: 'Class', cell: ({ classification }) => text(classification?.text) },
    { header: isShells ? 'Wall U' : 'Size U', cell: ({ sizeU }) => length(sizeU, unit) },
    { header: 'Status', cell: ({ status }) => text(status) },
  ];
  return tableOf(caption, columns, parts, 0);
}

/** What was measured of the fits, and what it proves. */
export function fitTable(caption: string, fits: readonly FitResult[], unit: LengthUnit): PageTable {
  const columns: Column<FitResult>[] = [
    { header: 'Position', cell: ({ position }) => text(position) },
    { header: 'Strip reading', cell: ({ source }) => length(source?.strip, unit) },
    { header: 'Clearance', cell: ({ clearance }) => length(clearance?.clearance, unit) },
    { header: 'Tightest', cell: ({ clearance }) => length(clearance?.tightest, unit) },
    { header: 'Loosest', cell: ({ clearance }) => length(clearance?.loosest, unit) },
    { header: 'Clearance U', cell: ({ clearanceU }) => length(clearanceU, unit) },
    { header: 'Chance in range', cell: ({ chance }) => number(chance, 'chance') },
    { header: 'Status', cell: ({ status }) => text(status) },
  ];
  return tableOf(caption, columns, fits, 0);
}

/** What the fits are made of, and the shells that marks and sizes ask for. */
export function fittedParts(caption: string, fits: readonly FitResult[]): PageTable {
  const part = (slot: keyof FitResult['parts']) => (fit: FitResult) => text(fit.parts[slot]?.row.name);
  const columns: Column<FitResult>[] = [
    { header: 'Position', cell: ({ position }) => text(position) },
    { header: 'Journal', cell: part('journal') },
    { header: 'Bore', cell: part('bore') },
    { header: 'Upper shell', cell: part('upper') },
    { header: 'Lower shell', cell: part('lower') },
    { header: 'Shell by marks', cell: ({ shellByMarks }) => text(shellByMarks) },
    { header: 'Shell by size', cell: ({ shellBySize }) => text(shellBySize) },
  ];
  return tableOf(caption, columns, fits, 0);
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
export function gaugeRemarks(parts: readonly PartResult[]): string[] {
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
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  rowHeader: number,
): PageTable {
  return {
    caption,
    headers: columns.map(({ header }) => header),
    rows: rows.map((row) => columns.map(({ cell }) => cell(row))),
    rowHeader,
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
