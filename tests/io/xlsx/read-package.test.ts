import ExcelJS from 'exceljs';
import { describe, expect, test } from 'vitest';
import { UserError } from '../../../src/engine/user-error.js';
import { type Cell, cellAddress, type WorkbookModel } from '../../../src/engine/workbook-model.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';
import { handMadePackage, handMadeParts, MAIN, STYLES, unzip, zipOf } from './hand-made.js';

/** The cells of a sheet by address. */
function cells(model: WorkbookModel, sheet = 0): Record<string, Cell> {
  const found: Record<string, Cell> = {};
  model.sheets[sheet]!.rows.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (cell) found[cellAddress(r, c)] = cell;
    });
  });
  return found;
}

async function readRows(
  rows: string,
  more: { strings?: string; styles?: string; main?: string; rel?: string } = {},
) {
  const xml = `<sheetData>${rows}</sheetData>`;
  return cells(
    await readWorkbookPackage(await handMadePackage({ sheets: [{ name: 'A', xml }], ...more }), 'book.xlsx'),
  );
}

const number = (value: number) => ({ content: { kind: 'number', value } });
const text = (value: string) => ({ content: { kind: 'text', value } });
const date = (value: number) => ({ content: { kind: 'date', value } });

const STRINGS =
  '<si><t>plain</t></si><si><r><t xml:space="preserve">two </t></r><r><rPr><b/></rPr><t>runs</t></r></si>' +
  '<si><t>漢</t><rPh sb="0" eb="1"><t>kan</t></rPh><phoneticPr fontId="1"/></si><si><t>a_x000D_b &lt;_x005F_x0041_</t></si><si/>';

describe('one cell', () => {
  test.each([
    ['an integer', '<c r="A1"><v>42</v></c>', number(42)],
    ['a double as stored', '<c r="A1"><v>42.003000000000002</v></c>', number(42.003)],
    ['an exponent', '<c r="A1" t="n"><v>1.5E-3</v></c>', number(0.0015)],
    ['zero', '<c r="A1"><v>0</v></c>', number(0)],
    ['a length formatted in mm', '<c r="A1" s="1"><v>42.003</v></c>', number(42.003)],
    ['a date by its own format', '<c r="A1" s="2"><v>45000</v></c>', date(45000)],
    ['a date by a built-in format', '<c r="A1" s="3"><v>45000.5</v></c>', date(45000.5)],
    ['an ISO date', '<c r="A1" t="d"><v>2023-03-15</v></c>', date(45000)],
    ['an ISO date and time', '<c r="A1" t="d"><v>2023-03-15T12:00:00Z</v></c>', date(45000.5)],
    ['an ISO time', '<c r="A1" t="d"><v>06:00:00</v></c>', date(0.25)],
    ['an ISO date that is none', '<c r="A1" t="d"><v>soon</v></c>', text('soon')],
    ['a number that is none', '<c r="A1"><v>4,2</v></c>', text('4,2')],
    ['shared text', '<c r="A1" t="s"><v>0</v></c>', text('plain')],
    ['rich text', '<c r="A1" t="s"><v>1</v></c>', text('two runs')],
    ['text with phonetic hints', '<c r="A1" t="s"><v>2</v></c>', text('漢')],
    ['escaped text', '<c r="A1" t="s"><v>3</v></c>', text('a\rb <_x0041_')],
    ['empty shared text', '<c r="A1" t="s"><v>4</v></c>', text('')],
    [
      'inline text',
      '<c r="A1" t="inlineStr"><is><t>in</t><r><t>line</t></r><rPh><t>no</t></rPh></is></c>',
      text('inline'),
    ],
    ['a result of text', '<c r="A1" t="str"><f>B1</f><v>x_x000D_</v></c>', { ...text('x\r'), formula: 'B1' }],
    ['an empty result', '<c r="A1" t="str"><f>B1</f><v></v></c>', { ...text(''), formula: 'B1' }],
    ['TRUE', '<c r="A1" t="b"><v>1</v></c>', { content: { kind: 'boolean', value: true } }],
    [
      'FALSE of a formula',
      '<c r="A1" t="b"><f>1=2</f><v>0</v></c>',
      { content: { kind: 'boolean', value: false }, formula: '1=2' },
    ],
    ['zero of a formula', '<c r="A1"><f>1-1</f><v>0</v></c>', { ...number(0), formula: '1-1' }],
    ['an error', '<c r="A1" t="e"><v>#N/A</v></c>', { content: { kind: 'error', value: '#N/A' } }],
    ['a formula without value', '<c r="A1"><f>B1&lt;2</f></c>', { content: undefined, formula: 'B1<2' }],
    ['CDATA', '<c r="A1" t="str"><v><![CDATA[<a>]]></v></c>', text('<a>')],
  ])('%s', async (_, xml, expected) => {
    expect(await readRows(`<row r="1">${xml}</row>`, { strings: STRINGS, styles: STYLES })).toEqual({
      A1: expected,
    });
  });

  test.each([
    ['only a style', '<c r="A1" s="1"/>'],
    ['an empty value', '<c r="A1"><v/></c>'],
  ])('%s is an empty cell', async (_, xml) => {
    expect(await readRows(`<row r="1">${xml}</row>`, { styles: STYLES })).toEqual({});
  });
});

