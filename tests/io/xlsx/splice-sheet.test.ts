import { describe, expect, test } from 'vitest';
import type { OutputCell, SheetEdit } from '../../../src/engine/workbook-model.js';
import { spliceSheet } from '../../../src/io/xlsx/splice-sheet.js';

type Changes = { [K in keyof SheetEdit]?: SheetEdit[K] };

const plain = (value: OutputCell['value'], formula?: string): OutputCell => ({
  value,
  format: 'plain',
  formula,
});

function splice(xml: string, changes: Changes) {
  const edit: SheetEdit = { sheet: 'A', cells: [], storedValues: [], widths: [], ...changes };
  return spliceSheet(xml, edit, (cell) => (cell.format === 'plain' ? 0 : 7));
}

/** The result for a sheet's cells, without what stands around them. */
function rows(before: string, changes: Changes): string {
  const head = '<worksheet xmlns="m"><sheetData>';
  const tail = '</sheetData><extLst><ext uri="{x}"><y:c r="C1" xmlns:y="y"/></ext></extLst></worksheet>';
  const { xml } = splice(head + before + tail, changes);
  expect(xml.startsWith(head)).toBe(true);
  expect(xml.endsWith(tail)).toBe(true);
  const after = xml.slice(head.length, -tail.length);
  expect(splice(xml, changes).xml).toBe(xml);
  return after;
}

const at = (row: number, column: number, cell: OutputCell) => ({ row, column, cell });
const C1 = [at(0, 2, plain(5))];
const NEW = '<c r="C1"><v>5</v></c>';

describe('where a cell goes', () => {
  test.each<[string, string, Changes, string]>([
    ['behind the last', '<row r="1"><c r="A1"/></row>', { cells: C1 }, `<row r="1"><c r="A1"/>${NEW}</row>`],
    ['before the first', '<row r="1"><c r="D1"/></row>', { cells: C1 }, `<row r="1">${NEW}<c r="D1"/></row>`],
    [
      'between two',
      '<row r="1"><c r="A1"/> <c r="D1"/></row>',
      { cells: C1 },
      `<row r="1"><c r="A1"/>${NEW} <c r="D1"/></row>`,
    ],
    [
      'in place of another',
      '<row r="1"><c r="C1" s="9" t="s" cm="1"><v>0</v></c><c r="D1"/></row>',
      { cells: C1 },
      `<row r="1">${NEW}<c r="D1"/></row>`,
    ],
    ['into an empty row', '<row r="1" ht="20"/>', { cells: C1 }, `<row r="1" ht="20">${NEW}</row>`],
    ['into a new first row', '<row r="2"/>', { cells: C1 }, `<row r="1">${NEW}</row><row r="2"/>`],
    [
      'into a new row between',
      '<row r="1"/>\n<row r="4"/>\n',
      { cells: [at(2, 0, plain(1)), at(1, 1, plain(2)), at(1, 0, plain(3))] },
      '<row r="1"/><row r="2"><c r="A2"><v>3</v></c><c r="B2"><v>2</v></c></row><row r="3"><c r="A3"><v>1</v></c></row>\n<row r="4"/>\n',
    ],
    [
      'into a new last row',
      '<row r="1"/>\n',
      { cells: [at(2, 0, plain(1))] },
      '<row r="1"/><row r="3"><c r="A3"><v>1</v></c></row>\n',
    ],
    ['into a sheet without rows', '', { cells: C1 }, `<row r="1">${NEW}</row>`],
    [
      'without addresses',
      '<row><c/><c/></row><row><c/></row>',
      { cells: C1 },
      `<row><c/><c/>${NEW}</row><row><c/></row>`,
    ],
    [
      'before what follows the cells',
      '<row r="1"><c r="A1"/><extLst><ext/></extLst></row>',
      { cells: C1 },
      `<row r="1"><c r="A1"/>${NEW}<extLst><ext/></extLst></row>`,
    ],
    [
      'past comments',
      '<!-- <row r="1"> --><row r="1"><!-- <c r="C1"/> --><c r="A1"/></row>',
      { cells: C1 },
      `<!-- <row r="1"> --><row r="1"><!-- <c r="C1"/> --><c r="A1"/>${NEW}</row>`,
    ],
    [
      'with prefixes',
      '<x:row r="1"><x:c r="A1"/></x:row>',
      { cells: C1 },
      `<x:row r="1"><x:c r="A1"/>${NEW}</x:row>`,
    ],
  ])('%s', (_, before, changes, after) => {
    expect(rows(before, changes)).toBe(after);
  });

  test('the prefix is that of the sheet', () => {
    const { xml } = splice('<x:worksheet xmlns:x="m"><x:sheetData/></x:worksheet>', {
      cells: [at(0, 0, { value: 'a', format: 'text' }), at(0, 1, plain(true, '1=1'))],
    });
    expect(xml).toBe(
      '<x:worksheet xmlns:x="m"><x:sheetData><x:row r="1"><x:c r="A1" s="7" t="inlineStr"><x:is><x:t>a</x:t></x:is></x:c><x:c r="B1" t="b"><x:f>1=1</x:f><x:v>1</x:v></x:c></x:row></x:sheetData></x:worksheet>',
    );
  });
});

