import ExcelJS from 'exceljs';
import { describe, expect, test } from 'vitest';
import { UserError } from '../../../src/engine/user-error.js';
import type { OutputCell, OutputSheet, SheetEdit, WorkbookEdit } from '../../../src/engine/workbook-model.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../../../src/io/xlsx/write-package.js';
import { handMadePackage, MAIN, partText, STYLES, unzip } from './hand-made.js';
import { SAMPLES } from './sample-packages.js';

const NOTHING: WorkbookEdit = { edits: [], sheets: [], remove: [] };
const FIRST = 4;

function statusEdit(sheet: string, more: Partial<SheetEdit> = {}): SheetEdit {
  const cell = (row: number, column: number, output: OutputCell) => ({
    row,
    column: FIRST + column,
    cell: output,
  });
  return {
    sheet,
    clear: { first: FIRST, last: FIRST + 2 },
    cells: [
      cell(0, 0, { value: 'Size', format: 'header' }),
      cell(0, 1, { value: 'Status', format: 'header' }),
      cell(1, 0, { value: 42.003, format: 'mm', formula: 'ROUND(B2,5)' }),
      cell(1, 1, { value: 'within limits', format: 'plain', formula: 'IF(E2>1,"within limits","")' }),
      cell(1, 2, { value: '=not a formula', format: 'text' }),
      cell(6, 1, { value: 'not measured', format: 'plain' }),
    ],
    storedValues: [],
    widths: [{ column: FIRST, characters: 12 }],
    ...more,
  };
}

function outputSheet(name: string, more: Partial<OutputSheet> = {}): OutputSheet {
  return {
    name,
    rows: [
      [{ value: `About ${name}`, format: 'title' }],
      [{ value: 'Engine', format: 'header' }, undefined, { value: 'Clearance', format: 'header' }],
      [
        { value: '-1 & <2>', format: 'text' },
        { value: 0.25, format: 'chance' },
        { value: 0.04125, format: 'mm', formula: 'ROUND(0.041251,5)' },
        { value: '', format: 'in', formula: 'IF(1=1,"","x")' },
        { value: 3, format: 'whole' },
        { value: false, format: 'plain', formula: '1=2' },
      ],
    ],
    widths: [20, 10, 12],
    headerRows: 2,
    landscape: true,
    ...more,
  };
}

/** Values, formulas and styles of all cells, as the other library reads them. */
async function excelJsCells(bytes: Uint8Array) {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(Buffer.from(bytes) as unknown as Parameters<typeof workbook.xlsx.load>[0]);
  const found: Record<string, unknown> = {};
  for (const sheet of workbook.worksheets) {
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        found[`${sheet.name}!${cell.address}`] = {
          value: cell.value,
          result: cell.result,
          style: cell.style,
        };
      });
    });
  }
  return found;
}

