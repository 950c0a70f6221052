import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { demoFiles } from '../../scripts/demo/files.js';
import { Context } from '../../src/engine/assess/context.js';
import { assessFit } from '../../src/engine/assess/fit.js';
import { assessParts } from '../../src/engine/assess/part.js';
import { placeFits } from '../../src/engine/assess/places.js';
import { assessTables } from '../../src/engine/assess/table-checks.js';
import { findSheet } from '../../src/engine/book/find-tables.js';
import { openBook } from '../../src/engine/book/open-book.js';
import { readSetup } from '../../src/engine/book/setup.js';
import { ownHeaders } from '../../src/engine/columns/result-headers.js';
import type { WorkbookModel } from '../../src/engine/workbook-model.js';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';

const FOLDER = fileURLToPath(new URL('../../workbooks/', import.meta.url));
const FILES = await demoFiles();
const FOLDER_BOOK = 'decimal-commas';

describe('the generator gives the committed bytes again', () => {
  test.each([...FILES])('%s', async (path, bytes) => {
    expect(Buffer.compare(await readFile(FOLDER + path), bytes)).toBe(0);
  });

  test('and every .csv of the folder is from it', async () => {
    const made = [...FILES.keys()].filter((path) => path.startsWith(`${FOLDER_BOOK}/`));
    const there = (await readdir(FOLDER + FOLDER_BOOK)).map((name) => `${FOLDER_BOOK}/${name}`);
    expect(there.sort()).toEqual(made.sort());
  });
});

/** The folder as cells of text. */
function folderModel(): WorkbookModel {
  const sheets = [...FILES].flatMap(([path, bytes]) => {
    const name = /^decimal-commas\/(.+)\.csv$/.exec(path)?.[1];
    if (name === undefined) return [];
    const { data, errors } = Papa.parse<string[]>(new TextDecoder('utf-8', { fatal: true }).decode(bytes), {
      delimiter: ';',
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    const rows = data.map((fields) =>
      fields.map((value) => (value === '' ? undefined : { content: { kind: 'text' as const, value } })),
    );
    return [{ name, rows }];
  });
  return { file: FOLDER_BOOK, sheets };
}

function modelOf(name: string): Promise<WorkbookModel> | WorkbookModel {
  const bytes = FILES.get(name);
  return bytes ? readWorkbookPackage(bytes, name) : folderModel();
}

interface Expected {
  readonly badCells?: readonly string[];
  readonly fits: Readonly<Record<string, number>>;
  /** Parts that are neither within their limits nor shells with readings. */
  readonly parts?: readonly string[];
  readonly tableRows?: readonly string[];
}

/** What the README of the workbooks says of each, without the matched sets. */
const BOOKS: Readonly<Record<string, Expected>> = {
  'one-engine.xlsx': { fits: { 'in range': 7, 'within service limit': 1, undecided: 1 } },
  'three-engines.xlsx': {
    badCells: ['Journals!J6 (B 0): the text "49.99O"'],
    fits: { 'in range': 18, 'bad reading': 1, loose: 1, 'not measured': 1 },
    parts: [
      'E1 M2: bad reading',
      'E2 P2: beyond limits',
      'E2 M2: beyond limits',
      'E3 P1 lower: not measured',
    ],
    tableRows: ['Classes 6', 'Classes 7'],
  },
  'stock.xlsx': {
    fits: { 'in range': 17, undecided: 2, 'within service limit': 4, loose: 1 },
    parts: ['C6 P2: beyond limits'],
  },
  'inch.xlsx': { fits: { 'in range': 4 } },
  [FOLDER_BOOK]: { fits: { 'in range': 5 } },
};

describe.each(Object.entries(BOOKS))('%s', async (name, expected) => {
  const model = await modelOf(name);
  const book = openBook(model, readSetup(findSheet(model, 'Setup'), name), ownHeaders);
  const context = new Context(book);

  test('opens with the refused cells that are meant', () => {
    const found = book.bad.map(({ sheet, cell, header, found }) => `${sheet}!${cell} (${header}): ${found}`);
    expect(found).toEqual(expected.badCells ?? []);
    expect(book.notices).toEqual([]);
  });

  test('has the verdicts that the README names', () => {
    const parts = book.parts.map((rows) => assessParts(rows, context));
    const odd = parts.all().filter(({ status }) => status !== 'within limits' && status !== 'measured');
    expect(odd.map(({ row, status }) => `${row.name}: ${status}`)).toEqual(expected.parts ?? []);
    const fits: Record<string, number> = {};
    for (const placed of placeFits(parts, book.fits, book.keptStrips)) {
      const { status } = assessFit(placed, context);
      fits[status] = (fits[status] ?? 0) + 1;
    }
    expect(fits).toEqual(expected.fits);
  });

  test('has tables that agree, save for the slip that is meant', () => {
    const odd = Object.entries(assessTables(context)).flatMap(([sheet, rows]) =>
      rows.filter(({ status }) => status !== 'consistent').map(({ row }) => `${sheet} ${row + 1}`),
    );
    expect(odd).toEqual(expected.tableRows ?? []);
  });
});

test('every book says that its data are invented', async () => {
  for (const name of Object.keys(BOOKS)) {
    const first = findSheet(await modelOf(name), 'Notes')?.rows[1]?.[0]?.content;
    expect(first?.value, name).toContain('invented');
  }
});
