/** Printed clearances, form, classes and expansion against the printed sizes that they are made of. */

import { neighbourSpread } from '../../../src/maths/clearance.js';
import { BUILT_IN_EXPANSION } from '../../../src/maths/expansion.js';
import { checkClasses, checkSelection, worstCase } from '../../../src/maths/tables.js';
import { grainOf, inUnit, type LengthUnit } from '../../../src/maths/units.js';
import { evaluate } from '../../functions/sheet.js';
import { engineTables, published } from '../published.js';
import { checkOf, type ReferenceCheck } from './check.js';

type Pair = readonly [number, number];

const sizes = (mark: string, [low, high]: Pair, unit: LengthUnit) => ({
  mark,
  from: grainOf(low, unit),
  to: grainOf(high, unit),
});

const NO_WALL: Pair = [0, 0];

const UNSEEN = 'no check of a table sees it, since a book holds each length once';

/** [tightest, loosest], every part within its printed limits. */
function worst(bore: Pair, wall: Pair, journal: Pair, unit: LengthUnit): number[] {
  return worstCase(sizes('J', journal, unit), sizes('B', bore, unit), sizes('S', wall, unit)).map((grain) =>
    inUnit(grain, unit),
  );
}

/** What the checks of a maker's tables say of one printed row, in words. */
function findings(bore: Pair, wall: Pair, journal: Pair, clearance: Pair, unit: LengthUnit): string {
  return checkSelection([{ journalMark: 'J', boreMark: 'B', shellMark: 'S' }], {
    journals: [sizes('J', journal, unit)],
    bores: [sizes('B', bore, unit)],
    shells: [sizes('S', wall, unit)],
    clearance: { min: grainOf(clearance[0], unit), max: grainOf(clearance[1], unit) },
  })
    .map(({ kind }) => kind)
    .join();
}

/** Rows of manuals that print bore, wall, journal and clearance. */
const manuals = engineTables()
  .filter((row) => row.bore_lo && row.wall_lo && row.journal_lo && row.clr_lo)
  .map((row): ReferenceCheck => {
    const pair = (name: string): Pair => [Number(row[`${name}_lo`]), Number(row[`${name}_hi`])];
    const unit = row.unit === 'inch' ? 'in' : 'mm';
    const [bore, wall, journal, clearance] = [pair('bore'), pair('wall'), pair('journal'), pair('clr')];
    const found = findings(bore, wall, journal, clearance, unit);
    return {
      item: `${row.part} ${row.size}`,
      source: `TM ${row.tm}`,
      what: `clearance of the printed sizes, ${unit}`,
      printed: clearance,
      tolerance: 0,
      computed: () => worst(bore, wall, journal, unit),
      ...(found !== '' && { contradiction: () => found }),
    };
  });

const main = published('tm-main-4812');
const centre = published('tm-centre-4sizes');
const rod = published('tm-rod-29700');
const quirk = published('tm-main-47485');
const undersizes = published('tm-walls-rod');
const journals = published('tm-journals-us');
const solve = published('tm-solve-journal');
const pin = published('tm-pin-9899');
const selective = published('tm-selective-need');
const twoUnits = published('tm-two-units');
const smallSmall = published('tm-rod-small-small');
const rodRule = published('tm-rod-rule');
const cord = published('cord-10');
const mixing = published('rule-mixing');
const iso = published('286-40H7g6');
const form = published('tm-taper-oval');
const indicator = published('tm-tir');
const ringGap = published('tm-ringgap-pi');
const adjacent = published('tm-adjacent');
const liners = published('tm-liner-classes');
const principle = published('grade-principle');
const expansion = published('cte');

const inches = (formula: string, cells: readonly (readonly number[])[] = []) =>
  evaluate(formula, cells, { lengthUnit: 'in' }, { precisionRounding: 17 }) as number;

function linerFindings(): string {
  const classes = liners.inputs.table
    .slice(0, 2)
    .map(({ liner, avg_bore }: { liner: string; avg_bore: Pair }) => sizes(liner, avg_bore, 'in'));
  return [...new Set(checkClasses(classes).map(({ kind }) => kind))].join();
}

