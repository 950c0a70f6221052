/** The short way of the simulation gives what a workbook of the same readings gives. */
import { expect, test } from 'vitest';
import { drawsOf } from '../../scripts/simulate/draws.js';
import { judge, MIN, readFit, stepOf } from '../../scripts/simulate/judge.js';
import { judgeByMaths } from '../../scripts/simulate/judge-by-maths.js';
import { SET_UPS } from '../../scripts/simulate/set-ups.js';
import { drawFit, Workshop } from '../../scripts/simulate/workshop.js';

const FITS = 60;

test.each(SET_UPS)('$name', (setUp) => {
  const draws = drawsOf(11);
  const shiftOf = (place: number) => ((place % 4) * stepOf(setUp)) / 4;
  const readings = Array.from({ length: FITS }, () =>
    readFit(new Workshop(setUp, draws), drawFit(draws, setUp, { tightest: MIN - 20 + draws.even() * 60 })),
  );
  const byBook = judge(setUp, readings, setUp.gauges, (place) => place, shiftOf).map(
    ({ status, chance, clearance, variance, guards }) => ({
      ...{ status, chance, clearance, guards },
      u: Math.sqrt(variance).toFixed(6),
    }),
  );
  const byMaths = readings
    .map((own, place) => judgeByMaths(setUp, own, setUp.gauges, shiftOf(place)))
    .map(({ variance, ...own }) => ({ ...own, u: Math.sqrt(variance).toFixed(6) }));
  expect(byMaths).toEqual(byBook);
  expect(new Set(byBook.map(({ status }) => status)).size).toBeGreaterThan(1);
});
