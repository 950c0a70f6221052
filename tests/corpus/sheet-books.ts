/** Books with things that belong to sheets and cells. */
import { STYLES } from '../io/xlsx/hand-made.js';
import { type CorpusBook, engineBook, TYPES, textCell } from './corpus-book.js';

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const STRICT = 'http://purl.oclc.org/ooxml';
const other = (name: string, xml: string, state?: string) => ({
  name,
  xml,
  ...(state !== undefined && { state }),
});
const table = (ref: string, names: readonly string[]) =>
  `<table xmlns="${MAIN}" id="1" name="List1" displayName="List1" ref="${ref}" totalsRowShown="0"><autoFilter ref="${ref}"/><tableColumns count="${names.length}">${names.map((name, i) => `<tableColumn id="${i + 1}" name="${name}"/>`).join('')}</tableColumns></table>`;
const withTable = (ref: string, names: readonly string[]) =>
  engineBook(
    {
      behind: '<tableParts count="1"><tablePart r:id="rIdT"/></tableParts>',
      relationships: [['rIdT', 'table', '../tables/table1.xml']],
    },
    {
      parts: { 'xl/tables/table1.xml': table(ref, names) },
      overrides: { '/xl/tables/table1.xml': TYPES.table },
    },
  );
const HEADERS = ['Part', 'Engine', 'Fit', 'Position', 'A 0', 'Note'];

