/** User workbooks of many shapes, each with a sheet of readings in columns A to D, to be written into. */
import ExcelJS from 'exceljs';
import { handMadePackage, handMadeParts, MAIN, STYLES, zipOf } from './hand-made.js';

export interface Sample {
  readonly name: string;
  readonly make: () => Promise<Uint8Array>;
  readonly sheet: string;
  /** The part of that sheet. */
  readonly part: string;
  /** False where the other library cannot read the package. */
  readonly isReadByExcelJs: boolean;
}

const HEAD =
  '<row r="1"><c r="A1" t="inlineStr"><is><t>Part</t></is></c><c r="B1" t="inlineStr"><is><t>A 0</t></is></c></row>';
const READINGS = `${HEAD}<row r="2"><c r="A2" t="inlineStr"><is><t>P1</t></is></c><c r="B2" s="1"><v>42.003</v></c><c r="C2"><f>B2*2</f><v>84.006</v></c></row>`;

async function withFormatsAndRules(): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet('Journals', { properties: { defaultColWidth: 11 } });
  sheet.columns = [{ width: 8 }, { width: 14, style: { numFmt: '0.000\\ \\m\\m' } }];
  sheet.addRow(['Part', 'A 0', 'A 90', 'Sum']);
  for (let i = 1; i <= 5; i++) {
    sheet.addRow([
      `P${i}`,
      42 + i / 1000,
      42.001,
      { formula: `B${i + 1}+C${i + 1}`, result: 84.001 + i / 1000 },
    ]);
  }
  sheet.getCell('A2').font = { name: 'Arial', size: 14, italic: true, color: { argb: 'FF0000FF' } };
  sheet.getCell('A3').fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFFFFF00' } };
  sheet.getCell('A4').note = 'a remark';
  sheet.getCell('B2').border = { bottom: { style: 'thin' } };
  sheet.autoFilter = 'A1:D6';
  sheet.addConditionalFormatting({
    ref: 'B2:B6',
    rules: [
      {
        type: 'cellIs',
        operator: 'greaterThan',
        formulae: [42.003],
        priority: 1,
        style: { font: { bold: true } },
      },
    ],
  });
  sheet.getCell('D9').dataValidation = { type: 'list', allowBlank: true, formulae: ['"yes,no"'] };
  sheet.getCell('D9').value = 'yes';
  workbook.addWorksheet('Notes', { state: 'hidden' }).getCell('B3').value = 'kept';
  workbook.definedNames.add('Journals!$B$2:$B$6', 'Readings');
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

function withEverythingElse(): Promise<Uint8Array> {
  const sheet = `<sheetPr codeName="Sheet1"><tabColor rgb="FF00FF00"/></sheetPr><dimension ref="A1:C2"/><sheetViews><sheetView tabSelected="1" workbookViewId="0"/></sheetViews><cols><col min="1" max="20" width="9.5" style="1"/></cols>
<sheetData>${READINGS}</sheetData><sheetProtection sheet="1" objects="1"/><conditionalFormatting sqref="B2"><cfRule type="cellIs" dxfId="0" priority="1" operator="lessThan"><formula>1</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="whole" sqref="C2"><formula1>1</formula1></dataValidation></dataValidations><hyperlinks><hyperlink ref="A2" location="Second!A1"/></hyperlinks><pageMargins left="0.1" right="0.1" top="0.1" bottom="0.1" header="0.1" footer="0.1"/><rowBreaks count="1" manualBreakCount="1"><brk id="1" max="16383" man="1"/></rowBreaks><drawing r:id="rIdDrawing"/><legacyDrawing r:id="rIdVml"/><extLst><ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:sparklineGroups><x14:sparklineGroup><x14:sparklines/></x14:sparklineGroup></x14:sparklineGroups></ext></extLst>`;
  return handMadePackage({
    sheets: [
      {
        name: 'Journals',
        xml: sheet,
        relationships: [
          ['rIdDrawing', 'drawing', '../drawings/drawing1.xml'],
          ['rIdVml', 'vmlDrawing', '../drawings/vml1.vml'],
          ['rIdComments', 'comments', '../comments1.xml'],
        ],
      },
      {
        name: 'Second',
        xml: '<sheetData><row r="1"><c r="A1"><f>Journals!B2</f><v>42.003</v></c></row></sheetData>',
      },
    ],
    styles: STYLES,
    strings: '<si><t>unused</t></si>',
    workbookHead: '<workbookPr codeName="ThisWorkbook"/><bookViews><workbookView activeTab="1"/></bookViews>',
    workbookTail:
      '<definedNames><definedName name="_xlnm.Print_Area" localSheetId="0">Journals!$A$1:$C$2</definedName><definedName name="Sizes">Journals!$B$2</definedName></definedNames><calcPr calcId="191029"/><extLst><ext uri="{x}"/></extLst>',
    relationships: [
      ['rIdVba', 'vbaProject', 'vbaProject.bin'],
      ['rIdXml', 'customXml', '../customXml/item1.xml'],
      ['rIdChain', 'calcChain', 'calcChain.xml'],
    ],
    overrides: {
      '/xl/workbook.xml': 'application/vnd.ms-excel.sheet.macroEnabled.main+xml',
      '/xl/vbaProject.bin': 'application/vnd.ms-office.vbaProject',
      '/xl/drawings/drawing1.xml': 'application/vnd.openxmlformats-officedocument.drawing+xml',
      '/xl/comments1.xml': 'application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml',
      '/docProps/custom.xml': 'application/vnd.openxmlformats-officedocument.custom-properties+xml',
      '/xl/calcChain.xml': 'application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml',
    },
    parts: {
      'xl/vbaProject.bin': Uint8Array.from({ length: 300 }, (_, i) => (i * 37) % 256),
      'xl/drawings/drawing1.xml':
        '<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing"/>',
      'xl/drawings/vml1.vml': '<xml xmlns:v="urn:schemas-microsoft-com:vml"/>',
      'xl/comments1.xml': `<comments xmlns="${MAIN}"><authors><author/></authors><commentList/></comments>`,
      'xl/calcChain.xml': `<calcChain xmlns="${MAIN}"><c r="C2" i="1"/><c r="A1" i="2"/></calcChain>`,
      'customXml/item1.xml': '<a  b = "c"/>',
      'docProps/custom.xml':
        '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/custom-properties"/>',
      'unrelated/thing.dat': 'nothing leads here',
    },
  });
}

