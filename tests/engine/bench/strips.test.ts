/** Gauge strips at the bench: asked for where parts are not measured, with the step of their scale. */
import { expect, test } from 'vitest';
import { replay } from '../../../src/engine/bench/replay.js';
import { type Plain, type Sheets, table } from '../book-of.js';
import { Bench } from './bench-of.js';

const AT = { 'Engine type': 'X', Engine: 'E1', Fit: 'big end' };

function stripBook(second: Readonly<Record<string, Plain>> = {}, others: Sheets = {}): Sheets {
  return {
    Setup: table({ Item: 'Strip step', Value: 0.025 }),
    Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 }),
    Journals: table(
      { Part: 'J1', ...AT, Position: 1, 'A 0': undefined },
      { Part: 'J2', ...AT, Position: 2, 'A 0': undefined, ...second },
    ),
    Rods: table(
      { Part: 'R1', Engine: 'E1', Position: 1, 'A 0': undefined },
      { Part: 'R2', Engine: 'E1', Position: 2, 'A 0': 45.0125 },
    ),
    Shells: table(
      { Part: 'U2', Engine: 'E1', Position: 2, Half: 'upper', 'Wall 1': 1.4875 },
      { Part: 'L2', Engine: 'E1', Position: 2, Half: 'lower', 'Wall 1': 1.4885 },
    ),
    Fits: table(
      { Engine: 'E1', Fit: 'big end', Position: 1, 'Strip reading': undefined },
      { Engine: 'E1', Fit: 'big end', Position: 2, 'Strip reading': undefined },
    ),
    ...others,
  };
}

const stripOf = (bench: Bench, row: number) => {
  const table = bench.book.table('Fits')!;
  return bench.book.textAt('Fits', row, table.columns.get('Strip reading')!.column);
};

test('strips are asked for behind the parts, with their step and the limits', () => {
  const bench = new Bench(stripBook());
  expect(bench.dialogue.agenda.left().map(({ part }) => part)).toEqual([
    ...['J1', 'J2', 'R1'],
    ...['E1 big end 1', 'E1 big end 2'],
  ]);
  bench.type('s', 's', 's');
  expect(bench.dialogue.question()).toMatchObject({
    heading: 'Fits, step 0.025 mm; 5 readings left',
    usual: 'clearance 0.02 mm to 0.06 mm (Limits)',
  });
  const { said } = bench.type('0,05');
  expect(said[0]).toBe('Fits E1 big end 1 Strip reading: 0.05 mm');
  expect(said[1]).toMatch(/^E1 big end 1: clearance 0\.05 mm, 0\.05 to 0\.05 mm; .*by the strip$/);
  expect(stripOf(bench, 1)).toBe('0.05');
});

test('a bearing that is measured in the meantime is not asked for, nor one that was', () => {
  const bench = new Bench(stripBook());
  bench.type('s', '42.0015');
  expect(bench.dialogue.agenda.left().map(({ part }) => part)).toEqual(['J1', 'R1', 'E1 big end 1']);
  const measured = new Bench(stripBook({ 'A 0': 42.0015 }));
  expect(measured.dialogue.agenda.left().map(({ part }) => part)).toEqual(['J1', 'R1', 'E1 big end 1']);
});

test('a reading that no strip shows is doubted', () => {
  const bench = new Bench(stripBook());
  expect(bench.type('j E1 big end 1', '5').refused[0]).toContain('no strip shows more than 0.5 mm');
  bench.type('k melted', '0.05');
  expect(stripOf(bench, 1)).toBe('5');
});

test('a strip is taken back, and taken up from a log', () => {
  const bench = new Bench(stripBook());
  bench.type('j E1 big end 2', '0.05', 'u');
  expect(stripOf(bench, 2)).toBe('');
  expect(bench.asked).toBe('E1 big end 2 Strip reading');
  bench.type('0,04');
  const again = new Bench(stripBook());
  expect(replay(again.book, bench.log)).toEqual({ readings: 1, left: [] });
  expect(stripOf(again, 2)).toBe('0.04');
});

test('keys of parts say what they cannot do there', () => {
  const bench = new Bench(stripBook());
  bench.type('j E1 big end 1');
  expect(bench.type('z 0.05').refused[0]).toContain('Fits has no column Set to');
  expect(bench.type('g M1').refused).toHaveLength(1);
  expect(bench.type('n melted').refused[0]).toContain('no column Note');
  bench.type('0.05');
  expect(bench.type('r').refused).toHaveLength(1);
});
