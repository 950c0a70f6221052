/** A table (ListObject) that is made to reach over written columns. */
import { describe, expect, test } from 'vitest';
import type { ListExtension } from '../../../src/engine/workbook-model.js';
import { extendedXml } from '../../../src/io/xlsx/list-tables.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../../../src/io/xlsx/write-package.js';
import { handMadePackage, MAIN, partText } from './hand-made.js';
import { NOTHING } from './sample-edits.js';

const EXTENSION: ListExtension = {
  bounds: { top: 0, left: 0, bottom: 4, right: 1 },
  first: 2,
  headers: ['Size', 'Why & how'],
};

const table = (ref: string, filter: string, columns: string, attributes = '') =>
  `<table xmlns="${MAIN}" id="3" displayName="L" ref="${ref}"${attributes}>${filter}<tableColumns${columns}</tableColumns></table>`;
const TWO = ' count="2"><tableColumn id="1" name="A"/><tableColumn id="7" name="B"/>';
const FOUR =
  ' count="4"><tableColumn id="1" name="A"/><tableColumn id="7" name="B"/><tableColumn id="8" name="Size"/><tableColumn id="9" name="Why &amp; how"/>';

describe('its range, its columns and its filter', () => {
  test.each<[string, string, string]>([
    [
      'grow with it',
      table(
        'A1:B5',
        '<autoFilter ref="A1:B4"><filterColumn colId="0"/></autoFilter>',
        TWO,
        ' totalsRowCount="1"',
      ),
      table(
        'A1:D5',
        '<autoFilter ref="A1:D4"><filterColumn colId="0"/></autoFilter>',
        FOUR,
        ' totalsRowCount="1"',
      ),
    ],
    ['grow without a filter', table('A1:B5', '', TWO), table('A1:D5', '', FOUR)],
    [
      'grow with a sort order',
      table('A1:B5', '<sortState ref="A2:B5"><sortCondition ref="B2:B5"/></sortState>', TWO),
      table('A1:D5', '<sortState ref="A2:D5"><sortCondition ref="B2:B5"/></sortState>', FOUR),
    ],
  ])('%s', (_words, before, after) => {
    expect(extendedXml(before, EXTENSION)).toBe(after);
    const again = { ...EXTENSION, bounds: { ...EXTENSION.bounds, right: 3 } };
    expect(extendedXml(after, again)).toBe(after);
  });

  test('take the name of a header that is written anew', () => {
    const renamed = table('A1:D5', '', FOUR.replace('"Size"', '"Mean"'));
    const again = { ...EXTENSION, bounds: { ...EXTENSION.bounds, right: 3 } };
    expect(extendedXml(renamed, again)).toBe(table('A1:D5', '', FOUR));
  });
});

test('a package is read with its tables, and only the one that is meant is extended', async () => {
  const bytes = await handMadePackage({
    sheets: [
      {
        name: 'Journals',
        xml: '<sheetData/><tableParts count="2"><tablePart r:id="rId1"/><tablePart r:id="rId2"/></tableParts>',
        relationships: [
          ['rId1', 'table', '../tables/table1.xml'],
          ['rId2', 'table', '../tables/table2.xml'],
        ],
      },
    ],
    parts: {
      'xl/tables/table1.xml': table('A1:B5', '', TWO, ' totalsRowCount="1"'),
      'xl/tables/table2.xml': table('G1:H5', '', TWO, ' tableType="queryTable" headerRowCount="0"'),
    },
  });
  const { sheets } = await readWorkbookPackage(bytes, 'book.xlsx');
  expect(sheets[0]!.lists).toEqual([
    {
      ...{ name: 'L', hasHeader: true, totalsRows: 1, isPlain: true, columns: ['A', 'B'] },
      bounds: { top: 0, left: 0, bottom: 4, right: 1 },
    },
    {
      ...{ name: 'L', hasHeader: false, totalsRows: 0, isPlain: false, columns: ['A', 'B'] },
      bounds: { top: 0, left: 6, bottom: 4, right: 7 },
    },
  ]);
  const edit = { sheet: 'Journals', cells: [], storedValues: [], widths: [], list: EXTENSION };
  const { bytes: after } = await editWorkbookPackage(bytes, { ...NOTHING, edits: [edit] });
  expect(await partText(after, 'xl/tables/table1.xml')).toContain('ref="A1:D5"');
  expect(await partText(after, 'xl/tables/table2.xml')).toContain('ref="G1:H5"');
});
