/** Which columns are the program's own of an earlier run, and which stay the user's. */
import { describe, expect, test } from 'vitest';
import { forgetMadeCells } from '../../../src/engine/book/made-cells.js';
import { MADE_BY, ownColumnsOf } from '../../../src/engine/book/own-columns.js';
import { ownHeaders, resultHeaders } from '../../../src/engine/columns/result-headers.js';
import { bookOf, modelOf, type Plain } from '../book-of.js';

const OURS = ['Size', 'Largest', 'Smallest', 'Taper', 'Out of round', 'Class', 'Size U', 'Status', 'Why'];
const JOURNALS: Plain[] = ['Part', 'Engine', 'Fit', 'Position', 'A 0'];

function ownOf(name: 'Journals' | 'Fits' | 'Setup', headers: readonly Plain[]) {
  return ownColumnsOf(name, modelOf({ [name]: [headers] }).sheets[0]!, ownHeaders);
}

test('the columns of a sheet of diameters are those of the contract', () => {
  expect(resultHeaders('Journals')).toEqual(OURS);
});

describe('the whole list at the right end', () => {
  test.each<[string, readonly Plain[], object | undefined]>([
    ['is ours', [...JOURNALS, ...OURS], { first: 5, last: 13 }],
    [
      'in any case and punctuation',
      [...JOURNALS, ...OURS.map((header) => `${header.toUpperCase()}.`)],
      { first: 5, last: 13 },
    ],
    ["behind a user's own Status", [...JOURNALS, 'Status', 'Why', ...OURS], { first: 7, last: 15 }],
    ['behind blank headers', [...JOURNALS, undefined, ...OURS], { first: 6, last: 14 }],
    ['not where one is missing', [...JOURNALS, ...OURS.slice(1)], undefined],
    ['not in another order', [...JOURNALS, ...[...OURS].reverse()], undefined],
    ["not where a user's column follows", [...JOURNALS, ...OURS, 'Remark'], undefined],
    ['not where there is none', JOURNALS, undefined],
    ['not without a header at all', [], undefined],
  ])('%s', (_words, headers, own) => {
    const found = ownOf('Journals', headers);
    if (own) expect(found).toEqual({ ...own, isWholeSheet: false });
    else expect(found).toBeUndefined();
  });

  test('Setup has none', () => {
    expect(ownOf('Setup', ['Item', 'Value', 'Status', 'Why'])).toBeUndefined();
  });
});

test('our columns of an earlier run are not read', () => {
  const book = bookOf({
    Limits: [
      ['Engine type', 'Fit', 'Clearance min', 'Clearance max', 'Status', 'Why'],
      ['X', 'main', 0.02, 0.06, 'consistent', undefined],
      [undefined, undefined, undefined, undefined, 'check the source', 'left over'],
    ],
    Gauges: [
      ['Gauge', 'Max error', 'Material', 'Status', 'Why'],
      ['M1', 0.002, 'steel', 'consistent', undefined],
    ],
  });
  expect(book.bad).toEqual([]);
  expect([book.limits.length, book.gauges.length]).toEqual([1, 1]);
});

test.each([
  ['our words', ['consistent', undefined, 'check the source'], true],
  ["a user's words", ['consistent', 'seen by me', undefined], false],
  ["a user's numbers", [1, undefined], false],
])('Status and Why at the end of a table that hold %s', (_words, cells, isOurs) => {
  const rows = cells.map((cell) => ['X', 'main', 0.02, 0.06, cell, 'words']);
  const { sheets } = modelOf({
    Limits: [['Engine type', 'Fit', 'Clearance min', 'Clearance max', 'Status', 'Why'], ...rows],
  });
  expect(ownColumnsOf('Limits', sheets[0]!, ownHeaders)?.first).toBe(isOurs ? 4 : undefined);
});

describe('a Fits sheet', () => {
  const FITS = [
    'Engine',
    'Fit',
    'Position',
    'Journal',
    'Bore',
    'Upper shell',
    'Lower shell',
    'Strip reading',
  ];
  const RESULTS = [...resultHeaders('Fits')];
  test.each<[string, readonly Plain[], object | undefined]>([
    [
      'that the program made',
      [...FITS, ...RESULTS, 'Made by oilgap'],
      { first: 8, last: 17, isWholeSheet: true },
    ],
    [
      'that it made, without its columns',
      [...FITS, 'MADE BY OILGAP'],
      { first: 8, last: 8, isWholeSheet: true },
    ],
    ["of the user's", FITS, undefined],
    ["of the user's, with our columns", [...FITS, ...RESULTS], { first: 8, last: 16, isWholeSheet: false }],
    ["whose last header is the user's", [...FITS, 'Made by oilgap', 'Remark'], undefined],
  ])('%s', (_words, headers, own) => {
    expect(ownOf('Fits', headers)).toEqual(own);
  });
});

describe('what an earlier run wrote', () => {
  const sheets = (note: Plain) =>
    modelOf({
      Journals: [
        [...JOURNALS, ...OURS],
        ['P1', 'E', 'main', 1, 60, ...OURS],
        ['P2', 'E', 'main', note],
      ],
      Summary: [
        ['Engine', MADE_BY],
        ['E', null],
      ],
      Notes: [['Mine'], ['kept']],
    }).sheets;
  const lengths = (found: ReturnType<typeof sheets>) =>
    found.map(({ rows }) => rows.map(({ length }) => length));

  test('is forgotten but for its headers', () => {
    const found = sheets(2);
    forgetMadeCells(found, ownHeaders);
    expect(lengths(found)).toEqual([[14, 5, 4], [2], [1, 1]]);
    expect(ownOf('Journals', [...JOURNALS, ...OURS])).toEqual({ first: 5, last: 13, isWholeSheet: false });
  });

  test("stays where a formula of the user's may look at it", () => {
    const found = sheets(null);
    forgetMadeCells(found, ownHeaders);
    expect(lengths(found)).toEqual(lengths(sheets(null)));
  });
});
