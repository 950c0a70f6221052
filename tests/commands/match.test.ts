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

test('--explain answers in sentences on stdout, and writes only where --out says so', async () => {
  const book = await writeBook(folder, 'asked.xlsx', sheetsWith());
  const alone = oilgap('match', book, '--explain', 'r1');
  expect([alone.status, alone.stderr]).toEqual([0, '']);
  expect(alone.stdout.split('\n')[0]).toBe(
    'Rod R1 is in the set of E1 big end 1 (rod R1, upper shell U and lower shell L, clearance 0.035 mm, in range).',
  );
  expect(alone.stdout).not.toContain('written:');
  const out = join(folder, 'asked-sets.xlsx');
  const both = oilgap('match', book, '--out', out, '--explain', 'E1 big end 1');
  expect(both.stdout).toContain(`written: ${out}`);
  expect(both.stdout).toContain('Journal J1 at E1 big end 1 has rod R1');
  expect(existsSync(out)).toBe(true);
});

test('--explain --json gives the lists and the sentences', async () => {
  const book = await writeBook(folder, 'asked-json.xlsx', sheetsWith());
  const { status, stdout } = oilgap('match', book, '--explain', 'U', '--json');
  expect(status).toBe(0);
  const [document] = JSON.parse(stdout).books;
  expect(document).toMatchObject({
    written: null,
    explain: {
      asked: 'U',
      parts: [
        {
          sheet: 'Shells',
          part: 'U',
          lists: [{ as: 'upper', of: 1, open: [{ name: 'E1 big end 1', now: 'its own' }] }],
          sentences: [
            expect.stringContaining('Shell U is in the set of'),
            expect.any(String),
            expect.any(String),
          ],
        },
      ],
    },
  });
});

test('--explain of a name that no part has says so with the nearest, before anything is sought or written', async () => {
  const book = await writeBook(folder, 'asked-wrongly.xlsx', sheetsWith());
  const out = join(folder, 'never.xlsx');
  const { status, stdout, stderr } = oilgap('match', book, '--out', out, '--explain', 'R7');
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toBe(
    '--explain: found the name "R7", which no part has; expected a part, or a place such as "E1 big end 1"; ' +
      'the nearest are "R1", "J1" or "L".\n',
  );
  expect(existsSync(out)).toBe(false);
  const json = oilgap('match', book, '--explain', 'R7', '--json');
  expect(JSON.parse(json.stdout).books).toMatchObject([
    { error: expect.stringContaining('the nearest are "R1"') },
  ]);
});

test('match wants to know what to do: --out, --explain, or both', () => {
  const { status, stdout, stderr } = oilgap('match', 'workbooks/inch.xlsx');
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toContain('expected one of them; add --out FILE.xlsx');
});

test('match takes a book whose needed columns are blank in every row, as check does', async () => {
  const book = await writeBook(folder, 'pins.xlsx', sheetsWith({ Engine: undefined, Position: undefined }));
  const out = join(folder, 'pins-sets.xlsx');
  const partsOf = ({ stdout }: { stdout: string }) => JSON.parse(stdout).books[0].parts;
  const checked = oilgap('check', book, '--out', folder, '--json');
  const matched = oilgap('match', book, '--out', out, '--json');
  expect([checked.status, matched.status, matched.stderr]).toEqual([1, 1, '']);
  expect(partsOf(matched)).toEqual(partsOf(checked));
});

test('the written stock, read anew, is what was computed: inches beside millimetres, .csv files beside a workbook', async () => {
  const out = join(folder, 'units.xlsx');
  const books = ['workbooks/inch.xlsx', 'workbooks/decimal-commas', 'workbooks/one-engine.xlsx'];
  const matched = JSON.parse(oilgap('match', ...books, '--out', out, '--json').stdout).books[0];
  const { stdout } = oilgap('check', out, '--out', join(folder, 'anew'), '--json');
  const anew = JSON.parse(stdout).books[0];
  for (const what of ['parts', 'fits', 'tables', 'summary', 'matching', 'remeasure', 'refused'])
    expect(anew[what], what).toEqual(matched[what]);
});

test('a refused cell is named where the stock has it', async () => {
  const bad = await writeBook(folder, 'bad.xlsx', sheetsWith({ Engine: 'E2', 'A 0': '42.00l5' }));
  const good = await writeBook(folder, 'good.xlsx', sheetsWith());
  const out = join(folder, 'refused.xlsx');
  const { stderr } = oilgap('match', good, bad, '--out', out);
  const [, address, header] = /Journals!([A-Z]+\d+) \((.*?)\): found the text "42.00l5"/.exec(stderr)!;
  const { sheets } = await readWorkbookPackage(readFileSync(out), out);
  const { rows } = sheets.find(({ name }) => name === 'Journals')!;
  const column = address!.charCodeAt(0) - 65;
  expect(rows[Number(address!.slice(1)) - 1]![column]!.content!.value).toBe('42.00l5');
  expect(rows[0]![column]!.content!.value).toBe(header);
});