describe('spans', () => {
  test.each([
    ['grow', '1:2', ' spans="1:3"'],
    ['stay', '1:9', ' spans="1:9"'],
    ['go where there are several', '1:1 5:5', ''],
  ])('%s', (_, spans, expected) => {
    expect(rows(`<row r="1" spans="${spans}" x:y="z"><c r="A1"/></row>`, { cells: C1 })).toBe(
      `<row r="1"${expected} x:y="z"><c r="A1"/>${NEW}</row>`,
    );
  });

  test('of a row that gets nothing stay', () => {
    const untouched = '<row r="1" spans="1:1 3:3"  ><c r="A1"/></row >';
    expect(rows(untouched, { cells: [at(1, 0, plain(1))] })).toBe(
      `${untouched}<row r="2"><c r="A2"><v>1</v></c></row>`,
    );
  });
});

describe('columns of an earlier run', () => {
  const clear = { first: 1, last: 2 };
  test.each<[string, string, Changes, string]>([
    [
      'are emptied',
      '<row r="1"><c r="A1"/><c r="B1"><v>1</v></c><c r="C1"/><c r="D1"/></row><row r="2"><c r="C2"/></row>',
      { clear },
      '<row r="1"><c r="A1"/><c r="D1"/></row><row r="2"></row>',
    ],
    [
      'are emptied where nothing new goes',
      '<row r="1"><c r="B1"/><c r="C1"/></row>',
      { clear, cells: C1 },
      `<row r="1">${NEW}</row>`,
    ],
    [
      'leave a cell where the next one has no address',
      '<row><c><v>1</v></c><c><v>2</v></c><c><v>3</v></c><c><v>4</v></c></row>',
      { clear },
      '<row><c><v>1</v></c><c r="C1"/><c><v>4</v></c></row>',
    ],
  ])('%s', (_, before, changes, after) => {
    expect(rows(before, changes)).toBe(after);
  });
});

