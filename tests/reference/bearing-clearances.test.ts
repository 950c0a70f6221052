/**
 * Printed clearances of bearings against the worst case of the printed sizes.
 *
 * Four printed decimals of an inch, and three of a millimetre, lie on the grain: no tolerance is needed.
 */
import { describe, expect, test } from 'vitest';
import type { SizeClass } from '../../src/maths/classes.js';
import { checkSelection, worstCase } from '../../src/maths/tables.js';
import { grainOf, inUnit, type LengthUnit } from '../../src/maths/units.js';
import { evaluate } from '../functions/sheet.js';
import { cite, engineTables, published } from './published.js';

type Pair = readonly [number, number];

const sizes = (mark: string, [low, high]: Pair, unit: LengthUnit): SizeClass => ({
  mark,
  from: grainOf(low, unit),
  to: grainOf(high, unit),
});

/** [tightest, loosest] by the functions, every part within its printed limits. */
function worstByFunctions(bore: Pair, wall: Pair, journal: Pair, lengthUnit: LengthUnit) {
  const cells = [[...bore], [...wall], [...journal]];
  return ['TIGHTEST', 'LOOSEST'].map((name) =>
    evaluate(
      `=${name}_CLEARANCE(Cells!A1:B1, Cells!A2:B2, Cells!A2:B2, Cells!A3:B3)`,
      cells,
      { lengthUnit },
      { precisionRounding: 17 },
    ),
  );
}

/** What the checks of a maker's tables say of one printed row. */
function findings(bore: Pair, wall: Pair, journal: Pair, clearance: Pair, unit: LengthUnit) {
  return checkSelection([{ journalMark: 'J', boreMark: 'B', shellMark: 'S' }], {
    journals: [sizes('J', journal, unit)],
    bores: [sizes('B', bore, unit)],
    shells: [sizes('S', wall, unit)],
    clearance: { min: grainOf(clearance[0], unit), max: grainOf(clearance[1], unit) },
  }).map(({ kind }) => kind);
}

/** Rows of the tables that print bore, wall, journal and clearance. Evidence: seen; expected: printed. */
const rows = engineTables()
  .filter((row) => row.bore_lo && row.wall_lo && row.journal_lo && row.clr_lo)
  .map((row) => {
    const pair = (name: string): Pair => [Number(row[`${name}_lo`]), Number(row[`${name}_hi`])];
    return {
      manual: row.tm!,
      row: `${row.part} ${row.size}`,
      unit: (row.unit === 'inch' ? 'in' : 'mm') as LengthUnit,
      bore: pair('bore'),
      wall: pair('wall'),
      journal: pair('journal'),
      clearance: pair('clr'),
    };
  });

/** Manuals whose printed range is narrower than their own sizes give: a selective fit, or a slip. */
const NARROWER = ['5-6115-545-34', '9-2815-225-34&P'];
const consistent = rows.filter(({ manual }) => !NARROWER.includes(manual));
const contradicting = rows.filter(({ manual }) => NARROWER.includes(manual));

test('the tables hold what they are said to hold', () => {
  expect(consistent).toHaveLength(6);
  expect(contradicting).toHaveLength(2);
});

describe('printed ranges that are the worst case of the printed sizes', () => {
  test.each(consistent)('TM $manual, $row', ({ bore, wall, journal, clearance, unit }) => {
    expect(worstByFunctions(bore, wall, journal, unit)).toEqual(clearance);
    expect(findings(bore, wall, journal, clearance, unit)).toEqual([]);
  });

  test.each(consistent)('TM $manual, $row: the chain solved for the journal', (row) => {
    const { bore, wall, journal, clearance, unit } = row;
    const solved = (b: number, w: number, c: number) =>
      evaluate(
        `=SHELL_CLEARANCE(${b}, ${w}, ${w}, ${c})`,
        [],
        { lengthUnit: unit },
        { precisionRounding: 17 },
      );
    expect([solved(bore[1], wall[0], clearance[1]), solved(bore[0], wall[1], clearance[0])]).toEqual(journal);
  });

  test.each(consistent)('TM $manual, $row: the chain solved for the lower wall', (row) => {
    const { bore, wall, journal, clearance, unit } = row;
    const solved = (b: number, w: number, c: number, j: number) =>
      evaluate(
        `=SHELL_CLEARANCE(${b}, ${w}, ${c}, ${j})`,
        [],
        { lengthUnit: unit },
        { precisionRounding: 17 },
      );
    const walls = [
      solved(bore[1], wall[0], clearance[1], journal[0]),
      solved(bore[0], wall[1], clearance[0], journal[1]),
    ];
    expect(walls).toEqual(wall);
  });
});

