/**
 * How large a book may be. A stock list of 100,000 rows and 18 columns takes some 10 MB packed and 150 MB
 * unpacked; what is far beyond that is a slip or an attack, and is refused before it costs memory.
 */
const MB = 1_000_000;

export const LIMITS = {
  /** Bytes of one file, .xlsx or .csv. */
  fileBytes: 200 * MB,
  /** Bytes of one unpacked part. No text of a program can be much longer. */
  partBytes: 400 * MB,
  /** Bytes of all parts together, unpacked. */
  packageBytes: 1000 * MB,
  /** How many times its packed size an unpacked part may be, where it is larger than `ratioFrom`. XML packs to a tenth, seldom to a hundredth; the method of packing ends at a thousandth. */
  ratio: 250,
  ratioFrom: 20 * MB,
  parts: 20_000,
  /** Elements within elements of one part; workbooks use some twenty. */
  xmlDepth: 200,
  sheets: 1000,
  /** The grid of a spreadsheet program. */
  rows: 1_048_576,
  columns: 16_384,
  /** Characters of one cell (ISO 29500-1 leaves it open; spreadsheet programs end here). */
  cellCharacters: 32_767,
  /** Rows and columns of sheets that are evaluated are laid out in full, blank ones too. */
  layoutCells: 30_000_000,
} as const;

/** A number of bytes as a reader takes it in: `7 MB`, `0.4 MB`. */
export function megabytes(bytes: number): string {
  const value = bytes / MB;
  return `${value < 10 ? Math.ceil(value * 10) / 10 : Math.ceil(value)} MB`;
}
