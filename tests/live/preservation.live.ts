/** LibreOffice opens every written book of the corpus, and finds in the user's sheets what it found before. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cellAddress } from '../../src/engine/workbook-model.js';
import { CORPUS } from '../corpus/corpus.js';
import { examine } from '../corpus/examine.js';

let folder: string;
/** By book: cells that an earlier run wrote, which are made anew. */
const made: ReadonlySet<string>[] = [];
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
  for (const kind of ['before', 'after']) mkdirSync(join(folder, kind));
  for (const [i, book] of CORPUS.entries()) {
    const { before, after, made: own } = await examine(await book.make());
    made.push(own);
    writeFileSync(join(folder, 'before', `b${i}.${book.ending}`), before);
    writeFileSync(join(folder, 'after', `b${i}.${book.ending}`), after);
  }
  for (const kind of ['before', 'after']) sheetsAsText(join(folder, kind));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** One .csv file a sheet, as shown, beside the books. */
function sheetsAsText(place: string): void {
  const books = readdirSync(place).map((name) => join(place, name));
  execFileSync('soffice', [
    `-env:UserInstallation=file://${join(folder, 'profile')}`,
    '--headless',
    '--convert-to',
    'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1',
    '--outdir',
    place,
    ...books,
  ]);
}

const rowsOf = (path: string) =>
  Papa.parse<string[]>(readFileSync(path, 'utf8').replaceAll('\r\n', '\n'), { delimiter: ',' }).data;

test.each(CORPUS.map(({ holds }, i) => ({ holds, i })))('a book that holds $holds', ({ i }) => {
  const sheets = readdirSync(join(folder, 'before')).filter((name) => name.startsWith(`b${i}-`));
  expect(sheets.length).toBeGreaterThan(0);
  expect(readdirSync(join(folder, 'after'))).toContain(`b${i}-Summary.csv`);
  for (const sheet of sheets) {
    const now = rowsOf(join(folder, 'after', sheet));
    // Our columns follow the user's.
    for (const [row, cells] of rowsOf(join(folder, 'before', sheet)).entries()) {
      const width = cells.findLastIndex((text) => text !== '') + 1;
      const name = sheet.slice(`b${i}-`.length, -'.csv'.length);
      const isUsers = (_: string, column: number) => !made[i]!.has(`${name}!${cellAddress(row, column)}`);
      expect((now[row]?.slice(0, width) ?? []).filter(isUsers)).toEqual(
        cells.slice(0, width).filter(isUsers),
      );
    }
  }
});