function withPrefixes(): Promise<Uint8Array> {
  const parts = handMadeParts({
    sheets: [
      {
        name: 'Journals',
        part: 'data/readings.xml',
        xml: `<x:worksheet xmlns:x="${MAIN}" xmlns:q="urn:q" q:a="b">\n <x:sheetData>\n  <x:row q:r="7">\n   <x:c q:r="Z9" t="inlineStr"><x:is><x:t>Part</x:t></x:is></x:c>\n   <x:c t="inlineStr"><x:is><x:t>A 0</x:t></x:is></x:c>\n  </x:row>\n  <x:row r="4"><x:c r="B4"><x:v>42.003</x:v></x:c></x:row>\n </x:sheetData>\n</x:worksheet>`,
      },
    ],
    styles: STYLES.replace(/<(\/?)(?=\w)/g, '<$1s:').replace('xmlns=', 'xmlns:s='),
  });
  for (const [part, prefix] of [
    ['xl/workbook.xml', 'w:'],
    ['[Content_Types].xml', 'ct:'],
    ['xl/_rels/workbook.xml.rels', 'pr:'],
  ]) {
    parts[part!] = String(parts[part!])
      .replace(/<(\/?)(?=\w)/g, `<$1${prefix}`)
      .replace('xmlns=', `xmlns:${prefix!.slice(0, -1)}=`);
  }
  return zipOf(parts);
}

export const SAMPLES: readonly Sample[] = [
  {
    name: 'formats, rules, comments and a hidden sheet, by a common library',
    make: withFormatsAndRules,
    sheet: 'Journals',
    part: 'xl/worksheets/sheet1.xml',
    isReadByExcelJs: true,
  },
  {
    name: 'macros, drawings, custom parts, extensions',
    make: withEverythingElse,
    sheet: 'Journals',
    part: 'xl/worksheets/sheet1.xml',
    isReadByExcelJs: true,
  },
  {
    name: 'no spans, rows missing, no styles part',
    make: () =>
      handMadePackage({
        sheets: [
          {
            name: 'Journals',
            xml: `<sheetData>${READINGS.replace(' s="1"', '')}<row r="9"><c r="D9"><v>1</v></c></row></sheetData>`,
          },
        ],
      }),
    sheet: 'journals',
    part: 'xl/worksheets/sheet1.xml',
    isReadByExcelJs: true,
  },
  {
    name: 'prefixes everywhere',
    make: withPrefixes,
    sheet: 'JOURNALS',
    part: 'xl/data/readings.xml',
    isReadByExcelJs: false,
  },
  {
    name: 'strict namespaces',
    make: () =>
      handMadePackage({
        sheets: [{ name: 'Journals', xml: `<sheetData>${READINGS}</sheetData>` }],
        styles: STYLES.replace(MAIN, 'http://purl.oclc.org/ooxml/spreadsheetml/main'),
        main: 'http://purl.oclc.org/ooxml/spreadsheetml/main',
        rel: 'http://purl.oclc.org/ooxml/officeDocument/relationships',
      }),
    sheet: 'Journals',
    part: 'xl/worksheets/sheet1.xml',
    isReadByExcelJs: false,
  },
];
