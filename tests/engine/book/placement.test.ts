/** Where results stand: beside all that the user has typed in the rows, never over it, and never beyond the last column. */
import { describe, expect, test } from 'vitest';
import type { Book } from '../../../src/engine/book/book.js';
import { openBook } from '../../../src/engine/book/open-book.js';
import { readSetup } from '../../../src/engine/book/setup.js';
import { ownHeaders, resultHeaders } from '../../../src/engine/columns/result-headers.js';
import type { CellBlock, ListTable, SheetModel } from '../../../src/engine/workbook-model.js';
import { FILE, modelOf, type Plain } from '../book-of.js';

const HEADER = ['Part', 'Engine', 'Fit', 'Position', 'A 0'];
const OURS = [...resultHeaders('Journals')];
const RESULTS: Plain[] = [60, 60, 60, undefined, undefined, undefined, undefined, 'no limits', 'why'];
const J1: Plain[] = ['J1', 'E', 'main', 1, 60];
const WRITTEN = [
  [...HEADER, ...OURS],
  [...J1, ...RESULTS],
];

/** A row with one more cell in it. */
function withCell(row: readonly Plain[], column: number, cell: Plain): Plain[] {
  const cells = [...row];
  cells[column] = cell;
  return Array.from(cells);
}

function opened(rows: readonly (readonly Plain[])[], more: Partial<SheetModel> = {}): Book {
  const model = modelOf({ Journals: rows });
  const sheets = model.sheets.map((sheet) => ({ ...sheet, ...more }));
  return openBook({ ...model, sheets }, readSetup(undefined, FILE), ownHeaders);
}

const block = (top: number, left: number, bottom: number, right: number): Partial<SheetModel> => ({
  blocks: [{ kind: 'merged cells', bounds: { top, left, bottom, right } } satisfies CellBlock],
});
const list = (right: number, columns: readonly string[] = HEADER): Partial<SheetModel> => ({
  lists: [
    {
      ...{ name: 'L', hasHeader: true, totalsRows: 0, isPlain: true, columns },
      bounds: { top: 0, left: 0, bottom: 1, right },
    } satisfies ListTable,
  ],
});

describe('the first column of the results', () => {
  test.each<[string, readonly (readonly Plain[])[], Partial<SheetModel>, number | undefined]>([
    ['is that behind the last header', [HEADER, J1], {}, 5],
    ['is behind a scribble beside a part', [HEADER, withCell(J1, 7, 'mine')], {}, 8],
    ['is behind a column whose header is blank', [HEADER, withCell(J1, 5, 1)], {}, 6],
    ['is behind a column behind a gap', [withCell(HEADER, 8, 'Lot'), J1], {}, 9],
    ['is not moved by a text of spaces', [HEADER, withCell(J1, 7, '  ')], {}, 5],
    ['is not moved by what stands below', [HEADER, J1, [], withCell([], 9, 'mine')], {}, 5],
    ['is behind merged cells beside a part', [HEADER, J1], block(1, 6, 1, 7), 8],
    ['is not moved by merged cells below', [HEADER, J1], block(5, 0, 5, 20), 5],
    ['is that of an earlier run', WRITTEN, {}, 5],
    [
      'is that of an earlier run, whatever is beside it',
      [WRITTEN[0]!, withCell(WRITTEN[1]!, 20, 'x')],
      {},
      5,
    ],
    ['is none where the last column is taken', [withCell(HEADER, 16_383, 'Lot'), J1], {}, undefined],
    ['is none where too few columns are left', [withCell(HEADER, 16_375, 'Lot'), J1], {}, undefined],
    ['is the last that leaves room', [withCell(HEADER, 16_374, 'Lot'), J1], {}, 16_375],
    ['is none where results have been merged', WRITTEN, block(1, 6, 1, 7), undefined],
    ['is that of an earlier run where cells below it are merged', WRITTEN, block(3, 6, 3, 7), 5],
    [
      'is none where a part was typed beside a cell of the user',
      [...WRITTEN, withCell(J1, 5, 'mean')],
      {},
      undefined,
    ],
  ])('%s', (_words, rows, more, first) => {
    const { places, notices } = opened(rows, more);
    expect(places.get('Journals')!.columns?.[0]).toBe(first);
    const said = notices.filter((notice) => notice.includes('they stand on the sheet "Journals (oilgap)"'));
    expect(said).toHaveLength(first === undefined ? 1 : 0);
  });
});