export const SHEET_BOOKS: readonly CorpusBook[] = [
  { holds: 'nothing else', ending: 'xlsx', make: engineBook({}) },
  { holds: 'a table (ListObject) over the readings', ending: 'xlsx', make: withTable('A1:F4', HEADERS) },
  {
    holds: 'another table beside the readings',
    ending: 'xlsx',
    make: withTable('H1:H4', ['Lot']),
  },
  {
    holds: 'merged cells beside the readings',
    ending: 'xlsx',
    make: engineBook({ behind: '<mergeCells count="1"><mergeCell ref="H2:I3"/></mergeCells>' }),
  },
  {
    holds: 'merged cells elsewhere',
    ending: 'xlsx',
    make: engineBook({
      rows: `<row r="9">${textCell('A9', '')}</row>`,
      behind: '<mergeCells count="1"><mergeCell ref="A9:C9"/></mergeCells>',
    }),
  },
  {
    holds: 'data validation over a whole column',
    ending: 'xlsx',
    make: engineBook({
      behind:
        '<dataValidations count="2"><dataValidation type="list" sqref="C2:C1048576"><formula1>"big end,main"</formula1></dataValidation><dataValidation type="decimal" operator="between" sqref="E2:E4" promptTitle="Journal" prompt="in mm"><formula1>1</formula1><formula2>99</formula2></dataValidation></dataValidations>',
    }),
  },
  {
    holds: 'conditional formats, of the extended kind too',
    ending: 'xlsx',
    make: engineBook({
      behind:
        '<conditionalFormatting sqref="E2:E4"><cfRule type="cellIs" dxfId="0" priority="1" operator="lessThan"><formula>42</formula></cfRule><cfRule type="colorScale" priority="2"><colorScale><cfvo type="min"/><cfvo type="max"/><color rgb="FFFFFFFF"/><color rgb="FF888888"/></colorScale></cfRule></conditionalFormatting><extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:conditionalFormattings/></ext></extLst>',
    }),
  },
  {
    holds: 'an automatic filter with hidden rows, and a sort order',
    ending: 'xlsx',
    make: engineBook(
      {
        rows: '<row r="6" hidden="1"><c r="D6"/></row>',
        behind:
          '<autoFilter ref="A1:F4"><filterColumn colId="1"><filters><filter val="E1"/></filters></filterColumn><sortState ref="A2:F4"><sortCondition ref="D2:D4"/></sortState></autoFilter>',
      },
      {
        workbookTail:
          '<definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">Journals!$A$1:$F$4</definedName></definedNames>',
      },
    ),
  },
  {
    holds: 'defined names: of the book, of a sheet, hidden, constants, formulas, broken ones',
    ending: 'xlsx',
    make: engineBook(
      { sheets: [other('Data', '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>')] },
      {
        workbookTail:
          '<definedNames><definedName name="Broken">#REF!</definedName><definedName name="Half">Journals!$E$2/2</definedName><definedName name="Hidden" hidden="1">Data!$A$1</definedName><definedName name="Local" localSheetId="1">Data!$A$1</definedName><definedName name="Names_of_it" comment="a remark">Journals!$A$2:$A$4</definedName><definedName name="Pi_ish">3.14</definedName><definedName name="Word">"big end"</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Journals!$A$1:$F$4</definedName><definedName name="_xlnm.Print_Titles" localSheetId="0">Journals!$A:$A,Journals!$1:$1</definedName></definedNames>',
      },
    ),
  },
  {
    holds: 'links to another workbook',
    ending: 'xlsx',
    make: engineBook(
      { cells: { 2: '<c r="F2"><f>[1]Prices!A1</f><v>12.5</v></c>' } },
      {
        relationships: [['rIdL', 'externalLink', 'externalLinks/externalLink1.xml']],
        workbookTail: '<externalReferences><externalReference r:id="rIdL"/></externalReferences>',
        parts: {
          'xl/externalLinks/externalLink1.xml': `<externalLink xmlns="${MAIN}" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><externalBook r:id="rId1"><sheetNames><sheetName val="Prices"/></sheetNames><sheetDataSet><sheetData sheetId="0"><row r="1"><cell r="A1"><v>12.5</v></cell></row></sheetData></sheetDataSet></externalBook></externalLink>`,
          'xl/externalLinks/_rels/externalLink1.xml.rels':
            '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/externalLinkPath" Target="prices.xlsx" TargetMode="External"/></Relationships>',
        },
        overrides: { '/xl/externalLinks/externalLink1.xml': TYPES.externalLink },
      },
    ),
  },
  {
    holds: 'page breaks, margins, headers and footers, printer settings',
    ending: 'xlsx',
    make: engineBook(
      {
        behind:
          '<printOptions gridLines="1"/><pageMargins left="0.1" right="0.2" top="0.3" bottom="0.4" header="0.5" footer="0.6"/><pageSetup paperSize="9" scale="80" orientation="landscape" r:id="rIdP"/><headerFooter><oddHeader>&amp;LEngine 1</oddHeader></headerFooter><rowBreaks count="1" manualBreakCount="1"><brk id="3" max="16383" man="1"/></rowBreaks><colBreaks count="1" manualBreakCount="1"><brk id="2" max="1048575" man="1"/></colBreaks>',
        relationships: [['rIdP', 'printerSettings', '../printerSettings/printerSettings1.bin']],
      },
      {
        parts: {
          'xl/printerSettings/printerSettings1.bin': Uint8Array.from({ length: 64 }, (_, i) => 255 - i),
        },
        overrides: { '/xl/printerSettings/printerSettings1.bin': TYPES.printerSettings },
      },
    ),
  },
  {
    holds: 'a protected sheet and a protected structure, with passwords',
    ending: 'xlsx',
    make: engineBook(
      {
        behind:
          '<sheetProtection algorithmName="SHA-512" hashValue="q83v" saltValue="q83v" spinCount="100000" sheet="1"/><protectedRanges><protectedRange sqref="E2:E4" name="Readings"/></protectedRanges>',
      },
      { workbookHead: '<workbookProtection workbookPassword="CC1A" lockStructure="1"/>' },
    ),
  },
  {
    holds: 'hidden and very hidden sheets',
    ending: 'xlsx',
    make: engineBook({
      sheets: [
        other('Old', `<sheetData><row r="1">${textCell('A1', 'kept')}</row></sheetData>`, 'hidden'),
        other(
          'Secret',
          `<sheetData><row r="1">${textCell('A1', 'kept too')}</row></sheetData>`,
          'veryHidden',
        ),
      ],
    }),
  },
  {
    holds: 'rich text, phonetic hints, spaces at the ends',
    ending: 'xlsx',
    make: engineBook(
      {
        cells: {
          2: '<c r="F2" t="s"><v>0</v></c>',
          3: '<c r="F3" t="s"><v>1</v></c>',
          4: '<c r="F4" t="inlineStr"><is><r><t>a</t></r><r><rPr><b/></rPr><t>b</t></r></is></c>',
        },
      },
      {
        strings:
          '<si><r><rPr><b/><sz val="10"/></rPr><t>polished </t></r><r><t xml:space="preserve"> twice</t></r></si><si><t xml:space="preserve">  edge  </t><rPh sb="0" eb="1"><t>x</t></rPh></si>',
      },
    ),
  },
  {
    holds: 'links within the book and out of it',
    ending: 'xlsx',
    make: engineBook(
      {
        behind:
          '<hyperlinks><hyperlink ref="A2" location="Data!A1" display="see"/><hyperlink ref="A3" r:id="rIdH" tooltip="the manual"/></hyperlinks>',
        sheets: [other('Data', '<sheetData/>')],
      },
      {
        parts: {
          'xl/worksheets/_rels/sheet1.xml.rels':
            '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rIdH" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink" Target="https://example.org/manual" TargetMode="External"/></Relationships>',
        },
      },
    ),
  },
  {
    holds: 'array, shared and dynamic-array formulas',
    ending: 'xlsx',
    leftOut: 'rows 7 to 9',
    make: engineBook(
      {
        rows: '<row r="7"><c r="A7"><f t="array" ref="A7:B7">D2:E2*2</f><v>2</v></c><c r="B7"><v>84.003</v></c><c r="D7" cm="1"><f t="array" ref="D7:D9">_xlfn._xlws.SORT(D2:D4)</f><v>1</v></c></row><row r="8"><c r="A8"><f t="shared" ref="A8:A9" si="0">D2+1</f><v>2</v></c><c r="D8"><v>2</v></c></row><row r="9"><c r="A9"><f t="shared" si="0"/><v>3</v></c><c r="D9"><v>3</v></c></row>',
      },
      {
        relationships: [['rIdM', 'sheetMetadata', 'metadata.xml']],
        parts: {
          'xl/metadata.xml': `<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`,
        },
        overrides: { '/xl/metadata.xml': TYPES.metadata },
      },
    ),
  },
  {
    holds: 'dates that count from 1904',
    ending: 'xlsx',
    make: engineBook(
      { cells: { 2: '<c r="F2" s="3"><v>43000</v></c>' } },
      { workbookHead: '<workbookPr date1904="1"/>' },
    ),
  },
  {
    holds: 'error values',
    ending: 'xlsx',
    make: engineBook({
      cells: {
        2: '<c r="F2" t="e"><v>#N/A</v></c>',
        3: '<c r="F3" t="e"><f>1/0</f><v>#DIV/0!</v></c>',
        4: '<c r="F4" t="e"><v>#REF!</v></c>',
      },
    }),
  },
  {
    holds: 'texts of 32,767 characters',
    ending: 'xlsx',
    make: engineBook({
      cells: { 2: textCell('F2', 'm'.repeat(32_767)), 3: textCell('F3', 'µ'.repeat(32_767)) },
    }),
  },
  {
    holds: 'sheets whose parts have names of their own',
    ending: 'xlsx',
    make: engineBook({ part: 'data/Readings of 2026.xml' }),
    unreadByExcelJs: 'finds no sheet in it',
  },
  {
    holds: 'strict OOXML',
    ending: 'xlsx',
    make: engineBook(
      {},
      {
        main: `${STRICT}/spreadsheetml/main`,
        rel: `${STRICT}/officeDocument/relationships`,
        styles: STYLES.replace(MAIN, `${STRICT}/spreadsheetml/main`),
      },
    ),
    unreadByExcelJs: 'reads no strict package',
  },
  {
    holds: 'macros',
    ending: 'xlsm',
    make: engineBook(
      { before: '<sheetPr codeName="Sheet1"/>' },
      {
        workbookHead: '<workbookPr codeName="ThisWorkbook"/>',
        relationships: [['rIdVba', 'vbaProject', 'vbaProject.bin']],
        parts: { 'xl/vbaProject.bin': Uint8Array.from({ length: 500 }, (_, i) => (i * 37) % 256) },
        overrides: { '/xl/workbook.xml': TYPES.macroBook, '/xl/vbaProject.bin': TYPES.macros },
      },
    ),
  },
  {
    holds: 'custom properties, custom XML and parts that nothing leads to',
    ending: 'xlsx',
    make: engineBook(
      {},
      {
        relationships: [['rIdX', 'customXml', '../customXml/item1.xml']],
        parts: {
          'docProps/custom.xml':
            '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/custom-properties" xmlns:vt="http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes"><property fmtid="{D5CDD505-2E9C-101B-9397-08002B2CF9AE}" pid="2" name="Bench"><vt:lpwstr>3</vt:lpwstr></property></Properties>',
          'customXml/item1.xml': '<a  b = "c"/>',
          'unrelated/thing.dat': 'nothing leads here',
        },
        overrides: { '/docProps/custom.xml': TYPES.customProperties },
      },
    ),
  },
  {
    holds: 'frozen panes, column widths and outlines, a tab colour, cell styles',
    ending: 'xlsx',
    make: engineBook({
      before:
        '<sheetPr><tabColor rgb="FF777777"/><outlinePr summaryBelow="0"/></sheetPr><sheetViews><sheetView tabSelected="1" workbookViewId="0"><pane xSplit="1" ySplit="1" topLeftCell="B2" state="frozen"/></sheetView></sheetViews><sheetFormatPr defaultRowHeight="15" outlineLevelCol="1"/><cols><col min="1" max="1" width="20" customWidth="1"/><col min="2" max="4" width="7" outlineLevel="1"/><col min="5" max="12" width="9.5" style="1"/></cols>',
    }),
  },
];
