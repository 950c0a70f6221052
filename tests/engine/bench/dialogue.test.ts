/** The talk at the bench, line by line. */
import { describe, expect, test } from 'vitest';
import { BENCH_COMMANDS, commandHelp } from '../../../src/engine/bench/commands.js';
import { modelOf, type Sheets, table } from '../book-of.js';
import { Bench, sheets } from './bench-of.js';

test('asks gauge by gauge, part by part, and repeats behind the first readings', () => {
  const bench = new Bench();
  const asked: (string | undefined)[] = [];
  for (let step = 0; step < 7; step++) {
    asked.push(bench.asked);
    bench.type('s');
  }
  // M1 measures journal and walls, D1 the bore.
  expect(asked).toEqual(['J1 A 0', 'J1 A 90', 'J1 B 0', 'J1 A 0 #2', 'U Wall 1', 'L Wall 1', 'R1 A 0']);
  expect(bench.asked).toBeUndefined();
  expect(bench.dialogue.agenda.left()).toHaveLength(7);
});

test('takes a reading into its cell and says what can be said', () => {
  const bench = new Bench();
  expect(bench.dialogue.question()!.usual).toBe('usual 41.985 to 42.005 mm (Limits)');
  expect(bench.type('42.0015').said[1]).toContain('J1: size 42.0015 mm; undecided');
  expect(bench.dialogue.question()!.usual).toContain('other spots 42.0015 mm');
  const { said } = bench.type('41.9995', '42.0005');
  expect(said[1]).toMatch(
    /^J1: size 42\.0005 mm, out of round 0\.002 mm, taper 0\.001 mm; .*so far, 1 spot still open$/,
  );
  bench.type('s', '1.4875', '1.4885');
  // 45.0125 − 1.4875 − 1.4885 − 42.0005 = 0.036; the guard of two 0.004 mm gauges keeps it open.
  expect(bench.type('45.0125').said.at(-1)).toMatch(
    /^E1 big end 1: clearance 0\.036 mm, 0\.035 to 0\.037 mm; /,
  );
  expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.0015);
});

test('understands what a typed cell may hold: decimal commas, units; keeps a foreign unit as text', () => {
  const bench = new Bench();
  bench.type('42,0015', '42001.5 um', '1.65354 in');
  expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.0015);
  expect(bench.cell('Journals', 'J1', 'A 90')).toBe('42001.5 um');
  expect(bench.cell('Journals', 'J1', 'B 0')).toBe('1.65354 in');
  expect(bench.log.map(({ mm }) => mm)).toEqual(['42.0015', '42.0015', '41.999916']);
});

describe('is refused, and the spot asked for again:', () => {
  test.each([
    ['words', 'wide'],
    ['a formula', '=1+41'],
    ['markup', '<b>42</b>'],
    ['a negative length', '-42'],
    ['zero', '0'],
    ['a unit of something else', '42 g'],
    ['endless figures', '9'.repeat(400)],
    ['a number too great for any', '1e99'],
    ['two numbers', '42.001 42.002'],
    ['control characters', '42.\u0008003'],
    ['an escape sequence', '\u001b[2J'],
    ['a long line', '4'.repeat(1_000_000)],
  ])('%s', (_, line) => {
    const bench = new Bench();
    const { said, refused, entries } = bench.type(line);
    expect(refused).toHaveLength(1);
    expect(refused[0]).toContain('expected');
    expect(refused[0]!.length).toBeLessThan(200);
    expect(refused[0]).not.toMatch(/\p{Cc}/u);
    expect([said, entries]).toEqual([[], []]);
    expect(bench.asked).toBe('J1 A 0');
  });
});

