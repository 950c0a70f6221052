/** A published gauge study typed into a workbook, checked by the program. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { table } from '../engine/book-of.js';
import { cellsOf } from './at-bench.js';
import { oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-study-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('the results of MSA, 4th ed., in the workbook and in --json; taken into Gauges where asked for', async () => {
  const csv = readFileSync(new URL('../reference/data/grr_aiag.csv', import.meta.url), 'utf8');
  const { data } = Papa.parse<Record<string, string>>(csv.trim(), { header: true });
  const study = data.map(({ part, appraiser, trial, value }) => ({
    Gauge: 'M1',
    Part: Number(part),
    Person: appraiser,
    Trial: Number(trial),
    Value: Number(value),
  }));
  const sheets = sheetsWith(
    {},
    {
      Gauges: table({ Gauge: 'M1', 'Max error': 0.004, Repeatability: 0.001 }),
      'Gauge study': table(...study),
    },
  );
  const path = await writeBook(folder, 'study.xlsx', sheets);
  const { stdout, stderr } = oilgap('check', path, '--take-repeatability');
  expect(stdout).toContain('gauge study of M1: repeatability 0.199933 mm, 4 distinct categories');
  expect(stderr).toContain(
    'Gauges!C2: Repeatability of gauge M1 is 0.199933 mm, from Gauge study; it was 0.001.',
  );
  const written = join(folder, 'study.checked.xlsx');
  expect((await cellsOf(written, 'Gauges')).M1).toMatchObject({ Repeatability: 0.199933 });
  expect((await cellsOf(path, 'Gauges')).M1).toMatchObject({ Repeatability: 0.001 });
  const { status } = oilgap('check', written, '--in-place');
  expect(status).toBeLessThan(2);

  const [book] = JSON.parse(oilgap('check', path, '--json').stdout).books;
  expect(book.gaugeStudies).toEqual([
    {
      gauge: 'M1',
      parts: 10,
      persons: 3,
      trials: 3,
      analysisOfVariance: {
        // As printed; √(0.199933² + 0.226838²) is 0.302372, which the source rounds to 0.302373.
        repeatability: 0.199933,
        reproducibility: 0.226838,
        gauge: 0.302372,
        parts: 1.042327,
        categories: 4,
      },
      averageAndRange: expect.objectContaining({ repeatability: expect.closeTo(0.20188, 3), categories: 5 }),
      why: [],
    },
  ]);
});
