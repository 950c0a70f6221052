/**
 * Packages whose parts are named in every way that the standard allows (ECMA-376-2:2006, 9 and annex A), and in ways
 * that two programs would read as two books.
 */
import { MAIN, REL } from '../io/xlsx/hand-made.js';
import { entries, entry, rawZip } from './raw-zip.js';
import { book, file, journals, SHEET, type Shape } from './shape.js';

type Parts = Readonly<Record<string, string | Uint8Array>>;

const SHEET_PART = 'xl/worksheets/sheet1.xml';
const RELATIONS = 'xl/_rels/workbook.xml.rels';
const TYPES = '[Content_Types].xml';

/** A sound book with texts of its parts replaced. */
function changed(
  changes: Readonly<Record<string, (text: string) => string>>,
  parts = journals(SHEET),
): Parts {
  return Object.fromEntries(
    Object.entries(parts).map(([name, text]) => [name, changes[name]?.(String(text)) ?? text]),
  );
}

interface Names {
  /** Of the sheet's part, in the zip. */
  readonly stored?: string;
  /** In the relationship. */
  readonly target?: string;
  /** In the content types. */
  readonly typed?: string;
  readonly more?: Parts;
}

/** A book whose one sheet has a part of this name. */
function named({ stored = SHEET_PART, target, typed = `/${stored}`, more = {} }: Names): Parts {
  const parts = changed({
    ...(target !== undefined && { [RELATIONS]: (text) => text.replace('worksheets/sheet1.xml', target) }),
    [TYPES]: (text) => text.replace(`/${SHEET_PART}`, typed),
  });
  return Object.fromEntries([
    ...Object.entries(parts).map(([name, text]) => [name === SHEET_PART ? stored : name, text]),
    ...Object.entries(more),
  ]);
}

