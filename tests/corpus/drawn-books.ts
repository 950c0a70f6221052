/** Books with things that are drawn: charts, pictures, boxes, notes, pivots. */
import { type CorpusBook, engineBook, TYPES, textCell } from './corpus-book.js';

const DRAWING =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const REL = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const RELATIONSHIPS = 'http://schemas.openxmlformats.org/package/2006/relationships';

const anchor = (content: string) =>
  `<xdr:wsDr ${DRAWING}><xdr:twoCellAnchor><xdr:from><xdr:col>1</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>6</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>5</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>16</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>${content}<xdr:clientData/></xdr:twoCellAnchor></xdr:wsDr>`;

const CHART_FRAME =
  '<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Chart 1"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="http://schemas.openxmlformats.org/drawingml/2006/chart"><c:chart xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame>';
const CHART = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<c:chartSpace xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"><c:chart><c:plotArea><c:layout/><c:barChart><c:barDir val="col"/><c:grouping val="clustered"/><c:ser><c:idx val="0"/><c:order val="0"/><c:val><c:numRef><c:f>Journals!$E$2:$E$4</c:f></c:numRef></c:val></c:ser><c:axId val="1"/><c:axId val="2"/></c:barChart><c:catAx><c:axId val="1"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="b"/><c:crossAx val="2"/></c:catAx><c:valAx><c:axId val="2"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="l"/><c:crossAx val="1"/></c:valAx></c:plotArea></c:chart></c:chartSpace>`;
/** One point, a picture of 1 by 1. */
const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);
const PICTURE =
  '<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="3" name="Picture 1"/><xdr:cNvPicPr/></xdr:nvPicPr><xdr:blipFill><a:blip r:embed="rId1"/><a:stretch><a:fillRect/></a:stretch></xdr:blipFill><xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:pic>';
const BOX =
  '<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="4" name="Box 1"/><xdr:cNvSpPr txBox="1"/></xdr:nvSpPr><xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr><xdr:txBody><a:bodyPr/><a:p><a:r><a:t>Torque the caps first</a:t></a:r></a:p></xdr:txBody></xdr:sp>';
const relationships = (list: readonly (readonly [string, string])[]) =>
  `<Relationships xmlns="${RELATIONSHIPS}">${list.map(([kind, target], i) => `<Relationship Id="rId${i + 1}" Type="${REL}/${kind}" Target="${target}"/>`).join('')}</Relationships>`;

const drawing = [['rIdD', 'drawing', '../drawings/drawing1.xml']] as const;
const COMMENTS = `<comments xmlns="${MAIN}"><authors><author>E. Quill</author></authors><commentList><comment ref="E3" authorId="0"><text><r><rPr><b/></rPr><t>Twice measured</t></r></text></comment></commentList></comments>`;
const VML =
  '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shape id="s1" type="#t202" style="visibility:hidden"><x:ClientData ObjectType="Note"><x:Row>2</x:Row><x:Column>4</x:Column></x:ClientData></v:shape></xml>';

