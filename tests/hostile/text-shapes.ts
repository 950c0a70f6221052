/** Parts whose text is not what a part may be (ECMA-376-2:2006, 8.1.4): document types, other encodings. */
import { book, journals, SHEET, type Shape } from './shape.js';

const NAMES = {
  'content types': '[Content_Types].xml',
  relationships: '_rels/.rels',
  workbook: 'xl/workbook.xml',
  'relationships of the workbook': 'xl/_rels/workbook.xml.rels',
  formats: 'xl/styles.xml',
  sheet: 'xl/worksheets/sheet1.xml',
  texts: 'xl/sharedStrings.xml',
} as const;

const parts = journals(SHEET, { strings: '<si><t>a</t></si>' });
const bare = (part: string) => String(parts[part]).replace(/^<\?xml[^>]*\?>\s*/, '');
const changed = (part: string, text: string | Uint8Array) => book({ ...parts, [part]: text });
const literal = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** What each part is, with this before its text. */
function each(what: string, head: string, says: string): Shape[] {
  return Object.entries(NAMES).map(([name, part]) => ({
    name: `${what} in the ${name}`,
    make: changed(part, head + bare(part)),
    says: new RegExp(`the workbook is damaged: in its part ${literal(part)}, .*${says}`),
  }));
}

const sheet = NAMES.sheet;
const wide = (declared: string) =>
  Buffer.from(`\ufeff<?xml version="1.0" encoding="${declared}"?>${bare(sheet)}`, 'utf16le');

export const TEXT_SHAPES: readonly Shape[] = [
  ...each('a document type', '<!DOCTYPE a [<!ENTITY b "c">]>', 'it has a document type'),
  ...each(
    'a document type behind a comment',
    '<?xml version="1.0"?><!-- a --><!DOCTYPE a SYSTEM "http://example.org/a.dtd">',
    'it has a document type',
  ),
  ...each(
    'UTF-7',
    '<?xml version="1.0" encoding="UTF-7"?>',
    'says that its text is in UTF-7, and it is in UTF-8',
  ),
  {
    name: 'UTF-16 that is none',
    make: changed(sheet, `<?xml version='1.0' encoding='UTF-16'?>${bare(sheet)}`),
    says: /says that its text is in UTF-16, and it is in UTF-8/,
  },
  {
    name: 'UTF-8 that is UTF-16',
    make: changed(sheet, wide('UTF-8')),
    says: /says that its text is in UTF-8, and it is in UTF-16/,
  },
  {
    name: 'an encoding of one byte a sign',
    make: changed(sheet, `<?xml version="1.0" encoding="ISO-8859-1"?>${bare(sheet)}`),
    says: /says that its text is in ISO-8859-1, and it is in UTF-8/,
  },
  { name: 'UTF-16 that says so', make: changed(sheet, wide('utf-16')), says: undefined },
  {
    name: 'UTF-8 in small letters',
    make: changed(sheet, `<?xml version="1.0" encoding='utf-8' standalone="yes" ?>${bare(sheet)}`),
    says: undefined,
  },
];
