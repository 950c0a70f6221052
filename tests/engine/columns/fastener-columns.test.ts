/** Two ways to every result of Fasteners: the engine's formulas and the core; and the live formulas of its cells. */
import { expect, test } from 'vitest';
import { seeded } from '../../../scripts/demo/random.js';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import { evaluateColumns } from '../../../src/engine/columns/evaluate.js';
import type { CellContent, WorkbookModel } from '../../../src/engine/workbook-model.js';
import { bookOf, type Plain, type Sheets, table } from '../book-of.js';
import { liveValues } from './live-values.js';

const assessed = (sheets: Sheets) => assessBook(bookOf(sheets), { seconds: 1 });

const OFFSETS = Array.from({ length: 41 }, (_, at) => (at - 20) / 200);

/** Rows near their limits, some of them blank or typed with a unit. */
function randomSheets(seed: number): Sheets {
  const random = seeded(seed);
  const pick = (...values: readonly Plain[]) => random.pick(values);
  const near = (size: number) => pick(undefined, Math.round((size + random.pick(OFFSETS)) * 1000) / 1000);
  const rows = Array.from({ length: 30 }, (_, at) => ({
    ...{ Engine: 'E1', Group: 'head', Number: at + 1 },
    ...{ Renew: pick(undefined, 'always', 'by length', 'by neck'), Gauge: pick(undefined, 'C1') },
    ...{ 'Length max': pick(undefined, 48, '48 mm'), 'Neck min (in)': pick(undefined, 0.2756) },
    ...{ 'Length 1': near(47.95), 'Length 1 #2': near(47.95), 'Length 2 (in)': pick(undefined, 1.889) },
    ...{ 'Neck 1': pick(near(7.05), '7,05 mm'), 'Neck 2': near(7.05) },
  }));
  return {
    Gauges: table({ Gauge: 'C1', 'Max error': 0.02, Resolution: 0.01, Repeatability: 0.005 }),
    Fasteners: table(...rows),
  };
}

const found = new Set<string>();

test.each([1, 2, 3, 4, 5, 6])('books of seed %i', async (seed) => {
  const assessment = await assessed(randomSheets(seed));
  for (const { status } of assessment.fasteners) found.add(status);
  // Evaluation throws where the engine's value is not the core's.
  expect([...evaluateColumns(assessment).cells.get('Fasteners')!].length).toBeGreaterThan(60);
  const live = liveValues(assessment).filter(({ sheet }) => sheet === 'Fasteners');
  expect(live.length).toBeGreaterThan(30);
  expect(live.filter(({ found: value, stored }) => value !== stored)).toEqual([]);
});

test('they have every verdict', () => {
  expect([...found].sort()).toEqual(['no limits', 'not measured', 'renew', 'undecided', 'within limits']);
});

const ROW = { Engine: 'E1', Group: 'head', Number: 1, Renew: 'by length', 'Length max': 48 };
const GAUGES = table({ Gauge: 'C1', 'Max error': 0.02 });

/** What a cell of the row says once another is typed over. */
async function statusAfter(cells: Record<string, Plain>, header: string, value: Plain): Promise<unknown> {
  const sheets = { Gauges: GAUGES, Fasteners: table({ ...ROW, ...cells }) };
  const assessment: Assessment = await assessed(sheets);
  const column = sheets.Fasteners[0]!.indexOf(header);
  const content: CellContent | undefined =
    typeof value === 'number'
      ? { kind: 'number', value }
      : value === undefined
        ? undefined
        : { kind: 'text', value: String(value) };
  const change = (model: WorkbookModel): WorkbookModel => {
    const changed = structuredClone(model);
    changed.sheets.find(({ name }) => name === 'Fasteners')!.rows[1]![column] = { content };
    return changed;
  };
  return liveValues(assessment, change)
    .filter(({ sheet }) => sheet === 'Fasteners')
    .at(-1)!.found;
}

test.each([
  ['longer than its limit', { 'Length 1': 47.9 }, 'Length 1', 48.5, 'renew'],
  ['another limit', { 'Length 1': 47.9 }, 'Length max', 47, 'renew'],
  ['inside the guard', { 'Length 1': 47.9, Gauge: 'C1' }, 'Length 1', 48.005, 'undecided'],
  ['a reading taken out', { 'Length 1': 47.9 }, 'Length 1', undefined, 'not measured'],
  [
    'a first reading, whose guard is not known',
    { 'Length 1': undefined },
    'Length 1',
    47,
    'measured: run again',
  ],
  ['another fastener in the row', { 'Length 1': 47.9 }, 'Number', 2, 'run again'],
])('live: %s', async (_, cells, header, value, status) => {
  expect(await statusAfter(cells, header, value)).toBe(status);
});
