import { describe, expect, test } from 'vitest';
import { labelsOf } from '../../src/engine/book-labels.js';

describe('the labels of books', () => {
  test.each([
    ['names that differ', ['cranks.xlsx', 'b/shells.xlsx'], ['cranks', 'shells']],
    [
      'one name in two folders',
      ['/s/north/stock.xlsx', '/s/south/stock.xlsx'],
      ['north/stock', 'south/stock'],
    ],
    ['a name that only its case tells apart', ['/s/a/Stock.xlsx', '/s/b/stock.xlsx'], ['a/Stock', 'b/stock']],
    ['folders that are named alike', ['/n/s/stock.xlsx', '/m/s/stock.xlsx'], ['n/s/stock', 'm/s/stock']],
    ['a file and a folder beside it', ['/s/stock.xlsx', '/s/stock'], ['stock.xlsx', 'stock']],
    ['one book given twice', ['/s/stock.xlsx', '/s/../s/stock.xlsx'], ['stock', 'stock 2']],
  ])('%s', (_, files, labels) => {
    expect(labelsOf(files)).toEqual(labels);
  });

  test('do not depend on the order of the books', () => {
    const files = ['/s/a/stock.xlsx', '/s/b/stock.xlsx', '/s/b/old/stock.xlsx', '/s/shells.xlsx'];
    const label = new Map(labelsOf(files).map((text, place) => [files[place], text]));
    const backwards = [...files].reverse();
    expect(labelsOf(backwards)).toEqual(backwards.map((file) => label.get(file)));
    expect(new Set(label.values()).size).toBe(4);
  });
});
