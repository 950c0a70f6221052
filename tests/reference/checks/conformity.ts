/** Guards, chances and risks, and the reject limits of manuals. */
import { drawsOf } from '../../../scripts/simulate/draws.js';
import { fitVerdict } from '../../../src/maths/conformity.js';
import { normalQuantile } from '../../../src/maths/normal.js';
import { crossedLimits } from '../../../src/maths/tables.js';
import { grainOf, inUnit } from '../../../src/maths/units.js';
import { assess, table } from '../../engine/book-of.js';
import { evaluate } from '../../functions/sheet.js';
import { published } from '../published.js';
import { checkOf, type ReferenceCheck } from './check.js';

const probabilities = published('106-table1');
const oneSided = published('106-one-sided');
const resistor = published('106-resistor');
const deaver = published('deaver');
const guard = published('14253-guard');
const threeValues = published('aero-three-value');
const worn = published('tm-worn-min');
const decision = published('tm-decision-262');
const marine = published('tm-reject-208');
const diesel = published('tm-reject-241');
const fractions = published('cord-3');

interface Process {
  readonly limits: { readonly min: number; readonly max: number };
  readonly middle: number;
  readonly process: number;
  readonly measurement: number;
  readonly guard: number;
}

/** Shares of all parts that are accepted and bad, or good and not accepted, by the verdict of the program. */
function risks(
  { limits, middle, process, measurement, guard: width }: Process,
  seed: number,
): [number, number] {
  const draws = drawsOf(seed);
  const count = 400_000;
  let [falseAccept, falseReject] = [0, 0];
  for (let part = 0; part < count; part++) {
    const truth = middle + draws.normal(process);
    const value = truth + draws.normal(measurement);
    const isGood = truth >= limits.min && truth <= limits.max;
    const isAccepted =
      fitVerdict({ tightest: value, loosest: value }, limits, { inside: width, outside: width }) ===
      'in range';
    if (isAccepted && !isGood) falseAccept += 1;
    if (!isAccepted && isGood) falseReject += 1;
  }
  return [falseAccept / count, falseReject / count];
}

const resistorChecks = (): ReferenceCheck[] => {
  const { T_L, T_U, y0, u0, u_m, A_U } = resistor.inputs;
  const chance = () => evaluate(`=CHANCE_IN_RANGE(${y0}, ${y0}, ${u0}, ${T_L}, ${T_U})`) as number;
  const process = {
    limits: { min: T_L, max: T_U },
    middle: y0,
    process: u0,
    measurement: u_m,
    guard: T_U - A_U,
  };
  return [
    checkOf(resistor, 'probability that a part conforms', resistor.expected.p_conform, 5e-3, chance),
    checkOf(
      resistor,
      "consumer's and producer's risk, 400,000 draws of seed 953",
      [resistor.expected.R_C, resistor.expected.R_P],
      5e-3,
      () => risks(process, 953),
    ),
  ];
};

const deaverChecks = deaver.inputs.cases
  .slice(0, 2)
  .map(({ SL, TUR, GB }: { SL: number; TUR: number; GB: number }, place: number) =>
    checkOf(
      deaver,
      `false accept and false reject, ratio ${TUR}, guard ${((1 - GB) * SL).toFixed(2)}; 400,000 draws of seed ${190 + place}`,
      [deaver.expected.PFA[place], deaver.expected.PFR[place]],
      1e-3,
      () =>
        risks(
          {
            limits: { min: -SL, max: SL },
            middle: 0,
            process: 1,
            measurement: SL / (2 * TUR),
            guard: SL * (1 - GB),
          },
          190 + place,
        ),
    ),
  );

/** The verdict of a journal of one smallest and largest size, taper and out of round, inches. */
const journalStatus = (cells: readonly (number | string)[]) =>
  evaluate(`=PART_STATUS(${cells.join(',')})`, [], { lengthUnit: 'in' }) as string;

