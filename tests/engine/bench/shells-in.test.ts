/** At the bench: a bore that is measured with its shells in. */
import { expect, test } from 'vitest';
import { BenchBook } from '../../../src/engine/bench/bench-book.js';
import { usualText } from '../../../src/engine/bench/expectation.js';
import { blankSpots } from '../../../src/engine/bench/order.js';
import { runningResults } from '../../../src/engine/bench/running-results.js';
import { modelOf, table } from '../book-of.js';

const at = (Position: number) => ({ 'Engine type': 'X', Engine: 'E1', Position });

const benchBook = (bore: Readonly<Record<string, number>> = {}) =>
  new BenchBook(
    modelOf({
      Limits: table({
        ...{ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.05 },
        ...{ 'Bore min': 45, 'Bore max': 45.02, 'Bearing min': 42.03, 'Bearing max': 42.05 },
      }),
      Journals: table({ Part: 'J1', ...at(1), Fit: 'big end', 'A 0': 42 }),
      Rods: table(
        { Part: 'R1', ...at(1), 'Shells in': 'yes', 'A 0': undefined, ...bore },
        { Part: 'R2', ...at(2), 'A 0': undefined },
      ),
      Shells: table(
        { Part: 'U1', ...at(1), Half: 'upper', 'Wall 1': undefined },
        { Part: 'U2', ...at(2), Half: 'upper', 'Wall 1': undefined },
      ),
    }),
  );

test('the walls of its shells are not asked for', () => {
  expect(blankSpots(benchBook()).map(({ part }) => part)).toEqual(['R1', 'R2', 'U2']);
});

test('what is usual there is the size of the bearing', () => {
  const book = benchBook();
  const [bearing, bare] = blankSpots(book);
  expect(usualText(book, bearing!)).toBe('usual 42.03 to 42.05 mm (Limits)');
  expect(usualText(book, bare!)).toBe('usual 45 to 45.02 mm (Limits)');
});

test('its fit is judged as soon as it is read, with no wall still open', () => {
  const book = benchBook({ 'A 0': 42.035 });
  const spot = book.spots().find(({ part }) => part === 'R1')!;
  expect(runningResults(book, spot)).toEqual([
    'R1: size 42.035 mm; within limits',
    'E1 big end 1: clearance 0.035 mm, 0.035 to 0.035 mm; in range',
  ]);
});
