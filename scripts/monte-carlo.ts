/**
 * The propagated uncertainty against a million draws from the distributions of the inputs (JCGM 101:2008).
 *
 *   npm run uncertainty [-- DRAWS [SEED]]
 */
import { drawsOf } from './simulate/draws.js';
import { GRAINS_PER_MICROMETRE } from './simulate/measured-part.js';
import {
  type Comparison,
  clearanceComparison,
  formComparison,
  sizeComparison,
  tightestComparison,
} from './simulate/monte-carlo.js';
import { SET_UPS } from './simulate/set-ups.js';
import { tableText } from './table-text.js';

const HEADERS = [
  'Quantity',
  'Case',
  'u propagated, µm',
  'u of the draws, µm',
  'Ratio',
  'Mean error, u',
  'Within ± 1.96 u, %',
  'Ends off, µm',
  'May be, µm',
  'Agrees',
];

function rowOf({
  quantity,
  case: words,
  propagated,
  bias,
  deviation,
  covered,
  ...ends
}: Comparison): string[] {
  return [
    quantity,
    words,
    (propagated / GRAINS_PER_MICROMETRE).toFixed(4),
    (deviation / GRAINS_PER_MICROMETRE).toFixed(4),
    (deviation / propagated).toFixed(3),
    (bias / propagated).toFixed(2),
    (100 * covered).toFixed(1),
    (ends.endsOff / GRAINS_PER_MICROMETRE).toFixed(3),
    (ends.tolerance / GRAINS_PER_MICROMETRE).toFixed(3),
    ends.endsOff <= ends.tolerance ? 'yes' : 'no',
  ];
}

function main(count = '1000000', seed = '101'): void {
  const [draws, number] = [drawsOf(Number(seed)), Number(count)];
  const setUps = SET_UPS.filter(({ oneSpot }) => !oneSpot);
  const first = setUps[0]!;
  const fine = { stations: 2, angles: 1 };
  const comparisons: Comparison[] = [
    ...setUps.map((setUp) => clearanceComparison(setUp, draws, number)),
    sizeComparison(first, draws, number),
    ...[0, 1, 2, 4, 8].map((trueForm) =>
      formComparison('taper', first, draws, number, { ...fine, trueForm }),
    ),
    ...[0, 4].map((trueForm) =>
      formComparison('taper', first, draws, number, { stations: 3, angles: 2, trueForm }),
    ),
    ...[0, 2, 4, 8].map((trueForm) =>
      formComparison('out of round', first, draws, number, { stations: 1, angles: 2, trueForm }),
    ),
    ...[0, 4].map((trueForm) =>
      formComparison('out of round', first, draws, number, { stations: 2, angles: 3, trueForm }),
    ),
    ...[first, setUps.find(({ name }) => name === 'coarse gauges')!].flatMap((setUp) =>
      [
        { journal: 1, bore: 1, upper: 1, lower: 1 },
        { journal: 4, bore: 6, upper: 2, lower: 2 },
      ].map((spots) => tightestComparison(setUp, draws, number, spots)),
    ),
  ];
  console.log(`${number} draws a row, seed ${seed}\n`);
  console.log(tableText(HEADERS, comparisons.map(rowOf)));
}

main(...process.argv.slice(2));
