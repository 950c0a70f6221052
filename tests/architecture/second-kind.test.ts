/**
 * The test of the design: a plain kind of fit with two sheets of its own is registered here, and runs through the blank
 * sheet, the bench, the check, Fits, Summary, the page, the JSON, the explanation, the help and the documentation. No other
 * file knows of it.
 */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withBlocks } from '../../scripts/readme-blocks.js';
import { bookJson } from '../../src/commands/book-json.js';
import { bookSummary } from '../../src/commands/book-summary.js';
import { type Assessment, assessBook } from '../../src/engine/assess/assess.js';
import { BenchBook } from '../../src/engine/bench/bench-book.js';
import { Dialogue } from '../../src/engine/bench/dialogue.js';
import { findSpots } from '../../src/engine/bench/find-spots.js';
import { blankSpots } from '../../src/engine/bench/order.js';
import { blankBook } from '../../src/engine/blank/blank-book.js';
import { describeEngine } from '../../src/engine/blank/describe-engine.js';
import { descriptionItems, standardTexts } from '../../src/engine/blank/description-items.js';
import { evaluateColumns } from '../../src/engine/columns/evaluate.js';
import { partsMeant } from '../../src/engine/explain/find-parts.js';
import { engineType, MEASURED, mark, part } from '../../src/engine/input-sheets/common-columns.js';
import { needed, type PartSheet } from '../../src/engine/input-sheets/input-sheet.js';
import { ENGINE_NAME, NAME } from '../../src/engine/input-sheets/quantities.js';
import { addKindOfFit, kindsOfFit } from '../../src/engine/kinds/index.js';
import type { KindOfFit } from '../../src/engine/kinds/kind-of-fit.js';
import { readBook } from '../../src/engine/run-book.js';
import { writtenWorkbook } from '../../src/engine/sheets/written-workbook.js';
import type { WorkbookModel } from '../../src/engine/workbook-model.js';
import { reportPage } from '../../src/io/report/report-page.js';
import { bookOf, modelOf, type Sheets, table, um } from '../engine/book-of.js';

const place = {
  engine: needed('Engine', ENGINE_NAME, 'The engine that it belongs to.'),
  fit: needed('Fit', NAME, 'Such as `rocker`.'),
  position: needed('Position', NAME, 'Its place.'),
};
const BUSHES: PartSheet = {
  name: 'Rocker bushes',
  noun: 'bush',
  counted: ['bush', 'bushes'],
  plural: 'Rocker bushes',
  readings: 'diameters',
  role: 'outer',
  material: 'steel',
  matching: 'stays',
  letter: 'N',
  measured: 'Bore of the bush',
  guide: 'measure each bush in its rocker.',
  isDrawn: true,
  columns: { part, engineType, ...place, mark, ...MEASURED },
};
const SPINDLES: PartSheet = {
  ...BUSHES,
  name: 'Spindles',
  noun: 'spindle',
  counted: ['spindle', 'spindles'],
  plural: 'Spindles',
  role: 'inner',
  letter: 'P',
  measured: 'Diameter',
  guide: 'measure each spindle where its bush runs.',
};
const ROCKER: KindOfFit = {
  name: 'spindle in bush',
  help: 'A spindle in its bush.',
  terms: [
    { slot: 'bore', noun: 'bush', sign: 1, sheets: [BUSHES.name] },
    { slot: 'journal', noun: 'spindle', sign: -1, sheets: [SPINDLES.name] },
  ],
  functions: { clearance: 'PLAIN_CLEARANCE', tightest: 'PLAIN_CLEARANCE', loosest: 'PLAIN_CLEARANCE' },
  equation: 'bush less spindle',
  words: [],
  claimedBy: [BUSHES.name, SPINDLES.name],
  leader: 'bore',
  leaderNeedsPlace: true,
  isMatched: false,
  asked: [
    {
      fit: 'rocker',
      option: 'rockers',
      help: 'rocker positions, or none; blank: none',
      letter: 'K',
      standard: () => 0,
    },
  ],
  sheets: [BUSHES, SPINDLES],
};

let takeOut: () => void;
beforeAll(() => {
  takeOut = addKindOfFit(ROCKER);
});
afterAll(() => takeOut());