describe('positions', () => {
  test('cells and rows without r follow the previous one', async () => {
    const rows =
      '<row><c><v>1</v></c><c r="D1"><v>2</v></c><c><v>3</v></c></row><row r="4"/><row><c><v>4</v></c></row>';
    expect(await readRows(rows)).toEqual({ A1: number(1), D1: number(2), E1: number(3), A5: number(4) });
  });

  test.each([
    ['a row too many', '<row r="1048577"/>', '1048577'],
    ['a row that is no number', '<row r="x"/>', 'number x'],
    ['a column too many', '<row r="1"><c r="XFE1"><v>1</v></c></row>', 'XFE1'],
    ['a cell of another row', '<row r="1"><c r="A2"><v>1</v></c></row>', 'A2'],
    [
      'a shared text that is not there',
      '<row r="1"><c r="B1" t="s"><v>7</v></c></row>',
      'cell B1 shows shared text number 7',
    ],
  ])('%s is damage', async (_, rows, message) => {
    const reading = readRows(rows);
    await expect(reading).rejects.toThrow(UserError);
    await expect(reading).rejects.toThrow(message);
  });
});

describe('formulas', () => {
  test('shared ones are spelled out', async () => {
    const rows =
      '<row r="1"><c r="B1"><f t="shared" ref="B1:C2" si="0">A1*$A$1&amp;"A1"</f><v>1</v></c><c r="C1"><f t="shared" si="0"/><v>2</v></c></row>' +
      '<row r="2"><c r="B2"><f t="shared" si="0"/><v>3</v></c><c r="C2"><f t="shared" si="9"/><v>4</v></c></row>';
    const found = await readRows(rows);
    expect(Object.fromEntries(Object.entries(found).map(([a, c]) => [a, c.formula]))).toEqual({
      B1: 'A1*$A$1&"A1"',
      C1: 'B1*$A$1&"A1"',
      B2: 'A2*$A$1&"A1"',
      C2: undefined,
    });
  });

  test('an array formula stands in its first cell', async () => {
    const rows =
      '<row r="1"><c r="A1"><f t="array" ref="A1:B1">C1:D1*2</f><v>2</v></c><c r="B1"><v>4</v></c></row>';
    expect(await readRows(rows)).toEqual({ A1: { ...number(2), formula: 'C1:D1*2' }, B1: number(4) });
  });
});

describe('packages', () => {
  test('prefixed elements', async () => {
    const xml = `<x:worksheet xmlns:x="${MAIN}"><x:sheetData><x:row r="2"><x:c r="B2" t="inlineStr"><x:is><x:t>a</x:t></x:is></x:c></x:row></x:sheetData></x:worksheet>`;
    const bytes = await handMadePackage({ sheets: [{ name: 'A', xml }] });
    expect(cells(await readWorkbookPackage(bytes, 'book'))).toEqual({ B2: text('a') });
  });

  test('strict namespaces', async () => {
    const found = await readRows('<row r="1"><c r="A1" t="s"><v>0</v></c></row>', {
      strings: STRINGS,
      main: 'http://purl.oclc.org/ooxml/spreadsheetml/main',
      rel: 'http://purl.oclc.org/ooxml/officeDocument/relationships',
    });
    expect(found).toEqual({ A1: text('plain') });
  });

  test('parts under any name, hidden sheets, no chart sheets, in the order of the tabs', async () => {
    const sheet = (value: number) => `<sheetData><row r="1"><c r="A1"><v>${value}</v></c></row></sheetData>`;
    const bytes = await handMadePackage({
      sheets: [
        { name: 'Last &amp; first', xml: sheet(1), part: 'data/rods.part.xml' },
        { name: 'Chart', xml: '<sheetViews/>', part: 'chartsheets/sheet1.xml', kind: 'chartsheet' },
        { name: 'Hidden', xml: sheet(2), state: 'veryHidden' },
      ],
    });
    const model = await readWorkbookPackage(bytes, 'a.xlsx');
    expect(model.file).toBe('a.xlsx');
    expect(model.sheets.map((s) => s.name)).toEqual(['Last & first', 'Hidden']);
    expect([cells(model, 0), cells(model, 1)]).toEqual([{ A1: number(1) }, { A1: number(2) }]);
  });

  test('a part in UTF-16', async () => {
    const parts = handMadeParts({ sheets: [{ name: 'A', xml: '' }] });
    const xml = `<?xml version="1.0" encoding="UTF-16"?><worksheet xmlns="${MAIN}"><sheetData><row><c t="inlineStr"><is><t>µm</t></is></c></row></sheetData></worksheet>`;
    parts['xl/worksheets/sheet1.xml'] = Buffer.from(`\ufeff${xml}`, 'utf16le');
    expect(cells(await readWorkbookPackage(await zipOf(parts), 'book'))).toEqual({ A1: text('µm') });
  });

  test('ISO dates in a book that counts from 1904', async () => {
    const bytes = await handMadePackage({
      workbookHead: '<workbookPr date1904="1"/>',
      sheets: [{ name: 'A', xml: '<sheetData><row><c t="d"><v>2023-03-15</v></c></row></sheetData>' }],
    });
    expect(cells(await readWorkbookPackage(bytes, 'book'))).toEqual({ A1: date(45000 - 1462) });
  });

  test('a workbook of a common library', async () => {
    const workbook = new ExcelJS.Workbook();
    const sheet = workbook.addWorksheet('Journals');
    sheet.addRow(['Part', 'A 0', 'When', true]);
    sheet.addRow(['P1', 42.003, new Date(Date.UTC(2023, 2, 15)), { formula: 'B2*0', result: 0 }]);
    sheet.getCell('B2').numFmt = '0.000\\ \\m\\m';
    const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
    expect(cells(await readWorkbookPackage(bytes, 'book'))).toEqual({
      A1: text('Part'),
      B1: text('A 0'),
      C1: text('When'),
      D1: { content: { kind: 'boolean', value: true } },
      A2: text('P1'),
      B2: number(42.003),
      C2: date(45000),
      D2: { ...number(0), formula: 'B2*0' },
    });
  });
});

