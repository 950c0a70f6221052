/** Which readings `--again` asks for. */
import { expect, test } from 'vitest';
import { againSpots } from '../../../src/engine/bench/again.js';
import { BenchBook, spotName } from '../../../src/engine/bench/bench-book.js';
import { modelOf, type Plain, type Sheets, table } from '../book-of.js';

const AT = { 'Engine type': 'X', Engine: 'E1', Position: 1 };

/** A clearance of 0.035 mm, that much above the least. */
function bookWith(
  least: number,
  gauge: Readonly<Record<string, Plain>>,
  journals: Sheets[string],
): BenchBook {
  return new BenchBook(
    modelOf({
      Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': least, 'Clearance max': 0.1 }),
      Gauges: table({ Gauge: 'M1', ...gauge }),
      Journals: journals,
      Rods: table({ Part: 'R1', ...AT, Gauge: 'M1', 'A 0': 45.0125 }),
      Shells: table(
        { Part: 'U', ...AT, Half: 'upper', Gauge: 'M1', 'Wall 1': 1.4875 },
        { Part: 'L', ...AT, Half: 'lower', Gauge: 'M1', 'Wall 1': 1.4885 },
      ),
    }),
  );
}

const JOURNAL = table({ Part: 'J1', ...AT, Fit: 'big end', Gauge: 'M1', 'A 0': 42.0015 });

function named(book: BenchBook) {
  const { spots, other } = againSpots(book);
  return { spots: spots.map(({ part, column }) => `${part} ${spotName(column)}`), other };
}

test('readings that scatter are asked for again', () => {
  const { spots, other } = named(bookWith(0.034, { 'Max error': 0.0002, Repeatability: 0.004 }, JOURNAL));
  expect(spots.length).toBeGreaterThan(0);
  expect(other).toEqual([]);
});

test('readings that cannot decide anything are not, and it is said why', () => {
  // The error of the gauge is the same in every reading.
  const { spots, other } = named(bookWith(0.034, { 'Max error': 0.02, 'Same at all sizes': 'no' }, JOURNAL));
  expect(spots).toEqual([]);
  expect(other).toHaveLength(1);
  expect(other[0]).toContain('not asked for: E1 big end 1');
});

test('one repeat of a part does not ask the others for theirs', () => {
  const journals = table(
    { Part: 'J1', ...AT, Fit: 'big end', Gauge: 'M1', 'A 0': 42.0015, 'A 90': 42.0015, 'A 0 #2': 42.0016 },
    { Part: 'J2', ...AT, Position: 2, Fit: 'big end', Gauge: 'M1' },
  );
  expect(named(bookWith(0.02, { 'Max error': 0.001 }, journals)).spots).toEqual(['J2 A 0', 'J2 A 90']);
});
