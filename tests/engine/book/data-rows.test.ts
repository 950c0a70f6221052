/** Which rows of a sheet of parts are parts: totals, means, signatures and remarks are not. */
import { describe, expect, test } from 'vitest';
import { openBook } from '../../../src/engine/book/open-book.js';
import { isOverRowsAbove } from '../../../src/engine/book/rows-above.js';
import { readSetup } from '../../../src/engine/book/setup.js';
import { ownHeaders } from '../../../src/engine/columns/result-headers.js';
import type { CellBlock, ListTable, SheetModel } from '../../../src/engine/workbook-model.js';
import { FILE, modelOf, type Plain, type PlainFormula } from '../book-of.js';

const HEADER = ['Part', 'Engine', 'Fit', 'Position', 'A 0', 'Note'];
const J1 = ['J1', 'E', 'main', 1, 60];
const J2 = ['J2', 'E', 'main', 2, 60.01];
const EMPTY: Plain[] = [];
const formula = (text: string): PlainFormula => ({ formula: text, value: 60 });

function bookOfRows(rows: readonly (readonly Plain[])[], more: Partial<SheetModel> = {}, name = 'Journals') {
  const header = name === 'Journals' ? HEADER : ['Part', 'A 0', 'Note'];
  const model = modelOf({ [name]: [header, ...rows] });
  const sheets = model.sheets.map((sheet) => ({ ...sheet, ...more }));
  return openBook({ ...model, sheets }, readSetup(undefined, FILE), ownHeaders);
}

const list = (bottom: number, totalsRows = 0): ListTable => ({
  name: 'List1',
  bounds: { top: 0, left: 0, bottom, right: 5 },
  hasHeader: true,
  totalsRows,
  columns: HEADER,
  isPlain: true,
});

const dataTable: CellBlock = { kind: 'data table', bounds: { top: 3, left: 3, bottom: 4, right: 4 } };

describe('rows of a sheet of journals', () => {
  test.each<[string, readonly (readonly Plain[])[], Partial<SheetModel>, readonly number[], string?]>([
    ['two parts', [J1, J2], {}, [1, 2]],
    [
      'a mean right below',
      [J1, J2, ['Mean', undefined, undefined, undefined, formula('AVERAGE(E2:E3)')]],
      {},
      [1, 2],
      'row 4 holds',
    ],
    [
      'a mean without a name',
      [J1, J2, [undefined, undefined, undefined, undefined, formula('AVERAGE(E2:E3)')]],
      {},
      [1, 2],
      'row 4 holds',
    ],
    [
      'a total of each crank',
      [J1, ['Sum', undefined, undefined, undefined, formula('SUM(E2)')], J2],
      {},
      [1, 3],
      'row 3 holds',
    ],
    ['a reading that is calculated', [J1, ['J2', 'E', 'main', 2, formula('E2+0.01')]], {}, [1, 2]],
    ['words below an empty row', [J1, EMPTY, ['Measured twice']], {}, [1], 'row 4 holds'],
    ['a signature', [J1, J2, EMPTY, ['Signed', 'E. Quill']], {}, [1, 2], 'row 5 holds'],
    [
      'a remark under Note',
      [J1, [undefined, undefined, undefined, undefined, undefined, 'all cold']],
      {},
      [1],
      'row 3 holds',
    ],
    ['a part below an empty row', [J1, EMPTY, J2], {}, [1, 3]],
    ['a part to be measured below an empty row', [J1, EMPTY, ['J2', 'E', 'main', 2]], {}, [1, 3]],
    ['a part to be measured', [J1, ['J2', 'E']], {}, [1, 2]],
    ['a part that lost its name', [J1, [undefined, 'E', 'main', 2]], {}, [1, 2]],
    [
      'readings below without a name',
      [J1, EMPTY, [undefined, undefined, undefined, undefined, 60.1]],
      {},
      [1],
      'row 4 holds',
    ],
    ['several of them', [J1, EMPTY, ['x'], ['y'], EMPTY, ['z']], {}, [1], 'rows 4 to 5, 7 hold'],
    [
      'cells of a data table',
      [J1, EMPTY, ['a', undefined, undefined, 1, 60], ['b', undefined, undefined, 2, 61]],
      { blocks: [dataTable] },
      [1],
      'rows 4 to 5',
    ],
    [
      'a totals row',
      [J1, J2, ['Total', undefined, undefined, undefined, 60]],
      { lists: [list(3, 1)] },
      [1, 2],
      'row 4 holds',
    ],
    ['an empty row within a table', [J1, EMPTY, ['J2']], { lists: [list(3)] }, [1, 3]],
    ['words below a table', [J1, ['Signed']], { lists: [list(1)] }, [1], 'row 3 holds'],
    ['a part below a table', [J1, J2], { lists: [list(1)] }, [1, 2]],
  ])('%s', (_words, rows, more, expected, said) => {
    const { parts, notices } = bookOfRows(rows, more);
    expect(parts.of('Journals').map(({ row }) => row)).toEqual(expected);
    const found = notices.filter((notice) => notice.includes('no part'));
    expect(found).toHaveLength(said === undefined ? 0 : 1);
    if (said !== undefined) expect(found[0]).toContain(`sheet Journals: found that ${said}`);
  });
});

test('a rod below an empty row needs readings: its sheet needs no other name', () => {
  const rows = [['R1', 45], EMPTY, ['R2', 45.01], ['Signed by E. Quill']];
  const { parts } = bookOfRows(rows, {}, 'Rods');
  expect(parts.of('Rods').map(({ name }) => name)).toEqual(['R1', 'R2']);
});

test.each<[string, boolean]>([
  ['SUBTOTAL(101,List1[A 0])', true],
  ['AGGREGATE(1,5,E2:E4)', true],
  ['AVERAGE(List1[A 0])', true],
  ['List1[[#This Row],[A 0]]*2', false],
  ['AVERAGE($E$2:$E$5)', true],
  ['MAX(E2:E5)-MIN(E2:E5)', true],
  ['(E2+E3)/2', true],
  ['SUM(E5)', true],
  ['E5', false],
  ['E5+0.002', false],
  ['AVERAGE(F6:H6)', false],
  ['F6/25.4', false],
  ['Other!E2+Other!E3', false],
  ['"E2:E5"', false],
  ['LOG10(E6)', false],
  ['SUM(E7:E9)', false],
])('%s in row 6 is over the rows above: %s', (text, expected) => {
  expect(isOverRowsAbove(text, 0, 5)).toBe(expected);
});
