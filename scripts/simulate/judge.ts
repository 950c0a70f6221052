/** Readings of simulated fits, laid out as a user's workbook and judged by the program's own core. */
import type { FitResult } from '../../src/engine/assess/fit.js';
import { BUILT_IN_EXPANSION } from '../../src/maths/expansion.js';
import { assess, type Plain, type Sheets } from '../../tests/engine/book-of.js';
import type { GaugeSpec, SetUp, Slot } from './set-ups.js';
import { SLOTS } from './set-ups.js';
import type { TrueFit, Workshop } from './workshop.js';

/** Limits of the clearance, micrometres: whole steps of all gauges. */
export const MIN = 20;
export const MAX = 60;

/** By how much the limits of a fit, known by its place, lie higher, micrometres. */
export type ShiftOf = (place: number) => number;

/** The step in which a clearance of one spot a part is measured at 20 °C, micrometres. */
export function stepOf({ gauges }: SetUp): number {
  return Math.max(...gauges.map(({ resolution }) => resolution));
}

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

const engineType = (shift: number) => `X ${shift}`;

/** Which workshop read a fit, by its place: nothing where there is one. */
export type WorkshopOf = (place: number) => number | '';

/**
 * @param stated the gauges as the workbook states them
 * @param workshopOf the gauges of each are other gauges, so that a book can hold the fits of many
 * @param shiftOf fits whose limits lie alike are of one engine type
 */
export function bookOfFits(
  setUp: SetUp,
  fits: readonly FitReadings[],
  stated: readonly GaugeSpec[] = setUp.gauges,
  workshopOf: WorkshopOf = () => '',
  shiftOf: ShiftOf = () => 0,
): Sheets {
  const shifts = [...new Set(fits.map((_, place) => shiftOf(place)))];
  const limit = (micrometres: number) => Number((micrometres / 1000).toFixed(6));
  const workshops = [...new Set(fits.map((_, place) => workshopOf(place)))];
  const sheets: Record<string, Plain[][]> = {
    Limits: [
      ['Engine type', 'Fit', 'Clearance min', 'Clearance max', 'Journal material', 'Bore material'],
      ...shifts.map((shift): Plain[] => [
        engineType(shift),
        'main',
        limit(MIN + shift),
        limit(MAX + shift),
        'steel',
        setUp.boreMaterial,
      ]),
    ],
    Gauges: [
      ['Gauge', 'Max error', 'Resolution', 'Repeatability', 'Set from', 'Same at all sizes'],
      ...workshops.flatMap((workshop) =>
        stated.map(({ name, maxError, resolution, repeatability, setFrom, sameAtAllSizes }): Plain[] => [
          `${name}${workshop}`,
          maxError / 1000,
          resolution / 1000,
          repeatability / 1000,
          setFrom && `${setFrom}${workshop}`,
          sameAtAllSizes && 'yes',
        ]),
      ),
    ],
    Materials: [
      ['Material', 'Expansion', 'Expansion error'],
      ...(['steel', 'aluminium'] as const).map((material): Plain[] => [
        material,
        BUILT_IN_EXPANSION[material],
        setUp.expansionError[material],
      ]),
    ],
  };
  for (const name of ['Journals', 'Cases', 'Shells']) {
    const slots = SLOTS.filter((slot) => SHEET_OF[slot] === name);
    const columns = [...new Set(fits.flatMap((fit) => slots.flatMap((slot) => Object.keys(fit[slot]))))];
    const rows = fits.flatMap((fit, place) =>
      slots.map((slot): Plain[] => [
        partName(slot, place),
        engineType(shiftOf(place)),
        'E',
        'main',
        place,
        slot,
        setUp.celsius[slot],
        `${setUp.uses[slot]}${workshopOf(place)}`,
        ...columns.map((column) => fit[slot][column]),
      ]),
    );
    sheets[name] = [
      ['Part', 'Engine type', 'Engine', 'Fit', 'Position', 'Half', 'Temperature', 'Gauge', ...columns],
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
  workshopOf?: WorkshopOf,
  shiftOf?: ShiftOf,
): readonly FitResult[] {
  return assess(bookOfFits(setUp, fits, stated, workshopOf, shiftOf)).fits;
}
