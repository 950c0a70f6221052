/** Zips and packages that are not what they seem. */
import { deflateRawSync } from 'node:zlib';
import { STYLES, zipOf } from '../io/xlsx/hand-made.js';
import { entries, entry, rawZip } from './raw-zip.js';
import { book, csvFolder, file, journals, SHEET, type Shape } from './shape.js';

const COMPOUND = Buffer.concat([
  Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
  Buffer.alloc(2000),
]);
const spaces = (megabytes: number) => deflateRawSync(Buffer.alloc(megabytes * 1_000_000, ' '));

export const PACKAGE_SHAPES: readonly Shape[] = [
  { name: 'an empty file', make: file('book.xlsx', () => ''), says: /found an empty file; .*copy it again/ },
  { name: 'a text', make: file('book.xlsx', () => 'Part;A 0\n'), says: /it is no zip file/ },
  {
    name: 'an old workbook',
    make: file('book.xls', () => COMPOUND),
    says: /old \.xls format.* save it as \.xlsx/,
  },
  {
    name: 'an old workbook of a new name',
    make: file('book.xlsx', () => COMPOUND),
    says: /old \.xls format/,
  },
  {
    name: 'an encrypted workbook',
    make: file('book.xlsx', () => Buffer.concat([COMPOUND, Buffer.from('EncryptedPackage', 'utf16le')])),
    says: /encrypted with a password.*take the password off/,
  },
  {
    name: 'an OpenDocument workbook',
    make: file('book.ods', () =>
      rawZip([
        {
          ...entry('mimetype', ''),
          packed: Buffer.from('application/vnd.oasis.opendocument.spreadsheet'),
          method: 0,
        },
      ]),
    ),
    says: /OpenDocument file \(\.ods\)\. .*save it as \.xlsx/,
  },
  {
    name: 'a binary workbook',
    make: book(
      {
        '[Content_Types].xml':
          '<Types><Override PartName="/xl/workbook.bin" ContentType="application/vnd.ms-excel.sheet.binary.macroEnabled.main"/></Types>',
        '_rels/.rels':
          '<Relationships><Relationship Id="r" Type="x/officeDocument" Target="xl/workbook.bin"/></Relationships>',
        'xl/workbook.bin': 'x',
      },
      'book.xlsb',
    ),
    says: /binary workbook \(\.xlsb\)\. .*save it as \.xlsx/,
  },
  { name: 'a printed page', make: file('book.xlsx', () => '%PDF-1.7\n'), says: /PDF/ },
  {
    name: 'a web page',
    make: file('book.xls', () => '<html><table></table>'),
    says: /web page.* save it as \.xlsx/,
  },
  {
    name: 'a web page of a workbook’s name',
    make: file('book.xlsx', () => '<html><table></table>'),
    says: /web page/,
  },
  {
    name: 'a zip without a workbook',
    make: file('book.xlsx', () => zipOf({ 'a.txt': 'a' })),
    says: /holds no workbook/,
  },
  { name: 'a zip of nothing', make: file('book.xlsx', () => rawZip([])), says: /holds no workbook/ },
  {
    name: 'a single sheet',
    make: file('Journals.csv', () => 'Part;A 0\n'),
    says: /single \.csv file.*give that folder/,
  },
  { name: 'a folder of no sheet', make: csvFolder({ 'readme.txt': 'x' }), says: /without a \.csv file/ },
  {
    name: 'a folder of no known sheet',
    make: csvFolder({ 'Prices.csv': 'Part;Price\n' }),
    says: /no (?:known )?sheet/,
  },
  {
    name: 'a workbook cut short',
    make: file('book.xlsx', async () => (await zipOf(journals(SHEET))).subarray(0, 700)),
    says: /damaged or cut short/,
  },
  {
    name: 'a bomb that says so',
    make: file('book.xlsx', () => rawZip(entries({ packed: spaces(60), size: 60_000_000 }))),
    says: /sheet1\.xml unpacks from .* to 60 MB; expected at most 250 times/,
  },
  {
    name: 'a bomb of 600 MB',
    make: file('book.xlsx', () => rawZip(entries({ packed: spaces(600), size: 600_000_000 }))),
    says: /sheet1\.xml unpacks to 600 MB; expected at most 400 MB/,
    isLarge: true,
  },
  {
    name: 'a bomb that lies about its size',
    make: file('book.xlsx', () => rawZip(entries({ packed: spaces(100), size: 5000 }))),
    says: /damaged: in its part xl\/worksheets\/sheet1\.xml, its data cannot be unpacked/,
  },
  {
    name: 'a bomb of many parts',
    make: file('book.xlsx', () => {
      const part = { packed: spaces(19), size: 19_000_000 };
      return rawZip([...entries(), ...Array.from({ length: 60 }, (_, i) => ({ name: `a${i}`, ...part }))]);
    }),
    says: /the package unpacks to 1141 MB; expected at most 1000 MB/,
  },
  {
    name: 'parts that share their bytes',
    make: file('book.xlsx', () => {
      const shared = entry('a', Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * i) % 251)));
      return rawZip([
        ...entries(),
        shared,
        ...Array.from({ length: 40 }, (_, i) => ({ ...shared, name: `b${i}`, isOverlapping: true })),
      ]);
    }),
    says: /parts that share their bytes/,
  },
  {
    name: 'two parts of one name',
    make: file('book.xlsx', () => rawZip([...entries(), entry('XL/Worksheets/Sheet1.xml', '<worksheet/>')])),
    says: /two parts of the name XL\/Worksheets\/Sheet1\.xml/,
  },
  {
    name: 'a part that leads out of the package',
    make: file('book.xlsx', () => rawZip([...entries(), entry('xl/../../../home/x', 'x')])),
    says: /leads out of the package/,
  },
  {
    name: 'a part behind a password',
    make: file('book.xlsx', () => rawZip(entries({ flags: 1 }))),
    says: /sheet1\.xml encrypted with a password/,
  },
  {
    name: 'a part packed by an unknown method',
    make: file('book.xlsx', () => rawZip(entries({ method: 99 }))),
    says: /packed by a method \(99\)/,
  },
  {
    name: 'a part with a changed byte',
    make: file('book.xlsx', () => rawZip(entries({ crc: 1 }))),
    says: /sheet1\.xml, its data cannot be unpacked/,
  },
  {
    name: '30,000 parts',
    make: file('book.xlsx', () =>
      rawZip([...entries(), ...Array.from({ length: 30_000 }, (_, i) => entry(`a${i}`, ''))]),
    ),
    says: /package of 300\d\d parts; expected at most 20000/,
  },
  {
    name: 'an empty book that is larger than any book',
    make: file('book.xlsx', () => Buffer.concat([rawZip(entries()), Buffer.alloc(210_000_000)])),
    says: /a file of 211 MB; expected at most 200 MB/,
    isLarge: true,
  },
  {
    name: 'a relationship that leads out of the package',
    make: book({
      ...journals(SHEET),
      'xl/_rels/workbook.xml.rels':
        '<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="../../../../etc/passwd"/></Relationships>',
    }),
    says: /part etc\/passwd, it is missing/,
  },
  {
    name: 'relationships in a circle',
    make: book({
      ...journals(SHEET),
      'xl/worksheets/_rels/sheet1.xml.rels':
        '<Relationships><Relationship Id="a" Type="x/worksheet" Target="sheet1.xml"/><Relationship Id="b" Type="x/officeDocument" Target="/xl/workbook.xml"/></Relationships>',
    }),
    says: undefined,
  },
  {
    name: 'a workbook whose tag has a million spaces',
    make: book({
      ...journals(SHEET),
      'xl/styles.xml': STYLES.replace('<styleSheet', `<styleSheet${' '.repeat(1_000_000)}`).replace(
        '<xf ',
        `<xf${' '.repeat(1_000_000)}`,
      ),
    }),
    says: undefined,
  },
];