const AT = { Engine: 'E', 'Engine type': 'X', Fit: 'rocker', Gauge: 'M1' };
const LIMITS = { 'Engine type': 'X', Fit: 'rocker', 'Clearance min': 0.02, 'Clearance max': 0.06 };
const SHEETS: Sheets = {
  Limits: table({ ...LIMITS, 'Service limit': 0.08, 'Journal min': 15.9, 'Bore max': 16.05 }),
  Gauges: table({ Gauge: 'M1', 'Max error': 0.002 }),
  'Rocker bushes': table(
    { ...AT, Part: 'N1', Position: 1, 'A 0': 16.03, 'A 90': 16.032 },
    { ...AT, Part: 'N2', Position: 2, 'A 0': 16.1 },
    { ...AT, Part: 'N3', Position: 3 },
  ),
  Spindles: table(
    { ...AT, Part: 'P1', Position: 1, 'A 0': 15.99, 'A 90': 15.989 },
    { ...AT, Part: 'P2', Position: 2, 'A 0': 15.99 },
  ),
};

const assessed = (sheets = SHEETS): Promise<Assessment> => assessBook(bookOf(sheets), { seconds: 5 });

test('the check judges its fits and parts', async () => {
  const { fits, parts } = await assessed();
  expect(fits.map(({ position, status, clearance }) => [position, status, clearance?.clearance])).toEqual([
    ['1', 'in range', um(41.5)],
    ['2', 'loose', um(110)],
    ['3', 'not measured', undefined],
  ]);
  // 16.030 − 15.990 and 16.032 − 15.989. One gauge measured both, less than 0.25 mm apart, so its error cancels, and
  // twice the root of two terms of temperature is left: 2 · 0.5 K · 11.5e-6 · √(16.031² + 15.9895²) mm = 0.2604 µm.
  expect(fits[0]).toMatchObject({ clearance: { tightest: um(40), loosest: um(43) }, clearanceU: 260 });
  expect(fits[2]!.why[0]).toBe('no spindle at this place');
  expect(parts.all().map(({ row, status }) => [row.name, status])).toEqual([
    ['N1', 'within limits'],
    ['N2', 'beyond limits'],
    ['N3', 'not measured'],
    ['P1', 'within limits'],
    ['P2', 'within limits'],
  ]);
});

test("rows of a user's Fits name its parts; a part of another slot is refused in words", async () => {
  const rows = [{ Engine: 'E', Fit: 'rocker', Position: 1, Journal: 'P2', Bore: 'N1' }];
  const { fits } = await assessed({ ...SHEETS, Fits: table(...rows) });
  expect(fits.map(({ status, clearance }) => [status, clearance?.clearance])).toEqual([['in range', um(41)]]);
  const strip = await assessed({ ...SHEETS, Fits: table({ ...rows[0], 'Strip reading': 0.05 }) });
  expect(strip.fits[0]!.why).toContain(
    'Strip reading does not count: a spindle in bush is judged by its parts',
  );
  const wrong = await assessed({ ...SHEETS, Fits: table({ ...rows[0], 'Upper shell': 'U' }) });
  expect(wrong.fits[0]).toMatchObject({ status: 'unclear' });
  expect(wrong.fits[0]!.why[0]).toBe('Upper shell names U, but a spindle in bush has no such part');
});

