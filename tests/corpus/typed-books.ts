/** Books with what people type beside, below and between: all of it stays, and none of it is a part. */
import { resultHeaders } from '../../src/engine/columns/result-headers.js';
import { STYLES } from '../io/xlsx/hand-made.js';
import { type CorpusBook, engineBook, TYPES, textCell } from './corpus-book.js';

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const HEADERS = ['Part', 'Engine', 'Fit', 'Position', 'A 0', 'Note'];
const numberCell = (address: string, value: number) => `<c r="${address}"><v>${value}</v></c>`;
const formulaCell = (address: string, formula: string, value: number) =>
  `<c r="${address}"><f>${formula}</f><v>${value}</v></c>`;
const letters = (column: number) => String.fromCharCode(65 + column);

/** The cells of rows 1 to 4 from G on, as an earlier run left them under the headers; a header of the user's has words of theirs. */
function writtenCells(headers: readonly string[]): Record<number, string> {
  const values: Readonly<Record<string, string>> = { Status: 'no limits', Why: 'Limits has no row for it' };
  const cells: Record<number, string> = { 1: '', 2: '', 3: '', 4: '' };
  for (const [at, header] of headers.entries()) {
    const column = letters(6 + at);
    cells[1] += textCell(`${column}1`, header);
    for (const row of [2, 3, 4]) {
      const isSize = ['Size', 'Largest', 'Smallest', 'Least'].includes(header);
      const isEmpty = resultHeaders('Journals').includes(header) && values[header] === undefined && !isSize;
      if (isSize) cells[row] += numberCell(`${column}${row}`, 42.001);
      else if (!isEmpty) cells[row] += textCell(`${column}${row}`, values[header] ?? `batch ${row}`);
    }
  }
  return cells;
}

const OURS = resultHeaders('Journals');
const SIGNATURE = `<row r="7">${textCell('A7', 'Signed')}${textCell('B7', 'E. Quill')}</row>`;

function listXml(ref: string, names: readonly string[], more: { attributes?: string; filter?: string }) {
  const columns = names.map((name, i) => `<tableColumn id="${i + 1}" name="${name}"/>`).join('');
  return `<table xmlns="${MAIN}" id="1" name="List1" displayName="List1" ref="${ref}" ${more.attributes ?? 'totalsRowShown="0"'}>${more.filter ?? ''}<tableColumns count="${names.length}">${columns}</tableColumns></table>`;
}

function withList(
  xml: string,
  extras: { readonly cells?: Record<number, string>; readonly rows?: string } = {},
): CorpusBook['make'] {
  return engineBook(
    {
      ...extras,
      behind: '<tableParts count="1"><tablePart r:id="rIdT"/></tableParts>',
      relationships: [['rIdT', 'table', '../tables/table1.xml']],
    },
    { parts: { 'xl/tables/table1.xml': xml }, overrides: { '/xl/tables/table1.xml': TYPES.table } },
  );
}

const inserted = (headers: readonly string[], at: number, header: string) => headers.toSpliced(at, 0, header);

