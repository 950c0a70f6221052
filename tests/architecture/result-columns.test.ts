/** A list of the program's own is made of its records: sheet, page, JSON and README have what they say, and no more. */
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { ownSheetsTable } from '../../scripts/readme-blocks.js';
import { bookJson } from '../../src/commands/book-json.js';
import { type Assessment, assessBook } from '../../src/engine/assess/assess.js';
import { fitColumns } from '../../src/engine/columns/fit-columns.js';
import { OWN_TABLES } from '../../src/engine/columns/own-tables.js';
import { partColumns } from '../../src/engine/columns/part-columns.js';
import { REMEASURE } from '../../src/engine/columns/remeasure-columns.js';
import { columnsOnPage, type ResultColumn } from '../../src/engine/columns/result-column.js';
import { tableOfAny } from '../../src/engine/columns/result-table.js';
import { MATCHED_SETS } from '../../src/engine/columns/set-columns.js';
import { LEFT_OVER, NOT_MATCHED, TO_BUY } from '../../src/engine/columns/stock-columns.js';
import { REACHED, SUMMARY } from '../../src/engine/columns/summary-columns.js';
import { SHELLS } from '../../src/engine/input-sheets/shells.js';
import { SHELL_BEARING } from '../../src/engine/kinds/shell-bearing.js';
import { writtenWorkbook } from '../../src/engine/sheets/written-workbook.js';
import { reportPage } from '../../src/io/report/report-page.js';
import { bookOf, table, um } from '../engine/book-of.js';

const LISTS = [tableOfAny(SUMMARY), tableOfAny(REACHED), ...OWN_TABLES.map((own) => own.table)];

describe.each(LISTS.map((list) => [list.name, list] as const))(
  'the columns of %s',
  (_, { columns, rowName }) => {
    test('have headers and keys of their own, and say what they are', () => {
      for (const key of ['header', 'json'] as const) {
        const names = columns.flatMap((column) => column[key] ?? []);
        expect(new Set(names).size).toBe(names.length);
      }
      expect(columns.filter(({ help }) => !/^[A-Z`0].*\.$/.test(help))).toEqual([]);
      expect(columns.map(({ header }) => header)).toContain(rowName);
    });

    test('name the row in every table of the page that has any of them', () => {
      const naming = columns.find(({ header }) => header === rowName)!;
      const tables = columns.flatMap(({ page }) => page ?? []);
      expect(naming.page).toBe(tables.length > 0 ? 'every' : undefined);
    });
  },
);

/** Two pins, of which one is filled with a shell that is bought. */
const BOOK = {
  Setup: table({ Item: 'New shells', Value: 'yes' }, { Item: 'New with used', Value: 'yes' }),
  Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.05 }),
  Journals: table(
    { Part: 'J1', Engine: 'E1', Fit: 'big end', Position: 1, 'A 0': 42 },
    { Part: 'J2', Engine: 'E1', Fit: 'big end', Position: 2 },
  ),
  Rods: table(
    { Part: 'R1', Engine: 'E1', Position: 1, 'A 0': 45.01 },
    { Part: 'R2', Engine: 'E1', Position: 2, 'A 0': 47 },
  ),
  Shells: table({ Part: 'U1', Engine: 'E1', Position: 1, Half: 'upper', 'Wall 1': 1.4875 }),
  'New shells': table({
    ...{ 'Engine type': 'X', Fit: 'big end', Half: 'lower', Mark: 'N', Price: 7 },
    ...{ 'Wall from': 1.487, 'Wall to': 1.488 },
  }),
};

let assessment: Assessment;
beforeAll(async () => {
  assessment = await assessBook(bookOf(BOOK), { seconds: 30 });
});

/** Takes the added columns out again. */
const undo: (() => void)[] = [];
afterEach(() => {
  for (const takeOut of undo.splice(0)) takeOut();
});

const ADDED = {
  header: 'Added length',
  quantity: 'length',
  width: 12,
  json: 'addedLength',
  help: 'A length that nobody else writes.',
  value: () => um(1234.56),
} as const;

function add(columns: readonly ResultColumn<never>[], page: ResultColumn<never>['page']): void {
  const own = columns as ResultColumn<never>[];
  own.push({ ...ADDED, ...(page && { page }) });
  undo.push(() => own.pop());
}

type Json = Record<string, readonly Record<string, unknown>[]>;
const documentOf = () => {
  const { matching, ...others } = bookJson(assessment, undefined);
  return { ...others, ...matching } as unknown as Json;
};
const pageOf = () => reportPage(assessment, { program: 'oilgap 0', files: [] });
const cellsOf = (name: string) => {
  const sheet = writtenWorkbook(assessment, { valuesOnly: false }).sheets.find((own) => own.name === name)!;
  return Array.from(sheet.rows, (row) => row.map((cell) => cell?.value));
};

test.each([
  ['Summary', SUMMARY.columns, 'summary', 'measured'],
  ['Re-measure', REMEASURE.columns, 'remeasure', 'every'],
  ['Matched sets', MATCHED_SETS.columns, 'sets', 'chosen'],
  ['Not matched', NOT_MATCHED.columns, 'notMatched', 'every'],
  ['To buy', TO_BUY.columns, 'toBuy', 'every'],
  ['Left over', LEFT_OVER.columns, 'leftOver', 'every'],
] as const)('a column that is added to %s stands everywhere by its record', (name, columns, key, page) => {
  expect(pageOf()).not.toContain(ADDED.header);
  add(columns as readonly ResultColumn<never>[], page);
  const [headers, first] = cellsOf(name);
  const at = headers!.indexOf(ADDED.header);
  expect(at).toBe(columns.length - 1);
  expect(first![at]).toBe(1.23456);
  expect(documentOf()[key]!.length).toBeGreaterThan(0);
  expect(documentOf()[key]!.filter((row) => row.addedLength !== 1.23456)).toEqual([]);
  expect(pageOf()).toMatch(/>Added length<.*>1\.23456</s);
  expect(ownSheetsTable()).toContain('|  | Added length | A length that nobody else writes. |');
});

test('a column of one sheet of parts gives every part its key, null where its sheet does not have it', () => {
  add(partColumns(SHELLS) as readonly ResultColumn<never>[], 'measured');
  expect(documentOf().parts!.map(({ sheet, addedLength }) => [sheet, addedLength])).toEqual([
    ['Journals', null],
    ['Journals', null],
    ['Rods', null],
    ['Rods', null],
    ['Shells', 1.23456],
  ]);
  expect(pageOf()).toContain('>Added length<');
});

test('parts of either kind have the same keys in the same order', () => {
  const keys = documentOf().parts!.map((part) => Object.keys(part).join());
  expect(new Set(keys).size).toBe(1);
});

test('the page has the columns of fits that their records put there', () => {
  const columns = fitColumns(SHELL_BEARING);
  const ofPage = [...columnsOnPage(columns, 'measured'), ...columnsOnPage(columns, 'chosen')];
  expect(columns.filter((column) => !ofPage.includes(column)).map(({ header }) => header)).toEqual(['Why']);
});

test('a document has names as texts, lengths in mm, truths as truths, null for what is not known', () => {
  expect(documentOf().sets![0]).toEqual({
    ...{ engine: 'E1', fit: 'big end', position: '1' },
    ...{ journal: 'J1', bore: 'R1', upper: 'U1', lower: 'new N' },
    ...{ clearance: 0.035, tightest: 0.0345, loosest: 0.0355, clearanceU: null, offAim: 0 },
    ...{ status: 'in range', ranTogether: false },
  });
});