describe.each(SAMPLES)('a workbook with $name', (sample) => {
  const edit: WorkbookEdit = {
    edits: [statusEdit(sample.sheet)],
    sheets: [outputSheet('Summary'), outputSheet("Rod's list", { headerRows: 0, landscape: false })],
    remove: ['Pick list'],
  };

  test('every part that is not written stays byte for byte, in its place', async () => {
    const input = await sample.make();
    const { bytes, refused } = await editWorkbookPackage(input, edit);
    expect(refused).toEqual([]);
    const before = await unzip(input);
    const after = await unzip(bytes);
    expect([...after.keys()].slice(0, before.size)).toEqual([...before.keys()]);
    const changed = [...before.keys()].filter((part) => !before.get(part)!.equals(after.get(part)!));
    const hasStyles = before.has('xl/styles.xml');
    expect(changed.sort()).toEqual(
      [
        '[Content_Types].xml',
        'xl/_rels/workbook.xml.rels',
        'xl/workbook.xml',
        sample.part,
        ...(hasStyles ? ['xl/styles.xml'] : []),
      ].sort(),
    );
    expect([...after.keys()].slice(before.size).length).toBe(hasStyles ? 2 : 3);
  });

  test("the user's cells keep value, formula and style, and ours are there", async () => {
    const input = await sample.make();
    const { bytes } = await editWorkbookPackage(input, edit);
    const before = await readWorkbookPackage(input, 'book');
    const after = await readWorkbookPackage(bytes, 'book');
    expect(after.sheets.map((s) => s.name)).toEqual([
      ...before.sheets.map((s) => s.name),
      'Summary',
      "Rod's list",
    ]);
    let compared = 0;
    before.sheets.forEach((sheet, s) => {
      sheet.rows.forEach((row, r) => {
        row.forEach((cell, c) => {
          expect(after.sheets[s]!.rows[r]![c]).toEqual(cell);
          compared++;
        });
      });
    });
    expect(compared).toBeGreaterThan(2);
    const written = after.sheets[0]!.rows;
    expect(written[0]![FIRST]).toEqual({ content: { kind: 'text', value: 'Size' } });
    expect(written[1]![FIRST]).toEqual({
      content: { kind: 'number', value: 42.003 },
      formula: 'ROUND(B2,5)',
    });
    expect(written[1]![FIRST + 2]).toEqual({ content: { kind: 'text', value: '=not a formula' } });
    expect(written[6]![FIRST + 1]).toEqual({ content: { kind: 'text', value: 'not measured' } });
    expect(after.sheets.at(-2)!.rows[2]).toEqual([
      { content: { kind: 'text', value: '-1 & <2>' } },
      { content: { kind: 'number', value: 0.25 } },
      { content: { kind: 'number', value: 0.04125 }, formula: 'ROUND(0.041251,5)' },
      { content: { kind: 'text', value: '' }, formula: 'IF(1=1,"","x")' },
      { content: { kind: 'number', value: 3 } },
      { content: { kind: 'boolean', value: false }, formula: '1=2' },
    ]);
  });

  test.runIf(sample.isReadByExcelJs)('another library finds the same', async () => {
    const input = await sample.make();
    const { bytes } = await editWorkbookPackage(input, edit);
    const before = await excelJsCells(input);
    const after = await excelJsCells(bytes);
    expect(Object.keys(before).length).toBeGreaterThan(2);
    expect(after).toMatchObject(before);
    const size = after['Journals!E2'] as { value: { formula: string }; style: ExcelJS.Style };
    expect(size.value.formula).toBe('ROUND(B2,5)');
    expect(size.style.numFmt).toBe('0.00000');
    const header = after['Summary!A2'] as { style: ExcelJS.Style };
    expect(header.style.font?.bold).toBe(true);
    expect(header.style.border?.bottom?.style).toBe('thin');
    expect(header.style.fill ?? { pattern: 'none' }).toMatchObject({ pattern: 'none' });
  });

  test('the same edit again changes no byte', async () => {
    const once = await editWorkbookPackage(await sample.make(), edit);
    const twice = await editWorkbookPackage(once.bytes, edit);
    expect(await unzip(twice.bytes)).toEqual(await unzip(once.bytes));
    expect(Buffer.compare(twice.bytes, once.bytes)).toBe(0);
  });

  test('an edit of nothing changes no part', async () => {
    const input = await sample.make();
    const { bytes } = await editWorkbookPackage(input, NOTHING);
    expect(await unzip(bytes)).toEqual(await unzip(input));
  });
});

test('one edit gives one file, whenever it is made', async () => {
  const input = await SAMPLES[0]!.make();
  const edit = { ...NOTHING, sheets: [outputSheet('Summary')] };
  const one = await editWorkbookPackage(input, edit);
  await new Promise((resolve) => setTimeout(resolve, 2100));
  const two = await editWorkbookPackage(input, edit);
  expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
});