export const DRAWN_BOOKS: readonly CorpusBook[] = [
  {
    holds: 'a chart',
    ending: 'xlsx',
    make: engineBook(
      { behind: '<drawing r:id="rIdD"/>', relationships: drawing },
      {
        parts: {
          'xl/drawings/drawing1.xml': anchor(CHART_FRAME),
          'xl/drawings/_rels/drawing1.xml.rels': relationships([['chart', '../charts/chart1.xml']]),
          'xl/charts/chart1.xml': CHART,
        },
        overrides: { '/xl/drawings/drawing1.xml': TYPES.drawing, '/xl/charts/chart1.xml': TYPES.chart },
      },
    ),
  },
  {
    holds: 'a chart sheet',
    ending: 'xlsx',
    make: engineBook(
      {
        sheets: [
          {
            name: 'Chart',
            kind: 'chartsheet',
            part: 'chartsheets/sheet1.xml',
            xml: `<?xml version="1.0"?><chartsheet xmlns="${MAIN}" xmlns:r="${REL}"><sheetViews><sheetView workbookViewId="0"/></sheetViews><drawing r:id="rIdD"/></chartsheet>`,
            relationships: drawing,
          },
        ],
      },
      {
        parts: {
          'xl/drawings/drawing1.xml': anchor(CHART_FRAME),
          'xl/drawings/_rels/drawing1.xml.rels': relationships([['chart', '../charts/chart1.xml']]),
          'xl/charts/chart1.xml': CHART,
        },
        overrides: { '/xl/drawings/drawing1.xml': TYPES.drawing, '/xl/charts/chart1.xml': TYPES.chart },
      },
    ),
  },
  {
    holds: 'a picture',
    ending: 'xlsx',
    make: engineBook(
      { behind: '<drawing r:id="rIdD"/>', relationships: drawing },
      {
        parts: {
          'xl/drawings/drawing1.xml': anchor(PICTURE),
          'xl/drawings/_rels/drawing1.xml.rels': relationships([['image', '../media/image1.png']]),
          'xl/media/image1.png': PNG,
        },
        overrides: { '/xl/drawings/drawing1.xml': TYPES.drawing, '/xl/media/image1.png': TYPES.png },
      },
    ),
  },
  {
    holds: 'a text box',
    ending: 'xlsx',
    make: engineBook(
      { behind: '<drawing r:id="rIdD"/>', relationships: drawing },
      {
        parts: { 'xl/drawings/drawing1.xml': anchor(BOX) },
        overrides: { '/xl/drawings/drawing1.xml': TYPES.drawing },
      },
    ),
  },
  {
    holds: 'notes on cells',
    ending: 'xlsx',
    make: engineBook(
      {
        behind: '<legacyDrawing r:id="rIdV"/>',
        relationships: [
          ['rIdC', 'comments', '../comments1.xml'],
          ['rIdV', 'vmlDrawing', '../drawings/vmlDrawing1.vml'],
        ],
      },
      {
        parts: { 'xl/comments1.xml': COMMENTS, 'xl/drawings/vmlDrawing1.vml': VML },
        overrides: { '/xl/comments1.xml': TYPES.comments },
      },
    ),
  },
  {
    holds: 'threaded comments and the persons who wrote them',
    ending: 'xlsx',
    make: engineBook(
      {
        behind: '<legacyDrawing r:id="rIdV"/>',
        relationships: [
          ['rIdC', 'comments', '../comments1.xml'],
          ['rIdV', 'vmlDrawing', '../drawings/vmlDrawing1.vml'],
          ['rIdT', 'threadedComment', '../threadedComments/threadedComment1.xml'],
        ],
      },
      {
        relationships: [['rIdP', 'person', 'persons/person.xml']],
        parts: {
          'xl/comments1.xml': COMMENTS,
          'xl/drawings/vmlDrawing1.vml': VML,
          'xl/threadedComments/threadedComment1.xml':
            '<ThreadedComments xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><threadedComment ref="E3" dT="2026-01-02T03:04:05" personId="{1}" id="{2}"><text>Measure again?</text></threadedComment></ThreadedComments>',
          'xl/persons/person.xml':
            '<personList xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><person displayName="E. Quill" id="{1}"/></personList>',
        },
        overrides: {
          '/xl/comments1.xml': TYPES.comments,
          '/xl/threadedComments/threadedComment1.xml': TYPES.threaded,
          '/xl/persons/person.xml': TYPES.persons,
        },
      },
    ),
  },
  {
    holds: 'a pivot table',
    ending: 'xlsx',
    make: engineBook(
      {
        sheets: [
          {
            name: 'Pivot',
            xml: `<sheetData><row r="3">${textCell('A3', 'Fit')}</row><row r="4">${textCell('A4', 'big end')}<c r="B4"><v>3</v></c></row></sheetData>`,
            relationships: [['rId1', 'pivotTable', '../pivotTables/pivotTable1.xml']],
          },
        ],
      },
      {
        relationships: [['rIdCache', 'pivotCacheDefinition', 'pivotCache/pivotCacheDefinition1.xml']],
        workbookTail: '<pivotCaches><pivotCache cacheId="1" r:id="rIdCache"/></pivotCaches>',
        parts: {
          'xl/pivotCache/pivotCacheDefinition1.xml': `<pivotCacheDefinition xmlns="${MAIN}" xmlns:r="${REL}" r:id="rId1" recordCount="3"><cacheSource type="worksheet"><worksheetSource ref="C1:C4" sheet="Journals"/></cacheSource><cacheFields count="1"><cacheField name="Fit"><sharedItems count="1"><s v="big end"/></sharedItems></cacheField></cacheFields></pivotCacheDefinition>`,
          'xl/pivotCache/_rels/pivotCacheDefinition1.xml.rels': relationships([
            ['pivotCacheRecords', 'pivotCacheRecords1.xml'],
          ]),
          'xl/pivotCache/pivotCacheRecords1.xml': `<pivotCacheRecords xmlns="${MAIN}" count="3"><r><x v="0"/></r><r><x v="0"/></r><r><x v="0"/></r></pivotCacheRecords>`,
          'xl/pivotTables/pivotTable1.xml': `<pivotTableDefinition xmlns="${MAIN}" name="Pivot1" cacheId="1" dataCaption="Values" rowHeaderCaption="Fit"><location ref="A3:A4" firstHeaderRow="1" firstDataRow="1" firstDataCol="1"/><pivotFields count="1"><pivotField axis="axisRow" showAll="0"><items count="2"><item x="0"/><item t="default"/></items></pivotField></pivotFields><rowFields count="1"><field x="0"/></rowFields></pivotTableDefinition>`,
          'xl/pivotTables/_rels/pivotTable1.xml.rels': relationships([
            ['pivotCacheDefinition', '../pivotCache/pivotCacheDefinition1.xml'],
          ]),
        },
        overrides: {
          '/xl/pivotCache/pivotCacheDefinition1.xml': TYPES.pivotCache,
          '/xl/pivotCache/pivotCacheRecords1.xml': TYPES.pivotRecords,
          '/xl/pivotTables/pivotTable1.xml': TYPES.pivotTable,
        },
      },
    ),
  },
  {
    holds: 'sparklines',
    ending: 'xlsx',
    make: engineBook({
      behind:
        '<extLst><ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:sparklineGroups xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:sparklineGroup><x14:sparklines><x14:sparkline><xm:f>Journals!E2:E4</xm:f><xm:sqref>F2</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst>',
    }),
  },
];