export const TYPED_BOOKS: readonly CorpusBook[] = [
  {
    holds: 'a scribble to the right of the table and below it',
    ending: 'xlsx',
    make: engineBook({
      cells: { 3: numberCell('H3', 42.7) },
      rows: `<row r="9">${numberCell('G9', 17)}${textCell('I9', 'ask again')}</row>`,
    }),
  },
  {
    holds: 'a gap in the headers, with numbers under it',
    ending: 'xlsx',
    make: engineBook({
      cells: {
        1: textCell('H1', 'Lot'),
        2: numberCell('G2', 5) + numberCell('H2', 7),
        4: numberCell('I4', 9),
      },
    }),
  },
  {
    holds: 'a table that reaches the last column',
    ending: 'xlsx',
    make: engineBook({ cells: { 1: textCell('XFD1', 'Lot'), 3: numberCell('XFD3', 3) } }),
    apart: ['Journals'],
  },
  {
    holds: 'a table that leaves too few columns',
    ending: 'xlsx',
    make: engineBook({ cells: { 1: textCell('XEX1', 'Lot'), 2: numberCell('XEY2', 3) } }),
    apart: ['Journals'],
  },
  {
    holds: 'a table (ListObject) with a filter, a sort order and a totals row',
    ending: 'xlsx',
    make: withList(
      listXml('A1:F5', HEADERS, {
        attributes: 'totalsRowCount="1"',
        filter:
          '<autoFilter ref="A1:F4"><filterColumn colId="1"><filters><filter val="E1"/></filters></filterColumn></autoFilter><sortState ref="A2:F4"><sortCondition ref="D2:D4"/></sortState>',
      }),
      {
        rows: `<row r="5">${textCell('A5', 'Total')}${formulaCell('E5', 'SUBTOTAL(101,List1[A 0])', 42.0015)}</row>`,
      },
    ),
    leftOut: 'row 5',
  },
  {
    holds: 'a table (ListObject) that has a column Status of its own',
    ending: 'xlsx',
    make: withList(listXml('A1:G4', [...HEADERS, 'Status'], { filter: '<autoFilter ref="A1:G4"/>' }), {
      cells: { 1: textCell('G1', 'Status'), 2: textCell('G2', 'seen') },
    }),
  },
  {
    holds: 'a mean, a range and a product of the list under the readings',
    ending: 'xlsx',
    make: engineBook({
      rows: `<row r="5">${textCell('A5', 'Mean')}${formulaCell('E5', 'AVERAGE(E2:E4)', 42.0015)}</row><row r="6">${textCell('A6', 'Range')}${formulaCell('E6', 'MAX($E$2:$E$4)-MIN(E2:E4)', 0.001)}</row><row r="8">${formulaCell('E8', '(E2+E3+E4)/3', 42.0015)}</row>`,
    }),
    leftOut: 'rows 5 to 6, 8',
  },
  {
    holds: 'a remark and a signature below',
    ending: 'xlsx',
    make: engineBook({
      rows: `<row r="6">${textCell('A6', 'Measured twice, the same each time')}</row>${SIGNATURE}`,
    }),
    leftOut: 'rows 6 to 7',
  },
  {
    holds: 'a data table below the readings',
    ending: 'xlsx',
    make: engineBook({
      rows: `<row r="6">${textCell('A6', 'what if')}<c r="D6"><f>E2</f><v>42.0015</v></c></row><row r="7">${textCell('A7', 'x')}<c r="D7"><f t="dataTable" ref="D7:E8" dt2D="0" dtr="0" r1="A9"/><v>1</v></c>${numberCell('E7', 42)}</row><row r="8">${textCell('A8', 'y')}${numberCell('D8', 2)}${numberCell('E8', 43)}</row>`,
    }),
    leftOut: 'rows 6 to 8',
  },
  {
    holds: 'results of an earlier run, a mean and a linked remark below them, fills and widths of the user',
    ending: 'xlsx',
    make: engineBook(
      {
        before:
          '<cols><col min="7" max="7" width="21.5" customWidth="1"/><col min="15" max="15" width="77" style="4" customWidth="1"/></cols>',
        cells: writtenCells(OURS),
        rows: `<row r="6">${formulaCell('G6', 'AVERAGE(G2:G4)', 42.001)}</row><row r="7">${textCell('N7', 'E. Quill')}${textCell('O7', 'see')}${textCell('Q7', 'beside')}</row>`,
        behind: '<hyperlinks><hyperlink ref="O7" location="Journals!A1"/></hyperlinks>',
      },
      { styles: filledStyles() },
    ),
  },
  {
    holds: 'results of an earlier run, one of them under a header of the user',
    ending: 'xlsx',
    make: engineBook({ cells: writtenCells(OURS.with(2, 'Least')) }),
  },
  {
    holds: 'results of an earlier run with a column of the user between them',
    ending: 'xlsx',
    make: engineBook({ cells: writtenCells(inserted(OURS, 3, 'Lot')) }),
  },
  {
    holds: 'results of an earlier run with a column of the user behind them',
    ending: 'xlsx',
    make: engineBook({ cells: writtenCells([...OURS, 'Lot']) }),
  },
  {
    holds: 'results of an earlier run, the first of them under a header of the user',
    ending: 'xlsx',
    make: engineBook({ cells: writtenCells(OURS.with(0, 'Least')) }),
  },
  {
    holds: 'results of an earlier run that the user has merged',
    ending: 'xlsx',
    make: engineBook({
      cells: writtenCells(OURS),
      behind: '<mergeCells count="1"><mergeCell ref="H3:I4"/></mergeCells>',
    }),
    apart: ['Journals'],
  },
  {
    holds: 'results of an earlier run within a table (ListObject)',
    ending: 'xlsx',
    make: withList(listXml('A1:O4', [...HEADERS, ...OURS], { filter: '<autoFilter ref="A1:O4"/>' }), {
      cells: writtenCells(OURS),
    }),
  },
];

/** The styles with a fifth cell format: one that is filled. */
function filledStyles(): string {
  return STYLES.replace(
    '</fills>',
    '<fill><patternFill patternType="solid"><fgColor rgb="FFDDDDDD"/></patternFill></fill></fills>',
  )
    .replace('<fills count="2">', '<fills count="3">')
    .replace('<cellXfs count="4">', '<cellXfs count="5">')
    .replace(
      '</cellXfs>',
      '<xf numFmtId="0" fontId="0" fillId="2" borderId="0" xfId="0" applyFill="1"/></cellXfs>',
    );
}
