/** Fasteners at the bench: asked for where a reading decides whether they are renewed. */
import { expect, test } from 'vitest';
import { againSpots } from '../../../src/engine/bench/again.js';
import { BenchBook, type BenchSpot, spotName } from '../../../src/engine/bench/bench-book.js';
import { blankSpots } from '../../../src/engine/bench/order.js';
import { replay } from '../../../src/engine/bench/replay.js';
import { modelOf, type Plain, table } from '../book-of.js';
import { Bench } from './bench-of.js';

const HEAD = { Engine: 'E1', Group: 'head', Gauge: 'C1', Note: undefined };
const READINGS = { 'Length 1': undefined, 'Length 2': undefined, 'Neck 1': undefined };
const sheets = (...rows: Readonly<Record<string, Plain>>[]) => ({
  Gauges: table({ Gauge: 'C1', 'Max error': 0.02 }),
  Fasteners: table(...rows.map((row) => ({ ...HEAD, ...row, ...READINGS }))),
});
const BOOK = sheets(
  { Number: 1, Renew: 'by length', 'Length max': 48 },
  { Number: 2, Renew: 'by neck' },
  { Number: 3, Renew: 'always', 'Length max': 48 },
  { Number: 4, 'Length max': 48 },
  { Number: 5 },
);
const named = (spots: readonly BenchSpot[]) => spots.map(({ part, column }) => `${part} ${spotName(column)}`);
const ASKED = [
  ...['E1 head 1 Length 1', 'E1 head 1 Length 2', 'E1 head 2 Neck 1'],
  ...['E1 head 4 Length 1', 'E1 head 4 Length 2'],
];

test('what is asked for', () => {
  expect(named(blankSpots(new BenchBook(modelOf(BOOK))))).toEqual(ASKED);
});

test('what Re-measure names', () => {
  const { spots, other } = againSpots(new BenchBook(modelOf(BOOK)));
  expect([...named(spots)].sort()).toEqual([...ASKED].sort());
  expect(other).toEqual([]);
});

test('a reading is taken, judged, logged, and made again from the log', () => {
  const bench = new Bench(BOOK);
  expect(bench.dialogue.question()).toMatchObject({
    heading: 'Fasteners, gauge C1; 5 readings left',
    usual: 'usual 43.2 to 52.8 mm (a tenth about its Length max)',
  });
  const answer = bench.dialogue.answer('48.5');
  expect(answer.said.join('\n')).toContain(
    'E1 head 1: longest 48.5 mm; renew (longest is 0.5 mm over Length max 48 mm); so far, 1 spot still open',
  );
  const [entry] = answer.entries;
  expect(entry).toMatchObject({ sheet: 'Fasteners', part: 'E1 head 1', spot: 'Length 1', typed: '48.5' });
  const again = new BenchBook(modelOf(BOOK));
  expect(replay(again, answer.entries)).toEqual({ readings: 1, left: [] });
  expect(again.measured.book.fasteners.length).toBe(5);
  expect(again.readings('Fasteners', 1).size).toBe(1);
});

test.each([
  ['inches', '1.9', 'it looks like inches: type "in" behind it'],
  ['a decimal point', '4.79', 'a decimal point may be missing or misplaced'],
])('a slip of %s is doubted', (_, typed, words) => {
  const bench = new Bench(BOOK);
  expect(bench.dialogue.answer(typed).refused.join('\n')).toContain(words);
});

test('rows of one name are told apart by where they stand', () => {
  const book = new BenchBook(
    modelOf(sheets({ Number: 1, Renew: 'by neck' }, { Number: 1, Renew: 'by neck' })),
  );
  expect(named(blankSpots(book))).toEqual(['E1 head 1 row 2 Neck 1', 'E1 head 1 row 3 Neck 1']);
});

test('a bolt that was moved in the file since is not written over', () => {
  const bench = new Bench(BOOK);
  bench.dialogue.answer('47.5');
  const tables = [...bench.book.measured.book.tables.values()];
  expect(bench.book.pending.movedIn(modelOf(BOOK), tables)).toBeUndefined();
  const sorted = structuredClone(modelOf(BOOK));
  sorted.sheets[1]!.rows.splice(1, 1);
  expect(bench.book.pending.movedIn(sorted, tables)).toMatch(/^Fasteners!/);
});

test('a bolt with more than three readings is read to its end', () => {
  const four = { 'Length 1': 47.5, 'Length 2': 47.5, 'Neck 1': 7.1, 'Neck 2': undefined };
  const row = { ...HEAD, Number: 1, Renew: 'by neck', 'Neck min': 7, ...four };
  const bench = new Bench({ ...BOOK, Fasteners: table(row) });
  expect(bench.dialogue.answer('7.12').said.join('\n')).toContain('E1 head 1 Neck 2: 7.12 mm');
});
