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
  'Wrong among decided, %',
];

function main(books = '100', seed = '500'): void {
  const rows = PLAN_SET_UPS.flatMap((setUp) =>
    planCounts(setUp, Number(seed), Number(books)).map(({ way, fits, readings, decided, wrong }) => [
      setUp.name,
      way,
      String(fits),
      String(readings),
      String(decided),
      readings === 0 ? '' : ((100 * decided) / readings).toFixed(2),
      decided === 0 ? '' : ((100 * wrong) / decided).toFixed(1),
    ]),
  );
  console.log(`${books} books, seed ${seed}\n`);
  console.log(tableText(HEADERS, rows));
}

main(...process.argv.slice(2));
