/** The sheet Pick list: the parts of the sets in the order of their bins. */
import type { Assessment } from '../assess/assess.js';
import type { PartResult } from '../assess/part-result.js';
import type { Book } from '../book/book.js';
import { CASES } from '../input-sheets/cases.js';
import type { OutputSheet } from '../workbook-model.js';
import type { MatchedRow } from './matched-rows.js';
import { ownSheet, type SheetColumn } from './own-sheet.js';
import { typedName } from './typed-name.js';

interface Picked {
  readonly part: PartResult;
  readonly kind: string;
  readonly set: MatchedRow;
}

export function pickListSheet({ book }: Assessment, rows: readonly MatchedRow[]): OutputSheet {
  return ownSheet('Pick list', columnsOf(book), pickList(rows));
}

function columnsOf(book: Book): SheetColumn<Picked>[] {
  return [
    { header: 'Bin', width: 12, value: ({ part }) => part.row.bin ?? '' },
    { header: 'Part', width: 14, value: ({ part }) => typedName(book, part.row, 'Part', part.row.name) },
    { header: 'Kind', width: 16, value: ({ kind }) => kind },
    {
      header: 'For engine',
      width: 14,
      value: ({ set }) => typedName(book, set.journal.row, 'Engine', set.engine),
    },
    {
      header: 'Position',
      width: 12,
      value: ({ set }) => typedName(book, set.journal.row, 'Position', set.position),
    },
  ];
}

function pickList(rows: readonly MatchedRow[]): Picked[] {
  const picked = rows.flatMap((set): Picked[] => {
    const { journal, bore, shells } = set;
    const kinds = [
      ['journal', journal],
      [bore.row.sheet === CASES.name ? 'case' : 'rod', bore],
      ['upper shell', shells.upper],
      ['lower shell', shells.lower],
    ] as const;
    return kinds.flatMap(([kind, part]) => (part ? [{ part, kind, set }] : []));
  });
  const inOrder = (a: string, b: string) => a.localeCompare(b, 'en', { numeric: true });
  return picked.sort(
    (a, b) =>
      inOrder(a.part.row.bin ?? '', b.part.row.bin ?? '') ||
      inOrder(a.kind, b.kind) ||
      inOrder(a.part.row.name, b.part.row.name),
  );
}