describe('our columns, changed by the user', () => {
  const rowOf = (headers: readonly string[]) => [
    [...HEADER, ...headers],
    [...J1, ...headers.map((header) => RESULTS[OURS.indexOf(header)])],
  ];
  const shifted = (from: number) => OURS.map((_, at) => (at < from ? 5 + at : 6 + at));
  test.each<[string, readonly string[], readonly number[], string | undefined]>([
    ['a column between them', OURS.toSpliced(3, 0, 'Lot'), shifted(3), undefined],
    ['a reading between them', OURS.toSpliced(1, 0, 'B 0'), shifted(1), undefined],
    [
      'one renamed',
      OURS.with(2, 'Least'),
      OURS.map((_, at) => 5 + at),
      'results Smallest in column H under the header "Least"',
    ],
    [
      'Status renamed',
      OURS.with(7, 'Verdict'),
      OURS.map((_, at) => 5 + at),
      'results Status in column M under the header "Verdict"',
    ],
    ['the first renamed', OURS.with(0, 'Mean'), OURS.map((_, at) => 14 + at), 'columns G to N, changed so'],
    ['the last renamed', OURS.with(8, 'Reason'), OURS.map((_, at) => 14 + at), 'columns F to M, changed so'],
    ['one deleted', OURS.toSpliced(3, 1), OURS.map((_, at) => 13 + at), 'columns F to M, changed so'],
    ['a column behind them', [...OURS, 'Lot'], OURS.map((_, at) => 15 + at), 'columns F to N, changed so'],
  ])('%s', (_words, headers, columns, said) => {
    const { places, notices, parts } = opened(rowOf(headers));
    expect(places.get('Journals')!.columns).toEqual(columns);
    expect(parts.of('Journals')[0]!.readings).toHaveLength(1);
    expect(notices).toHaveLength(said === undefined ? 0 : 1);
    if (said === undefined) return;
    expect(notices[0]).toContain(said);
    const isSecondSet = said.includes('changed so');
    expect(notices[0]!.includes('the results now stand in columns')).toBe(isSecondSet);
  });

  test('Why of a checked table under another header', () => {
    const book = openBook(
      modelOf({
        Limits: [
          ['Engine type', 'Fit', 'Clearance min', 'Clearance max', 'Status', 'Reason'],
          ['X', 'main', 0.02, 0.06, 'consistent'],
        ],
      }),
      readSetup(undefined, FILE),
      ownHeaders,
    );
    expect(book.places.get('Limits')!.columns).toEqual([6, 7]);
    expect(book.notices).toEqual([expect.stringContaining('in column E, changed so')]);
  });
});

describe('a table (ListObject)', () => {
  test.each<[string, readonly (readonly Plain[])[], Partial<SheetModel>, boolean, string | undefined]>([
    ['that ends where the results begin reaches over them', [HEADER, J1], list(4), true, undefined],
    [
      'that ends before a column of the user does not',
      [withCell(HEADER, 5, 'Lot'), J1],
      list(4),
      false,
      undefined,
    ],
    ['with results in it keeps them', WRITTEN, list(13, [...HEADER, ...OURS]), true, undefined],
    [
      'that has a Status of its own cannot',
      [[...HEADER, 'Status'], J1],
      list(5, [...HEADER, 'Status']),
      false,
      'it has a column Status of its own',
    ],
  ])('%s', (_words, rows, more, reaches, said) => {
    const { places, notices } = opened(rows, more);
    expect(places.get('Journals')!.list !== undefined).toBe(reaches);
    expect(notices.some((notice) => notice.includes('cannot reach over the results'))).toBe(
      said !== undefined,
    );
    if (said !== undefined) expect(notices[0]).toContain(said);
  });
});
