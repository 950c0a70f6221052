/** Names of any length: no written formula is one that spreadsheet programs refuse, and nothing is lost. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import JSZip from 'jszip';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { table } from '../engine/book-of.js';
import { oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function formulasOf(path: string): Promise<string[]> {
  const zip = await JSZip.loadAsync(readFileSync(path));
  const texts = await Promise.all(
    zip.file(/xl\/worksheets\/[^/]+\.xml$/).map((part) => part.async('string')),
  );
  const formulas = texts.flatMap((text) =>
    [...text.matchAll(/<f>([^<]*)<\/f>/g)].map(([, formula]) => formula!),
  );
  return formulas.map((text) =>
    text.replaceAll('&quot;', '"').replaceAll('&gt;', '>').replaceAll('&lt;', '<').replaceAll('&amp;', '&'),
  );
}

test.each([200, 300, 5_000])('an engine, its type and parts of %i characters', async (length) => {
  const long = (start: string) => start.padEnd(length, 'x');
  const at = { Engine: long('E'), Position: 1 };
  const Fit = 'big end';
  const book = await writeBook(
    folder,
    `long-${length}.xlsx`,
    sheetsWith(
      {},
      {
        Limits: table({ 'Engine type': long('T'), Fit, 'Clearance min': 0.02, 'Clearance max': 0.05 }),
        Journals: table({ Part: long('J'), ...at, Fit, 'A 0': 42.0015 }),
        Rods: table({ Part: long('R'), ...at, Fit, 'A 0': 45.0125 }),
        Shells: table(
          { Part: long('U'), ...at, Fit, Half: 'upper', 'Wall 1': 1.4875 },
          { Part: long('L'), ...at, Fit, Half: 'lower', 'Wall 1': 1.4885 },
        ),
      },
    ),
  );
  const { stdout } = oilgap('check', book, '--json');
  const [fit] = JSON.parse(stdout).books[0].fits;
  expect([fit.engine === long('E'), fit.clearance]).toEqual([true, 0.035]);
  const formulas = await formulasOf(join(folder, `long-${length}.checked.xlsx`));
  expect(formulas.length).toBeGreaterThan(5);
  for (const formula of formulas) {
    expect(formula.length).toBeLessThanOrEqual(8192);
    for (const [text] of formula.matchAll(/"(?:[^"]|"")*"/g))
      expect(text.length - 2).toBeLessThanOrEqual(255);
  }
});