describe('a doubtful reading', () => {
  test('waits for a better one', () => {
    const bench = new Bench();
    const { refused, entries } = bench.type('42.501');
    expect(refused[0]).toContain(
      'J1 A 0: 42.501 mm is doubtful: 0.496 mm outside the usual 41.985 to 42.005 mm',
    );
    expect(entries).toEqual([]);
    expect(bench.asked).toBe('J1 A 0');
    bench.type('42.001');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.001);
  });

  test('is kept with a reason, which goes into log and Note', () => {
    const bench = new Bench();
    bench.type('42.501');
    expect(bench.type('k').refused[0]).toContain('reason');
    bench.type('k metal sprayed');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.501);
    expect(bench.cell('Journals', 'J1', 'Note')).toBe('A 0 42.501: metal sprayed');
    expect(bench.log[0]).toMatchObject({ kind: 'reading', reason: 'metal sprayed' });
    expect(bench.type('k once more').refused[0]).toContain('no reading is in doubt');
  });

  test.each([
    ['1.6536', 'it looks like inches'],
    ['42001', 'decimal point'],
    ['42.501', '42.001 mm would agree (half a turn of the thimble)'],
    ['42.300', '42.03 mm would agree (two digits exchanged)'],
    // The pitch of an inch thimble, common practice, no published source.
    ['1.6786 in', '1.6536 in would agree (a turn of the thimble)'],
  ])('%s: %s', (line, words) => {
    expect(new Bench().type(line).refused[0]).toContain(words);
  });

  test('a step of Undersizes is usual', () => {
    const step = {
      'Engine type': 'X',
      Fit: 'big end',
      Step: '0.5',
      'Journal min': 41.485,
      'Journal max': 41.505,
    };
    const bench = new Bench(sheets({}, { Undersizes: table(step) }));
    expect(bench.type('41.495').refused).toEqual([]);
  });

  test('the first wall is expected from bore, journal and clearance', () => {
    const rods = { Part: 'R1', 'Engine type': 'X', Engine: 'E1', Position: 1, Gauge: 'D1', 'A 0': 45.01 };
    const bench = new Bench(sheets({ 'A 0': 42 }, { Rods: table(rods) }));
    bench.type('j U Wall 1');
    // (45.01 − 42 − 0.05 to 0.02) / 2
    expect(bench.dialogue.question()!.usual).toBe('usual 1.48 to 1.495 mm (bore, journal and clearance)');
    expect(bench.type('1.988').refused[0]).toContain('1.488 mm would agree (half a turn of the thimble)');
    expect(bench.type('1.488').refused).toEqual([]);
  });

  test('a repeat that the gauge cannot have given', () => {
    const bench = new Bench();
    bench.type('42.001', '42.001', '42.001');
    expect(bench.asked).toBe('J1 A 0 #2');
    const { refused } = bench.type('41.998');
    expect(refused[0]).toContain(
      "readings of A 0 differ by 0.003 mm; the gauge's repeatability allows 0.002772 mm",
    );
  });
});

describe('from a file', () => {
  test('every line is of its own spot: a doubtful one and one that is no reading are left out', () => {
    const bench = new Bench(sheets(), { isPiped: true });
    bench.type('42.501', '42.001', 'x', '42.002');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBeUndefined();
    expect(bench.cell('Journals', 'J1', 'A 90')).toBe(42.001);
    expect(bench.cell('Journals', 'J1', 'B 0')).toBeUndefined();
    expect(bench.cell('Journals', 'J1', 'A 0 #2')).toBe(42.002);
    expect(bench.dialogue.agenda.left().map(({ part, column }) => `${part} ${column.header}`)).toEqual(
      expect.arrayContaining(['J1 A 0', 'J1 B 0']),
    );
  });

  test('a doubtful one may be kept by the line behind it', () => {
    const bench = new Bench(sheets(), { isPiped: true });
    bench.type('42.501', 'k sprayed', '42.001 ');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.501);
  });

  test('a doubtful last line is left out, and said to be', () => {
    const bench = new Bench(sheets(), { isPiped: true });
    bench.type('42.501');
    expect(bench.dialogue.end()[0]).toContain('"42.501" was left out');
    expect(bench.dialogue.end()).toEqual([]);
  });
});

