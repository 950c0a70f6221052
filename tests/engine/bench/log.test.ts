/** The log: any line comes back as it was, a damaged one is noticed, and a log makes the same book again. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LogEntry, logLine, parseLogLine } from '../../../src/engine/bench/log-line.js';
import { replay } from '../../../src/engine/bench/replay.js';
import { type Plain, table } from '../book-of.js';
import { Bench, sheets } from './bench-of.js';

const text = fc.string({ unit: 'binary', maxLength: 30 });
const entries: fc.Arbitrary<LogEntry> = fc.record({
  time: text,
  kind: fc.constantFrom('reading', 'undo', 'note', 'temperature', 'gauge', 'set to', 'written'),
  sheet: fc.constantFrom('Journals', 'Rods', 'Cases', 'Shells', undefined),
  part: text,
  spot: text,
  typed: text,
  mm: text,
  gauge: text,
  temperature: text,
  before: text,
  reason: text,
});

describe('a line', () => {
  test('is one line whatever was typed, and is read as it was written', () => {
    fc.assert(
      fc.property(entries, (entry) => {
        const line = logLine(entry);
        expect(line.slice(0, -1)).not.toMatch(/\n|\r/);
        expect(line.endsWith('\n')).toBe(true);
        expect(parseLogLine(line.slice(0, -1))).toEqual(entry);
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  test('that was cut short anywhere is noticed', () => {
    const line = logLine({
      ...Object.fromEntries(
        ['time', 'part', 'spot', 'typed', 'mm', 'gauge', 'temperature', 'before', 'reason'].map((key) => [
          key,
          '42.003',
        ]),
      ),
      kind: 'reading',
      sheet: 'Journals',
    } as unknown as LogEntry).slice(0, -1);
    for (let length = 0; length < line.length; length++)
      expect(parseLogLine(line.slice(0, length))).toBeUndefined();
    expect(parseLogLine(line.replace('42.003', '42.004'))).toBeUndefined();
  });
});

/** A fresh book with the log of another sitting in it. */
function takenUp(log: readonly LogEntry[], given = sheets()) {
  const bench = new Bench(given);
  return { bench, ...replay(bench.book, log) };
}

function cellsOf(bench: Bench): Plain[][] {
  return (['Journals', 'Rods', 'Shells'] as const).flatMap((sheet) =>
    bench.book.table(sheet)!.sheet.rows.map((cells) => {
      const values = Array.from(cells, (cell) => cell?.content?.value);
      return values.slice(0, values.findLastIndex((value) => value !== undefined) + 1);
    }),
  );
}

describe('taken up in the book as it was', () => {
  test.each([
    ['readings', ['42.001', '42,002', '42000 um']],
    ['readings taken back', ['42.001', '42.002', 'u', '42.003', 'u', 'u']],
    ['a spot read again', ['42.001', 'j J1 A 0', '42.002']],
    ['and that taken back', ['42.001', 'j J1 A 0', '42.002', 'u']],
    ['notes, reasons, temperatures', ['t 21', 'n one', '42.501', 'k two', 'n three', 'u']],
    ['deviations', ['z 42.000', '+1', '-0.002', '0', 'u', '+3 um']],
    ['new columns', ['42.001', 'r', '42.002', 'r', '42.0015', 'r', '42.0012', 'u']],
  ])('%s', (_, lines) => {
    const before = new Bench();
    before.type(...lines);
    const { bench, left } = takenUp(before.log);
    expect(left).toEqual([]);
    expect(cellsOf(bench)).toEqual(cellsOf(before));
    // Once more over what it wrote: a kill between the book's writing and the log's note of it.
    expect(replay(bench.book, before.log).left).toEqual([]);
    expect(cellsOf(bench)).toEqual(cellsOf(before));
  });

  test('only what came behind the last writing', () => {
    const before = new Bench();
    before.type('42.001');
    const written = {
      ...before.log[0]!,
      kind: 'written',
      sheet: undefined,
      part: '',
      spot: '',
      typed: '',
      mm: '',
    } as const;
    before.type('42.002');
    const { bench, readings } = takenUp([before.log[0]!, written, before.log[1]!]);
    expect(readings).toBe(1);
    expect(bench.cell('Journals', 'J1', 'A 0')).toBeUndefined();
    expect(bench.cell('Journals', 'J1', 'A 90')).toBe(42.002);
  });
});

describe('leaves the book as it is, and says so, where', () => {
  const before = new Bench();
  before.type('42.001');

  test('the cell was typed by hand since', () => {
    const { bench, left } = takenUp(before.log, sheets({ 'A 0': 42.004 }));
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.004);
    expect(left[0]).toContain(
      'log has "42.001" for Journals "J1" A 0, but its cell holds the number 42.004, typed since',
    );
  });

  test.each([
    ['the part is gone', sheets({ Part: 'J2' }), 'no such part'],
    [
      'the column is gone',
      { ...sheets(), Journals: table({ Part: 'J1', Engine: 'E1', Fit: 'big end', Position: 1 }) },
      'no such column',
    ],
  ])('%s', (_, given, words) => {
    const { left } = takenUp(before.log, given);
    expect(left).toHaveLength(1);
    expect(left[0]).toContain(words);
  });
});

test('a book whose unit was changed takes the millimetres of the log', () => {
  const before = new Bench();
  before.type('42.001');
  const inches = sheets({}, { Setup: table({ Item: 'Length unit', Value: 'in' }) });
  const { bench, left } = takenUp(before.log, inches);
  expect(left).toEqual([]);
  expect(bench.cell('Journals', 'J1', 'A 0')).toBe('42.001 mm');
});
