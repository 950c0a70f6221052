/**
 * What the sheet Re-measure is worth: fits decided for each new reading, against measuring again at random.
 *
 *   npm run plan [-- BOOKS [SEED]]
 */
import { planCounts } from './simulate/plan.js';
import { PLAN_SET_UPS } from './simulate/set-ups.js';
import { tableText } from './table-text.js';

const HEADERS = [
  'Set-up',
  'Measured again',
  'Undecided at first',
  'New readings',
  'Decided',
  'Decided of 100 readings',
  'In range',
  'Of them wrong',
  'Tight or loose',
  'Of them wrong',
];

function main(books = '100', seed = '500'): void {
  const rows = PLAN_SET_UPS.flatMap((setUp) =>
    planCounts(setUp, Number(seed), Number(books)).map((counts) => [
      setUp.name,
      counts.way,
      String(counts.fits),
      String(counts.readings),
      String(counts.decided),
      counts.readings === 0 ? '' : ((100 * counts.decided) / counts.readings).toFixed(2),
      String(counts.inRange),
      String(counts.falseInRange),
      String(counts.decided - counts.inRange),
      String(counts.falseRefused),
    ]),
  );
  console.log(`${books} books, seed ${seed}\n`);
  console.log(tableText(HEADERS, rows));
}

main(...process.argv.slice(2));