describe('keys', () => {
  test('u takes readings back one by one, their notes too, and asks for them again', () => {
    const bench = new Bench();
    bench.type('42.001', '42.501', 'k sprayed');
    expect(bench.type('u').said[0]).toContain('J1 A 90: taken back');
    expect(bench.asked).toBe('J1 A 90');
    expect(bench.cell('Journals', 'J1', 'A 90')).toBeUndefined();
    expect(bench.cell('Journals', 'J1', 'Note')).toBeUndefined();
    bench.type('u');
    expect(bench.asked).toBe('J1 A 0');
    expect(bench.type('u').refused[0]).toContain('nothing of this sitting');
  });

  test('u forgets a doubtful reading', () => {
    const bench = new Bench();
    bench.type('42.001', '42.501', 'u');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.001);
    expect(bench.type('k still').refused[0]).toContain('no reading is in doubt');
  });

  test('j goes to a part, or to a spot that was read, whose value it replaces; u brings that back', () => {
    const bench = new Bench();
    bench.type('42.001', 'j shells u');
    expect(bench.asked).toBe('U Wall 1');
    bench.type('j j1 a 0');
    expect(bench.asked).toBe('J1 A 0');
    bench.type('42.002');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.002);
    expect(bench.log.at(-1)).toMatchObject({ typed: '42.002', before: '42.001' });
    bench.type('u');
    expect(bench.cell('Journals', 'J1', 'A 0')).toBe(42.001);
    expect(bench.type('j nobody').refused[0]).toContain('"nobody"');
    expect(bench.type('j').refused).toHaveLength(1);
  });

  test('j asks which sheet is meant where two have the name', () => {
    const bench = new Bench(sheets({}, { Rods: table({ Part: 'J1', 'A 0': undefined }) }));
    expect(bench.type('j J1').refused[0]).toContain('Journals and Rods');
    bench.type('j rods J1');
    expect(bench.asked).toBe('J1 A 0');
    expect(bench.dialogue.question()!.spot.sheet).toBe('Rods');
  });

  test('r reads the last spot once more: in a free column, else in a new one', () => {
    const bench = new Bench();
    expect(bench.type('r').refused[0]).toContain('no spot was read yet');
    bench.type('42.001', 'r');
    expect(bench.asked).toBe('J1 A 0 #2');
    bench.type('42.002', 'r', '42.0015');
    expect(bench.cell('Journals', 'J1', 'A 0 #3')).toBe(42.0015);
    expect(bench.asked).toBe('J1 A 90');
  });

  test('r makes no column behind the results of an earlier run', () => {
    const journal = {
      Size: 1,
      Largest: 1,
      Smallest: 1,
      Taper: 1,
      'Out of round': 1,
      Class: 1,
      'Size U': 1,
      Status: 1,
      Why: 1,
    };
    const bench = new Bench(sheets(journal));
    expect(bench.book.hasResults).toBe(true);
    bench.type('42.001', 'r', '42.001', 'r');
    const { refused } = bench.type('r');
    expect(refused[0]).toContain('no free column');
  });

  test('n adds to the Note of the part; a formula stays a text', () => {
    const bench = new Bench();
    bench.type('n scored', 'n =HYPERLINK("x")');
    expect(bench.cell('Journals', 'J1', 'Note')).toBe('scored; =HYPERLINK("x")');
    bench.type('u');
    expect(bench.cell('Journals', 'J1', 'Note')).toBe('scored');
    expect(bench.type('n').refused).toHaveLength(1);
  });

  test('t and g set the row, and the rows that follow and name none', () => {
    const bench = new Bench(
      sheets(
        { Gauge: undefined },
        { Rods: table({ Part: 'R1', Temperature: undefined, Gauge: undefined, 'A 0': undefined }) },
      ),
    );
    bench.type('t 21.5', 'g m1', '42.001');
    expect(bench.cell('Journals', 'J1', 'Temperature')).toBe(21.5);
    expect(bench.cell('Journals', 'J1', 'Gauge')).toBe('m1');
    expect(bench.log.at(-1)).toMatchObject({ gauge: 'm1', temperature: '21.5' });
    bench.type('j R1', '45.01');
    expect(bench.cell('Rods', 'R1', 'Temperature')).toBe(21.5);
    expect(bench.type('t warm').refused[0]).toContain('"warm"');
    expect(bench.type('t -300').refused).toHaveLength(1);
    expect(bench.type('g unknown').refused[0]).toContain('Gauges');
  });

  test.each<[string, Sheets, string]>([
    ['some gauges', {}, '"unknown" is no gauge of this book; name a gauge of Gauges: M1, D1'],
    [
      'many gauges',
      {
        Gauges: table(...Array.from({ length: 14 }, (_, at) => ({ Gauge: `mic ${at}`, 'Max error': 0.002 }))),
      },
      'name a gauge of Gauges: mic 0, mic 1, mic 2, mic 3, mic 4, mic 5, mic 6, mic 7, mic 8, mic 9, mic 10, mic 11, …',
    ],
    ['none', { Gauges: [['Gauge', 'Max error']] }, 'no gauge of this book; add it to the sheet Gauges first'],
  ])('g with a name that a book of %s does not have says which it has', (_, others, words) => {
    const [refused] = new Bench(sheets({}, others)).type('g unknown').refused;
    expect(refused?.endsWith(words)).toBe(true);
  });

  test('w and q ask to write, an empty line does nothing', () => {
    const bench = new Bench();
    expect(bench.type('w').action).toBe('write');
    expect(bench.type('q').action).toBe('quit');
    expect(bench.type('')).toEqual({ said: [], refused: [], entries: [] });
  });

  test('the change to another gauge is a pause', () => {
    const bench = new Bench();
    expect(bench.type('42', '42', '42').action).toBeUndefined();
    bench.type('42');
    expect(bench.type('1.5', '1.5').action).toBe('write');
  });

  test('? lists every key', () => {
    const { said } = new Bench().type('?');
    expect(said).toEqual(commandHelp());
    expect(said).toHaveLength(BENCH_COMMANDS.length);
  });
});

