/** Books with what came into the format later, and in the forms that other writers give to the same. */
import { handMadeParts, MAIN, REL, STYLES, zipOf } from '../io/xlsx/hand-made.js';
import { type CorpusBook, engineBook, journalRows, TYPES, textCell } from './corpus-book.js';

const STRICT = 'http://purl.oclc.org/ooxml';
const X14 = 'http://schemas.microsoft.com/office/spreadsheetml/2009/9/main';
const X15 = 'http://schemas.microsoft.com/office/spreadsheetml/2010/11/main';
const MS = 'http://schemas.microsoft.com/office';
const MC = 'http://schemas.openxmlformats.org/markup-compatibility/2006';
const HEADERS = ['Part', 'Engine', 'Fit', 'Position', 'A 0', 'Note'];
const table = (main = MAIN, more = '', columns = '') =>
  `<table xmlns="${main}" id="1" name="List1" displayName="List1" ref="A1:F4" totalsRowShown="0"${more}><autoFilter ref="A1:F4"/><tableColumns count="6">${HEADERS.map((name, i) => `<tableColumn id="${i + 1}" name="${name}"${columns}/>`).join('')}</tableColumns><tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="1" showColumnStripes="0"/></table>`;
const tableRelation = ['rIdT', 'table', '../tables/table1.xml'] as const;
const TABLE_PARTS = '<tableParts count="1"><tablePart r:id="rIdT"/></tableParts>';
const relationships = (list: readonly (readonly [string, string, string])[]) =>
  `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${list.map(([id, type, target]) => `<Relationship Id="${id}" Type="${type}" Target="${target}"/>`).join('')}</Relationships>`;
/** A part changed after it was made. */
const remade =
  (
    make: () => Record<string, string | Uint8Array>,
    change: (text: string) => string | Uint8Array,
    part: string,
  ) =>
  () => {
    const parts = make();
    return zipOf({ ...parts, [part]: change(String(parts[part])) });
  };
const SHEET = 'xl/worksheets/sheet1.xml';
const plain = (xml = `<sheetData>${journalRows()}</sheetData>`) =>
  handMadeParts({ sheets: [{ name: 'Journals', xml }], styles: STYLES });
/** All elements of a text with a prefix. */
const prefixed = (text: string) =>
  text.replaceAll(/<(\/?)(?=[a-zA-Z])/g, '<$1x:').replace('xmlns=', 'xmlns:x=');

