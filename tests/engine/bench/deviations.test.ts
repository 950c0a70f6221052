/** Deviations at the bench: `z` sets the gauge's zero, `+12` is steps, `+0.012` a length. */
import { describe, expect, test } from 'vitest';
import { replay } from '../../../src/engine/bench/replay.js';
import { type Plain, table } from '../book-of.js';
import { Bench, sheets } from './bench-of.js';

const AT = { 'Engine type': 'X', Engine: 'E1', Fit: 'big end' };

function twoJournals(more: Readonly<Record<string, Plain>> = {}) {
  return sheets(
    {},
    {
      Journals: table(
        {
          Part: 'J1',
          ...AT,
          Position: 1,
          Gauge: 'M1',
          'Set to': undefined,
          'A 0': undefined,
          'A 90': undefined,
          ...more,
        },
        { Part: 'J2', ...AT, Position: 2, Gauge: 'M1', 'A 0': undefined, 'A 90': undefined },
        { Part: 'J3', ...AT, Position: 3, Gauge: 'D1', 'A 0': undefined, 'A 90': undefined },
      ),
      Gauges: table(
        { Gauge: 'M1', 'Max error': 0.004, 'Set from': 'ring 42' },
        { Gauge: 'D1', 'Max error': 0.002 },
        { Gauge: 'ring 42', 'Max error': 0.001 },
      ),
    },
  );
}

describe('z', () => {
  test('sets the row and those that follow with its gauge, and names what the gauge was set from', () => {
    const bench = new Bench(twoJournals());
    expect(bench.type('z 42.000').said).toEqual([
      'Set to 42.000: for J1, and for those that follow; gauge M1 was set from ring 42; +12 and -3 are steps, +0.012 is a length',
    ]);
    expect(bench.dialogue.question()!.heading).toContain('gauge M1, set to 42 mm');
    bench.type('+1', '-3', '+0.002', '0');
    expect(bench.cell('Journals', 'J1', 'Set to')).toBe(42);
    expect(bench.cell('Journals', 'J2', 'Set to')).toBe(42);
    expect(bench.cell('Journals', 'J2', 'A 90')).toBe(0);
    // D1 has another zero.
    bench.type('j J3', '42.001');
    expect(bench.cell('Journals', 'J3', 'Set to')).toBeUndefined();
    expect(bench.cell('Journals', 'J3', 'A 0')).toBe(42.001);
    expect(bench.type('z 42').said[0]).toContain('Gauges does not say what set the zero of D1');
  });

  test('shows what was understood before the next spot is asked for', () => {
    const bench = new Bench(twoJournals());
    bench.type('z 42');
    expect(bench.type('+3').said[0]).toBe('Journals J1 A 0: 42.003 mm (+0.003 mm from 42 mm)');
    expect(bench.type('-12').said[0]).toBe('Journals J1 A 90: 41.988 mm (−0.012 mm from 42 mm)');
    expect(bench.log.at(-1)).toMatchObject({ kind: 'reading', typed: '-12', mm: '41.988' });
  });

  test('leaves a row that has readings, and begins with the next part', () => {
    const bench = new Bench(twoJournals());
    bench.type('42.001');
    expect(bench.type('z 42').said[0]).toContain('from the next part on, as J1 has readings already');
    bench.type('42.002', '+2');
    expect(bench.cell('Journals', 'J1', 'Set to')).toBeUndefined();
    expect(bench.cell('Journals', 'J1', 'A 90')).toBe(42.002);
    expect([bench.cell('Journals', 'J2', 'Set to'), bench.cell('Journals', 'J2', 'A 0')]).toEqual([
      42, 0.002,
    ]);
  });

  test('off ends it', () => {
    const bench = new Bench(twoJournals());
    bench.type('z 42', 'z off', '42.001');
    expect(bench.cell('Journals', 'J1', 'Set to')).toBeUndefined();
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.001);
  });

  test('makes the column where the sheet has none, and keeps it through a log', () => {
    const bench = new Bench();
    bench.type('z 42', '+1');
    expect([bench.cell('Journals', 'J1', 'Set to'), bench.cell('Journals', 'J1', 'A 0')]).toEqual([
      42, 0.001,
    ]);
    const again = new Bench();
    expect(replay(again.book, bench.log).left).toEqual([]);
    expect([again.cell('Journals', 'J1', 'Set to'), again.cell('Journals', 'J1', 'A 0')]).toEqual([
      42, 0.001,
    ]);
  });

  test.each(['ring', '0', '-42', '42 g'])('refuses %s', (typed) => {
    const bench = new Bench(twoJournals());
    expect(bench.type(`z ${typed}`).refused[0]).toContain('expected the size that the gauge is set to');
    expect(bench.dialogue.question()!.heading).not.toContain('set to');
  });
});

describe('with the gauge set to 42', () => {
  test.each<[string, Plain, string]>([
    ['+12', 0.012, '42.012'],
    ['- 3', -0.003, '41.997'],
    ['−3', -0.003, '41.997'],
    ['+0.012', 0.012, '42.012'],
    ['0,012', 0.012, '42.012'],
    ['0', 0, '42'],
    ['+4 um', '+4 um', '42.004'],
    ['-0.0001 in', '-0.0001 in', '41.99746'],
  ])('%s', (typed, cell, mm) => {
    const bench = new Bench(twoJournals());
    bench.type('z 42', typed);
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(cell);
    expect(bench.log.at(-1)).toMatchObject({ mm });
  });

  test.each([
    ['12', 'expected +12 or -12 for steps'],
    ['42.003', 'expected the deviation from 42 mm; for sizes type z off first'],
    ['wide', 'expected a length'],
  ])('%s is refused', (typed, words) => {
    const bench = new Bench(twoJournals());
    expect(bench.type('z 42', typed).refused[0]).toContain(words);
    expect(bench.asked).toBe('J1 A 0');
  });

  test('a deviation beyond limits is doubted as a size', () => {
    const bench = new Bench(twoJournals());
    expect(bench.type('z 42', '+500').refused[0]).toContain('42.5 mm (+0.5 mm from 42 mm) is doubtful');
  });

  test('a step is 0.0001 in where the column is in inches', () => {
    const inches = { ...twoJournals(), Setup: table({ Item: 'Length unit', Value: 'in' }), Limits: [] };
    const bench = new Bench(inches);
    bench.type('z 1.6535', '+4');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(0.0004);
  });

  test('u brings the deviation back that stood there', () => {
    const bench = new Bench(twoJournals());
    bench.type('z 42', '+12', '+3', 'j J1 A 0', '+5', 'u');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(0.012);
    expect(bench.book.readings('Journals', 1).get(7)).toBe(42_012_000);
  });
});

test('+12 without a zero is no size', () => {
  expect(new Bench().type('+12').refused[0]).toContain('z 43.000');
});
