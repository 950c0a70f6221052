/** Form and size classes against published readings and rules. */
import { describe, expect, test } from 'vitest';
import { neighbourSpread } from '../../src/maths/clearance.js';
import { checkClasses, checkSelection, worstCase } from '../../src/maths/tables.js';
import { grainOf } from '../../src/maths/units.js';
import { evaluate } from '../functions/sheet.js';
import { cite, published } from './published.js';

const form = published('tm-taper-oval');
test(cite(form), () => {
  // The rule is printed (limit 0.07 mm); the readings are constructed.
  const readings = [...form.expected.note.matchAll(/\d[AB] (\d+\.\d+)/g)].map(([, digits]) => Number(digits));
  const [taper, oval] = [...form.expected.note.matchAll(/\((0\.\d+)\)/g)].map(([, digits]) => Number(digits));
  expect(readings).toHaveLength(4);
  expect(evaluate('=JOURNAL_TAPER(Cells!A1:D1, 2)', [readings])).toBe(taper);
  expect(evaluate('=OUT_OF_ROUND(Cells!A1:D1, 2)', [readings])).toBe(oval);
  const limit = form.inputs.limit_mm;
  expect(evaluate(`=PART_STATUS(60, 59, , ${taper}, , , , ${limit})`)).toBe('beyond limits');
  expect(evaluate(`=PART_STATUS(60, 59, ${oval}, , , , ${limit})`)).toBe('within limits');
});

const indicator = published('tm-tir');
test(cite(indicator), () => {
  // An indicator shows differences from its zero: here from one inch.
  const readings = indicator.inputs.readings.map((reading: number) => 1 + reading);
  const options = { lengthUnit: 'in' } as const;
  const found = evaluate('=OUT_OF_ROUND(Cells!A1:D1, 1)', [readings], options);
  expect(found).toBe(indicator.expected.TIR);
  const verdict = evaluate(`=PART_STATUS(1, 1, ${found}, , , , ${indicator.inputs.limit})`, [], options);
  expect(verdict === 'within limits').toBe(indicator.expected.accept);
});

const adjacent = published('tm-adjacent');
test(`${cite(adjacent)}: spread of neighbours`, () => {
  // The rule is printed; the clearances are constructed on both sides of it.
  const [, printed] = /more than (\.\d+)/.exec(adjacent.inputs.rule)!;
  const limit = grainOf(Number(printed), 'in');
  const clearances = (...inches: number[]) => inches.map((inch) => grainOf(inch, 'in'));
  expect(neighbourSpread(clearances(0.002, 0.003, 0.0025))).toBe(limit);
  expect(neighbourSpread(clearances(0.002, 0.0031, 0.0025))).toBeGreaterThan(limit);
});

const liners = published('tm-liner-classes');
describe(cite(liners), () => {
  type Row = { avg_bore?: [number, number]; bored?: [number, number]; liner: string };
  const rows = (liners.inputs.table as Row[]).map(({ avg_bore, bored, liner }) => [
    `'${liner}`,
    ...(avg_bore ?? bored)!,
  ]);
  const words: Record<string, string> = {
    either: 'standard/.001 oversize',
    'bore oversize': 'between .001 oversize and .005 oversize',
  };

  test.each(Object.entries(liners.expected.examples as Record<string, string>))('%s is %s', (bore, liner) => {
    const found = evaluate(`=FIT_GRADE(${bore}, Cells!A1:C${rows.length})`, rows, { lengthUnit: 'in' });
    expect(found).toBe(words[liner] ?? liner);
  });

  test('the printed overlap, and the gaps between oversizes, are named', () => {
    const classes = rows.map(([mark, from, to]) => ({
      mark: String(mark),
      from: grainOf(Number(from), 'in'),
      to: grainOf(Number(to), 'in'),
    }));
    const found = checkClasses(classes);
    const overlap = { kind: 'overlap', from: grainOf(4.627, 'in'), to: grainOf(4.6275, 'in') };
    expect(found.filter(({ kind }) => kind === 'overlap')).toEqual([
      expect.objectContaining({ row: 0, ...overlap }),
      expect.objectContaining({ row: 1, ...overlap }),
    ]);
    expect(found.filter(({ kind }) => kind === 'gap')).toHaveLength(8);
  });
});