describe('the written workbook', () => {
  test('has its columns on its sheets and in Fits, live', async () => {
    const assessment = await assessed();
    const { cells } = evaluateColumns(assessment);
    const [clearance] = cells.get('Fits')!.ofRow(0);
    expect(clearance!.cell.value).toBe(0.0415);
    expect(clearance!.cell.formula).toMatch(
      /^IF\(COUNT\('Rocker bushes'![$\w]+,'Spindles'![$\w]+\)<2,"",ROUND\(\('Rocker bushes'!/,
    );
    expect(cells.get('Rocker bushes')!.ofRow(0)[0]!.cell).toMatchObject({ value: 16.031 });
    const { edits, sheets } = writtenWorkbook(assessment, { valuesOnly: false });
    expect(edits.map(({ sheet }) => sheet)).toEqual(expect.arrayContaining(['Rocker bushes', 'Spindles']));
    const rowsOf = (name: string) =>
      [...sheets.find((sheet) => sheet.name === name)!.rows].map((row) => row.map((cell) => cell?.value));
    expect(rowsOf('Fits')[1]!.slice(0, 7)).toEqual(['E', 'rocker', 1, 'P1', 'N1', undefined, undefined]);
    expect(rowsOf('Summary')[1]!.slice(0, 8)).toEqual(['E', 'rocker', 3, 1, 0, 0, 1, 0]);
    expect(
      rowsOf('Re-measure')
        .slice(1)
        .map(([sheet, name]) => `${sheet} ${name}`),
    ).toContain('Rocker bushes N3');
  });

  test('stands beside shell bearings on one sheet Fits', async () => {
    const journal = { Engine: 'E', 'Engine type': 'X', Fit: 'big end', Position: 1, Part: 'J1', 'A 0': 42 };
    const assessment = await assessed({ ...SHEETS, Journals: table(journal) });
    expect(assessment.fits.map(({ kind, fit }) => [kind.name, fit])).toEqual([
      ['shell bearing', 'big end'],
      ...Array.from({ length: 3 }, () => ['spindle in bush', 'rocker']),
    ]);
    const own = evaluateColumns(assessment).cells.get('Fits')!;
    expect(Array.from(own, ({ row }) => row)).toEqual(
      Array.from(own, ({ row }) => row).sort((a, b) => a - b),
    );
    expect(own.rowCount).toBe(4);
  });
});

test('the page draws and lists them', async () => {
  const html = reportPage(await assessed(), { program: 'oilgap 0', files: [] });
  for (const words of ['Fits, rocker, as they run', '3 bushes, 2 spindles', '>N2<', 'Spindles']) {
    expect(html).toContain(words);
  }
  const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
  expect(ids.filter((id) => id!.includes('frame')).length).toBeGreaterThan(1);
  expect(new Set(ids).size).toBe(ids.length);
});

test('a place names the part that stands for it', async () => {
  const { book } = await assessed();
  const rows = book.parts.all();
  expect(partsMeant('e rocker 2', rows).map(({ name }) => name)).toEqual(['N2']);
});

test('the JSON and the terminal tell them', async () => {
  const assessment = await assessed();
  const json = bookJson(assessment, undefined);
  expect(json.fits[0]).toMatchObject({
    ...{ fit: 'rocker', position: '1', journal: 'P1', bore: 'N1', upper: null, lower: null },
    ...{ clearance: 0.0415, status: 'in range' },
  });
  expect(json.parts[0]).toMatchObject({ sheet: 'Rocker bushes', part: 'N1', size: 16.031 });
  expect(bookSummary(assessment, 'x.xlsx', 100)).toContain('engine E, rocker: 3 fits: 1 in range, 1 loose');
});

/** The blank workbook as cells. */
function blankModel(): WorkbookModel {
  const texts = { ...standardTexts(), rockers: '1-2', bigEnds: 'none', mains: 'none', stations: 'A' };
  const { sheets } = blankBook(describeEngine(texts));
  const shown = sheets.map(({ name, columns, rows }) => [
    name,
    [columns.map(({ header }) => header), ...rows],
  ]);
  return modelOf(Object.fromEntries(shown) as Sheets);
}

test('the blank workbook asks for them', () => {
  expect(descriptionItems().map(({ option }) => option)).toContain('rockers');
  const book = readBook(blankModel());
  expect(book.parts.of('Rocker bushes').map(({ name, fit }) => [name, fit])).toEqual([
    ['N1', 'rocker'],
    ['N2', 'rocker'],
  ]);
  expect(book.parts.of('Spindles').map(({ name }) => name)).toEqual(['P1', 'P2']);
  const { guide } = blankBook(describeEngine({ ...standardTexts(), rockers: '1' }));
  expect(guide.join('\n')).toContain('Rocker bushes: measure each bush in its rocker.');
});

test('the bench asks for their readings and says their clearance', () => {
  const book = new BenchBook(blankModel());
  const dialogue = new Dialogue(book, blankSpots(book), { now: () => '', isPiped: true });
  const said = [
    '16.031',
    '16.03',
    '16.032',
    '16.031',
    '16.03',
    '16.03',
    '15.99',
    '15.99',
    '15.99',
    '15.99',
  ].map((typed) => dialogue.answer(typed).said);
  expect(said[0]![0]).toBe('Rocker bushes N1 A 0: 16.031 mm');
  expect(said.at(-1)!.at(-1)).toContain('E1 rocker 2: clearance');
});

test('the bench finds a part by a sheet of two words', () => {
  const found = findSpots(new BenchBook(blankModel()), 'Rocker bushes N2 A 0');
  expect(found).toMatchObject({ isOneSpot: true, spots: [{ sheet: 'Rocker bushes', part: 'N2' }] });
});

test('with nothing to measure, the option that was typed is told', () => {
  const texts = { ...standardTexts(), bigEnds: 'none', mains: 'none' };
  expect(() => describeEngine(texts)).toThrow('--mains: found "none"; expected a place to measure');
});

test('the documentation lists its sheets and what it is', () => {
  const readme = withBlocks(readFileSync(new URL('../../README.md', import.meta.url), 'utf8'));
  expect(readme).toContain('| Rocker bushes | **Part** |');
  expect(readme).toContain('| spindle in bush | A spindle in its bush. | bush less spindle |');
  expect(kindsOfFit()).toContain(ROCKER);
});
