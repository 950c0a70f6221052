/** Parts whose true form lies on its limit, and how often they are called `beyond limits`. */
import { assess, type Plain } from '../../tests/engine/book-of.js';
import { drawsOf } from './draws.js';

export interface SpotGrid {
  readonly stations: number;
  readonly angles: number;
}

export interface FormCounts extends SpotGrid {
  parts: number;
  beyond: number;
}

/** Micrometres: every station out of round by the limit, and every angle tapered by it. */
const LIMIT = 5;
const SCATTER = 1;
const PARTS_PER_BOOK = 500;
const NOMINAL = 50_000;

/**
 * Journals whose stations are all out of round by the whole limit, without taper: nothing is more easily called beyond
 * it by mistake.
 */
export function formCounts({ stations, angles }: SpotGrid, parts: number, seed: number): FormCounts {
  const draws = drawsOf(seed);
  const counts: FormCounts = { stations, angles, parts: 0, beyond: 0 };
  const spots = Array.from({ length: stations * angles }, (_, place) => ({
    header: `${'ABCDEFGH'[Math.floor(place / angles)]} ${(place % angles) * Math.floor(180 / angles)}`,
    isHigh: place % angles === 0,
  }));
  for (let done = 0; done < parts; done += PARTS_PER_BOOK) {
    const count = Math.min(PARTS_PER_BOOK, parts - done);
    const rows = Array.from({ length: count }, (_, place): Plain[] => [
      `J${place}`,
      'E',
      'main',
      place,
      'M',
      ...spots.map(({ isHigh }) => read(NOMINAL + (isHigh ? LIMIT : 0) + draws.normal(SCATTER))),
    ]);
    const result = assess({
      Limits: [
        ['Engine type', 'Fit', 'Clearance min', 'Clearance max', 'Out-of-round limit'],
        ['X', 'main', 0.02, 0.06, LIMIT / 1000],
      ],
      Gauges: [
        ['Gauge', 'Max error', 'Resolution', 'Repeatability'],
        ['M', 0.002, 0, SCATTER / 1000],
      ],
      Journals: [
        ['Part', 'Engine', 'Fit', 'Position', 'Gauge', ...spots.map(({ header }) => header)],
        ...rows,
      ],
    });
    for (const { status } of result.parts.of('Journals')) {
      counts.parts += 1;
      if (status === 'beyond limits') counts.beyond += 1;
    }
  }
  return counts;
}

const read = (micrometres: number) => Number((micrometres / 1000).toFixed(6));
