/**
 * The bench of the matching: engines made against what a person makes at the shelf, and the time to
 * proof by size. Prints two tables in Markdown; `npm run bench:matching -- engines` or `-- times` for one;
 * `-- proofs` says how many workshop stocks of scarce parts are proved.
 */
import { spawnSync } from 'node:child_process';
import { availableParallelism, loadavg } from 'node:os';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { MatchResult, Stock } from '../../../src/maths/matching/stock.js';
import {
  ofType,
  together,
  type WorkshopSize,
  withDefaults,
  workshopStock,
} from '../../maths/matching/random-stock.js';
import { KINDS } from './kinds.js';
import { peersOf, RESTARTS } from './peers.js';

const FIRST_SEED = 1;
const SEEDS = 30;
const TIMED_SEEDS = 3;
/** Most time for one stock of the second table. */
const MOST_SECONDS = 60;
/** Most time for one stock of the first table: its aims after the first need not be proved. */
const ENGINES_SECONDS = 8;

const line = (cells: readonly (string | number)[]) => console.log(`| ${cells.join(' | ')} |`);

function heading(cells: readonly string[]): void {
  line(cells);
  line(cells.map(() => '---'));
}

/** No row says where a part ran, so that no time goes into keeping pairs. */
function neverRun(stock: Stock): Stock {
  const forget = <Row extends object>(row: Row): Row => ({ ...row, ran: undefined });
  return { ...stock, rods: stock.rods.map(forget), shells: stock.shells.map(forget) };
}

const isProved = ({ stages }: MatchResult, first: number) =>
  stages.slice(0, first).every(({ reached, bound }) => reached === bound);

async function engines(): Promise<void> {
  console.log(`Complete engines, seeds ${FIRST_SEED} to ${FIRST_SEED + SEEDS - 1} of each kind:\n`);
  heading(['Stock', 'Cranks', 'Matching', 'Proved', 'First fit', 'Best fit', `Best of ${RESTARTS} orders`]);
  for (const { name, says, size } of KINDS) {
    const sums = { matching: 0, proved: 0, firstFit: 0, bestFit: 0, restarts: 0 };
    for (let seed = FIRST_SEED; seed < FIRST_SEED + SEEDS; seed++) {
      const stock = neverRun(workshopStock(seed, size));
      const peers = peersOf(stock, seed);
      const result = await matchStock(stock, { seconds: ENGINES_SECONDS });
      sums.matching += result.completeEngines.length;
      sums.proved += Number(isProved(result, 1));
      sums.firstFit += peers.firstFit;
      sums.bestFit += peers.bestFit;
      sums.restarts += peers.restarts;
      console.error(`${name}, seed ${seed}: ${JSON.stringify({ ...sums })}`);
    }
    const { matching, proved, firstFit, bestFit, restarts } = sums;
    line([
      `${name}: ${says}`,
      SEEDS * size.cranks,
      matching,
      `${proved} of ${SEEDS}`,
      firstFit,
      bestFit,
      restarts,
    ]);
  }
}

const plain = (cranks: number): WorkshopSize => ({
  cranks,
  pins: 4,
  mains: 0,
  rods: Math.round(cranks * 5.2),
  shells: cranks * 20,
});

/** Stocks of one size, each of an engine type of its own, on one shelf. */
function shelfOf(types: number, seed: number, size: WorkshopSize): Stock {
  const [first, ...others] = Array.from({ length: types }, (_, place) =>
    ofType(`type ${place + 1}`, workshopStock(100 * seed + place, size)),
  );
  return together(first!, ...others);
}

const SIZES: readonly { readonly name: string; readonly size: WorkshopSize; readonly types?: number }[] = [
  { name: '10 cranks, 6 pins and 5 mains', size: { cranks: 10, pins: 6, mains: 5, rods: 70, shells: 275 } },
  {
    name: '10 cranks, 6 pins, spread 3 g',
    size: { cranks: 10, pins: 6, mains: 0, rods: 70, shells: 275, massSpread: 3 },
  },
  { name: '25 cranks', size: plain(25) },
  { name: '25 cranks, spread 3 g', size: { ...plain(25), massSpread: 3 } },
  { name: '250 cranks', size: plain(250) },
  { name: '250 cranks, spread 3 g', size: { ...plain(250), massSpread: 3 } },
  { name: '2500 cranks', size: plain(2500) },
  { name: '5 engine types, 500 cranks each', size: plain(500), types: 5 },
];

