/** Uncertainty, guards, chances and expansion against published examples. */
import { describe, expect, test } from 'vitest';
import { BUILT_IN_EXPANSION } from '../../src/maths/expansion.js';
import { normalQuantile } from '../../src/maths/normal.js';
import { readVariance, sumOfSquares, systematicVariance } from '../../src/maths/uncertainty.js';
import { evaluate } from '../functions/sheet.js';
import { cite, published } from './published.js';

/** The standard uncertainty of contributions in any small unit, by the function that the columns use. */
function combined(contributions: readonly number[]): number {
  return evaluate('=STANDARD_UNCERTAINTY(Cells!A1:Z1)', [[...contributions]]) as number;
}

const gauge = published('gum-h1');
describe(cite(gauge), () => {
  test('combined standard uncertainty (printed to 1 nm)', () => {
    const contributions = Object.values(gauge.expected.contrib_nm as Record<string, number>);
    expect(contributions).toHaveLength(4);
    expect(Math.abs(combined(contributions) - gauge.expected.u_c_nm)).toBeLessThanOrEqual(0.5);
  });

  test('the contribution of a difference of temperature (printed to 0.1 nm)', () => {
    // A thousand times the difference, so that the change stands above the grain of 1 nm.
    const { lS_mm, alphaS_perC, u_dtheta } = gauge.inputs;
    const expansion = alphaS_perC * 1e6;
    const change = evaluate(
      `=RUNNING_CLEARANCE(0, ${lS_mm}, ${20 + 1000 * u_dtheta}, ${expansion}, 20, ${expansion})`,
    ) as number;
    expect(Math.abs(change * 1000 - gauge.expected.contrib_nm.dtheta)).toBeLessThanOrEqual(0.1);
  });

  test('gauge and part of one material: the length stays (rounded to 0.001 µm)', () => {
    const { theta_C, alphaS_perC } = gauge.inputs;
    const length = gauge.expected.l_mm;
    const found = evaluate(`=AT_20C(${length}, ${20 + theta_C}, ${alphaS_perC * 1e6}, ${alphaS_perC * 1e6})`);
    expect(Math.abs((found as number) - length)).toBeLessThanOrEqual(5e-7);
  });
});

const comparator = published('gum-h1-d');
test(cite(comparator), () => {
  const { pooled_s_nm, n_avg, u_random_nm, u_systematic_nm } = comparator.inputs;
  const repeated = Math.sqrt(readVariance({ resolution: 0, repeatability: pooled_s_nm }, n_avg));
  const found = combined([repeated, u_random_nm, u_systematic_nm]);
  expect(Math.abs(found - comparator.expected.u_nm)).toBeLessThanOrEqual(0.05);
});

const mass = published('ea402-s2');
test(`${cite(mass)}: rectangular and repeated contributions`, () => {
  const { U_ref_mg, k, drift_rect_mg, pooled_s_mg, n_avg, eccentricity_rect_mg, buoyancy_rect_mg } =
    mass.inputs;
  const rectangular = [drift_rect_mg, eccentricity_rect_mg, buoyancy_rect_mg].map((maxError) =>
    Math.sqrt(systematicVariance([{ gauge: '', maxError, isConstant: false }])),
  );
  const repeated = Math.sqrt(readVariance({ resolution: 0, repeatability: pooled_s_mg }, n_avg));
  const found = combined([U_ref_mg / k, repeated, ...rectangular]);
  expect(Math.abs(found - mass.expected.u_mg)).toBeLessThanOrEqual(0.1);
});

const averaging = published('rule-adjust-n');
describe(`${cite(averaging)}: the mean of n readings`, () => {
  const { s_um, n } = averaging.inputs;
  test.each(
    (n as number[]).map((readings, place) => [readings, averaging.expected.u_um[place] as number] as const),
  )('of %i is known to %f µm', (readings, expected) => {
    const variance = readVariance({ resolution: 0, repeatability: s_um }, readings);
    expect(Math.abs(Math.sqrt(variance) - expected)).toBeLessThanOrEqual(1e-4);
  });
});