test('never asks for a cell that a formula fills, nor for a part whose name stands twice', () => {
  const bench = new Bench(
    sheets(
      { 'A 0': null },
      { Shells: table({ Part: 'U', Half: 'upper', 'Wall 1': undefined }, { Part: 'u', Half: 'lower' }) },
    ),
  );
  const asked = bench.dialogue.agenda.left().map(({ part, column }) => `${part} ${column.header}`);
  expect(asked).toEqual(['J1 A 90', 'J1 B 0', 'J1 A 0 #2', 'R1 A 0']);
});

test('says that its verdicts are those of check', () => {
  const bench = new Bench();
  bench.type('42.0015', '42.0015', '42.0015', '42.0015', '1.4875', '1.4885');
  const { said } = bench.type('45.0125');
  const { fits } = new Bench(
    sheets(
      { 'A 0': 42.0015, 'A 0 #2': 42.0015, 'A 90': 42.0015, 'B 0': 42.0015 },
      {
        Rods: table({ Part: 'R1', Engine: 'E1', Position: 1, Gauge: 'D1', 'A 0': 45.0125 }),
        Shells: table(
          { Part: 'U', Engine: 'E1', Position: 1, Half: 'upper', Gauge: 'M1', 'Wall 1': 1.4875 },
          { Part: 'L', Engine: 'E1', Position: 1, Half: 'lower', Gauge: 'M1', 'Wall 1': 1.4885 },
        ),
      },
    ),
  ).book.measured;
  expect(fits[0]!.status).toBe('in range');
  expect(said.at(-1)).toBe(`E1 big end 1: clearance 0.035 mm, 0.035 to 0.035 mm; ${fits[0]!.status}`);
});

describe('one more reading of a spot that has no column for it', () => {
  const journal = (row: Readonly<Record<string, unknown>>, more: readonly unknown[] = []) => {
    const [header, cells] = table(row as never);
    return [header!, [...cells!, ...more]] as Sheets[string];
  };
  const ROW = { Part: 'J1', 'Engine type': 'X', Engine: 'E1', Position: 1, Fit: 'big end', 'A 0': undefined };

  test.each<[string, Sheets[string], number | undefined]>([
    ['goes behind the last header', journal(ROW), 6],
    ['goes behind a column that the user fills without a header', journal(ROW, [undefined, 7]), 8],
    ['has no room where the last column is taken', journal(ROW, [...Array(16_377), 'mine']), undefined],
  ])('%s', (_words, Journals, column) => {
    const bench = new Bench({ ...sheets(), Journals });
    bench.type('j J1', '42.0015');
    const { refused } = bench.type('r');
    bench.type('42.002');
    const header = bench.book.table('Journals')!.headers.indexOf('A 0 #2');
    expect(header).toBe(column ?? -1);
    if (column === undefined) expect(refused.join()).not.toBe('');
    else expect(bench.book.readings('Journals', 1).size).toBe(2);
  });
});

test.each<[string, number, boolean]>([
  ['in the row of another part', 2, true],
  ['below the parts', 6, false],
])('what was typed in the meantime under a new column, %s, is in its way: %s', (_words, row, isInTheWay) => {
  const [header, cells] = table({ Part: 'J1', Engine: 'E1', Position: 1, Fit: 'big end', 'A 0': undefined });
  const Journals = [header!, cells!, cells!.with(0, 'J2')];
  const bench = new Bench({ Journals });
  bench.type('42.0015', 'r', '42.002');
  const file = modelOf({ Journals });
  const typed = { content: { kind: 'number' as const, value: 7 } };
  file.sheets[0]!.rows[row] = [...(file.sheets[0]!.rows[row] ?? [])];
  file.sheets[0]!.rows[row]![5] = typed;
  const moved = bench.book.pending.movedIn(file, bench.book.measured.book.tables.values());
  expect(moved !== undefined).toBe(isInTheWay);
});

test('a mean under the readings is no part, and is not asked for', () => {
  const [header, row] = sheets().Journals!;
  const mean = header!.map((text) =>
    text === 'Part' ? 'Mean' : text === 'A 0' ? { formula: 'AVERAGE(H2:H2)', value: 42 } : undefined,
  );
  const bench = new Bench({ ...sheets(), Journals: [header!, row!, mean] });
  expect(bench.book.parts().map(({ name }) => name)).not.toContain('Mean');
});
