/** Workbooks whose parts are sound and whose sheets are not, or only seem not to be. */
import { book, HEAD, journals, ROW, SHEET, type Shape, sheetWith } from './shape.js';

const many = (count: number, text: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => text(i)).join('');
const workbookOf = (entries: string) => ({
  ...journals(SHEET),
  'xl/workbook.xml': `<workbook xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships">${entries}</workbook>`,
});
const nested = (depth: number) => `${'<a>'.repeat(depth)}${'</a>'.repeat(depth)}`;
const formula = (text: string) => `<c r="G2"><f>${text}</f></c>`;

export const SHEET_SHAPES: readonly Shape[] = [
  {
    name: 'a row beyond the grid',
    make: book(sheetWith({ rows: '<row r="1048577"/>' })),
    says: /row has the number 1048577; a sheet has 1048576 rows/,
  },
  {
    name: 'a row of a huge number',
    make: book(sheetWith({ rows: '<row r="4294967296"><c r="A4294967296"><v>1</v></c></row>' })),
    says: /row has the number 4294967296/,
  },
  {
    name: 'a row without a number',
    make: book(sheetWith({ rows: '<row r="x"/>' })),
    says: /row has the number x/,
  },
  {
    name: 'a cell beyond the last column',
    make: book(sheetWith({ cells: '<c r="XFE2"><v>1</v></c>' })),
    says: /row 2 holds a cell at XFE2/,
  },
  {
    name: 'a cell of another row',
    make: book(sheetWith({ cells: '<c r="F3"><v>1</v></c>' })),
    says: /row 2 holds a cell at F3/,
  },
  {
    name: 'a cell of no place',
    make: book(sheetWith({ cells: '<c r="nowhere"><v>1</v></c>' })),
    says: /row 2 holds a cell at nowhere/,
  },
  {
    name: 'two cells of one place',
    make: book(sheetWith({ cells: '<c r="E2"><v>43</v></c>' })),
    says: /the cell E2 stands twice or behind/,
  },
  {
    name: 'two rows of one number',
    make: book(sheetWith({ rows: ROW.replaceAll('42.003', '43') })),
    says: /the row 2 stands twice or behind/,
  },
  {
    name: 'cells without a reference',
    make: book(journals(`<sheetData>${HEAD}${ROW}</sheetData>`.replaceAll(/ r="\w+"/g, ''))),
    says: undefined,
  },
  {
    name: 'a cell in the last row',
    make: book(sheetWith({ rows: '<row r="1048576"><c r="H1048576"><v>1</v></c></row>' })),
    says: undefined,
  },
  {
    name: 'a formula over a sheet that reaches the last row',
    make: book(
      sheetWith({
        cells: formula('SUM(A1:E1048576)'),
        rows: '<row r="1048576"><c r="H1048576"><v>1</v></c></row>',
      }),
    ),
    says: undefined,
  },
  {
    name: 'a formula in a sheet that reaches the last cell',
    make: book(
      sheetWith({ cells: formula('1+1'), rows: '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>' }),
    ),
    says: /reaches to XFD1048576/,
  },
  {
    name: 'a sheet that says it is the whole grid',
    make: book(sheetWith({ before: '<dimension ref="A1:XFD1048576"/>' })),
    says: undefined,
  },
  {
    name: 'a merge over the whole grid',
    make: book(sheetWith({ behind: '<mergeCells><mergeCell ref="F4:XFD1048576"/></mergeCells>' })),
    says: undefined,
  },
  {
    name: 'a merge beyond the grid',
    make: book(sheetWith({ behind: '<mergeCells><mergeCell ref="F4:ZZZZZ99999999"/></mergeCells>' })),
    says: undefined,
  },
  {
    name: '100,000 merges',
    make: book(() =>
      sheetWith({
        behind: `<mergeCells>${many(100_000, (i) => `<mergeCell ref="T${2 * i + 3}:U${2 * i + 4}"/>`)}</mergeCells>`,
      }),
    ),
    says: undefined,
  },
  {
    name: 'a validation over the whole grid',
    make: book(
      sheetWith({
        behind:
          '<dataValidations count="1"><dataValidation type="whole" sqref="A1:XFD1048576"><formula1>1</formula1></dataValidation></dataValidations>',
      }),
    ),
    says: undefined,
  },
  {
    name: 'names over the whole grid',
    make: book(
      journals(SHEET, {
        workbookTail: `<definedNames>${many(1000, (i) => `<definedName name="n${i}">Journals!$A$1:$XFD$1048576</definedName>`)}</definedNames>`,
      }),
    ),
    says: undefined,
  },
  {
    name: '100,000 names',
    make: book(() =>
      journals(SHEET, {
        workbookTail: `<definedNames>${many(100_000, (i) => `<definedName name="n${i}">Journals!$A$${i + 1}</definedName>`)}</definedNames>`,
      }),
    ),
    says: undefined,
  },
  {
    name: 'columns to the end of numbers',
    make: book(sheetWith({ before: '<cols><col min="1" max="4294967295" width="9"/></cols>' })),
    says: undefined,
  },
  {
    name: 'elements nested 100,000 deep in a sheet',
    make: book(() => sheetWith({ behind: nested(100_000) })),
    says: /more than 200 deep/,
  },
  {
    name: 'elements nested 100,000 deep in the workbook',
    make: book(() => workbookOf(nested(100_000))),
    says: /workbook\.xml, elements stand within one another more than 200 deep/,
  },
  {
    name: 'entities that grow',
    make: book({
      ...journals(SHEET),
      'xl/worksheets/sheet1.xml': `<!DOCTYPE a [<!ENTITY a "${'x'.repeat(1000)}">${many(9, (i) => `<!ENTITY a${i} "&a;&a;&a;&a;&a;&a;&a;&a;&a;">`)}]><worksheet>&a8;</worksheet>`,
    }),
    says: /document type/,
  },
  {
    name: 'an entity that reads a file',
    make: book({
      ...journals(SHEET),
      'xl/worksheets/sheet1.xml':
        '<!DOCTYPE a [<!ENTITY a SYSTEM "file:///etc/passwd">]><worksheet>&a;</worksheet>',
    }),
    says: /document type/,
  },
  {
    name: 'a tag of a million spaces',
    make: book(() => sheetWith({ behind: `<pageMargins${' '.repeat(1_000_000)}left="1"/>` })),
    says: undefined,
  },
  {
    name: 'a tag of 100,000 attributes',
    make: book(() => sheetWith({ behind: `<pageMargins ${many(100_000, (i) => `a${i}="1" `)}/>` })),
    says: undefined,
  },
  {
    name: 'a shared text that is not there',
    make: book(sheetWith({ cells: '<c r="F2" t="s"><v>7</v></c>' })),
    says: /cell F2 shows shared text number 7, of which there are 0/,
  },
  {
    name: 'two sheets of one name',
    make: book(
      workbookOf(
        '<sheets><sheet name="Journals" sheetId="1" r:id="rId1"/><sheet name="JOURNALS" sheetId="2" r:id="rId1"/></sheets>',
      ),
    ),
    says: /two sheets have the name JOURNALS/,
  },
  {
    name: 'two sheets of one part',
    make: book(
      workbookOf(
        '<sheets><sheet name="Journals" sheetId="1" r:id="rId1"/><sheet name="Rods" sheetId="2" r:id="rId1"/></sheets>',
      ),
    ),
    says: /two sheets have the part .*sheet1\.xml/,
  },
  {
    name: '5,000 sheets',
    make: book(() =>
      workbookOf(`<sheets>${many(5000, (i) => `<sheet name="s${i}" sheetId="${i}" r:id="rId1"/>`)}</sheets>`),
    ),
    says: /5000 sheets; expected at most 1000/,
  },
  { name: 'a workbook without sheets', make: book(workbookOf('')), says: /no worksheet/ },
  {
    name: 'numbers that are none',
    make: book(
      sheetWith({ cells: '<c r="F2"><v>1e999</v></c><c r="G2"><v>0x1F</v></c><c r="H2"><v>NaN</v></c>' }),
    ),
    says: undefined,
  },
  {
    name: 'a formula of a thousand parentheses',
    make: book(sheetWith({ cells: formula(`${'('.repeat(5000)}1${')'.repeat(5000)}`) })),
    says: undefined,
  },
  {
    name: 'a formula of nested functions',
    make: book(sheetWith({ cells: formula(`${'IF(TRUE,'.repeat(2000)}1${')'.repeat(2000)}`) })),
    says: undefined,
  },
  {
    name: 'a formula of a million characters',
    make: book(() => sheetWith({ cells: formula(`1${'+1'.repeat(500_000)}`) })),
    says: undefined,
  },
  {
    name: 'a formula that makes a hundred million cells',
    make: book(sheetWith({ cells: formula('SUM(SEQUENCE(1000000,100))') })),
    says: undefined,
  },
  { name: 'a formula that names itself', make: book(sheetWith({ cells: formula('G2+1') })), says: undefined },
  {
    name: 'a sum over the whole grid, a thousand times',
    make: book(() =>
      sheetWith({
        rows: many(1000, (i) => `<row r="${i + 3}"><c r="F${i + 3}"><f>SUM($A$1:$E$1048576)</f></c></row>`),
      }),
    ),
    says: undefined,
  },
  {
    name: 'a chain of 20,000 formulas',
    make: book(() =>
      sheetWith({
        rows: many(20_000, (i) => `<row r="${i + 3}"><c r="F${i + 3}"><f>F${i + 2}+1</f></c></row>`),
      }),
    ),
    says: undefined,
  },
  {
    name: 'a text repeated beyond measure',
    make: book(sheetWith({ cells: formula('REPT(REPT("x",32767),32767)') })),
    says: undefined,
  },
];