/** Verdicts of readings typed as fractions of an inch, against a nominal size and its limits. */
function fractionVerdicts(): string {
  const { nominal, tol, heights } = fractions.inputs;
  const inches = (text: string) =>
    text.split(' ').reduce((sum, part) => {
      const [above, below] = part.split('/').map(Number);
      return sum + above! / (below ?? 1);
    }, 0);
  const { parts } = assess({
    Setup: [
      ['Item', 'Value'],
      ['Length unit', 'in'],
    ],
    Limits: table({
      ...{ 'Engine type': 'X', Fit: 'main', 'Clearance min': 0, 'Clearance max': 1 },
      'Journal min': inches(nominal) - inches(tol),
      'Journal max': inches(nominal) + inches(tol),
    }),
    Journals: table(
      ...heights.map((height: string, place: number) => ({
        ...{ Part: place, Engine: 'E', Fit: 'main', Position: place },
        'A 0': `${height} in`,
      })),
    ),
  });
  return parts
    .of('Journals')
    .map(({ status }) => (status === 'within limits' ? 'ok' : 'not'))
    .join(', ');
}

/** An interference is printed as negative clearances, the lesser interference first: min −0.4, max −1. */
function pinFindings(): string {
  const [min, max] = threeValues.inputs.knuckle_pin_in_master_rod.map((mils: number) =>
    grainOf(mils / 1000, 'in'),
  );
  return crossedLimits([{ name: 'Clearance min and max', min, max }])
    .map(({ name }) => `${name} crossed`)
    .join();
}

export const CONFORMITY_CHECKS: readonly ReferenceCheck[] = [
  checkOf(probabilities, 'z for 80, 90, 95, 99, 99.9 %', probabilities.expected.z, 5e-3, () =>
    (probabilities.inputs.p_c as number[]).map(normalQuantile),
  ),
  checkOf(oneSided, 'probability of conformity', oneSided.expected.p_c, 5e-3, () => {
    const { T_U, y, u } = oneSided.inputs;
    return evaluate(`=CHANCE_IN_RANGE(${y}, ${y}, ${u}, -100, ${T_U})`) as number;
  }),
  ...resistorChecks(),
  ...deaverChecks,
  checkOf(
    guard,
    'guard in u, rounded up',
    guard.expected.factor_u,
    5e-3,
    () => Math.ceil(normalQuantile(guard.inputs.p) * 100) / 100,
  ),
  checkOf(
    threeValues,
    'rod bearing of 0.005 in: min 0.002, new 0.004, worn 0.0065',
    'within service limit',
    0,
    () => {
      const [min, max, limit] = threeValues.inputs.rod_bearing_on_crankpin.map((mils: number) => mils / 1000);
      return evaluate(`=FIT_STATUS(0.005,0.005,${min},${max},,${limit})`, [], { lengthUnit: 'in' }) as string;
    },
  ),
  {
    ...checkOf(
      threeValues,
      'findings on the limits of the knuckle pin, typed in the printed order',
      '',
      0,
      pinFindings,
    ),
    contradiction: pinFindings,
  },
  checkOf(
    worn,
    'rod journals at the printed minimum and 0.0001 in under it',
    'within limits, beyond limits',
    0,
    () => {
      const [least] = worn.expected.rod_min_worn;
      return [0, 0.0001]
        .map((under) => journalStatus([least, (least - under).toFixed(4), '', '', least]))
        .join(', ');
    },
  ),
  checkOf(decision, 'rod taper of 0.0005 and of 0.0006 in', 'within limits, beyond limits', 0, () =>
    [0.0005, 0.0006]
      .map((taper) => journalStatus([2.748, 2.748, '', taper, '', '', '', decision.inputs.rod_taper_max]))
      .join(', '),
  ),
  checkOf(marine, 'out of round of 0.001 and of 0.0012 in', 'within limits, beyond limits', 0, () =>
    [0.001, 0.0012]
      .map((round) => journalStatus([3, 3, round, '', '', '', marine.inputs.max_out_of_round]))
      .join(', '),
  ),
  checkOf(diesel, 'main journal in mm', diesel.expected.main_mm, 5e-3, () =>
    (diesel.inputs.main as number[]).map((inch) => inUnit(grainOf(inch, 'in'), 'mm')),
  ),
  checkOf(
    fractions,
    'heights typed as fractions of an inch',
    (fractions.expected.ok as boolean[]).map((ok) => (ok ? 'ok' : 'not')).join(', '),
    0,
    fractionVerdicts,
  ),
];