describe('sheets of our own', () => {
  const CELL = '<sheetData><row r="1"><c r="A1"><f>1+1</f><v>2</v></c></row></sheetData>';
  const chain = (cells: string) => ({
    relationships: [['rIdChain', 'calcChain', 'calcChain.xml']] as const,
    overrides: {
      '/xl/calcChain.xml': 'application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml',
    },
    parts: { 'xl/calcChain.xml': `<calcChain xmlns="${MAIN}">${cells}</calcChain>` },
  });

  test('print in their width, with frozen header rows that are repeated', async () => {
    const input = await handMadePackage({ sheets: [{ name: 'A', xml: CELL }] });
    const { bytes } = await editWorkbookPackage(input, { ...NOTHING, sheets: [outputSheet("Rod's")] });
    const sheet = await partText(bytes, 'xl/worksheets/sheet2.xml');
    expect(sheet).toContain('<pageSetUpPr fitToPage="1"/>');
    expect(sheet).toMatch(/<pane ySplit="2" topLeftCell="A3" activePane="bottomLeft" state="frozen"\/>/);
    expect(sheet).toMatch(/<pageSetup orientation="landscape"[^>]* fitToWidth="1" fitToHeight="0"\/>/);
    expect(sheet).toContain('<col min="1" max="1" width="20" customWidth="1"/>');
    expect(sheet).not.toContain('t="s"');
    expect(sheet).not.toContain('tabSelected');
    expect(await partText(bytes, 'xl/workbook.xml')).toContain(
      '<definedNames><definedName name="_xlnm.Print_Titles" localSheetId="1">\'Rod\'\'s\'!$1:$2</definedName></definedNames>',
    );
  });

  test('replace one of the same name where it stands, with all that hung on it', async () => {
    const input = await handMadePackage({
      sheets: [
        {
          name: 'summary',
          xml: `${CELL}<drawing r:id="rId1"/>`,
          part: 'worksheets/sheet7.xml',
          relationships: [['rId1', 'drawing', '../drawings/drawing1.xml']],
        },
        { name: 'A', xml: CELL, relationships: [['rId1', 'drawing', '../drawings/drawing2.xml']] },
      ],
      workbookTail:
        '<definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">summary!$A$1</definedName><definedName name="mine" localSheetId="0">summary!$A$1</definedName></definedNames>',
      overrides: { '/xl/drawings/drawing1.xml': 'a/b', '/xl/drawings/drawing2.xml': 'a/b' },
      parts: {
        'xl/drawings/drawing1.xml': '<a/>',
        'xl/drawings/drawing2.xml': '<a/>',
        'xl/drawings/_rels/drawing1.xml.rels':
          '<Relationships><Relationship Id="r1" Type="x/image" Target="../media/own.png"/><Relationship Id="r2" Type="x/image" Target="../media/shared.png"/></Relationships>',
        'xl/drawings/_rels/drawing2.xml.rels':
          '<Relationships><Relationship Id="r1" Type="x/image" Target="../media/shared.png"/></Relationships>',
        'xl/media/own.png': 'own',
        'xl/media/shared.png': 'shared',
      },
    });
    const { bytes } = await editWorkbookPackage(input, { ...NOTHING, sheets: [outputSheet('Summary')] });
    const before = [...(await unzip(input)).keys()];
    const after = [...(await unzip(bytes)).keys()];
    expect(before.filter((part) => !after.includes(part))).toEqual([
      'xl/worksheets/_rels/sheet7.xml.rels',
      'xl/drawings/drawing1.xml',
      'xl/drawings/_rels/drawing1.xml.rels',
      'xl/media/own.png',
    ]);
    expect(after.filter((part) => !before.includes(part))).toEqual(['xl/styles.xml']);
    const workbook = await partText(bytes, 'xl/workbook.xml');
    expect(workbook).toContain('<sheet name="summary" sheetId="1" r:id="rId1"/><sheet name="A" sheetId="2"');
    expect(workbook).toContain(
      '<definedNames><definedName name="mine" localSheetId="0">summary!$A$1</definedName><definedName name="_xlnm.Print_Titles" localSheetId="0">\'summary\'!$1:$2</definedName></definedNames>',
    );
    expect(await partText(bytes, '[Content_Types].xml')).not.toContain('drawing1');
    const model = await readWorkbookPackage(bytes, 'book');
    expect(model.sheets[0]!.rows[0]![0]).toEqual({ content: { kind: 'text', value: 'About Summary' } });
  });

  test('of an earlier run go, and what counts sheets is counted anew', async () => {
    const input = await handMadePackage({
      sheets: ['Old', 'A', 'Older', 'B'].map((name) => ({ name, xml: CELL })),
      workbookHead: '<bookViews><workbookView xWindow="1" activeTab="3" firstSheet="2"/></bookViews>',
      workbookTail:
        '<definedNames><definedName name="_xlnm.Print_Area" localSheetId="0">Old!$A$1</definedName><definedName name="_xlnm.Print_Area" localSheetId="1">A!$A$1</definedName><definedName name="_xlnm.Print_Area" localSheetId="3">B!$A$1</definedName><definedName name="all">SUM(Old!$A$1,\'Older\'!$A$1,VeryOld!$A$1,A!$A$1)</definedName></definedNames>',
    });
    const { bytes, refused } = await editWorkbookPackage(input, {
      ...NOTHING,
      remove: ['old', 'OLDER', 'Gone'],
    });
    expect(refused).toEqual([]);
    const workbook = await partText(bytes, 'xl/workbook.xml');
    expect(workbook).toContain('<workbookView xWindow="1" activeTab="1" firstSheet="1"/>');
    expect(workbook).toContain(
      '<sheets><sheet name="A" sheetId="2" r:id="rId2"/><sheet name="B" sheetId="4" r:id="rId4"/></sheets>',
    );
    expect(workbook).toContain(
      '<definedNames><definedName name="_xlnm.Print_Area" localSheetId="0">A!$A$1</definedName><definedName name="_xlnm.Print_Area" localSheetId="1">B!$A$1</definedName><definedName name="all">SUM(#REF!$A$1,#REF!$A$1,VeryOld!$A$1,A!$A$1)</definedName></definedNames>',
    );
    const parts = [...(await unzip(bytes)).keys()].filter((part) => part.includes('worksheets'));
    expect(parts).toEqual(['xl/worksheets/sheet2.xml', 'xl/worksheets/sheet4.xml']);
    expect(await partText(bytes, '[Content_Types].xml')).not.toMatch(/sheet[13]\.xml/);
    expect(await partText(bytes, 'xl/_rels/workbook.xml.rels')).not.toMatch(/sheet[13]\.xml/);
  });

  test('the tab in front is one that can be seen', async () => {
    const input = await handMadePackage({
      sheets: [
        { name: 'Hidden', xml: CELL, state: 'hidden' },
        { name: 'A', xml: CELL },
        { name: 'Old', xml: CELL },
      ],
      workbookHead: '<bookViews><workbookView activeTab="2"/></bookViews>',
    });
    const { bytes } = await editWorkbookPackage(input, { ...NOTHING, remove: ['Old'] });
    expect(await partText(bytes, 'xl/workbook.xml')).toMatch(/<workbookView activeTab="1"[^>]*\/>/);
  });

  test.each([
    ['the only visible sheet is not removed', { ...NOTHING, remove: ['Old'] }, 'Old', /not hidden/],
    ['a chart sheet is not removed', { ...NOTHING, remove: ['Chart'] }, 'Chart', /no worksheet/],
    ['a chart sheet is not replaced', { ...NOTHING, sheets: [outputSheet('chart')] }, 'chart', /Rename it/],
  ])('%s', async (_, edit, sheet, reason) => {
    const input = await handMadePackage({
      sheets: [
        { name: 'Old', xml: CELL },
        { name: 'Chart', xml: '', kind: 'chartsheet', state: 'hidden' },
      ],
      styles: STYLES,
    });
    const { bytes, refused } = await editWorkbookPackage(input, edit);
    expect(refused).toEqual([{ sheet, reason: expect.stringMatching(reason) }]);
    const changed = edit.sheets.length > 0 ? ['xl/styles.xml'] : [];
    const [before, after] = [await unzip(input), await unzip(bytes)];
    expect([...after.keys()]).toEqual([...before.keys()]);
    expect([...before.keys()].filter((part) => !before.get(part)!.equals(after.get(part)!))).toEqual(changed);
  });

  test.each<[string, string, WorkbookEdit, boolean]>([
    [
      'stays where no formula went',
      '<c r="A1" i="1"/><c r="A1" i="2"/>',
      { ...NOTHING, sheets: [outputSheet('New')] },
      true,
    ],
    [
      'goes with a sheet that is removed',
      '<c r="A1" i="1"/><c r="A1" i="2"/>',
      { ...NOTHING, remove: ['B'] },
      false,
    ],
    ['stays where it lists nothing of it', '<c r="A1" i="1"/>', { ...NOTHING, remove: ['B'] }, true],
    [
      'goes where a new sheet lacks the formula',
      '<c r="A1" i="2"/>',
      { ...NOTHING, sheets: [outputSheet('B')] },
      false,
    ],
    [
      'stays where the new sheet has it too',
      '<c r="C3" i="2"/><c r="D3"/>',
      { ...NOTHING, sheets: [outputSheet('B')] },
      true,
    ],
    [
      'goes where a cell got a value for its formula',
      '<c r="A1" i="1"/>',
      {
        ...NOTHING,
        edits: [{ ...statusEdit('A'), cells: [{ row: 0, column: 0, cell: { value: 1, format: 'plain' } }] }],
      },
      false,
    ],
    [
      'stays where it got another formula',
      '<c r="A1" i="1"/>',
      {
        ...NOTHING,
        edits: [
          {
            ...statusEdit('A'),
            cells: [{ row: 0, column: 0, cell: { value: 1, format: 'plain', formula: '1' } }],
          },
        ],
      },
      true,
    ],
  ])('the calculation chain %s', async (_, cells, edit, stays) => {
    const input = await handMadePackage({
      sheets: [
        { name: 'A', xml: CELL },
        { name: 'B', xml: CELL },
      ],
      ...chain(cells),
    });
    const { bytes } = await editWorkbookPackage(input, edit);
    expect((await unzip(bytes)).has('xl/calcChain.xml')).toBe(stays);
    expect((await partText(bytes, '[Content_Types].xml')).includes('calcChain')).toBe(stays);
    expect((await partText(bytes, 'xl/_rels/workbook.xml.rels')).includes('calcChain')).toBe(stays);
  });
});

