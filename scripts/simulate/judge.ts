/** Readings of simulated fits, laid out as a user's workbook and judged by the program's own core. */
import type { FitResult } from '../../src/engine/assess/fit.js';
import { BUILT_IN_EXPANSION } from '../../src/maths/expansion.js';
import { assess, type Plain, type Sheets } from '../../tests/engine/book-of.js';
import type { GaugeSpec, SetUp, Slot } from './set-ups.js';
import { SLOTS } from './set-ups.js';
import type { TrueFit, Workshop } from './workshop.js';

/** Limits of the clearance, micrometres. */
export const MIN = 20;
export const MAX = 60;

/** The readings of one part by the header of their column, mm. */
export type Readings = Record<string, number>;
export type FitReadings = Readonly<Record<Slot, Readings>>;

/** The header of a repeat: `A 0`, then `A 0 #2`. */
export function repeatHeader(spot: string, repeat: number): string {
  return repeat === 1 ? spot : `${spot} #${repeat}`;
}

export function readFit(workshop: Workshop, fit: TrueFit): FitReadings {
  const of = (slot: Slot): Readings => {
    const readings: Readings = {};
    for (const spot of Object.keys(fit.parts[slot].spots)) {
      for (let repeat = 1; repeat <= workshop.setUp.repeats; repeat++)
        readings[repeatHeader(spot, repeat)] = workshop.read(fit.parts[slot], spot);
    }
    return readings;
  };
  return { journal: of('journal'), bore: of('bore'), upper: of('upper'), lower: of('lower') };
}

const SHEET_OF = { journal: 'Journals', bore: 'Cases', upper: 'Shells', lower: 'Shells' } as const;

/** The name that a part has in the workbook, by the place of its fit. */
export function partName(slot: Slot, place: number): string {
  return `${slot} ${place}`;
}

/** @param stated the gauges as the workbook states them */
export function bookOfFits(
  setUp: SetUp,
  fits: readonly FitReadings[],
  stated: readonly GaugeSpec[] = setUp.gauges,
): Sheets {
  const sheets: Record<string, Plain[][]> = {
    Limits: [
      ['Engine type', 'Fit', 'Clearance min', 'Clearance max', 'Journal material', 'Bore material'],
      ['X', 'main', MIN / 1000, MAX / 1000, 'steel', setUp.boreMaterial],
    ],
    Gauges: [
      ['Gauge', 'Max error', 'Resolution', 'Repeatability', 'Set from', 'Same at all sizes'],
      ...stated.map(({ name, maxError, resolution, repeatability, setFrom, sameAtAllSizes }): Plain[] => [
        name,
        maxError / 1000,
        resolution / 1000,
        repeatability / 1000,
        setFrom,
        sameAtAllSizes ? 'yes' : 'no',
      ]),
    ],
    Materials: [
      ['Material', 'Expansion', 'Expansion error'],
      ...['steel', 'aluminium'].map((material): Plain[] => {
        const expansion = BUILT_IN_EXPANSION[material]!;
        return [material, expansion, Number((setUp.expansionError * expansion).toFixed(6))];
      }),
    ],
  };
  for (const name of ['Journals', 'Cases', 'Shells']) {
    const slots = SLOTS.filter((slot) => SHEET_OF[slot] === name);
    const columns = [...new Set(fits.flatMap((fit) => slots.flatMap((slot) => Object.keys(fit[slot]))))];
    const rows = fits.flatMap((fit, place) =>
      slots.map((slot): Plain[] => [
        partName(slot, place),
        'E',
        'main',
        place,
        slot,
        setUp.celsius[slot],
        setUp.uses[slot],
        ...columns.map((column) => fit[slot][column]),
      ]),
    );
    sheets[name] = [
      ['Part', 'Engine', 'Fit', 'Position', 'Half', 'Temperature', 'Gauge', ...columns],
      ...rows,
    ];
  }
  return sheets;
}

/** The verdicts of fits, in their order. */
export function judge(
  setUp: SetUp,
  fits: readonly FitReadings[],
  stated: readonly GaugeSpec[] = setUp.gauges,
): readonly FitResult[] {
  return assess(bookOfFits(setUp, fits, stated)).fits;
}