describe('what is no workbook is refused, by name and with a way out', () => {
  const sheets = [{ name: 'A', xml: '<sheetData/>' }];
  const ole = Buffer.concat([
    Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
    Buffer.alloc(600),
  ]);
  const withPart = async (part: string, content: string) =>
    zipOf({ ...handMadeParts({ sheets }), [part]: content });
  const without = async (part: string) => {
    const { [part]: _gone, ...parts } = handMadeParts({ sheets });
    return zipOf(parts);
  };
  const typed = (type: string) =>
    zipOf({
      '[Content_Types].xml': `<Types><Override PartName="/main" ContentType="${type}"/></Types>`,
      '_rels/.rels':
        '<Relationships><Relationship Id="r" Type="x/officeDocument" Target="main"/></Relationships>',
      main: 'x',
    });

  test.each<[string, () => Promise<Uint8Array>, RegExp]>([
    ['an empty file', async () => new Uint8Array(), /empty/],
    ['a text', async () => Buffer.from('Part;A 0\n'), /no zip file.*\.xlsx workbook was expected/],
    ['an old workbook', async () => ole, /old \.xls format.*save it as \.xlsx/],
    [
      'an encrypted workbook',
      async () => Buffer.concat([ole, Buffer.from('EncryptedPackage', 'utf16le')]),
      /encrypted with a password/,
    ],
    [
      'an OpenDocument file',
      () => zipOf({ mimetype: 'application/vnd.oasis.opendocument.spreadsheet', 'content.xml': '<a/>' }),
      /OpenDocument.*save it as \.xlsx/,
    ],
    ['some zip', () => zipOf({ 'a.txt': 'a' }), /holds no workbook/],
    [
      'a text document',
      () => typed('application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml'),
      /without a workbook part/,
    ],
    ['a binary workbook', () => typed('application/vnd.ms-excel.sheet.binary.macroEnabled.main'), /\.xlsb/],
    [
      'a zip cut short',
      async () => (await handMadePackage({ sheets })).subarray(0, 300),
      /damaged or cut short/,
    ],
    [
      'a missing sheet part',
      () => without('xl/worksheets/sheet1.xml'),
      /damaged.*sheet1\.xml, it is missing/,
    ],
    [
      'a sheet that leads nowhere',
      () => without('xl/_rels/workbook.xml.rels'),
      /damaged.*sheet A leads to no part/,
    ],
    [
      'a sheet cut short',
      () => withPart('xl/worksheets/sheet1.xml', '<worksheet><sheetData>'),
      /damaged.*sheet A/,
    ],
    [
      'a workbook part cut short',
      () => withPart('xl/workbook.xml', '<workbook><sheets>'),
      /damaged.*workbook\.xml/,
    ],
    [
      'entities of its own',
      () => withPart('xl/worksheets/sheet1.xml', '<!DOCTYPE a [<!ENTITY b "c">]><worksheet>&b;</worksheet>'),
      /document type/,
    ],
    ['no text', () => withPart('xl/worksheets/sheet1.xml', '\0\0'), /damaged/],
    [
      'only a chart',
      () => handMadePackage({ sheets: [{ name: 'A', xml: '', kind: 'chartsheet' }] }),
      /no worksheet/,
    ],
  ])('%s', async (_, make, message) => {
    const reading = readWorkbookPackage(await make(), 'mine.xlsx');
    await expect(reading).rejects.toThrow(UserError);
    await expect(reading).rejects.toThrow(message);
    await expect(reading).rejects.toThrow(/^mine\.xlsx: /);
  });
});

test('reading leaves the bytes as they are', async () => {
  const bytes = await handMadePackage({ sheets: [{ name: 'A', xml: '<sheetData/>' }] });
  const before = await unzip(bytes);
  await readWorkbookPackage(bytes, 'book');
  expect(await unzip(bytes)).toEqual(before);
});