describe('what is in the way', () => {
  const sheetWith = (tail: string, cells = '') => `<sheetData>${cells}</sheetData>${tail}`;
  const table = (ref: string) => ({
    relationships: [['rId1', 'table', '../tables/table1.xml']] as const,
    xml: sheetWith('<tableParts count="1"><tablePart r:id="rId1"/></tableParts>'),
    parts: {
      'xl/tables/table1.xml': `<table xmlns="${MAIN}" id="1" name="T" displayName="T" ref="${ref}"/>`,
    },
  });
  const merged = (ref: string) => sheetWith(`<mergeCells count="1"><mergeCell ref="${ref}"/></mergeCells>`);
  const array = (ref: string) =>
    sheetWith(
      '',
      `<row r="2"><c r="${ref.split(':')[0]}"><f t="array" ref="${ref}">A1:B1</f><v>1</v></c></row>`,
    );

  test.each<
    [
      string,
      {
        xml: string;
        relationships?: readonly (readonly [string, string, string])[];
        parts?: Record<string, string>;
      },
      RegExp | undefined,
    ]
  >([
    ['a table under a written cell', table('A1:E2'), /table over A1:E2 is in the way of cell E1/],
    ['a table beside', table('A1:D2'), undefined],
    ['a table in an emptied column', table('G20:H30'), /column G/],
    ['merged cells', { xml: merged('D2:E3') }, /merged cells D2:E3 are in the way of cell E2/],
    ['merged cells in an emptied column', { xml: merged('F50:F51') }, /column F/],
    ['merged cells beside', { xml: merged('A1:D1') }, undefined],
    ['an array formula', { xml: array('D2:E2') }, /array formula over D2:E2/],
    ['an array formula of one cell', { xml: array('E2') }, undefined],
  ])('%s', async (_, { xml, relationships, parts }, reason) => {
    const input = await handMadePackage({
      sheets: [
        { name: 'A', xml, ...(relationships ? { relationships } : {}) },
        { name: 'B', xml: '<sheetData/>' },
      ],
      styles: STYLES,
      ...(parts ? { parts } : {}),
    });
    const { bytes, refused } = await editWorkbookPackage(input, {
      ...NOTHING,
      edits: [statusEdit('A'), statusEdit('B')],
    });
    expect(refused).toEqual(reason ? [{ sheet: 'A', reason: expect.stringMatching(reason) }] : []);
    const isSame =
      (await partText(bytes, 'xl/worksheets/sheet1.xml')) ===
      (await partText(input, 'xl/worksheets/sheet1.xml'));
    expect(isSame).toBe(reason !== undefined);
    expect(await partText(bytes, 'xl/worksheets/sheet2.xml')).toContain('ROUND(B2,5)');
  });

  test('a sheet that is not there', async () => {
    const input = await handMadePackage({ sheets: [{ name: 'A', xml: '<sheetData/>' }] });
    const { bytes, refused } = await editWorkbookPackage(input, { ...NOTHING, edits: [statusEdit('Rods')] });
    expect(refused).toEqual([
      { sheet: 'Rods', reason: expect.stringContaining('no worksheet of this name') },
    ]);
    expect(await unzip(bytes)).toEqual(await unzip(input));
  });
});

