/**
 * What the verdicts promise, tested as a promise: simulated fits of known true clearance, read with gauges of
 * the stated errors and judged by the program's own core.
 *
 *   npm run simulate [-- FITS_A_LIMIT [SEED]]     fits on each limit, over all set-ups
 */
import { type Promises, promisesOf } from './simulate/promises.js';
import { type FormCounts, formCounts, type SpotGrid } from './simulate/round-parts.js';
import { SET_UPS } from './simulate/set-ups.js';
import { tableText } from './table-text.js';

const GRIDS: readonly SpotGrid[] = [
  { stations: 1, angles: 2 },
  { stations: 2, angles: 2 },
  { stations: 3, angles: 2 },
  { stations: 1, angles: 3 },
  { stations: 2, angles: 3 },
  { stations: 3, angles: 3 },
];

const percent = (part: number, whole: number, digits = 1) =>
  whole === 0 ? '' : ((100 * part) / whole).toFixed(digits);

/** A share with its standard sampling error. */
function sampled(part: number, whole: number): string {
  const share = part / whole;
  return `${percent(part, whole, 2)} ± ${(100 * Math.sqrt((share * (1 - share)) / whole)).toFixed(2)}`;
}

const LIMIT_HEADERS = [
  'Set-up',
  'Fits on each limit',
  'On min, called in range, %',
  'On max, called in range, %',
  'On min, called tight, %',
  'On max, called loose, %',
];

function limitRows(all: readonly Promises[]) {
  return all.map(({ setUp, onMin, onMax }) => [
    setUp.name,
    String(onMin.fits),
    sampled(onMin.inRange, onMin.fits),
    sampled(onMax.inRange, onMax.fits),
    sampled(onMin.refused, onMin.fits),
    sampled(onMax.refused, onMax.fits),
  ]);
}

const COST_HEADERS = [
  'Set-up',
  'Fits',
  'In range, %',
  'Tight or loose, %',
  'Undecided, %',
  'Undecided with one guard for both, %',
  'Wrong among in range, %',
  'Wrong among tight and loose, %',
];

function costRows(all: readonly Promises[]) {
  return all.map(({ setUp, even }) => [
    setUp.name,
    String(even.fits),
    percent(even.inRange, even.fits),
    percent(even.tight + even.loose, even.fits),
    percent(even.undecided, even.fits),
    percent(even.undecidedByOneGuard, even.fits),
    percent(even.falseInRange, even.inRange, 2),
    percent(even.falseTight + even.falseLoose, even.tight + even.loose, 2),
  ]);
}

const DECILES = Array.from({ length: 10 }, (_, tenth) => `${tenth * 10}–${tenth * 10 + 10}`);

function chanceRows(all: readonly Promises[]) {
  return all.map(({ setUp, even }) => [
    setUp.name,
    ...even.deciles.map(({ fits, inside }) => (fits < 50 ? '' : percent(inside, fits, 0))),
  ]);
}

const FORM_HEADERS = ['Stations × angles', 'Journals', 'Called beyond limits, %'];

function formRows(all: readonly FormCounts[]) {
  return all.map(({ stations, angles, parts, beyond }) => [
    `${stations} × ${angles}`,
    String(parts),
    sampled(beyond, parts),
  ]);
}

function main(onEachLimit = '200000', seed = '20'): void {
  const limit = 2 * Math.ceil(Number(onEachLimit) / SET_UPS.length / 2);
  const all = SET_UPS.map((setUp, place) => promisesOf(setUp, Number(seed) + place, { even: limit, limit }));
  const forms = GRIDS.map((grid, place) => formCounts(grid, limit, Number(seed) + SET_UPS.length + place));
  const total = all.reduce((sum, { onMin }) => sum + onMin.fits, 0);
  console.log(`${total} fits on each limit, seeds ${seed} to ${Number(seed) + SET_UPS.length - 1}\n`);
  console.log(`${tableText(LIMIT_HEADERS, limitRows(all))}\n`);
  console.log('Fits spread evenly from 30 µm below the range to 30 µm above it:\n');
  console.log(`${tableText(COST_HEADERS, costRows(all))}\n`);
  console.log('Truly in range, % of the fits with a Chance in range of so many %:\n');
  console.log(`${tableText(['Set-up', ...DECILES], chanceRows(all))}\n`);
  console.log('Journals out of round by the limit at every station, scatter 1 µm:\n');
  console.log(tableText(FORM_HEADERS, formRows(forms)));
}

main(...process.argv.slice(2));