describe('what a cell holds', () => {
  test.each<[string, OutputCell, string]>([
    ['a number', plain(0.1), '<c r="A1"><v>0.1</v></c>'],
    ['a tiny number', plain(1e-7), '<c r="A1"><v>1e-7</v></c>'],
    ['a boolean', plain(false), '<c r="A1" t="b"><v>0</v></c>'],
    ['nothing', { value: '', format: 'mm' }, '<c r="A1" s="7"/>'],
    ['text', plain('a<&>"'), '<c r="A1" t="inlineStr"><is><t>a&lt;&amp;&gt;&quot;</t></is></c>'],
    [
      'text with outer spaces',
      plain(' a\n'),
      '<c r="A1" t="inlineStr"><is><t xml:space="preserve"> a\n</t></is></c>',
    ],
    ['text that looks like a formula', plain('=1+1'), '<c r="A1" t="inlineStr"><is><t>=1+1</t></is></c>'],
    [
      'text that XML cannot hold',
      plain('a\r\u0002'),
      '<c r="A1" t="inlineStr"><is><t>a_x000D__x0002_</t></is></c>',
    ],
    [
      'a formula',
      plain(2, 'IF(B1<3,"a&b",2)'),
      '<c r="A1"><f>IF(B1&lt;3,&quot;a&amp;b&quot;,2)</f><v>2</v></c>',
    ],
    ['a formula of text', plain('x', 'B1'), '<c r="A1" t="str"><f>B1</f><v>x</v></c>'],
    ['a formula of empty text', plain('', 'B1'), '<c r="A1" t="str"><f>B1</f><v></v></c>'],
  ])('%s', (_, cell, expected) => {
    expect(rows('', { cells: [at(0, 0, cell)] })).toBe(`<row r="1">${expected}</row>`);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('%s is refused', (value) => {
    expect(() => rows('', { cells: [at(0, 0, plain(value))] })).toThrow(RangeError);
    expect(() => rows('', { cells: [at(0, 0, plain(value, 'B1'))] })).toThrow(RangeError);
  });
});

describe('stored values', () => {
  const store = (content: SheetEdit['storedValues'][number]['content']) => ({
    storedValues: [{ row: 0, column: 1, content }],
  });
  test.each<[string, string, Changes, string]>([
    [
      'a number',
      '<c r="B1" s="3"><f ca="1">X( A1 )</f><v>1</v></c>',
      store({ kind: 'number', value: 0.05 }),
      '<c r="B1" s="3"><f ca="1">X( A1 )</f><v>0.05</v></c>',
    ],
    [
      'the first value',
      '<c r="B1"><f>X(A1)</f></c>',
      store({ kind: 'text', value: 'in range' }),
      '<c r="B1" t="str"><f>X(A1)</f><v>in range</v></c>',
    ],
    [
      'a number after an error',
      '<c r="B1" t="e"><f>X(A1)</f><v>#NAME?</v></c>',
      store({ kind: 'number', value: 1 }),
      '<c r="B1"><f>X(A1)</f><v>1</v></c>',
    ],
    [
      'an error',
      '<c r="B1"><f t="shared" si="0"/><v>1</v><extLst/></c>',
      store({ kind: 'error', value: '#VALUE!' }),
      '<c r="B1" t="e"><f t="shared" si="0"/><v>#VALUE!</v><extLst/></c>',
    ],
    [
      'a boolean in an array formula',
      '<c r="B1"><f t="array" ref="B1:B2">X(A1:A2)</f><v/></c>',
      store({ kind: 'boolean', value: true }),
      '<c r="B1" t="b"><f t="array" ref="B1:B2">X(A1:A2)</f><v>1</v></c>',
    ],
  ])('%s', (_, before, changes, after) => {
    expect(rows(`<row r="1"><c r="A1"/>${before}</row>`, changes)).toBe(
      `<row r="1"><c r="A1"/>${after}</row>`,
    );
  });

  test.each([
    ['a cell without formula', '<row r="1"><c r="B1"><v>1</v></c></row>'],
    ['a cell that is not there', '<row r="1"><c r="A1"/></row>'],
    ['a row that is not there', ''],
  ])('%s takes none', (_, before) => {
    expect(() => rows(before, store({ kind: 'number', value: 1 }))).toThrow('formula');
  });
});

describe('formulas that go', () => {
  const before =
    '<row r="1"><c r="B1"><f t="shared" ref="B1:D2" si="4">A1&amp;"x"</f><v>1</v></c><c r="D1"><f t="shared" si="4"/><v>3</v></c></row>' +
    '<row r="2"><c r="B2"><f t="shared" si="4"/><v>4</v></c><c r="D2"><f t="shared" si="5"/><v>5</v></c></row>';

  test('leave those that share them spelled out', () => {
    expect(rows(before, { cells: [at(0, 1, plain(0))] })).toBe(
      '<row r="1"><c r="B1"><v>0</v></c><c r="D1"><f>C1&amp;&quot;x&quot;</f><v>3</v></c></row>' +
        '<row r="2"><c r="B2"><f>A2&amp;&quot;x&quot;</f><v>4</v></c><c r="D2"><f t="shared" si="5"/><v>5</v></c></row>',
    );
  });

  test('are named; those that are replaced by formulas are not', () => {
    const xml = `<worksheet><sheetData>${before}</sheetData></worksheet>`;
    const changes = { cells: [at(0, 1, plain(0)), at(1, 1, plain(0, 'A2'))], clear: { first: 3, last: 3 } };
    expect([...splice(xml, changes).lostFormulas].sort()).toEqual(['B1', 'D1', 'D2']);
  });
});

describe('the stated range', () => {
  test.each([
    ['grows', 'A1:B2', 'A1:C5'],
    ['grows from one cell', 'D6', 'C5:D6'],
    ['stays', 'A1:Z99', 'A1:Z99'],
  ])('%s', (_, ref, expected) => {
    const { xml } = splice(`<worksheet><dimension ref="${ref}"/><sheetData/></worksheet>`, {
      cells: [at(4, 2, plain(1))],
    });
    expect(xml).toContain(`<dimension ref="${expected}"/>`);
  });
});

describe('column widths', () => {
  const widths = [
    { column: 3, characters: 12 },
    { column: 2, characters: 10.5 },
  ];
  const C = '<col min="3" max="3" width="10.5" customWidth="1"/>';
  const D = '<col min="4" max="4" width="12" customWidth="1"/>';
  test.each([
    ['none yet', '<sheetFormatPr/>', `<sheetFormatPr/><cols>${C}${D}</cols>`],
    ['an empty list', '<cols/>', `<cols>${C}${D}</cols>`],
    [
      'others before',
      '<cols><col min="1" max="2" width="5"/></cols>',
      `<cols><col min="1" max="2" width="5"/>${C}${D}</cols>`,
    ],
    ['others behind', '<cols> <col min="9" max="9"/></cols>', `<cols> ${C}${D}<col min="9" max="9"/></cols>`],
    ['the same', `<cols>${C}${D}</cols>`, `<cols>${C}${D}</cols>`],
    [
      'one there',
      '<cols><col min="3" max="3" hidden="1" width="3" style="2"/></cols>',
      `<cols><col min="3" max="3" hidden="1" width="10.5" style="2" customWidth="1"/>${D}</cols>`,
    ],
    [
      'a range around both',
      '<cols><col style="2" min="1" max="16384" width="9" x:y="z"/></cols>',
      '<cols><col style="2" min="1" max="2" width="9" x:y="z"/><col style="2" min="3" max="3" width="10.5" x:y="z" customWidth="1"/><col style="2" min="4" max="4" width="12" x:y="z" customWidth="1"/><col style="2" min="5" max="16384" width="9" x:y="z"/></cols>',
    ],
    [
      'a range up to the first',
      '<cols><col min="2" max="3" width="9"/></cols>',
      `<cols><col min="2" max="2" width="9"/>${C}${D}</cols>`,
    ],
    [
      'a range from the second on',
      '<cols><col min="4" max="5" width="9"/></cols>',
      `<cols>${C}${D}<col min="5" max="5" width="9"/></cols>`,
    ],
  ])('%s', (_, before, after) => {
    const sheet = (cols: string) => `<worksheet>${cols}<sheetData/></worksheet>`;
    expect(splice(sheet(before), { widths }).xml).toBe(sheet(after));
    expect(splice(sheet(after), { widths }).xml).toBe(sheet(after));
  });
});

test('an edit of nothing changes nothing', () => {
  const xml = `<?xml version='1.0'?>\r\n<worksheet><dimension ref='A1' /><sheetData >\n <row r='1' ><c r='A1' /></row ></sheetData></worksheet>\n`;
  expect(splice(xml, {}).xml).toBe(xml);
});
