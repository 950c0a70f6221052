/** Bolts in the blank workbook: what is understood, what is refused, the sheet that is made. */
import { expect, test } from 'vitest';
import { blankBook } from '../../../src/engine/blank/blank-book.js';
import { boltsToMeasure } from '../../../src/engine/blank/blank-fasteners.js';
import { describeEngine } from '../../../src/engine/blank/describe-engine.js';
import { standardTexts } from '../../../src/engine/blank/description-items.js';

const described = (bolts: string, more: Readonly<Record<string, string>> = {}) =>
  describeEngine({ ...standardTexts(), bolts, ...more });

test.each([
  ['none', []],
  ['', []],
  ['head=10', [['head', 10, undefined, 'always']]],
  ['cylinder head=10 M10x1.25 by length', [['cylinder head', 10, 'M10x1.25', 'by length']]],
  [
    'head = 10 by neck, caps=8 3/8 in UNF always',
    [
      ['head', 10, undefined, 'by neck'],
      ['caps', 8, '3/8 in UNF', 'always'],
    ],
  ],
])('%s', (text, expected) => {
  const found = described(text).bolts.map(({ group, count, thread, renew }) => [group, count, thread, renew]);
  expect(found).toEqual(expected);
});

test.each(['head', 'head=0', 'head=101', '=4', 'head=4, HEAD=5', 'head=4,', 'head=ten'])(
  '%s is refused',
  (text) => {
    expect(() => described(text)).toThrow(/^--bolts: found ".*"; expected GROUP=COUNT THREAD of each group/);
  },
);

test('one row a bolt of every engine, in the order of tightening, with the readings that are needed', () => {
  const description = described('head=2 M10 by length, caps=1', { engines: 'E1,E2' });
  const sheet = blankBook(description).sheets.find(({ name }) => name === 'Fasteners')!;
  const headers = sheet.columns.map(({ header }) => header);
  expect(headers.slice(-2)).toEqual(['Length 1', 'Note']);
  const shown = ['Engine', 'Group', 'Number', 'Thread', 'Renew'].map((header) => headers.indexOf(header));
  expect(sheet.rows.map((row) => shown.map((at) => row[at]))).toEqual([
    ['E1', 'head', 1, 'M10', 'by length'],
    ['E1', 'head', 2, 'M10', 'by length'],
    ['E1', 'caps', 1, undefined, 'always'],
    ['E2', 'head', 1, 'M10', 'by length'],
    ['E2', 'head', 2, 'M10', 'by length'],
    ['E2', 'caps', 1, undefined, 'always'],
  ]);
  expect(boltsToMeasure(description)).toBe(4);
});

test('a workbook of bolts alone', () => {
  const { sheets, guide } = blankBook(described('head=2', { bigEnds: 'none', mains: 'none' }));
  expect(sheets.map(({ name }) => name)).toEqual(['Setup', 'Limits', 'Gauges', 'Fasteners']);
  expect(guide.join('\n')).toContain('oilgap gives none of its own');
});