/** A book with its workbook, and all that belongs to it, in another folder. */
function movedTo(folder: string, target: string): Parts {
  const parts = changed({
    '_rels/.rels': (text) => text.replace('xl/workbook.xml', target),
    [TYPES]: (text) => text.replaceAll('"/xl/', `"/${folder}`),
  });
  return Object.fromEntries(
    Object.entries(parts).map(([name, text]) => [name.replace(/^xl\//, folder), text]),
  );
}

const relation = (id: string, kind: string, target: string) =>
  `<Relationship Id="${id}" Type="${REL}/${kind}" Target="${target}"/>`;
const moreRelations = (text: string) => ({
  [RELATIONS]: (old: string) => old.replace('</Relationships>', `${text}</Relationships>`),
});
const moreTypes = (text: string) => ({
  [TYPES]: (old: string) => old.replace('</Types>', `${text}</Types>`),
});
const twoSheets = (text: string) =>
  text.replace('</sheets>', '<sheet name="Rods" sheetId="2" r:id="rId2"/></sheets>');
const OTHER_SHEET = `<worksheet xmlns="${MAIN}"><sheetData><row r="1"><c r="A1"><v>7</v></c></row></sheetData></worksheet>`;
const reads = (name: string, parts: Parts): Shape => ({ name, make: book(parts), says: undefined });
const refuses = (name: string, parts: Parts, says: RegExp): Shape => ({ name, make: book(parts), says });

export const NAME_SHAPES: readonly Shape[] = [
  reads('a target from the top', named({ target: '/xl/worksheets/sheet1.xml' })),
  reads('a target with a step to where it is', named({ target: './worksheets/./sheet1.xml' })),
  reads('a target with a step upwards', named({ target: '../xl/worksheets/sheet1.xml' })),
  reads('a target in another folder', named({ stored: 'data/one.xml', target: '../data/one.xml' })),
  reads('a target in a folder beside', named({ stored: 'xl/one.xml', target: 'one.xml' })),
  reads('a target in other case', named({ target: 'Worksheets/SHEET1.xml' })),
  reads('a target with backslashes', named({ target: 'worksheets\\sheet1.xml' })),
  reads(
    'a name with a space',
    named({ stored: 'xl/my sheets/sheet 1.xml', target: 'my sheets/sheet 1.xml' }),
  ),
  reads(
    'a name with a space, encoded in the target',
    named({ stored: 'xl/sheet 1.xml', target: 'sheet%201.xml', typed: '/xl/sheet%201.xml' }),
  ),
  reads(
    'a name that is encoded in the zip too',
    named({ stored: 'xl/sheet%201.xml', target: 'sheet%201.xml' }),
  ),
  reads(
    'a name that is encoded in the zip alone',
    named({ stored: 'xl/sheet%201.xml', target: 'sheet 1.xml', typed: '/xl/sheet 1.xml' }),
  ),
  reads(
    'a name as it is written before one that it could mean',
    named({ stored: 'xl/sheet%201.xml', target: 'sheet%201.xml', more: { 'xl/sheet 1.xml': OTHER_SHEET } }),
  ),
  reads(
    'a name with signs of another script',
    named({ stored: 'xl/Ma\u00dfe.xml', target: 'Ma%C3%9Fe.xml', typed: '/xl/Ma%c3%9fe.xml' }),
  ),
  reads('a name with a percent sign of its own', named({ stored: 'xl/100%.xml', target: '100%.xml' })),
  reads('a workbook at the top', movedTo('', 'workbook.xml')),
  reads('a workbook in a folder with a space', movedTo('my book/', '/my%20book/workbook.xml')),
  reads('a workbook in a deep folder', movedTo('a/b/c/', './a/b/c/workbook.xml')),
  refuses(
    'a part that is named twice, from the top and from its folder',
    changed({
      ...moreRelations(relation('rId2', 'worksheet', '/xl/worksheets/sheet1.xml')),
      'xl/workbook.xml': twoSheets,
    }),
    /two sheets have the part xl\/worksheets\/sheet1\.xml/,
  ),
  refuses(
    'a part that is named twice, encoded and not',
    changed(
      {
        ...moreRelations(relation('rId2', 'worksheet', 'sheet 1.xml')),
        'xl/workbook.xml': twoSheets,
      },
      named({ stored: 'xl/sheet 1.xml', target: 'sheet%201.xml' }),
    ),
    /two sheets have the part xl\/sheet 1\.xml/,
  ),
  refuses(
    'a part that is named twice and used once',
    changed(moreRelations(relation('rId2', 'worksheet', 'worksheets/sheet1.xml'))),
    /workbook\.xml\.rels, two relationships lead to the part xl\/worksheets\/sheet1\.xml/,
  ),
  refuses(
    'a sheet that is a list of formats too',
    changed({ [RELATIONS]: (text) => text.replace('"styles.xml"', '"worksheets/sheet1.xml"') }),
    /two relationships lead to the part xl\/worksheets\/sheet1\.xml/,
  ),
  refuses(
    'two relationships of one id',
    changed(moreRelations(relation('rId1', 'theme', 'theme.xml'))),
    /workbook\.xml\.rels, two relationships have the id rId1/,
  ),
  refuses(
    'two lists of formats',
    changed(moreRelations(relation('rId9', 'styles', 'styles2.xml'))),
    /two relationships are of the kind styles/,
  ),
  refuses(
    'two workbooks in a package',
    changed({
      '_rels/.rels': (text) =>
        text.replace('</Relationships>', `${relation('rId2', 'officeDocument', 'xl/b.xml')}</Relationships>`),
    }),
    /part _rels\/\.rels, more than one relationship leads to a workbook/,
  ),
  refuses(
    'a part of two types',
    changed(moreTypes(`<Override PartName="/XL/worksheets/sheet1.xml" ContentType="application/xml"/>`)),
    /\[Content_Types\]\.xml, the part \/XL\/worksheets\/sheet1\.xml has two types/,
  ),
  refuses(
    'a sheet whose part is the workbook',
    changed({ [RELATIONS]: (text) => text.replace('worksheets/sheet1.xml', '../xl/workbook.xml') }),
    /part xl\/workbook\.xml, the sheet Journals leads to the workbook itself/,
  ),
  refuses(
    'a sheet whose part is a list of texts',
    changed({ [SHEET_PART]: () => `<sst xmlns="${MAIN}"><si><t>a</t></si></sst>` }),
    /sheet1\.xml, which holds the sheet Journals, its first element is <sst>/,
  ),
  ...(['chartsheet', 'dialogsheet', 'xlMacrosheet'] as const).map((kind, i) =>
    refuses(
      `a sheet Journals that is a ${kind}`,
      changed({ [RELATIONS]: (text) => text.replace('/worksheet"', `/${kind}"`) }),
      new RegExp(
        `the sheet Journals is a ${['chart sheet', 'dialog sheet', 'sheet of macros'][i]}; expected a work`,
      ),
    ),
  ),
  {
    name: 'two parts in the same bytes',
    make: file('book.xlsx', () => {
      const all = entries();
      const last = all.at(-1)!;
      return rawZip([...all, { ...last, name: last.name.replace('xl/', 'xm/'), isOverlapping: true }]);
    }),
    says: /parts that share their bytes, xl\/styles\.xml and xm\/styles\.xml/,
  },
  {
    name: 'a part of another name before its data',
    make: file('book.xlsx', () => rawZip(entries({ local: { name: 'xl/worksheets/sheet2.xml' } }))),
    says: /named xl\/worksheets\/sheet1\.xml in the list of parts and xl\/worksheets\/sheet2\.xml before its data/,
  },
  {
    name: 'a part packed in another way before its data',
    make: file('book.xlsx', () => rawZip(entries({ local: { method: 0 } }))),
    says: /two methods of packing for the part xl\/worksheets\/sheet1\.xml, 8 in the list/,
  },
  {
    name: 'a name with backslashes before its data',
    make: file('book.xlsx', () => rawZip(entries({ local: { name: 'xl\\worksheets\\sheet1.xml' } }))),
    says: undefined,
  },
  {
    name: 'a part that nobody reads, with a damaged header',
    make: file('book.xlsx', () => {
      const bytes = rawZip([entry('unread.bin', 'x'), ...entries()]);
      bytes.write('XX', 0, 'latin1');
      return Buffer.concat([bytes]);
    }),
    says: /damaged|no zip file/,
  },
];