const principle = published('grade-principle');
describe(cite(principle), () => {
  const grains = (microns: number) => microns * 1000;
  const step = (mark: number, from: number, width: number) => ({
    mark: String(mark),
    from,
    to: from + width,
  });
  const bores = [1, 2, 3, 4].map((i) => step(i, grainOf(56, 'mm') + grains(6) * (i - 1), grains(6)));
  const journals = [1, 2, 3, 4].map((j) => step(j, grainOf(52.5, 'mm') - grains(6) * j, grains(6)));
  const shells = [1, 2, 3, 4, 5, 6, 7].map((s) =>
    step(s, grainOf(1.73, 'mm') + grains(3) * (s - 1), grains(3)),
  );
  const pairs = bores.flatMap((bore, i) =>
    journals.map((journal, j) => ({ bore, journal, shell: shells[i + j]! })),
  );
  const [min, max] = principle.expected.clearance_um.map(grains);

  test.each(pairs)(
    'bore $bore.mark and journal $journal.mark take shell $shell.mark',
    ({ bore, journal, shell }) => {
      expect(worstCase(journal, bore, shell)).toEqual([min, max]);
      const mm = (grain: number) => grain / 1e6;
      const table = shells.map(({ mark, from, to }) => [Number(mark), mm(from), mm(to)]);
      const aim = mm((min + max) / 2);
      const [b, j] = [bore, journal].map(({ from, to }) => mm((from + to) / 2));
      expect(evaluate(`=SHELL_GRADE(${b}, ${j}, ${aim}, Cells!A1:C7)`, table)).toBe(shell.mark);
    },
  );

  test('the whole selection is consistent with its clearance', () => {
    const rows = pairs.map(({ bore, journal, shell }) => ({
      journalMark: journal.mark,
      boreMark: bore.mark,
      shellMark: shell.mark,
    }));
    const tables = { journals, bores, shells, clearance: { min, max } };
    expect(checkSelection(rows, tables)).toEqual([]);
    const narrower = { ...tables, clearance: { min: min + 1, max } };
    expect(checkSelection(rows, narrower).map(({ kind }) => kind)).toEqual(
      rows.map(() => 'worst case outside'),
    );
  });

  test('one shell for all gives a wider range', () => {
    const all = (classes: { from: number; to: number }[]) => ({
      mark: '',
      from: Math.min(...classes.map(({ from }) => from)),
      to: Math.max(...classes.map(({ to }) => to)),
    });
    expect(worstCase(all(journals), all(bores), shells[3]!)).toEqual(
      principle.expected.unclassed_with_class_4_only_um.map(grains),
    );
  });
});

const shellWalls = published('tm-walls-rod');
const undersizes = published('tm-journals-us');
describe(`${cite(shellWalls)}: the shell of its undersize for a reground journal`, () => {
  // Walls and journals are printed in the same manual; the bore is constructed for a clearance of 0.0025 in.
  const names = ['standard', ...shellWalls.inputs.undersizes.map(String)];
  const table = names.map((name, place) => [`'${name}`, ...shellWalls.expected.rows[place].slice(0, 2)]);
  const journals = [undersizes.inputs.rod_standard, ...undersizes.expected.rod] as [number, number][];

  test.each(names.map((name, place) => [name, place] as const))('%s', (name, place) => {
    const journal = (journals[place]![0] + journals[place]![1]) / 2;
    const found = evaluate(`=SHELL_GRADE(2.7515, ${journal.toFixed(5)}, 0.0025, Cells!A1:C5)`, table, {
      lengthUnit: 'in',
    });
    expect(found).toBe(name);
  });
});