describe('printed ranges narrower than their own sizes are named', () => {
  test.each(contradicting)('TM $manual, $row', ({ bore, wall, journal, clearance, unit }) => {
    expect(findings(bore, wall, journal, clearance, unit)).toEqual(['worst case outside']);
  });

  // Evidence: seen; the worst cases are derived from printed inputs.
  const quirk = published('tm-main-47485');
  test(cite(quirk), () => {
    const { bore, wall, journal, wear } = quirk.inputs;
    expect(worstByFunctions(bore, wall, journal, 'in')).toEqual(quirk.expected.worst_case);
    const worn = evaluate(
      `=SHELL_CLEARANCE(${wear.bore}, ${wear.wall}, ${wear.wall}, ${wear.journal})`,
      [],
      { lengthUnit: 'in' },
      { precisionRounding: 17 },
    );
    expect(worn).toBe(quirk.expected.worst_worn);
    const middle = (pair: Pair) => (pair[0] + pair[1]) / 2;
    const mid = evaluate(
      `=SHELL_CLEARANCE(${middle(bore)}, ${middle(wall)}, ${middle(wall)}, ${middle(journal)})`,
      [],
      { lengthUnit: 'in' },
    );
    expect(mid).toBeCloseTo(quirk.expected.mid, 4);
  });

  const rod = published('tm-rod-29700');
  test(cite(rod), () => {
    const { rod_bore_no_shell: bore, wall, crankpin } = rod.inputs;
    const { clearance_min, clearance_max_computed, installed_bore } = rod.expected;
    expect(worstByFunctions(bore, wall, crankpin, 'in')).toEqual([clearance_min, clearance_max_computed]);
    // Installed bore = bore − 2·wall: with a journal of that size nothing is left.
    expect(evaluate(`=SHELL_CLEARANCE(${bore[0]}, ${wall[1]}, ${wall[1]}, ${installed_bore[0]})`)).toBe(0);
    expect(evaluate(`=SHELL_CLEARANCE(${bore[1]}, ${wall[0]}, ${wall[0]}, ${installed_bore[1]})`)).toBe(0);
  });
});

const main = published('tm-main-4812');
test(cite(main), () => {
  const { housing_bore, wall, journal } = main.inputs;
  expect(worstByFunctions(housing_bore, wall, journal, 'in')).toEqual(main.expected.clearance);
});

const centre = published('tm-centre-4sizes');
describe(cite(centre), () => {
  const { sizes: names, journal, installed_bore, wall } = centre.inputs;
  const { clearance, implied_housing_bore: bore } = centre.expected;
  test.each((names as string[]).map((name, place) => [name, place] as const))('%s', (_name, place) => {
    expect(worstByFunctions(bore, wall[place], journal[place], 'mm')).toEqual(clearance);
    const [low, high] = installed_bore[place];
    expect(evaluate(`=SHELL_CLEARANCE(${bore[0]}, ${wall[place][1]}, ${wall[place][1]}, ${low})`)).toBe(0);
    expect(evaluate(`=SHELL_CLEARANCE(${bore[1]}, ${wall[place][0]}, ${wall[place][0]}, ${high})`)).toBe(0);
  });
});

const solve = published('tm-solve-journal');
test(cite(solve), () => {
  const { bore, wall, clearance } = solve.inputs;
  const largest = `=SHELL_CLEARANCE(${bore[0]}, ${wall[1]}, ${wall[1]}, ${clearance[0]})`;
  const smallest = `=SHELL_CLEARANCE(${bore[1]}, ${wall[0]}, ${wall[0]}, ${clearance[1]})`;
  const options = { lengthUnit: 'in' } as const;
  expect([smallest, largest].map((formula) => evaluate(formula, [], options))).toEqual(
    solve.expected.journal,
  );
});

