/** The table of fits for a terminal: aligned, within its width, its bars true to the verdicts. */
import { expect, test } from 'vitest';
import { type NeighbourResult, neighbourResults } from '../../../src/engine/assess/neighbours.js';
import { fitTables } from '../../../src/io/terminal/fit-table.js';
import { assess, table } from '../../engine/book-of.js';

/** Bores of 45.01 + so many thousandths, walls 1.49, journals 42: clearances of 0.03 mm and those thousandths. */
function group(positions: readonly string[], thousandths: readonly number[]): NeighbourResult {
  const at = (place: number) => ({ Engine: 'E1', Position: positions[place]! });
  const rows = positions.map((_, place) => place);
  const { fits } = assess({
    Limits: table({
      'Engine type': 'X',
      Fit: 'big end',
      'Clearance min': 0.02,
      'Clearance max': 0.05,
      'Service limit': 0.07,
    }),
    Gauges: table({ Gauge: 'G', 'Max error': 0.001 }),
    Journals: table(
      ...rows.map((row) => ({ Part: `J${row}`, ...at(row), Fit: 'big end', 'A 0': 42, Gauge: 'G' })),
    ),
    Rods: table(
      ...rows.map((row) => ({
        Part: `R${row}`,
        ...at(row),
        'A 0': Number((45.01 + thousandths[row]! / 1000).toFixed(3)),
      })),
    ),
    Shells: table(
      ...rows.flatMap((row) => [
        { Part: `U${row}`, ...at(row), Half: 'upper', 'Wall 1': 1.49 },
        { Part: `L${row}`, ...at(row), Half: 'lower', 'Wall 1': 1.49 },
      ]),
    ),
  });
  return neighbourResults(fits)[0]!;
}

const linesOf = (width: number, one = group(['1', '2', '10'], [5, 30, 60])) =>
  fitTables([one], 'mm', width, () => 'heading');

test.each([72, 80, 100, 120, 160])('at %i characters no line is longer', (width) => {
  const lines = linesOf(width);
  expect(lines[0]).toBe('heading');
  expect(lines.filter((line) => line.length > width)).toEqual([]);
  expect(lines.filter((line) => line !== line.trimEnd())).toEqual([]);
});

test('clearances are aligned at their points, verdicts at their beginnings', () => {
  const rows = linesOf(80).filter((line) => /^ {4}\d/.test(line));
  expect(rows).toHaveLength(3);
  expect(new Set(rows.map((row) => row.indexOf('.'))).size).toBe(1);
  const begins = rows.map((row) => row.search(/in range|within|loose/));
  expect(new Set(begins).size).toBe(1);
  expect(rows[0]).toMatch(/^ {4}1 +0\.03500 {2}0\.02 to 0\.05 {2}in range$/);
});

test('bars come where there is room, and Why beside them where there is more', () => {
  expect(linesOf(80).join('\n')).not.toContain('#');
  expect(linesOf(100).join('\n')).toMatch(/loose +\.+\[ +\] +\|\.*-?#.*\n {8}loosest is/);
  expect(linesOf(160).join('\n')).toMatch(/loose +\.+\[ +\] +\|\.*-?#[^\n]* loosest is/);
  expect(linesOf(160).at(-1)).toContain('[ ] range, | service limit');
});

test('a bar lies where its verdict says: in range between the brackets, loose behind the service limit', () => {
  const bars = linesOf(120).flatMap((line) => /\.+\[[^\n]*?\.+(?= |$)/.exec(line)?.[0] ?? []);
  expect(bars).toHaveLength(3);
  const [inRange, within, loose] = bars as [string, string, string];
  expect(inRange).toMatch(/^\.+\[ +-*#+-* +\] +\|\.+$/);
  expect(within).toMatch(/^\.+\[ +\] *-*#+-* *\|\.+$/);
  expect(loose).toMatch(/^\.+\[ +\] +\|\.*-*#+-*\.*$/);
});

test('a guard outside a limit that is wider than the one inside goes on beyond it', () => {
  const at = { Engine: 'E1', Position: 1 };
  const spots = Object.fromEntries(['A 0', 'A 90', 'B 0', 'B 90'].map((spot) => [spot, 42]));
  const { fits } = assess({
    Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.08 }),
    Gauges: table({ Gauge: 'R', 'Max error': 0, Repeatability: 0.004 }),
    Journals: table({ Part: 'J', ...at, Fit: 'big end', Gauge: 'R', ...spots }),
    Rods: table({ Part: 'R', ...at, 'A 0': 45.03 }),
    Shells: table(
      { Part: 'U', ...at, Half: 'upper', 'Wall 1': 1.49 },
      { Part: 'L', ...at, Half: 'lower', 'Wall 1': 1.49 },
    ),
  });
  // Guards of 6.6 and 8.7 µm about a clearance of 50 µm.
  expect(fits[0]!.guards.outside).toBeGreaterThan(fits[0]!.guards.inside);
  const lines = linesOf(160, neighbourResults(fits)[0]!).join('\n');
  expect(lines).toMatch(/\.+\[ +~+-+#+-+~+ +\]\.+/);
  expect(lines).toMatch(/- [^,]*keeps[^,]*, ~ [^,]*breaks/);
});

test('a name of several lines stays in its row', () => {
  const lines = linesOf(80, group(['1\n2'], [5]));
  expect(lines.filter((line) => line.includes('\n'))).toEqual([]);
  expect(lines[2]).toContain('1 2');
});

test('a fit without clearance has a row and no bar', () => {
  const one = group(['1', '2'], [5, 10]);
  const [first, second] = one.fits;
  const lines = linesOf(120, {
    ...one,
    fits: [{ ...first!, clearance: undefined, status: 'not measured', why: ['no rod'] }, second!],
  });
  const row = lines.find((line) => line.includes('not measured'))!;
  expect(row).toContain('no rod');
  expect(row).not.toContain('#');
});
