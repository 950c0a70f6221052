/** `oilgap match` as a user runs it on several books. */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-match-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function summaryOf(path: string): Promise<string> {
  const { sheets } = await readWorkbookPackage(readFileSync(path), path);
  const { rows } = sheets.find(({ name }) => name === 'Summary')!;
  return rows.map((row) => row[0]?.content?.value ?? '').join('\n');
}

test('a book that cannot be read is named wherever the sets of the others are', async () => {
  const book = await writeBook(folder, 'shelf.xlsx', sheetsWith());
  const [missing, out] = [join(folder, 'away.xlsx'), join(folder, 'sets.xlsx')];
  const { status, stdout, stderr } = oilgap('match', book, missing, '--out', out);
  expect(status).toBe(2);
  const sentence = `Not read: ${missing}. The matched sets are of the other books only.`;
  expect(stderr).toContain(`${out}: ${sentence}`);
  expect(stdout).toContain('proved best of the books that were read');
  expect(await summaryOf(out)).toContain(sentence);
  const json = oilgap('match', book, missing, '--out', out, '--json');
  expect(JSON.parse(json.stdout).books[1]).toMatchObject({ notRead: [missing], matching: { proved: true } });
  expect(oilgap('match', book, '--out', out).stdout).not.toContain('that were read');
});

test('two books of one name give the same names to their parts in either order', async () => {
  const paths = [];
  for (const shelf of ['north', 'south']) {
    mkdirSync(join(folder, shelf));
    paths.push(await writeBook(join(folder, shelf), 'stock.xlsx', sheetsWith()));
  }
  const namesOf = (books: string[]) => {
    const { stdout } = oilgap('match', ...books, '--out', join(folder, 'both.xlsx'), '--json');
    const [{ parts, matching }] = JSON.parse(stdout).books;
    return [parts.map(({ part }: { part: string }) => part).sort(), matching.completeEngines.sort()];
  };
  const names = namesOf(paths);
  expect(names[0]).toContain('north/stock J1');
  expect(names[1]).toEqual(['north/stock E1', 'south/stock E1']);
  expect(namesOf(paths.reverse())).toEqual(names);
});

test('a run that the time stops says so, and writes what it found', async () => {
  const out = join(folder, 'stopped.xlsx');
  const { stdout, stderr } = oilgap('match', 'workbooks/stock.xlsx', '--out', out, '--seconds', '0.0001');
  expect(stdout).toContain('not proved best');
  expect(stderr).toContain('Matching was stopped by its time of 0.0001 seconds');
  expect(existsSync(out)).toBe(true);
  expect(await summaryOf(out)).toContain('Give it more with --seconds.');
});