const gap = ({ stages }: MatchResult, aim: string) => {
  const { reached, bound } = stages.find((stage) => stage.aim === aim)!;
  return reached === bound ? `${reached}, proved` : `${reached} of ${bound}`;
};

/** One stock, in a process of its own so that its memory is known. */
async function time(place: number, seed: number, settings: string | undefined): Promise<void> {
  const { name, size, types } = SIZES[place]!;
  const typed = types === undefined ? workshopStock(seed, size) : shelfOf(types, seed, size);
  const stock = settings === 'closest' ? typed : withDefaults(typed);
  const [start, used] = [performance.now(), process.cpuUsage()];
  const result = await matchStock(stock, { seconds: MOST_SECONDS });
  const { user, system } = process.cpuUsage(used);
  line([
    name,
    seed,
    ((performance.now() - start) / 1000).toFixed(1),
    ((user + system) / 1e6).toFixed(1),
    gap(result, 'complete engines'),
    gap(result, 'filled journals beyond them'),
    gap(result, 'distance from the aim'),
    gap(result, 'pairs kept together'),
    gap(result, 'rods that stay'),
    Math.round(process.resourceUsage().maxRSS / 1024),
  ]);
}

function times(): void {
  const load = loadavg()[0]!.toFixed(1);
  console.log(
    `Readings of 1 µm, ${availableParallelism()} cores with a load of ${load}, at most ${MOST_SECONDS} s each:\n`,
  );
  heading([
    'Stock',
    'Seed',
    'Seconds',
    'Of processor',
    'Engines',
    'Beyond',
    'Off aim, 0.001 µm',
    'Kept pairs',
    'Rods that stay',
    'MB',
  ]);
  for (const [place, { size }] of SIZES.entries()) {
    for (let seed = FIRST_SEED; seed < FIRST_SEED + (size.cranks > 250 ? 1 : TIMED_SEEDS); seed++) {
      const run = spawnSync(process.execPath, [process.argv[1]!, 'time', `${place}`, `${seed}`], {
        stdio: 'inherit',
      });
      if (run.status !== 0) throw new Error(`the run of seed ${seed} failed`);
    }
  }
}

/** Scarce parts with a mass spread, of a workshop's size: the hardest to prove. */
const SCARCE: readonly { readonly name: string; readonly stockOf: (seed: number) => Stock }[] = [
  {
    name: '10 cranks of 4 pins and 5 mains, 44 rods, 90 half-shells for the pins, spread 3 g',
    stockOf: (seed) =>
      workshopStock(seed, { cranks: 10, pins: 4, mains: 5, rods: 44, shells: 90, massSpread: 3 }),
  },
  {
    name: '8 cranks of 4 pins, 34 rods, 70 half-shells, spread 3 g',
    stockOf: (seed) =>
      workshopStock(seed, { cranks: 8, pins: 4, mains: 0, rods: 34, shells: 70, massSpread: 3 }),
  },
  {
    name: '3 engine types, of each 8 cranks of 4 pins and 5 mains, 34 rods, 68 half-shells for the pins, spread 3 g',
    stockOf: (seed) =>
      shelfOf(3, seed, { cranks: 8, pins: 4, mains: 5, rods: 34, shells: 68, massSpread: 3 }),
  },
];
const PROOF_SEEDS = 10;

async function proofs(): Promise<void> {
  heading(['Stock', 'Seeds', 'Engines', 'Beyond', 'Distance', 'Kept pairs', 'Most seconds of processor']);
  for (const { name, stockOf } of SCARCE) {
    const proved = [0, 0, 0, 0];
    let most = 0;
    for (let seed = FIRST_SEED; seed < FIRST_SEED + PROOF_SEEDS; seed++) {
      const used = process.cpuUsage();
      const { stages } = await matchStock(stockOf(seed), { seconds: 60 });
      const { user, system } = process.cpuUsage(used);
      most = Math.max(most, (user + system) / 1e6);
      for (const [place, { reached, bound }] of stages.entries()) proved[place]! += Number(reached === bound);
      console.error(`${name}, seed ${seed}: ${JSON.stringify(stages)}`);
    }
    line([name, PROOF_SEEDS, ...proved, most.toFixed(1)]);
  }
}

const [wanted, place, seed, settings] = process.argv.slice(2);
if (wanted === 'time') await time(Number(place), Number(seed), settings);
else if (wanted === 'proofs') await proofs();
else {
  if (wanted !== 'times') await engines();
  if (wanted === undefined) console.log();
  if (wanted !== 'engines') times();
}
