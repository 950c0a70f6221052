/** Random damaged books and .csv folders, as fast-check draws them. */
import fc from 'fast-check';
import type { SheetModel } from '../../src/engine/workbook-model.js';
import { decodeText } from '../../src/io/csv/decode-text.js';
import { parseCsv } from '../../src/io/csv/parse-csv.js';
import { newWorkbookPackage } from '../../src/io/xlsx/new-package.js';
import { CORPUS } from '../corpus/corpus.js';
import { modelOf } from '../engine/book-of.js';
import { holdModel, holdPackage, type Outcome } from './invariants.js';
import { damage, damageBytes, damageParts } from './mutate.js';
import { strangeSheets } from './strange-sheets.js';

export interface Case {
  readonly what: string;
  readonly run: () => Promise<Outcome>;
}

const corpusBook = fc.integer({ min: 0, max: CORPUS.length - 1 });

/** Bytes of the file itself: a copy gone wrong. Nearly all are refused by a checksum. */
const damagedFiles = fc
  .record({ book: corpusBook, damages: fc.array(damage, { minLength: 1, maxLength: 3 }) })
  .map(
    ({ book, damages }): Case => ({
      what: 'bytes of a package',
      run: async () => holdPackage(damages.reduce(damageBytes, await CORPUS[book]!.make())),
    }),
  );

/** Texts of its parts: what another program wrote wrongly, or somebody meant to harm with. */
const damagedParts = fc
  .record({
    book: corpusBook,
    damages: fc.array(fc.record({ part: fc.nat({ max: 30 }), damage }), { minLength: 1, maxLength: 4 }),
  })
  .map(
    ({ book, damages }): Case => ({
      what: 'parts of a package',
      run: async () => holdPackage(await damageParts(await CORPUS[book]!.make(), damages)),
    }),
  );

/** Any texts in any cells of any sheets. */
const strangeBooks = strangeSheets.map(
  (drawn): Case => ({
    what: 'cells of a workbook',
    run: async () => holdPackage(await newWorkbookPackage(modelOf(Object.fromEntries(drawn)))),
  }),
);

const encodings = {
  utf8: (text: string) => Buffer.from(text),
  marked: (text: string) => Buffer.from(`\ufeff${text}`),
  utf16: (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le'),
  latin1: (text: string) => Buffer.from(text, 'latin1'),
} as const;

/** The same as .csv files, quoted or not, with any line ends, and damaged. */
const strangeFolders = fc
  .record({
    drawn: strangeSheets,
    delimiter: fc.constantFrom(';', ',', '\t'),
    end: fc.constantFrom('\n', '\r\n', '\r'),
    isQuoted: fc.boolean(),
    encoding: fc.constantFrom(...(Object.keys(encodings) as (keyof typeof encodings)[])),
    damages: fc.array(damage, { maxLength: 2 }),
  })
  .map(
    ({ drawn, delimiter, end, isQuoted, encoding, damages }): Case => ({
      what: '.csv files',
      run: () =>
        holdModel(() => {
          const read = drawn.map(([name, rows]): SheetModel => {
            const cell = (text: string) => (isQuoted ? `"${text.replaceAll('"', '""')}"` : text);
            const text = rows.map((row) => row.map(cell).join(delimiter)).join(end);
            const bytes = damages.reduce(damageBytes, encodings[encoding](text));
            return parseCsv(decodeText(bytes) ?? '', name, `book/${name}.csv`);
          });
          return { file: 'book', sheets: read };
        }, 'book'),
    }),
  );

export const cases: fc.Arbitrary<Case> = fc.oneof(
  { arbitrary: damagedFiles, weight: 1 },
  { arbitrary: damagedParts, weight: 5 },
  { arbitrary: strangeBooks, weight: 2 },
  { arbitrary: strangeFolders, weight: 2 },
);
