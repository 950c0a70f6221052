import { expect, test } from 'vitest';
import { loadSolver } from '../../../src/maths/matching/solver.js';

const UPPERS = [1, 1, 1, 1, 3, 0, 0, 0, 0, -2, 0, 0, 0, 0, 0, 0];
const COLUMNS: readonly (readonly [rows: number[], values: number[], upper: number, cost: number])[] = [
  [[0, 1, 13], [-1, -1, -1], 1, 0],
  [[2, 3, 13], [-1, -1, -1], 1, 0],
  [[7, 9], [1, -1], 1, 0],
  [[8, 7, 9], [1, 1, -1], 1, 0],
  [[8, 10], [1, -1], 2, 0],
  [[8, 11], [1, -1], 3, 0],
  [[7, 12], [1, -1], 1, 0],
  [[0, 14], [1, 1], 1, 0],
  [[14, 9], [-1, 1], 2, 67],
  [[1, 4, 15], [1, 1, 1], 1, 0],
  [[15, 12], [-1, 1], 2, 67],
  [[0, 5, 16], [1, 1, 1], 1, 0],
  [[1, 5, 16], [1, 1, 1], 1, 0],
  [[16, 9], [-1, 1], 2, 33],
  [[0, 6, 17], [1, 1, 1], 1, 0],
  [[1, 6, 17], [1, 1, 1], 1, 0],
  [[17], [-1], 2, 67],
  [[17, 12], [-1, 1], 2, 33],
  [[2, 5], [1, 1], 1, 0],
  [[2, 18], [1, 1], 1, 0],
  [[3, 4, 18], [1, 1, 1], 1, 0],
  [[18, 10], [-1, 1], 2, 67],
  [[3, 6, 19], [1, 1, 1], 1, 0],
  [[19, 11], [-1, 1], 1, 67],
];

/** From a matching of two engines, cut down to what fails; its best value is glpsol's (GLPK 5.0). */
test('a program that the presolve of the solver ends with an error is solved without', async () => {
  const solver = await loadSolver();
  const rows = [
    ...Array.from({ length: 4 }, () => ({ lower: 0, upper: Number.POSITIVE_INFINITY })),
    ...UPPERS.map((upper) => ({ lower: Number.NEGATIVE_INFINITY, upper })),
  ];
  const columns = COLUMNS.map(([places, values, upper, cost]) => ({ rows: places, values, upper, cost }));
  const start = new Float64Array(columns.length);
  const { values, bound } = solver.whole(rows, columns, { seconds: 10, start, target: 0 });
  const value = columns.reduce((sum, { cost }, place) => sum + cost * values![place]!, 0);
  expect(Math.round(value)).toBe(201);
  expect(bound).toBeCloseTo(201, 6);
});