describe('a pin in its bore, without shells', () => {
  const NO_SHELL: SizeClass = { mark: '', from: 0, to: 0 };
  const worst = (hole: Pair, pin: Pair, unit: LengthUnit) =>
    worstCase(sizes('', pin, unit), sizes('', hole, unit), NO_SHELL).map((grain) => inUnit(grain, unit));

  const pin = published('tm-pin-9899');
  test(cite(pin), () => {
    const { pin: size, bushing_A, bushing_B } = pin.inputs;
    expect(worst(bushing_A, size, 'in')).toEqual(pin.expected.clearance_A);
    expect(worst(bushing_B, size, 'in')).toEqual(pin.expected.clearance_B);
  });

  const cord = published('cord-10');
  test(`${cite(cord)}: ours is the diametral difference, not the half of a side`, () => {
    const { id, od } = cord.inputs;
    const [clearance] = worst([id, id], [od, od], 'in');
    expect(clearance).toBe(cord.expected.difference);
    expect(clearance! / 2).toBeCloseTo(cord.expected.per_side, 9);
  });

  const iso = published('286-40H7g6');
  test(cite(iso), () => {
    const { hole, shaft, clearance } = iso.expected;
    expect(worst(hole, shaft, 'mm')).toEqual(clearance);
  });

  const selective = published('tm-selective-need');
  test(`${cite(selective)}: five groups give the printed range, no group does not`, () => {
    const { bore, piston, clearance_spec } = selective.inputs;
    const { worst_case, min_equal_groups, group_width } = selective.expected;
    expect(worst(bore, piston, 'mm')).toEqual(worst_case);
    expect(worst_case[0] < clearance_spec[0] && worst_case[1] > clearance_spec[1]).toBe(true);
    for (let group = 0; group < min_equal_groups; group++) {
      const of = ([low]: Pair): Pair => [low + group * group_width, low + (group + 1) * group_width];
      expect(worst(of(bore), of(piston), 'mm')).toEqual(clearance_spec);
    }
  });
});

const mixing = published('rule-mixing');
test(`${cite(mixing)}: two walls, never twice one`, () => {
  const { bore, walls, journal, clearance } = mixing.expected.example;
  const options = { lengthUnit: 'in' } as const;
  expect(evaluate(`=SHELL_CLEARANCE(${bore}, ${walls[0]}, ${walls[1]}, ${journal})`, [], options)).toBe(
    clearance,
  );
  for (const wall of walls) {
    expect(evaluate(`=SHELL_CLEARANCE(${bore}, ${wall}, ${wall}, ${journal})`, [], options)).not.toBe(
      clearance,
    );
  }
});

describe('values printed in two units', () => {
  const twoUnits = published('tm-two-units');
  test(`${cite(twoUnits)}: the printed pair is no pair`, () => {
    const [inches] = twoUnits.inputs.rod_clearance_in;
    const [printedMm] = twoUnits.inputs.rod_clearance_mm;
    expect(inUnit(grainOf(inches, 'in'), 'mm')).toBeCloseTo(0.0635, 9);
    expect(inUnit(grainOf(printedMm, 'mm'), 'in')).toBeCloseTo(0.0035, 4);
  });

  const undersizes = published('tm-journals-us');
  test(`${cite(undersizes)}: the mm value tells the misprint`, () => {
    const [[smallest]] = undersizes.expected.main;
    const [, printedInch, printedMm] = /prints (\d\.\d+); the mm value (\d+\.\d+)/.exec(
      undersizes.source_quirk!,
    )!;
    expect(inUnit(grainOf(smallest, 'in'), 'mm')).toBeCloseTo(Number(printedMm), 3);
    expect(Math.abs(inUnit(grainOf(Number(printedInch), 'in'), 'mm') - Number(printedMm))).toBeGreaterThan(
      0.02,
    );
  });
});
