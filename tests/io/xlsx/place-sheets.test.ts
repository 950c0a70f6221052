import { describe, expect, test } from 'vitest';
import type { WorkbookEdit } from '../../../src/engine/workbook-model.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../../../src/io/xlsx/write-package.js';
import { handMadePackage, MAIN, partText, STYLES, unzip } from './hand-made.js';
import { NOTHING, outputSheet, statusEdit } from './sample-edits.js';

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
