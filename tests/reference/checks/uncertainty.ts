/** Means, uncertainties, coverage and temperature against standards and certified data. */
import { drawsOf } from '../../../scripts/simulate/draws.js';
import { meanGrain } from '../../../src/maths/grain.js';
import { normalQuantile } from '../../../src/maths/normal.js';
import { readVariance, systematicVariance } from '../../../src/maths/uncertainty.js';
import { grainOf, inUnit } from '../../../src/maths/units.js';
import { evaluate } from '../../functions/sheet.js';
import { items, published, statisticalDataset } from '../published.js';
import { checkOf, type ReferenceCheck } from './check.js';

/** By the function that the columns use. */
function combined(contributions: readonly number[]): number {
  return evaluate('=STANDARD_UNCERTAINTY(Cells!A1:Z1)', [[...contributions]]) as number;
}

const ofMean = (repeatability: number, readings: number) =>
  Math.sqrt(readVariance({ resolution: 0, repeatability }, readings));
const rectangular = (maxError: number) =>
  Math.sqrt(systematicVariance([{ gauge: '', maxError, isConstant: false }]));

const endGauge = published('gum-h1');
const comparator = published('gum-h1-d');
const repeated = published('gum-4.4.3');
const mass = published('ea402-s2');
const averaging = published('rule-adjust-n');
const walls = published('clearance-uncert');
const additive = published('gums1-additive');
const loss = published('gums1-loss');
const quantiles = published('norm-t-table');
const lengths = published('thermal-20');
const rules = published('rules');

/** Half of the 95 % interval of a sum of four rectangular quantities of standard uncertainty 1. */
function halfOfRectangular(): number {
  const draws = drawsOf(922);
  const sums = Float64Array.from({ length: 200_000 }, () =>
    [1, 2, 3, 4].reduce((sum) => sum + draws.rectangular(Math.sqrt(3)), 0),
  ).sort();
  return (sums[Math.floor(0.975 * sums.length)]! - sums[Math.floor(0.025 * sums.length)]!) / 2;
}

/** Mean and standard deviation of x1² + x2² about 0, each of standard uncertainty 0.005; in 1e-6. */
function squaresAboutZero(): number[] {
  const draws = drawsOf(94);
  const count = 200_000;
  const values = Array.from(
    { length: count },
    () => 1e6 * (draws.normal(0.005) ** 2 + draws.normal(0.005) ** 2),
  );
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return [mean, Math.sqrt(squares / (count - 1))];
}

const certified = items.filter(({ id }) => /^strd-(lew|lottery|michelso|numacc\d)$/.test(id));

export const UNCERTAINTY_CHECKS: readonly ReferenceCheck[] = [
  checkOf(endGauge, 'u of four contributions, nm', endGauge.expected.u_c_nm, 0.5, () =>
    combined(Object.values(endGauge.expected.contrib_nm)),
  ),
  checkOf(comparator, 'u of the difference, nm', comparator.expected.u_nm, 0.05, () => {
    const { pooled_s_nm, n_avg, u_random_nm, u_systematic_nm } = comparator.inputs;
    return combined([ofMean(pooled_s_nm, n_avg), u_random_nm, u_systematic_nm]);
  }),
  checkOf(
    repeated,
    'mean of 20 readings',
    repeated.expected.mean,
    5e-4,
    () => evaluate('=PART_SIZE(Cells!A1:T1)', [repeated.inputs.readings]) as number,
  ),
  checkOf(repeated, 'u of their mean', repeated.expected.u_mean, 5e-4, () =>
    ofMean(repeated.expected.s, repeated.inputs.readings.length),
  ),
  checkOf(mass, 'u of a mass, mg', mass.expected.u_mg, 0.1, () => {
    const { U_ref_mg, k, drift_rect_mg, pooled_s_mg, n_avg, eccentricity_rect_mg, buoyancy_rect_mg } =
      mass.inputs;
    const others = [drift_rect_mg, eccentricity_rect_mg, buoyancy_rect_mg].map(rectangular);
    return combined([U_ref_mg / k, ofMean(pooled_s_mg, n_avg), ...others]);
  }),
  checkOf(averaging, 'u of the mean of 1, 3, 4, 5, 9 readings, µm', averaging.expected.u_um, 1e-4, () =>
    (averaging.inputs.n as number[]).map((readings) => ofMean(averaging.inputs.s_um, readings)),
  ),
  ...[
    ['walls independent', '', walls.expected.u_independent_walls],
    ['walls by one gauge', ', TRUE()', walls.expected.u_fully_correlated_walls],
  ].map(([words, shared, printed]) =>
    checkOf(walls, `u of a clearance, ${words}, µm`, printed, 1e-3, () => {
      const { u_bore_um, u_wall_um, u_journal_um } = walls.inputs;
      const formula = `=CLEARANCE_UNCERTAINTY(${u_bore_um}, ${u_wall_um}, ${u_wall_um}, ${u_journal_um}${shared})`;
      return evaluate(formula, [], { lengthUnit: 'µm' }) as number;
    }),
  ),
  checkOf(additive, 'u of a sum of four', additive.expected.u, 1e-9, () => combined([1, 1, 1, 1])),
  checkOf(
    additive,
    'half of its 95 % interval, normal',
    additive.expected.half95_normal,
    5e-3,
    () => normalQuantile(0.975) * combined([1, 1, 1, 1]),
  ),
  checkOf(
    additive,
    'half of its 95 % interval, rectangular, 200,000 draws of seed 922',
    additive.expected.half95_rect,
    0.01,
    halfOfRectangular,
  ),
  checkOf(
    loss,
    'mean and u of x1² + x2² at 0, where the linear model has u = 0; 200,000 draws of seed 94, 1e-6',
    [loss.expected.mc_x1_0.mean_1e6, loss.expected.mc_x1_0.u_1e6],
    1,
    squaresAboutZero,
  ),
  checkOf(quantiles, 'one-sided quantiles z', quantiles.expected.z, 5e-5, () =>
    (quantiles.inputs.z as number[]).map(normalQuantile),
  ),
  ...certified.map((dataset) =>
    checkOf(dataset, 'mean, on the grain', dataset.expected.mean, 5e-7, () => {
      const readings = statisticalDataset(dataset.inputs.file);
      return inUnit(meanGrain(readings.map((reading) => grainOf(reading, 'mm'))), 'mm');
    }),
  ),
  checkOf(lengths, 'lengths at 20 °C of parts measured at 30 °C, mm', lengths.expected.L20, 1e-4, () =>
    lengths.inputs.cases
      .slice(0, 2)
      .map(({ L, alpha, T }: { L: number; alpha: number; T: number }) =>
        evaluate(`=AT_20C(${L}, ${T}, ${alpha * 1e6}, 0)`),
      ),
  ),
  checkOf(
    rules,
    '10 °C on a 60 mm steel journal, µm',
    7,
    0.5,
    () =>
      ((evaluate('=AT_20C(60, 20, 11.5, 0)') as number) - (evaluate('=AT_20C(60, 30, 11.5, 0)') as number)) *
      1000,
  ),
];
