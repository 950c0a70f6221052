/** The tables that `npm run simulate` prints. */
import { tableText } from '../table-text.js';
import { type BestOfCounts, CHOICES } from './best-of.js';
import type { PlaceCounts } from './places.js';
import type { EvenCounts, LimitPair, Promises } from './promises.js';
import type { FormCounts } from './round-parts.js';

const percent = (part: number, whole: number, digits = 1) =>
  whole === 0 ? '' : ((100 * part) / whole).toFixed(digits);

/** A share with its standard sampling error. */
function sampled(part: number, whole: number): string {
  const share = part / whole;
  return `${percent(part, whole, 2)} ± ${(100 * Math.sqrt((share * (1 - share)) / whole)).toFixed(2)}`;
}

const LIMIT_HEADERS = [
  'Set-up',
  'On min, called in range, %',
  'On max, called in range, %',
  'On min, called tight, %',
  'On max, called loose, %',
];

export function limitTable(all: readonly Promises[], of: (promises: Promises) => LimitPair): string {
  const rows = all.map((promises) => {
    const { onMin, onMax } = of(promises);
    return [
      promises.setUp.name,
      sampled(onMin.inRange, onMin.fits),
      sampled(onMax.inRange, onMax.fits),
      sampled(onMin.refused, onMin.fits),
      sampled(onMax.refused, onMax.fits),
    ];
  });
  return tableText(LIMIT_HEADERS, rows);
}

/** One row a place of each set-up. */
export function placeTable(all: readonly PlaceCounts[]): string {
  const rows = all.map(({ setUp, place, fits, inRange, refused, expected }) => [
    setUp.name,
    `${place} of a step`,
    sampled(inRange, fits),
    percent(expected.inRange, 1, 2),
    sampled(refused, fits),
    percent(expected.refused, 1, 2),
  ]);
  return tableText(
    ['Set-up', 'Above a whole step', 'In range, %', 'By the equation', 'Tight, %', 'By the equation'],
    rows,
  );
}

const COST_HEADERS = [
  'Set-up',
  'g, µm',
  'G, µm',
  'In range, %',
  'Tight or loose, %',
  'Undecided, %',
  'Undecided if G were g, %',
  'Wrong among in range, %',
  'Wrong among tight and loose, %',
];

export function costTable(all: readonly Promises[]): string {
  const rows = all.map(({ setUp, even }) => [
    setUp.name,
    (even.inside / even.fits).toFixed(2),
    (even.outside / even.fits).toFixed(2),
    percent(even.inRange, even.fits),
    percent(even.tight + even.loose, even.fits),
    percent(even.undecided, even.fits),
    percent(even.undecidedByOneGuard, even.fits),
    percent(even.falseInRange, even.inRange, 2),
    percent(even.falseTight + even.falseLoose, even.tight + even.loose, 2),
  ]);
  return tableText(COST_HEADERS, rows);
}

/** Set-ups that differ in one thing: what is done, from which to which. */
const WINS = [
  [
    '`Same at all sizes` for the micrometer that sets the bore gauge',
    'bore gauge set from the micrometer',
    'the same, one error at all sizes',
  ],
  ['a second reading of every spot', 'gauges of poor repeatability', 'the same, every spot read twice'],
  [
    'four readings of every spot in place of two',
    'the same, every spot read twice',
    'every spot read four times',
  ],
  ['parts and gauges left to come from 35 °C to 20 °C', 'all at 35 °C', 'all at 20 °C'],
  ['gauges of 1 µm in place of 10 µm', 'coarse gauges', 'independent gauges'],
] as const;

export function winTable(all: readonly Promises[]): string {
  const evenOf = (name: string): EvenCounts => all.find(({ setUp }) => setUp.name === name)!.even;
  const rows = WINS.map(([what, from, to]) => {
    const [before, after] = [evenOf(from), evenOf(to)];
    const share = ({ undecided, fits }: EvenCounts) => percent(undecided, fits);
    const won = before.undecided / before.fits - after.undecided / after.fits;
    return [what, from, share(before), share(after), percent(won, before.undecided / before.fits, 0)];
  });
  return tableText(
    ['What is done', 'From the set-up', 'Undecided before, %', 'Undecided after, %', 'Of them won back, %'],
    rows,
  );
}

const DECILES = Array.from({ length: 10 }, (_, tenth) => `${tenth * 10}–${tenth * 10 + 10}`);

export function chanceTable(all: readonly Promises[]): string {
  const rows = all.map(({ setUp, even }) => [
    setUp.name,
    ...even.deciles.map(({ fits, inside }) => (fits < 50 ? '' : percent(inside, fits, 0))),
  ]);
  return tableText(['Set-up', ...DECILES], rows);
}

export function bestOfTable(all: readonly BestOfCounts[]): string {
  const rows = all.map(({ setUp, cases, falseSets }) => [
    setUp.name,
    String(cases),
    ...CHOICES.map((rods) => sampled(falseSets[rods], cases)),
  ]);
  const rods = CHOICES.map((count) => (count === 1 ? '1 rod' : `${count} rods`));
  return tableText(['Set-up', 'Sets', ...rods], rows);
}

const FORM_HEADERS = ['Stations × angles', 'Journals', 'Called beyond limits, %'];

export function formTable(all: readonly FormCounts[]): string {
  const rows = all.map(({ stations, angles, parts, beyond }) => [
    `${stations} × ${angles}`,
    String(parts),
    sampled(beyond, parts),
  ]);
  return tableText(FORM_HEADERS, rows);
}
