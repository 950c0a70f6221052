/**
 * What the verdicts promise, tested as a promise: simulated fits of known true clearance, read with gauges of
 * the stated errors and judged by the program's own core.
 *
 *   npm run simulate [-- FITS [SEED]]
 */
import { type EvenCounts, type Promises, promisesOf, type Tenth } from './simulate/promises.js';
import { SET_UPS } from './simulate/set-ups.js';
import { tableText } from './table-text.js';

const percent = (part: number, whole: number, digits = 1) =>
  whole === 0 ? '' : ((100 * part) / whole).toFixed(digits);

function verdictRows(all: readonly Promises[]) {
  return all.map(({ setUp, even, onMin, onMax }) => [
    setUp.name,
    String(even.fits),
    percent(even.inRange, even.fits),
    percent(even.tight + even.loose, even.fits),
    percent(even.undecided, even.fits),
    percent(onMin.inRange, onMin.fits, 2),
    percent(onMax.inRange, onMax.fits, 2),
    percent(even.falseNear, even.nearMisses, 2),
    percent(onMin.refused, onMin.fits, 2),
    percent(onMax.refused, onMax.fits, 2),
    percent(even.falseTight + even.falseLoose, even.tight + even.loose, 2),
  ]);
}

const VERDICT_HEADERS = [
  'Set-up',
  'Fits',
  'In range, %',
  'Tight or loose, %',
  'Undecided, %',
  'On min, called in range, %',
  'On max, called in range, %',
  'Missed by less than the guard, called in range, %',
  'On min, called tight, %',
  'On max, called loose, %',
  'Wrong among tight and loose, %',
];

function calibrationRows(all: readonly Promises[], tenthsOf: (even: EvenCounts) => readonly Tenth[]) {
  return all.map(({ setUp, even }) => [
    setUp.name,
    ...tenthsOf(even).map(({ fits, inside }) => (fits < 50 ? '' : percent(inside, fits, 0))),
  ]);
}

function insideRows(all: readonly Promises[]) {
  return all.map(({ setUp, onMin, onMax }) => [
    setUp.name,
    percent(onMin.refused, onMin.fits, 2),
    percent(onMin.refusedByInside, onMin.fits, 2),
    percent(onMax.refused, onMax.fits, 2),
    percent(onMax.refusedByInside, onMax.fits, 2),
  ]);
}

const INSIDE_HEADERS = [
  'Set-up',
  'On min, called tight, %',
  'By the guard inside, %',
  'On max, called loose, %',
  'By the guard inside, %',
];

const DECILES = Array.from({ length: 10 }, (_, tenth) => `${tenth * 10}–${tenth * 10 + 10}`);

function main(fits = '30000', seed = '20'): void {
  const even = Number(fits);
  const all = SET_UPS.map((setUp, place) =>
    promisesOf(setUp, Number(seed) + place, { even, limit: Math.ceil(even / 6) }),
  );
  const total = all.reduce((sum, { even: own, onMin, onMax }) => sum + own.fits + onMin.fits + onMax.fits, 0);
  console.log(`${total} fits, seeds ${seed} to ${Number(seed) + SET_UPS.length - 1}\n`);
  console.log(`${tableText(VERDICT_HEADERS, verdictRows(all))}\n`);
  console.log('Truly in range, % of the fits with a Chance in range of so many %:\n');
  const headers = ['Set-up', ...DECILES];
  console.log(
    tableText(
      headers,
      calibrationRows(all, ({ deciles }) => deciles),
    ),
  );
  console.log(
    '\nWhat would be if one guard were held against both sides of a limit (not what the program does):\n',
  );
  console.log(`${tableText(INSIDE_HEADERS, insideRows(all))}\n`);
  console.log('And if a chance were taken from extremes without their expected excess (not what it does):\n');
  console.log(
    tableText(
      headers,
      calibrationRows(all, ({ correctedDeciles }) => correctedDeciles),
    ),
  );
}

main(...process.argv.slice(2));
