/** Names that other programs would run: they stay texts in whatever is written, and no terminal obeys them. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import ExcelJS from 'exceljs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runBook } from '../../src/engine/run-book.js';
import { writtenWorkbook } from '../../src/engine/sheets/written-workbook.js';
import { newWorkbookPackage } from '../../src/io/xlsx/new-package.js';
import { editWorkbookPackage } from '../../src/io/xlsx/write-package.js';
import { oilgap, sheetsWith, writeBook } from '../commands/books.js';
import { modelOf, table } from '../engine/book-of.js';

const RUNNING = [
  '=1+1',
  '=cmd|"/c calc"!A1',
  '+1+1',
  '-1+1',
  '@SUM(A1)',
  '\t=1+1',
  '=HYPERLINK("https://example.org","x")',
  '\u001b]0;title\u0007',
  '\u009b31m',
  '\u202e42',
  '"&A1&"',
  '<b>x</b>',
];

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Every formula of a written book, and every text. */
async function cellsOf(bytes: Uint8Array) {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(Buffer.from(bytes) as never);
  const formulas: string[] = [];
  const texts: string[] = [];
  workbook.eachSheet((sheet) => {
    sheet.eachRow((row) => {
      row.eachCell(({ formula, value }) => {
        if (formula) formulas.push(formula);
        else if (typeof value === 'string') texts.push(value);
      });
    });
  });
  return { formulas, texts };
}

const journals = (name: string) =>
  table({
    Part: name,
    Engine: name,
    Position: 1,
    Fit: 'big end',
    'A 0': 42.0015,
    Bin: name,
    Note: name,
    [name]: name,
  });

/** Functions that a formula of ours never uses, and what the names would run. */
const FOREIGN = /cmd|HYPERLINK|SUM\(A1\)|(?<![\d.)])1\+1|&A1/;

/** Whether a formula has more of a name than a text in quotes. */
function runsNames(formula: string): boolean {
  return FOREIGN.test(formula.replaceAll(/"(?:[^"]|"")*"/g, '""'));
}

/** What must not reach a terminal; line feeds may. */
const CONTROL = /[^\P{C}\n]/u;

const folderOf = (name: string, i: number) => join(folder, `=${i}${name.replaceAll('/', '')}`);

test.each(RUNNING)('%j in a workbook', async (name) => {
  const model = modelOf(sheetsWith({}, { Journals: journals(name) }));
  const edit = writtenWorkbook(await runBook(model, { seconds: 1 }), { valuesOnly: false });
  const { bytes } = await editWorkbookPackage(await newWorkbookPackage(model), edit);
  const { formulas, texts } = await cellsOf(bytes);
  expect(formulas.length).toBeGreaterThan(5);
  expect(formulas.filter(runsNames)).toEqual([]);
  expect(texts.some((text) => text.includes(name.trim().slice(0, 5)))).toBe(true);
});

test('in .csv files, and in the paths of books', async () => {
  for (const [i, name] of RUNNING.entries()) {
    const place = folderOf(name, i);
    mkdirSync(place);
    const cell = `"${name.replaceAll('"', '""')}"`;
    writeFileSync(
      join(place, 'Journals.csv'),
      `Part;Engine;Fit;Position;A 0;${cell}\n${cell};${cell};big end;1;about 42;${cell}\n`,
    );
  }
  const places = RUNNING.map(folderOf);
  const out = join(folder, 'out');
  const { stdout, stderr } = oilgap('check', ...places, '--out', out);
  expect(stdout + stderr).not.toMatch(CONTROL);
  expect(stderr.trim().split('\n').length).toBeGreaterThanOrEqual(places.length);
  for (const place of places) {
    const { formulas } = await cellsOf(readFileSync(join(out, `${basename(place)}.checked.xlsx`)));
    expect(formulas.filter(runsNames)).toEqual([]);
  }
});

test('in --json the text stays what it was, and no terminal obeys it', async () => {
  const name = 'E\u001b[31m\u009b\u202e1';
  const book = await writeBook(folder, 'json.xlsx', sheetsWith({}, { Journals: journals(name) }));
  const { stdout } = oilgap('check', book, '--json');
  expect(stdout).not.toMatch(CONTROL);
  expect(JSON.parse(stdout).books[0].parts[0].part).toBe(name);
});
