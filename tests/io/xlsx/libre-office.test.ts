import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { WorkbookEdit } from '../../../src/engine/workbook-model.js';
import { newWorkbookPackage } from '../../../src/io/xlsx/new-package.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../../../src/io/xlsx/write-package.js';
import { SAMPLES } from './sample-packages.js';

const hasLibreOffice = spawnSync('soffice', ['--version']).status === 0;
if (!hasLibreOffice) console.warn('soffice is not installed: what LibreOffice reads is not tested');

/** All sheets as text, values as stored rather than as shown, one file each (LibreOffice's filter options). */
const CSV = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1';

describe.runIf(hasLibreOffice)('LibreOffice opens', () => {
  const folder = mkdtempSync(join(tmpdir(), 'oilgap-office-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  function convert(to: string, out: string, files: readonly string[]): void {
    const profile = pathToFileURL(mkdtempSync(join(folder, 'profile-'))).href;
    const outputFolder = join(folder, out);
    execFileSync(
      'soffice',
      [
        `-env:UserInstallation=${profile}`,
        '--headless',
        '--convert-to',
        to,
        '--outdir',
        outputFolder,
        ...files,
      ],
      { timeout: 60_000, stdio: 'pipe' },
    );
  }

  function csv(name: string): string[][] {
    const text = readFileSync(join(folder, 'csv', name), 'utf8');
    return Papa.parse<string[]>(text.trimEnd(), { delimiter: ',' }).data;
  }

  beforeAll(async () => {
    const files: string[] = [];
    for (const [i, sample] of SAMPLES.entries()) {
      const edit: WorkbookEdit = {
        edits: [
          {
            sheet: sample.sheet,
            cells: [
              { row: 0, column: 5, cell: { value: 'Size', format: 'header' } },
              { row: 1, column: 5, cell: { value: 42.003, format: 'mm', formula: 'ROUND(42.0030001,5)' } },
              { row: 1, column: 6, cell: { value: '=1+1', format: 'text' } },
              { row: 3, column: 6, cell: { value: 'two\nlines, "quoted" & <more>', format: 'text' } },
            ],
            storedValues: [],
            widths: [{ column: 5, characters: 12 }],
          },
        ],
        sheets: [
          {
            name: 'Summary',
            rows: [
              [{ value: 'Fits', format: 'header' }],
              [
                { value: 0.05125, format: 'mm' },
                { value: 'no', format: 'plain', formula: 'IF(A2>1,"yes","no")' },
                { value: true, format: 'plain' },
              ],
            ],
            widths: [9],
            headerRows: 1,
            landscape: true,
          },
        ],
        remove: [],
      };
      const { bytes } = await editWorkbookPackage(await sample.make(), edit);
      files.push(join(folder, `book${i}.xlsx`));
      writeFileSync(files.at(-1)!, bytes);
    }
    files.push(join(folder, 'fresh.xlsx'));
    const fresh = await newWorkbookPackage({
      file: 'fresh',
      sheets: [
        {
          name: 'Rods',
          rows: [
            [{ content: { kind: 'text', value: 'Part' } }, { content: { kind: 'text', value: 'A 0' } }],
            [{ content: { kind: 'text', value: '007' } }, { content: { kind: 'number', value: 45.0125 } }],
          ],
        },
      ],
    });
    writeFileSync(files.at(-1)!, fresh);
    convert(CSV, 'csv', files);
    convert('xlsx', 'xlsx', [join(folder, 'book0.xlsx')]);
  }, 120_000);

  test('every one of the workbooks, with all of their sheets', () => {
    const found = readdirSync(join(folder, 'csv')).sort();
    const sheets = [['Journals', 'Notes'], ['Journals', 'Second'], ['Journals'], ['Journals'], ['Journals']];
    const expected = sheets.flatMap((names, i) =>
      [...names, 'Summary'].map((name) => `book${i}-${name}.csv`),
    );
    expect(found).toEqual([...expected, 'fresh-Rods.csv'].sort());
  });

  test.each(SAMPLES.map((sample, i) => [sample.name, i] as const))('a workbook with %s', (_, i) => {
    const journals = csv(`book${i}-Journals.csv`);
    expect(journals[0]![5]).toBe('Size');
    expect(journals[1]!.slice(5, 7)).toEqual(['42.003', '=1+1']);
    expect(journals[3]![6]).toBe('two\nlines, "quoted" & <more>');
    expect(journals.flat()).toContain('42.003');
    expect(csv(`book${i}-Summary.csv`)).toEqual([
      ['Fits', '', ''],
      ['0.05125', 'no', 'TRUE'],
    ]);
  });

  test('a fresh workbook', () => {
    expect(csv('fresh-Rods.csv')).toEqual([
      ['Part', 'A 0'],
      ['007', '45.0125'],
    ]);
  });

  test('and saves what we read back', async () => {
    const bytes = readFileSync(join(folder, 'xlsx', 'book0.xlsx'));
    const model = await readWorkbookPackage(bytes, 'saved');
    expect(model.sheets.map((s) => s.name)).toEqual(['Journals', 'Notes', 'Summary']);
    const rows = model.sheets[0]!.rows;
    expect(rows[1]![1]).toEqual({ content: { kind: 'number', value: 42.001 } });
    expect(rows[1]![3]).toEqual({ content: { kind: 'number', value: 84.002 }, formula: 'B2+C2' });
    expect(rows[1]![5]).toEqual({
      content: { kind: 'number', value: 42.003 },
      formula: 'ROUND(42.0030001,5)',
    });
    expect(rows[3]![6]).toEqual({ content: { kind: 'text', value: 'two\nlines, "quoted" & <more>' } });
  });
});
