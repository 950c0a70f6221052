/** The sheet Matched sets. */
import type { Grain } from '../../maths/grain.js';
import { inUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { Layout } from '../columns/layout.js';
import { GRAINS, lengthOf, unlessMoved } from '../columns/live-terms.js';
import type { OutputSheet } from '../workbook-model.js';
import type { MatchedRow } from './matched-rows.js';
import { ownSheet, type SheetColumn } from './own-sheet.js';
import { typedName } from './typed-name.js';

export function matchedSetsSheet(
  assessment: Assessment,
  layout: Layout,
  rows: readonly MatchedRow[],
): OutputSheet {
  return ownSheet('Matched sets', columnsOf(assessment, layout), rows);
}

function columnsOf({ book }: Assessment, layout: Layout): SheetColumn<MatchedRow>[] {
  const unit = book.setup.lengthUnit;
  const format = unit === 'in' ? 'in' : 'mm';
  /** Live where all parts stand in the book; a bought shell has no cell. */
  const live = (row: MatchedRow, bore: string, wall: string, journal: string): string | undefined => {
    const { upper, lower } = row.shells;
    if (!upper || !lower) return undefined;
    const cells = [
      layout.partCell(row.bore, bore),
      layout.partCell(upper, wall),
      layout.partCell(lower, wall),
      layout.partCell(row.journal, journal),
    ];
    return `IF(COUNT(${cells.join(',')})<4,"",${lengthOf(`ROUND((${cells.join('-')})*${GRAINS[unit]},0)`, unit)})`;
  };
  const length = (grain: Grain | undefined) => (grain === undefined ? undefined : inUnit(grain, unit));
  const lengths = (header: string, value: (row: MatchedRow) => Grain | undefined) => {
    return { header, width: 12, format, value: (row: MatchedRow) => length(value(row)) } as const;
  };
  const shell = (row: MatchedRow, half: 'upper' | 'lower') => {
    const part = row.shells[half];
    return part ? typedName(book, part.row, 'Part', row[half]) : row[half];
  };
  return [
    { header: 'Engine', width: 12, value: (row) => typedName(book, row.journal.row, 'Engine', row.engine) },
    { header: 'Fit', width: 10, value: (row) => row.fitName },
    {
      header: 'Position',
      width: 10,
      value: (row) => typedName(book, row.journal.row, 'Position', row.position),
    },
    {
      header: 'Journal',
      width: 12,
      value: ({ journal }) => typedName(book, journal.row, 'Part', journal.row.name),
    },
    { header: 'Bore', width: 12, value: ({ bore }) => typedName(book, bore.row, 'Part', bore.row.name) },
    { header: 'Upper shell', width: 12, value: (row) => shell(row, 'upper') },
    { header: 'Lower shell', width: 12, value: (row) => shell(row, 'lower') },
    {
      ...lengths('Clearance', ({ clearance }) => clearance),
      formula: (row) => live(row, 'Size', 'Wall', 'Size'),
    },
    {
      ...lengths('Tightest', ({ tightest }) => tightest),
      formula: (row) => live(row, 'Smallest', 'Largest', 'Largest'),
    },
    {
      ...lengths('Loosest', ({ loosest }) => loosest),
      formula: (row) => live(row, 'Largest', 'Smallest', 'Smallest'),
    },
    lengths('Clearance U', ({ clearanceU }) => clearanceU),
    lengths('Off aim', ({ offAim }) => offAim),
    { header: 'Status', width: 16, value: (row) => row.status, formula: (row) => liveStatus(row, layout) },
    { header: 'Ran together', width: 13, value: (row) => (row.fit.ranTogether ? 'yes' : 'no') },
  ];
}

/** The verdict of the run, as long as the parts stand where they stood: the sizes of the set follow their rows. */
function liveStatus({ bore, journal, shells, status }: MatchedRow, layout: Layout): string | undefined {
  const conditions = [bore, shells.upper, shells.lower, journal].map(
    (part) => part && layout.isPart(part, false),
  );
  const isAsked = conditions.some((condition) => condition !== undefined);
  return isAsked ? unlessMoved(conditions, `"${status}"`) : undefined;
}
