/**
 * What the verdicts promise, tested as a promise: simulated fits of known true clearance, read with gauges of
 * the stated errors and judged by the program's own core.
 *
 *   npm run simulate [-- FITS_A_LIMIT [SEED]]     fits on each limit, of each set-up
 */
import { inWorker } from './simulate/in-workers.js';
import type { SpotGrid } from './simulate/round-parts.js';
import { SET_UPS, type SetUp } from './simulate/set-ups.js';
import {
  bestOfTable,
  chanceTable,
  costTable,
  formTable,
  limitTable,
  placeTable,
  winTable,
} from './simulate/tables.js';

const GRIDS: readonly SpotGrid[] = [
  { stations: 1, angles: 2 },
  { stations: 2, angles: 2 },
  { stations: 3, angles: 2 },
  { stations: 1, angles: 3 },
  { stations: 2, angles: 3 },
  { stations: 3, angles: 3 },
];

const named = (name: string): SetUp => SET_UPS.find((setUp) => setUp.name === name)!;

/** Of one spot a part, so that a clearance is a whole number of steps. */
const STEPPED = ['the same, one spot a part', 'coarse gauges, one spot a part'].map(named);
const PLACES = Array.from({ length: 10 }, (_, tenth) => tenth / 10);

const CHOSEN_AMONG = [
  'the same, one spot a part',
  'independent gauges',
  'one micrometer on both walls',
  'gauges of poor repeatability, one spot a part',
  'gauges of poor repeatability',
].map(named);

/** The seeds of a table begin where no other table's can be. */
const [OF_PLACES, OF_CHOICES, OF_FORMS] = [1000, 2000, 3000];

async function main(onEachLimit = '100000', first = '20'): Promise<void> {
  const [limit, seed] = [Number(onEachLimit), Number(first)];
  const sizes = { even: limit / 2, limit, onStep: limit / 2 };
  const all = Promise.all(SET_UPS.map((setUp, place) => inWorker('promisesOf', setUp, seed + place, sizes)));
  const places = Promise.all(
    STEPPED.flatMap((setUp, own) =>
      PLACES.map((place, at) =>
        inWorker('placeCounts', setUp, place, limit / 4, seed + OF_PLACES + PLACES.length * own + at),
      ),
    ),
  );
  const choices = Promise.all(
    CHOSEN_AMONG.map((setUp, own) => inWorker('bestOfCounts', setUp, limit / 10, seed + OF_CHOICES + own)),
  );
  const forms = Promise.all(
    GRIDS.map((grid, own) => inWorker('formCounts', grid, limit / 10, seed + OF_FORMS + own)),
  );
  const promises = await all;
  console.log(`${limit} fits on each limit of each set-up, seeds ${seed} to ${seed + SET_UPS.length - 1}\n`);
  console.log('Limits anywhere between two steps of the gauges:\n');
  console.log(`${limitTable(promises, (own) => own)}\n`);
  console.log(`Limits of whole steps (20 and 60 µm), ${sizes.onStep} fits on each:\n`);
  console.log(`${limitTable(promises, ({ onStep }) => onStep)}\n`);
  console.log('Fits on min, by how far above a whole step of the gauges the limits lie:\n');
  console.log(`${placeTable(await places)}\n`);
  console.log(
    'Fits spread evenly from 30 µm below the range to 30 µm above it (1 % is 1 µm of clearance):\n',
  );
  console.log(`${costTable(promises)}\n`);
  console.log('What wins back undecided fits:\n');
  console.log(`${winTable(promises)}\n`);
  console.log('Truly in range, % of the fits with a Chance in range of so many %:\n');
  console.log(`${chanceTable(promises)}\n`);
  console.log('Rods that all make a fit on min, and one that is called in range is taken; a false set, %:\n');
  console.log(`${bestOfTable(await choices)}\n`);
  console.log('Journals out of round by the limit at every station, scatter 1 µm:\n');
  console.log(formTable(await forms));
}

await main(...process.argv.slice(2));