export const CLEARANCE_CHECKS: readonly ReferenceCheck[] = [
  ...manuals,
  checkOf(main, 'clearance, in', main.expected.clearance, 0, () => {
    const { housing_bore, wall, journal } = main.inputs;
    return worst(housing_bore, wall, journal, 'in');
  }),
  ...(centre.inputs.sizes as string[]).map((size, place) =>
    checkOf(centre, `clearance, ${size}, mm`, centre.expected.clearance, 0, () =>
      worst(
        centre.expected.implied_housing_bore,
        centre.inputs.wall[place],
        centre.inputs.journal[place],
        'mm',
      ),
    ),
  ),
  {
    ...checkOf(rod, 'clearance, in', [rod.expected.clearance_min, 0.0035], 0, () =>
      worst(rod.inputs.rod_bore_no_shell, rod.inputs.wall, rod.inputs.crankpin, 'in'),
    ),
    contradiction: () =>
      findings(
        rod.inputs.rod_bore_no_shell,
        rod.inputs.wall,
        rod.inputs.crankpin,
        [rod.expected.clearance_min, 0.0035],
        'in',
      ),
  },
  {
    ...checkOf(quirk, 'clearance, in', quirk.inputs.printed_clearance, 0, () =>
      worst(quirk.inputs.bore, quirk.inputs.wall, quirk.inputs.journal, 'in'),
    ),
    contradiction: () => {
      const { bore, wall, journal, printed_clearance } = quirk.inputs;
      return findings(bore, wall, journal, printed_clearance, 'in');
    },
  },
  checkOf(quirk, 'clearance of the worn sizes, in', quirk.expected.worst_worn, 0, () => {
    const { bore, wall, journal } = quirk.inputs.wear;
    return inches(`=SHELL_CLEARANCE(${bore},${wall},${wall},${journal})`);
  }),
  checkOf(
    undersizes,
    'walls of four undersizes, which keep the clearance, in',
    undersizes.expected.rows.slice(1).flatMap((row: number[]) => row.slice(0, 2)),
    5e-5,
    () =>
      // The wall that leaves nothing between a bore and a journal ground smaller by the undersize.
      (undersizes.inputs.undersizes as number[]).flatMap((under) =>
        (undersizes.inputs.standard.wall as number[]).map((wall) => {
          const [bore, journal] = [3, 3 - 2 * wall - under];
          return inches(`=SHELL_CLEARANCE(${bore},0.0001,0.0001,${journal.toFixed(4)})`) / 2 + 0.0001;
        }),
      ),
  ),
  {
    ...checkOf(journals, 'main of the first undersize: the printed inches in mm', 76.124, 5e-4, () =>
      inUnit(grainOf(2.996, 'in'), 'mm'),
    ),
    contradiction: () => `shown by the conversion: ${UNSEEN}`,
  },
  checkOf(solve, 'journal solved from bore, walls and clearance, in', solve.expected.journal, 0, () => {
    const { bore, wall, clearance } = solve.inputs;
    return [
      inches(`=SHELL_CLEARANCE(${bore[1]},${wall[0]},${wall[0]},${clearance[1]})`),
      inches(`=SHELL_CLEARANCE(${bore[0]},${wall[1]},${wall[1]},${clearance[0]})`),
    ];
  }),
  ...(['A', 'B'] as const).map((bush) =>
    checkOf(pin, `pin in bushing ${bush}, in`, pin.expected[`clearance_${bush}`], 0, () =>
      worst(pin.inputs[`bushing_${bush}`], NO_WALL, pin.inputs.pin, 'in'),
    ),
  ),
  {
    ...checkOf(selective, 'clearance without groups, mm', selective.inputs.clearance_spec, 0, () =>
      worst(selective.inputs.bore, NO_WALL, selective.inputs.piston, 'mm'),
    ),
    contradiction: () => {
      const { bore, piston, clearance_spec } = selective.inputs;
      return findings(bore, NO_WALL, piston, clearance_spec, 'mm');
    },
  },
  {
    ...checkOf(twoUnits, 'the printed inches in mm', twoUnits.inputs.rod_clearance_mm[0], 5e-4, () =>
      inUnit(grainOf(twoUnits.inputs.rod_clearance_in[0], 'in'), 'mm'),
    ),
    contradiction: () => `shown by the conversion: ${UNSEEN}`,
  },
  checkOf(
    rodRule,
    'least clearances of 0.049, 0.1, 0.2 and 0.301 mm by the printed limits',
    'tight, in range, within service limit, loose',
    0,
    () => {
      const { normal, limit } = rodRule.inputs;
      return [0.049, 0.1, 0.2, 0.301]
        .map((clearance) =>
          evaluate(`=FIT_STATUS(${clearance},${clearance},${normal[0]},${normal[1]},,${limit})`),
        )
        .join(', ');
    },
  ),
  checkOf(
    smallSmall,
    'bore less crankpin of one size each, in',
    0.0033,
    5e-5,
    () => worst([2.7188, 2.7188], NO_WALL, [2.7155, 2.7155], 'in')[0]!,
  ),
  checkOf(
    cord,
    'diametral difference, in',
    cord.expected.difference,
    0,
    () => worst([cord.inputs.id, cord.inputs.id], NO_WALL, [cord.inputs.od, cord.inputs.od], 'in')[0]!,
  ),
  checkOf(mixing, 'clearance with two different walls, in', mixing.expected.example.clearance, 0, () => {
    const { bore, walls, journal } = mixing.expected.example;
    return inches(`=SHELL_CLEARANCE(${bore},${walls[0]},${walls[1]},${journal})`);
  }),
  checkOf(iso, 'clearance of 40 H7/g6, mm', iso.expected.clearance, 0, () =>
    worst(iso.expected.hole, NO_WALL, iso.expected.shaft, 'mm'),
  ),
  checkOf(form, 'taper and out of round of four readings, mm', [0.08, 0.005], 1e-9, () => {
    const readings = [59.985, 59.98, 59.905, 59.902];
    return ['JOURNAL_TAPER', 'OUT_OF_ROUND'].map(
      (name) => evaluate(`=${name}(Cells!A1:D1,2)`, [readings]) as number,
    );
  }),
  checkOf(indicator, 'run-out of the readings as the dial shows them, in', indicator.expected.TIR, 1e-9, () =>
    inches('=RUN_OUT(Cells!A1:D1)', [indicator.inputs.readings]),
  ),
  checkOf(
    ringGap,
    'gap of a ring in a worn bore less that in the new one, in',
    ringGap.expected.gap_increase,
    2e-4,
    () => inches(`=RING_GAP_IN(0.01,4,${4 + ringGap.inputs.bore_increase})`) - 0.01,
  ),
  checkOf(indicator, 'total indicator reading, in', indicator.expected.TIR, 1e-9, () =>
    // An indicator shows differences from its zero: here from one inch.
    inches('=OUT_OF_ROUND(Cells!A1:D1,1)', [indicator.inputs.readings.map((reading: number) => 1 + reading)]),
  ),
  checkOf(adjacent, 'spread of neighbouring clearances, in', 0.001, 0, () =>
    inUnit(neighbourSpread([0.002, 0.003, 0.0025].map((inch) => grainOf(inch, 'in')))!, 'in'),
  ),
  checkOf(
    liners,
    'liner of four average bores',
    'standard, standard/.001 oversize, .001 oversize, between .001 oversize and .005 oversize',
    0,
    () => {
      type Row = { avg_bore?: Pair; bored?: Pair; liner: string };
      const rows = (liners.inputs.table as Row[]).map(({ avg_bore, bored, liner }) => [
        `'${liner}`,
        ...(avg_bore ?? bored)!,
      ]);
      return Object.keys(liners.expected.examples)
        .map((bore) => evaluate(`=FIT_GRADE(${bore},Cells!A1:C${rows.length})`, rows, { lengthUnit: 'in' }))
        .join(', ');
    },
  ),
  {
    ...checkOf(liners, 'findings on the first two classes', '', 0, linerFindings),
    contradiction: linerFindings,
  },
  checkOf(
    principle,
    'clearance of every pair of classes with its shell, µm',
    principle.expected.clearance_um,
    1e-6,
    () => {
      const from = (start: number, step: number, mark: number): Pair => [
        start + step * (mark - 1),
        start + step * mark,
      ];
      const ranges = [1, 2, 3, 4].flatMap((i) =>
        [1, 2, 3, 4].map((j) =>
          worst(from(56_000, 6, i), from(1730, 3, i + j - 1), [52_500 - 6 * j, 52_500 - 6 * (j - 1)], 'µm'),
        ),
      );
      return [Math.min(...ranges.map(([low]) => low!)), Math.max(...ranges.map(([, high]) => high!))];
    },
  ),
  ...(
    [
      ['steel', 'gauge steel (GUM)'],
      ['cast iron', 'gray iron G1800-G4000'],
      ['aluminium', 'aluminium 2024'],
      ['magnesium', 'magnesium AZ31B/AZ91D'],
    ] as const
  ).map(([material, name]) => {
    const printed = expansion.expected.alpha_1e6_perC[name];
    // Tables differ by some 10 %.
    return checkOf(
      expansion,
      `expansion of ${material}, 1e-6 per K`,
      printed,
      0.1 * printed,
      () => BUILT_IN_EXPANSION[material]!,
    );
  }),
];
