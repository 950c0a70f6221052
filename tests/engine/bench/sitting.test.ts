/** What goes on from row to row and from sitting to sitting, what is said before a row is read, and which spots are asked for. */
import { describe, expect, test } from 'vitest';
import { type Plain, type Sheets, table } from '../book-of.js';
import { Bench, sheets } from './bench-of.js';

const AT = { 'Engine type': 'X', Engine: 'E1', Fit: 'big end' };
const ROW = { Temperature: undefined, Gauge: undefined, 'Set to': undefined, 'A 0': undefined } as const;

function unnamed(): Sheets {
  return sheets(
    {},
    {
      Journals: table({ Part: 'J1', ...AT, Position: 1, ...ROW }, { Part: 'J2', ...AT, Position: 2, ...ROW }),
      Rods: table({ Part: 'R1', Engine: 'E1', Position: 1, ...ROW }),
      Shells: [],
    },
  );
}

describe('a row without a gauge', () => {
  test('is said as such, and gauge and temperature are asked for once a sheet', () => {
    const bench = new Bench(unnamed());
    expect(bench.dialogue.question()).toMatchObject({
      heading: 'Journals, no gauge named; 3 readings left',
      notes: ['gauge: type g and its name: M1, D1', 'temperature: type t and its value, or 20 °C counts'],
    });
    bench.type('42.001');
    expect(bench.dialogue.question()).toMatchObject({
      heading: 'Journals, no gauge named; 2 readings left',
      notes: [],
    });
    bench.type('42.001');
    expect(bench.dialogue.question()!.notes).toHaveLength(2);
  });

  test('names the gauge of the sitting before it is read; that of another sheet does not count', () => {
    const bench = new Bench(unnamed());
    bench.type('g M1', 't 21.5', '42.001');
    expect(bench.dialogue.question()!.heading).toBe('Journals, gauge M1; 2 readings left');
    bench.type('42.002');
    expect(bench.cell('Journals', 'J2', 'Gauge')).toBe('M1');
    expect(bench.dialogue.question()).toMatchObject({
      heading: 'Rods, no gauge named; 1 reading left',
      notes: ['gauge: type g and its name: M1, D1', 'temperature: 21.5; t changes it'],
    });
  });
});

describe('after an end and a new start', () => {
  const first = new Bench(unnamed());
  first.type('g M1', 't 21.5', 'z 42', '+1');

  test('gauge, temperature and zero are as they were', () => {
    const bench = new Bench(unnamed(), { log: first.log });
    expect(bench.dialogue.question()).toMatchObject({
      heading: 'Journals, gauge M1, set to 42 mm; 3 readings left',
      notes: ['temperature: 21.5; t changes it'],
    });
  });

  test('of yesterday only the gauge is', () => {
    const log = first.log.map((entry) => ({ ...entry, time: '2025-12-31T08:00:00.000Z' }));
    expect(new Bench(unnamed(), { log }).dialogue.question()).toMatchObject({
      heading: 'Journals, gauge M1; 3 readings left',
      notes: ['temperature: type t and its value, or 20 °C counts'],
    });
  });
});

describe('j PART SPOT', () => {
  test.each<[string, Plain, string[]]>([
    [
      'shows the reading that would be replaced',
      42.001,
      ['Journals J1 A 0 holds 42.001 mm: the next reading replaces it, s leaves it'],
    ],
    [
      'shows a cell that is no reading',
      'worn',
      ['Journals J1 A 0 holds the text "worn": the next reading replaces it, s leaves it'],
    ],
    ['says nothing of a blank one', undefined, []],
  ])('%s', (_, held, words) => {
    expect(new Bench(sheets({ 'A 0': held })).type('j J1 A 0').said).toEqual(words);
  });
});

describe('a reading that stands alone', () => {
  // No limits are known: the first reading, half a millimetre off, was not doubted.
  const four = { 'A 0': undefined, 'A 90': undefined, 'B 0': undefined, 'B 90': undefined };
  const given = () =>
    sheets(
      {},
      { Limits: [], Shells: [], Rods: [], Journals: table({ Part: 'J1', ...AT, Position: 1, ...four }) },
    );

  test('is asked for again once three others agree', () => {
    const bench = new Bench(given());
    bench.type('42.501', '42.001', 'k sure', '42.002');
    const { said } = bench.type('42.003');
    expect(said.at(-1)).toBe(
      'Journals J1 A 0: 42.501 mm stands against readings that agree, 42.001 mm to 42.003 mm: measure it again, or s leaves it',
    );
    expect(bench.asked).toBe('J1 A 0');
    bench.type('42.002');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.002);
    expect(bench.asked).toBeUndefined();
  });

  test('is not asked for while only two do', () => {
    const bench = new Bench(given());
    bench.type('42.501', '42.001', 'k sure', '42.002');
    expect(bench.asked).toBe('J1 B 90');
  });
});

describe('a repeat that was made for one part', () => {
  const journals = (repeat: Readonly<Record<string, Plain>>, other: Readonly<Record<string, Plain>>) =>
    sheets(
      {},
      {
        Rods: [],
        Shells: [],
        Journals: table(
          { Part: 'J1', ...AT, Position: 1, 'A 0': 42.001, 'A 90': 42.001, ...repeat },
          { Part: 'J2', ...AT, Position: 2, 'A 0': 42.002, 'A 90': 42.002, ...other },
        ),
      },
    );
  const asked = (given: Sheets) => {
    const bench = new Bench(given);
    const { agenda } = bench.dialogue;
    return agenda.left().map(({ part, column }) => `${part} ${column.header}`);
  };

  test.each<[string, Sheets, string[]]>([
    ['does not ask other parts for theirs', journals({ 'A 0 #2': 42.001 }, {}), []],
    [
      'blank for all, is one that the sheet asks for',
      journals({ 'A 0 #2': undefined }, {}),
      ['J1 A 0 #2', 'J2 A 0 #2'],
    ],
    [
      'at every spot, is one that the sheet asks for',
      journals({ 'A 0 #2': 42.001, 'A 90 #2': 42.001 }, {}),
      ['J2 A 0 #2', 'J2 A 90 #2'],
    ],
    [
      'among the columns of the sheet, is one that it asks for',
      journals({ 'A 0 #2': 42.001, Note: undefined }, {}),
      ['J2 A 0 #2'],
    ],
  ])('%s', (_, given, spots) => {
    expect(asked(given)).toEqual(spots);
  });
});

describe('u behind a doubtful reading', () => {
  test('takes the reading before it back, where only that speaks against it', () => {
    const bench = new Bench(sheets({}, { Limits: [] }));
    bench.type('42.501');
    expect(bench.type('42.001').refused[0]).toContain('away from the other spots');
    expect(bench.type('u').said).toEqual(['"42.001" is gone', 'Journals J1 A 0: taken back']);
    expect(bench.cell('Journals', 'J1', 'A 0')).toBeUndefined();
    expect(bench.asked).toBe('J1 A 0');
  });

  test('leaves it where limits speak against the doubtful one, and says how it is taken back', () => {
    const bench = new Bench();
    bench.type('42.001', '42.501');
    expect(bench.type('u').said).toEqual(['"42.501" is gone; u once more takes the last reading back']);
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.001);
    expect(bench.type('u').said[0]).toBe('Journals J1 A 0: taken back');
  });
});