test('a part in UTF-16 stays in UTF-16', async () => {
  const xml = `<?xml version="1.0" encoding="UTF-16"?><worksheet xmlns="${MAIN}"><sheetData/></worksheet>`;
  const input = await handMadePackage({
    sheets: [{ name: 'A', xml: '' }],
    parts: { 'xl/worksheets/sheet1.xml': Buffer.from(`\ufeff${xml}`, 'utf16le') },
  });
  const { bytes } = await editWorkbookPackage(input, { ...NOTHING, edits: [statusEdit('A')] });
  const part = (await unzip(bytes)).get('xl/worksheets/sheet1.xml')!;
  expect(part.subarray(0, 2)).toEqual(Buffer.from([0xff, 0xfe]));
  expect((await readWorkbookPackage(bytes, 'book')).sheets[0]!.rows[0]![FIRST]).toEqual({
    content: { kind: 'text', value: 'Size' },
  });
});

test.each([
  ['no zip', async () => Buffer.from('Part;A 0'), 'no zip file'],
  [
    'a damaged sheet',
    () => handMadePackage({ sheets: [{ name: 'A', xml: '<sheetData><row><c></row></sheetData>' }] }),
    'damaged',
  ],
])('%s is refused', async (_, make, message) => {
  const writing = editWorkbookPackage(await make(), { ...NOTHING, edits: [statusEdit('A')] }, 'mine.xlsx');
  await expect(writing).rejects.toThrow(UserError);
  await expect(writing).rejects.toThrow(message);
});