export const NEWER_BOOKS: readonly CorpusBook[] = [
  {
    holds: 'a slicer on a table',
    ending: 'xlsx',
    make: engineBook(
      {
        behind: `<drawing r:id="rIdD"/>${TABLE_PARTS}<extLst><ext uri="{3A4CF648-6AED-40f4-86FF-DC5316D8AED3}" xmlns:x15="${X15}"><x14:slicerList xmlns:x14="${X14}"><x14:slicer r:id="rIdS"/></x14:slicerList></ext></extLst>`,
        relationships: [tableRelation, ['rIdD', 'drawing', '../drawings/drawing1.xml']],
      },
      {
        workbookTail: `<extLst><ext uri="{46BE6895-7355-4a93-B00E-2C351335B9C9}" xmlns:x15="${X15}"><x15:slicerCaches xmlns:x14="${X14}"><x14:slicerCache r:id="rIdC"/></x15:slicerCaches></ext></extLst>`,
        parts: {
          'xl/tables/table1.xml': table(),
          'xl/worksheets/_rels/sheet1.xml.rels': relationships([
            ['rIdT', `${REL}/table`, '../tables/table1.xml'],
            ['rIdD', `${REL}/drawing`, '../drawings/drawing1.xml'],
            ['rIdS', `${MS}/2007/relationships/slicer`, '../slicers/slicer1.xml'],
          ]),
          'xl/_rels/workbook.xml.rels': relationships([
            ['rId1', `${REL}/worksheet`, 'worksheets/sheet1.xml'],
            ['rIdStyles', `${REL}/styles`, 'styles.xml'],
            ['rIdC', `${MS}/2007/relationships/slicerCache`, 'slicerCaches/slicerCache1.xml'],
          ]),
          'xl/slicers/slicer1.xml': `<slicers xmlns="${X14}"><slicer name="Fit" cache="Slicer_Fit" caption="Fit" rowHeight="241300"/></slicers>`,
          'xl/slicerCaches/slicerCache1.xml': `<slicerCacheDefinition xmlns="${X14}" name="Slicer_Fit" sourceName="Fit"><extLst><x:ext xmlns:x="${MAIN}" uri="{2F2917AC-EB37-4324-AD4E-5DD8C200BD13}" xmlns:x15="${X15}"><x15:tableSlicerCache tableId="1" column="3"/></x:ext></extLst></slicerCacheDefinition>`,
          'xl/drawings/drawing1.xml': `<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"><xdr:absoluteAnchor><xdr:pos x="0" y="900000"/><xdr:ext cx="1800000" cy="900000"/><mc:AlternateContent xmlns:mc="${MC}"><mc:Choice xmlns:sle15="http://schemas.microsoft.com/office/drawing/2012/slicer" Requires="sle15"><xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Fit"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="http://schemas.microsoft.com/office/drawing/2010/slicer"><sle:slicer xmlns:sle="http://schemas.microsoft.com/office/drawing/2010/slicer" name="Fit"/></a:graphicData></a:graphic></xdr:graphicFrame></mc:Choice><mc:Fallback/></mc:AlternateContent><xdr:clientData/></xdr:absoluteAnchor></xdr:wsDr>`,
        },
        overrides: {
          '/xl/tables/table1.xml': TYPES.table,
          '/xl/drawings/drawing1.xml': TYPES.drawing,
          '/xl/slicers/slicer1.xml': 'application/vnd.ms-excel.slicer+xml',
          '/xl/slicerCaches/slicerCache1.xml': 'application/vnd.ms-excel.slicerCache+xml',
        },
      },
    ),
  },
  {
    holds: 'a strict book with a table, a date as text and counts from 1904',
    ending: 'xlsx',
    make: engineBook(
      {
        cells: { 2: '<c r="F2" s="2" t="d"><v>2026-01-02</v></c>' },
        behind: TABLE_PARTS,
        relationships: [tableRelation],
      },
      {
        main: `${STRICT}/spreadsheetml/main`,
        rel: `${STRICT}/officeDocument/relationships`,
        styles: STYLES.replace(MAIN, `${STRICT}/spreadsheetml/main`),
        workbookHead: '<workbookPr date1904="1"/>',
        parts: { 'xl/tables/table1.xml': table(`${STRICT}/spreadsheetml/main`) },
        overrides: { '/xl/tables/table1.xml': TYPES.table },
      },
    ),
    unreadByExcelJs: 'reads no strict package',
  },
  {
    holds: 'elements that only newer programs know, marked as such',
    ending: 'xlsx',
    make: remade(
      plain,
      (text) =>
        text
          .replace(
            '<worksheet ',
            `<worksheet xmlns:mc="${MC}" mc:Ignorable="x14ac xr" xmlns:x14ac="http://schemas.microsoft.com/office/spreadsheetml/2009/9/ac" xmlns:xr="${MS}/spreadsheetml/2014/revision" xr:uid="{00000000-0001-0000-0000-000000000000}" `,
          )
          .replaceAll('<row ', '<row x14ac:dyDescent="0.25" ')
          .replace(
            '</sheetData>',
            `</sheetData><mc:AlternateContent><mc:Choice xmlns:x14="${X14}" Requires="x14"/></mc:AlternateContent>`,
          ),

      SHEET,
    ),
  },
  {
    holds: 'a sheet whose elements have a prefix',
    ending: 'xlsx',
    make: remade(plain, (text) => prefixed(text), SHEET),
    unreadByExcelJs: 'finds no cell in it',
  },
  {
    holds: 'a workbook and formats whose elements have a prefix',
    ending: 'xlsx',
    make: () => {
      const parts = plain();
      return zipOf({
        ...parts,
        'xl/workbook.xml': prefixed(String(parts['xl/workbook.xml'])),
        'xl/styles.xml': prefixed(String(parts['xl/styles.xml'])),
      });
    },
    unreadByExcelJs: 'finds no sheet in it',
  },
  {
    holds: 'a sheet in UTF-16',
    ending: 'xlsx',
    make: remade(plain, (text) => Buffer.from(`\ufeff${text.replace('UTF-8', 'UTF-16')}`, 'utf16le'), SHEET),
    unreadByExcelJs: 'reads no UTF-16',
  },
  {
    holds: 'a sheet with its byte order mark',
    ending: 'xlsx',
    make: remade(plain, (text) => `\ufeff${text}`, SHEET),
  },
  {
    holds: 'no formats at all',
    ending: 'xlsx',
    make: () => {
      const xml = `<sheetData>${journalRows().replaceAll(' s="1"', '')}</sheetData>`;
      return zipOf(handMadeParts({ sheets: [{ name: 'Journals', xml }] }));
    },
  },
  {
    holds: 'cells and rows without their places',
    ending: 'xlsx',
    make: remade(plain, (text) => text.replaceAll(/(<(?:c|row)) r="\w+"/g, '$1'), SHEET),
    unreadByExcelJs: 'finds no cell without its place',
  },
  {
    holds: 'a scenario, a data consolidation, own views and checks that are switched off',
    ending: 'xlsx',
    make: engineBook(
      {
        behind:
          '<scenarios current="0"><scenario name="Hot" count="1" user="E. Quill"><inputCells r="E2" val="42.01"/></scenario></scenarios><dataConsolidate function="average"><dataRefs count="1"><dataRef ref="E2:E4" sheet="Journals"/></dataRefs></dataConsolidate><customSheetViews><customSheetView guid="{00000000-0000-0000-0000-000000000001}" scale="80"/></customSheetViews><ignoredErrors><ignoredError sqref="A2:A4" numberStoredAsText="1"/></ignoredErrors>',
      },
      {
        workbookTail:
          '<customWorkbookViews><customWorkbookView name="Mine" guid="{00000000-0000-0000-0000-000000000001}" windowWidth="9000" windowHeight="9000" activeSheetId="1"/></customWorkbookViews>',
      },
    ),
  },
  {
    holds: 'a data table of what would be',
    leftOut: 'rows 7 to 9',
    ending: 'xlsx',
    make: engineBook({
      rows: '<row r="7"><c r="A7"><f>E2</f><v>42.0015</v></c><c r="B7"><v>1</v></c></row><row r="8"><c r="A8"><v>1</v></c><c r="B8"><f t="dataTable" ref="B8:B9" dt2D="0" dtr="0" r1="D2"/><v>2</v></c></row><row r="9"><c r="A9"><v>2</v></c><c r="B9"><v>3</v></c></row>',
    }),
  },
  {
    holds: 'a value of a rich type (a picture within a cell)',
    ending: 'xlsx',
    make: engineBook(
      { cells: { 2: '<c r="F2" t="e" vm="1"><v>#VALUE!</v></c>' } },
      {
        relationships: [['rIdM', 'sheetMetadata', 'metadata.xml']],
        parts: {
          'xl/metadata.xml': `<metadata xmlns="${MAIN}" xmlns:xlrd="${MS}/spreadsheetml/2017/richdata"><metadataTypes count="1"><metadataType name="XLRICHVALUE" minSupportedVersion="120000"/></metadataTypes><futureMetadata name="XLRICHVALUE" count="1"><bk><extLst><ext uri="{3e2802c4-a4d2-4d8b-9148-e3be6c30e623}"><xlrd:rvb i="0"/></ext></extLst></bk></futureMetadata><valueMetadata count="1"><bk><rc t="1" v="0"/></bk></valueMetadata></metadata>`,
        },
        overrides: { '/xl/metadata.xml': TYPES.metadata },
      },
    ),
  },
  {
    holds: 'a calculation chain',
    ending: 'xlsx',
    make: engineBook(
      { cells: { 2: '<c r="F2"><f>E2*2</f><v>84.003</v></c>' } },
      {
        relationships: [['rIdC', 'calcChain', 'calcChain.xml']],
        parts: { 'xl/calcChain.xml': `<calcChain xmlns="${MAIN}"><c r="F2" i="1"/></calcChain>` },
        overrides: {
          '/xl/calcChain.xml': 'application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml',
        },
      },
    ),
  },
  {
    holds: 'a query and the connection that it uses',
    ending: 'xlsx',
    make: engineBook(
      {
        sheets: [
          {
            name: 'Data',
            xml: `<sheetData><row r="1">${textCell('A1', 'Price')}</row></sheetData>`,
            relationships: [['rIdQ', 'queryTable', '../queryTables/queryTable1.xml']],
          },
        ],
      },
      {
        relationships: [['rIdK', 'connections', 'connections.xml']],
        workbookTail:
          '<definedNames><definedName name="Query" localSheetId="1">Data!$A$1</definedName></definedNames>',
        parts: {
          'xl/connections.xml': `<connections xmlns="${MAIN}"><connection id="1" name="Query" type="6" refreshedVersion="8"><textPr sourceFile="prices.txt"/></connection></connections>`,
          'xl/queryTables/queryTable1.xml': `<queryTable xmlns="${MAIN}" name="Query" connectionId="1"/>`,
        },
        overrides: {
          '/xl/connections.xml':
            'application/vnd.openxmlformats-officedocument.spreadsheetml.connections+xml',
          '/xl/queryTables/queryTable1.xml':
            'application/vnd.openxmlformats-officedocument.spreadsheetml.queryTable+xml',
        },
      },
    ),
  },
];