const walls = published('clearance-uncert');
test(cite(walls), () => {
  const { u_bore_um, u_wall_um, u_journal_um } = walls.inputs;
  const of = (shared: string) =>
    evaluate(
      `=CLEARANCE_UNCERTAINTY(${u_bore_um}, ${u_wall_um}, ${u_wall_um}, ${u_journal_um}${shared})`,
      [],
      {
        lengthUnit: 'µm',
      },
    ) as number;
  expect(Math.abs(of('') - walls.expected.u_independent_walls)).toBeLessThanOrEqual(1e-3);
  expect(Math.abs(of(', TRUE()') - walls.expected.u_fully_correlated_walls)).toBeLessThanOrEqual(1e-3);
  // By hand as well: 1.5² + 2·0.8² + 1² = 4.53.
  expect(sumOfSquares([u_bore_um, u_wall_um, u_wall_um, u_journal_um])).toBeCloseTo(4.53, 12);
});

const quantiles = published('norm-t-table');
describe(`${cite(quantiles)}: one-sided quantiles of the normal distribution`, () => {
  const probabilities: number[] = quantiles.inputs.z;
  test.each(probabilities.map((probability, place) => [probability, quantiles.expected.z[place]]))(
    '%f is at %f',
    (probability, z) => {
      expect(Math.abs(normalQuantile(probability!) - z!)).toBeLessThanOrEqual(5e-5);
    },
  );
});

const conformance = published('106-table1');
describe(cite(conformance), () => {
  const probabilities: number[] = conformance.inputs.p_c;
  test.each(probabilities.map((probability, place) => [probability, conformance.expected.z[place]]))(
    'probability %f needs z = %f',
    (probability, z) => {
      expect(Math.abs(normalQuantile(probability!) - z!)).toBeLessThanOrEqual(5e-3);
      // A value z·u below its upper limit conforms with that probability; z is printed to 0.005.
      const chance = evaluate(`=CHANCE_IN_RANGE(0, 0, 0.01, -1, ${(z! * 0.01).toFixed(4)})`) as number;
      expect(Math.abs(chance - probability!)).toBeLessThanOrEqual(5e-3 * 0.3);
    },
  );
});

const oneSided = published('106-one-sided');
test(cite(oneSided), () => {
  const { T_U, y, u } = oneSided.inputs;
  const chance = evaluate(`=CHANCE_IN_RANGE(${y}, ${y}, ${u}, -100, ${T_U})`) as number;
  expect(Math.abs(chance - oneSided.expected.p_c)).toBeLessThanOrEqual(5e-3);
});

const guard = published('14253-guard');
test(`${cite(guard)}: the printed factors are rounded up`, () => {
  const roundedUp = (value: number) => Math.ceil(value * 100) / 100;
  const z = normalQuantile(guard.inputs.p);
  expect(roundedUp(z)).toBe(guard.expected.factor_u);
  expect(roundedUp(z / 2)).toBe(guard.expected.w_over_U);
  // A fit 1.65 u inside both limits is proved, one 1.64 u inside is not.
  const status = (inside: number) =>
    evaluate(`=FIT_STATUS(${0.02 + inside * 0.01}, ${0.09 - inside * 0.01}, 0.02, 0.09, 0.01)`);
  expect(status(guard.expected.factor_u)).toBe('in range');
  expect(status(1.64)).toBe('undecided');
});

const thermal = published('thermal-20');
test(cite(thermal), () => {
  const at20 = thermal.inputs.cases
    .slice(0, 2)
    .map(({ L, alpha, T }: { L: number; alpha: number; T: number }) => {
      // Of the part alone, as the source has it: a gauge that does not grow.
      return evaluate(`=AT_20C(${L}, ${T}, ${alpha * 1e6}, 0)`) as number;
    });
  for (const [place, expected] of (thermal.expected.L20 as number[]).entries()) {
    expect(Math.abs(at20[place] - expected)).toBeLessThanOrEqual(1e-4);
  }
  const [journal, bore] = thermal.inputs.cases;
  const change = (at20[1] - bore.L - (at20[0] - journal.L)) * 1000;
  expect(Math.abs(change - thermal.expected.clearance_change_um)).toBeLessThanOrEqual(0.1);
});

const coefficients = published('cte');
describe(cite(coefficients), () => {
  const printed: Record<string, number> = coefficients.expected.alpha_1e6_perC;
  const alike: Record<string, RegExp> = {
    steel: /steel/,
    'cast iron': /iron/,
    aluminium: /aluminium/,
    magnesium: /magnesium/,
  };

  test.each(Object.entries(BUILT_IN_EXPANSION))(
    '%s %f lies within the spread of tables, 10 %',
    (material, value) => {
      const values = Object.entries(printed).filter(([name]) => alike[material]!.test(name));
      expect(values.length).toBeGreaterThan(0);
      for (const [, other] of values) expect(Math.abs(value / other - 1)).toBeLessThanOrEqual(0.1);
    },
  );
});
