/** Measuring again by the sheet Re-measure, against measuring again at random: fits decided for each reading. */
import { assessMeasured, type Measured } from '../../src/engine/assess/assess.js';
import { bookOf } from '../../tests/engine/book-of.js';
import { type Draws, drawsOf } from './draws.js';
import { bookOfFits, MAX, MIN, partName, type Readings, readFit, repeatHeader } from './judge.js';
import { type SetUp, SLOTS, type Slot } from './set-ups.js';
import { drawFit, type TrueFit, Workshop } from './workshop.js';

export const WAYS = ['by the sheet Re-measure', 'a part at random', 'a spot at random'] as const;
export type Way = (typeof WAYS)[number];

export interface PlanCounts {
  readonly way: Way;
  /** Fits that were undecided at first. */
  fits: number;
  readings: number;
  decided: number;
  inRange: number;
  /** Called so, and not so in truth. */
  falseInRange: number;
  falseRefused: number;
}

const FITS_PER_BOOK = 8;
/** New readings that a book is given. */
const BUDGET = 150;
/** How far from a limit the fits are drawn, micrometres. */
const NEAR = 6;

/** A bench with fits on it, all undecided at first. */
class Bench {
  readonly readings: Record<Slot, Readings>[];
  spent = 0;

  constructor(
    private readonly workshop: Workshop,
    readonly truths: readonly TrueFit[],
    readings: readonly Readonly<Record<Slot, Readings>>[],
  ) {
    this.readings = readings.map((fit) => structuredClone(fit));
  }

  judge(): Measured {
    return assessMeasured(bookOf(bookOfFits(this.workshop.setUp, this.readings)));
  }

  /** Reads a spot once more. */
  again(place: number, slot: Slot, spot: string): void {
    const own = this.readings[place]![slot];
    own[repeatHeader(spot, this.repeatsOf(place, slot, spot) + 1)] = this.workshop.read(
      this.truths[place]!.parts[slot],
      spot,
    );
    this.spent += 1;
  }

  repeatsOf(place: number, slot: Slot, spot: string): number {
    let repeats = 0;
    while (repeatHeader(spot, repeats + 1) in this.readings[place]![slot]) repeats += 1;
    return repeats;
  }
}

/** Follows the first row that asks for repeats. @returns false where none does */
function followSheet(bench: Bench, { remeasure }: Measured): boolean {
  for (const {
    parts: [part],
    spot,
    why,
  } of remeasure) {
    const times = /(\d+) times in all/.exec(why)?.[1];
    if (times === undefined) continue;
    for (let place = 0; place < bench.truths.length; place++) {
      for (const slot of SLOTS) {
        if (partName(slot, place) !== part) continue;
        for (const name of spot.split(', ')) {
          while (bench.repeatsOf(place, slot, name) < Number(times)) bench.again(place, slot, name);
        }
        return true;
      }
    }
  }
  return false;
}

function atRandom(bench: Bench, { fits }: Measured, draws: Draws, wholePart: boolean): boolean {
  const open = fits.flatMap(({ status }, place) => (status === 'undecided' ? [place] : []));
  if (open.length === 0) return false;
  const pick = <Item>(items: readonly Item[]) => items[Math.floor(draws.even() * items.length)]!;
  const [place, slot] = [pick(open), pick(SLOTS)];
  const spots = Object.keys(bench.truths[place]!.parts[slot].spots);
  for (const spot of wholePart ? spots : [pick(spots)]) bench.again(place, slot, spot);
  return true;
}

/** The same fits and first readings for each way. */
export function planCounts(
  setUp: SetUp,
  seed: number,
  books: number,
  ways: readonly Way[] = WAYS,
): PlanCounts[] {
  return ways.map((way) => {
    const counts: PlanCounts = {
      ...{ way, fits: 0, readings: 0, decided: 0, inRange: 0, falseInRange: 0, falseRefused: 0 },
    };
    for (let book = 0; book < books; book++) {
      const bench = undecidedBench(setUp, drawsOf(seed + book));
      const draws = drawsOf(seed + book + 1_000_000);
      counts.fits += bench.truths.length;
      for (;;) {
        const measured = bench.judge();
        const goesOn =
          bench.spent < BUDGET &&
          (way === 'by the sheet Re-measure'
            ? followSheet(bench, measured)
            : atRandom(bench, measured, draws, way === 'a part at random'));
        if (goesOn) continue;
        count(counts, bench, measured);
        break;
      }
    }
    return counts;
  });
}

function undecidedBench(setUp: SetUp, draws: Draws): Bench {
  const workshop = new Workshop(setUp, draws);
  const truths: TrueFit[] = [];
  const readings: Readonly<Record<Slot, Readings>>[] = [];
  while (truths.length < FITS_PER_BOOK) {
    const near = draws.rectangular(NEAR);
    const truth = drawFit(
      draws,
      setUp,
      draws.even() < 0.5 ? { tightest: MIN + near } : { loosest: MAX + near },
    );
    const read = readFit(workshop, truth);
    const [fit] = assessMeasured(bookOf(bookOfFits(setUp, [read]))).fits;
    if (fit!.status !== 'undecided') continue;
    truths.push(truth);
    readings.push(read);
  }
  return new Bench(workshop, truths, readings);
}

function count(counts: PlanCounts, bench: Bench, { fits }: Measured): void {
  counts.readings += bench.spent;
  for (const [place, { status }] of fits.entries()) {
    if (status === 'undecided') continue;
    const { tightest, loosest } = bench.truths[place]!;
    const truth = tightest < MIN ? 'tight' : loosest > MAX ? 'loose' : 'in range';
    counts.decided += 1;
    if (status === 'in range') counts.inRange += 1;
    if (status === truth) continue;
    if (status === 'in range') counts.falseInRange += 1;
    else counts.falseRefused += 1;
  }
}
