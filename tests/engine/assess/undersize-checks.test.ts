import { describe, expect, test } from 'vitest';
import { assess, bookOf, type Plain, type Sheets, table, um } from '../book-of.js';

type Row = Readonly<Record<string, Plain>>;
const KIND = { 'Engine type': 'X', Fit: 'big end' };
const step = (name: Plain, min: Plain, max: Plain): Row => ({
  ...KIND,
  Step: name,
  'Journal min': min,
  'Journal max': max,
});
const shell = (row: Row): Row => ({
  ...KIND,
  Half: 'either',
  Mark: 'U',
  'Wall from': 1.6,
  'Wall to': 1.61,
  ...row,
});

function findingsOf(rows: readonly Row[], others: Sheets = {}): string[] {
  const { tables } = assess({ Undersizes: table(...rows), ...others });
  return tables.Undersizes.map(({ status, why }) => {
    expect(status).toBe(why.length === 0 ? 'consistent' : 'check the source');
    return why.join('; ');
  });
}

describe('a row of Undersizes', () => {
  test.each([
    ['is consistent', [step(0.25, 41.73, 41.75), step(0.5, 41.48, 41.5)], ['', '']],
    ['upside down', [step(0.25, 41.75, 41.73)], ['Journal min and max: 41.75 mm is above 41.73 mm']],
    [
      'of a step named twice, as a number and as text',
      [step(0.25, 41.73, 41.75), step(' 0.25 ', 41.72, 41.74)],
      ['step 0.25 is named 2 times: the first rules', 'step 0.25 is named 2 times: the first rules'],
    ],
    ['of one step for another fit', [step(1, 41, 42), { ...step(1, 51, 52), Fit: 'main' }], ['', '']],
    ['left in part blank', [step(undefined, 41.73, undefined)], ['Step, Journal max left blank']],
    [
      'with a cell that cannot be read',
      [step(0.25, 'about 41.7', 41.75)],
      ['Undersizes!D2 (Journal min): found the text "about 41.7", expected a length above 0 (mm, in or µm)'],
    ],
  ])('%s', (_, rows, findings) => {
    expect(findingsOf(rows)).toEqual(findings);
  });

  test.each([
    ['of that step', [shell({ Step: '0.25' })], ''],
    ['of any step', [shell({ Step: undefined })], ''],
    ['of another step alone', [shell({ Step: '0.5' })], 'no row of New shells is for step 0.25'],
    ['of another fit alone', [shell({ Step: '0.5', Fit: 'main' })], ''],
  ])('where New shells has shells %s', (_, shells, finding) => {
    expect(findingsOf([step(0.25, 41.73, 41.75)], { 'New shells': table(...shells) })).toEqual([finding]);
  });
});

test('names the only engine type where the row leaves it out', () => {
  const book = bookOf({
    Limits: table({ ...KIND, 'Clearance min': 0.02, 'Clearance max': 0.05 }),
    Undersizes: table({ ...step(0.25, 41.73, 41.75), 'Engine type': undefined }),
  });
  expect(book.undersizes[0]).toMatchObject({ engineType: 'X', step: '0.25', journalMin: um(41_730) });
});
