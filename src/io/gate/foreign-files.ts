/** Files that are no .xlsx workbook, by their first bytes: each is named, with the way out. */
import { UserError } from '../../engine/user-error.js';

interface Foreign {
  readonly isOne: (data: Buffer) => boolean;
  /** What it is, and what to do. */
  readonly message: string;
}

const SAVE_AS = 'Open it in the spreadsheet program and save it as .xlsx.';
const EXPECTED = 'An .xlsx workbook was expected.';
const ENCRYPTED_STREAM = Buffer.from('EncryptedPackage', 'utf16le');

const starts = (data: Buffer, ...bytes: number[]) =>
  data.subarray(0, bytes.length).equals(Buffer.from(bytes));
/** Old workbooks and encrypted new ones are both compound files (MS-CFB, 2.2). */
const isCompound = (data: Buffer) => starts(data, 0xd0, 0xcf, 0x11, 0xe0);
const isZip = (data: Buffer) => starts(data, 0x50, 0x4b);

/** In the order in which they are looked for. */
const FOREIGN: readonly Foreign[] = [
  { isOne: (data) => data.length === 0, message: `the file is empty. ${EXPECTED} Save or copy it again.` },
  {
    isOne: (data) => isCompound(data) && data.includes(ENCRYPTED_STREAM),
    message:
      'the workbook is encrypted with a password. Open it, take the password off and save it, then run again.',
  },
  { isOne: isCompound, message: `this is a workbook of the old .xls format. ${SAVE_AS}` },
  {
    // The type of an OpenDocument file stands stored in its first entry (ODF 1.3, part 2, 3.3).
    isOne: (data) =>
      isZip(data) && data.toString('latin1', 30, 90).startsWith('mimetypeapplication/vnd.oasis.opendocument'),
    message: `this is an OpenDocument file (.ods). ${SAVE_AS}`,
  },
  {
    isOne: (data) => starts(data, 0x25, 0x50, 0x44, 0x46),
    message: `this is a PDF page, not a workbook. ${EXPECTED}`,
  },
  {
    isOne: (data) => /^\ufeff?\s*<(?:\?xml|!doctype|html|table)/i.test(data.toString('utf8', 0, 400)),
    message: `this is a web page or XML text that only bears the name of a workbook. ${SAVE_AS}`,
  },
  {
    isOne: (data) => !isZip(data),
    message: `this is not a workbook: it is no zip file. ${EXPECTED}`,
  },
];

/** Throws a UserError where the bytes are of another kind than a zip package. */
export function refuseForeign(bytes: Uint8Array, file: string): void {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found = FOREIGN.find(({ isOne }) => isOne(data));
  if (found) throw new UserError(`${file}: ${found.message}`);
}
