/**
 * Repeatability and reproducibility of a gauge, from a study in which every person reads every part equally often.
 *
 *   x(o, p, t)   reading t of part p by person o, of o persons, p parts, r trials
 *
 * By analysis of variance: repeatability EV² = MS of the readings within a cell; reproducibility AV² = (MS person −
 * MS below)/(p·r); interaction IV² = (MS interaction − EV²)/r; parts PV² = (MS part − MS below)/(o·r); an interaction
 * that chance gives more often than 1 time in 20 is taken into the repeatability. By average and range: EV = R̿/d2*,
 * AV² = (X̄diff/d2*)² − EV²/(p·r), PV = Rp/d2*. Gauge² = EV² + AV² + IV²; categories = 1.41·PV/gauge, the whole number.
 *
 * Source: AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III section B and appendix A.
 * In the unit of the readings, unrounded.
 */
import { chanceOf, mean, squaresAbout, type Variation, variation } from './analysis-of-variance.js';
import { rangeDivisor } from './studentized-range.js';

/** Readings by person, part and trial; all cells of one size. */
export type StudyReadings = readonly (readonly (readonly number[])[])[];

export interface GaugeVariation {
  /** EV: standard deviation of one reading. */
  readonly repeatability: number;
  /** AV with the interaction; undefined with one person. */
  readonly reproducibility: number | undefined;
  /** The gauge as a whole. */
  readonly gauge: number;
  /** Undefined with one part. */
  readonly parts: number | undefined;
  readonly total: number;
  /** How many groups of parts the gauge tells apart, not rounded; undefined with one part. */
  readonly categories: number | undefined;
}

export interface StudyAnalysis extends GaugeVariation {
  readonly person: Variation;
  readonly part: Variation;
  readonly interaction: Variation;
  readonly within: Variation;
  /** Whether the interaction was taken into the repeatability. */
  readonly isPooled: boolean;
}

const INTERACTION_CHANCE = 0.05;
/** √2 to the digits of the source. */
const CATEGORY_FACTOR = 1.41;

/** Of a sum of squares, far more than doubles lose and far less than any gauge shows. */
const ROUNDING = 1e-20;

const root = (variance: number) => Math.sqrt(Math.max(0, variance));

function whole(
  repeatability: number,
  reproducibility: number | undefined,
  parts: number | undefined,
): GaugeVariation {
  const gauge = Math.hypot(repeatability, reproducibility ?? 0);
  const categories =
    parts === undefined
      ? undefined
      : gauge === 0
        ? Number.POSITIVE_INFINITY
        : (CATEGORY_FACTOR * parts) / gauge;
  return { repeatability, reproducibility, gauge, parts, total: Math.hypot(gauge, parts ?? 0), categories };
}

/** @throws RangeError where no cell has two readings or the cells are not of one size. */
export function analyseStudy(readings: StudyReadings): StudyAnalysis {
  const { persons, parts, trials } = sizesOf(readings);
  const cellMeans = readings.map((own) => own.map(mean));
  const personMeans = cellMeans.map(mean);
  const partMeans = Array.from({ length: parts }, (_, part) => mean(cellMeans.map((own) => own[part]!)));
  const centre = mean(personMeans);
  const person = variation(parts * trials * squaresAbout(personMeans, centre), persons - 1);
  const part = variation(persons * trials * squaresAbout(partMeans, centre), parts - 1);
  let crossed = 0;
  let inner = 0;
  readings.forEach((own, o) => {
    own.forEach((cell, p) => {
      crossed += (cellMeans[o]![p]! - personMeans[o]! - partMeans[p]! + centre) ** 2;
      inner += squaresAbout(cell, cellMeans[o]![p]!);
    });
  });
  const all = parts * squaresAbout(personMeans, centre) + persons * squaresAbout(partMeans, centre) + crossed;
  // What rounding leaves of two persons who read alike is no interaction.
  const isRounding = crossed <= ROUNDING * all;
  const interaction = variation(isRounding ? 0 : trials * crossed, person.degrees * part.degrees);
  const within = variation(inner, persons * parts * (trials - 1));
  const isPooled = interaction.degrees === 0 || !(chanceOf(interaction, within).p < INTERACTION_CHANCE);
  const error = isPooled
    ? variation(interaction.sumOfSquares + within.sumOfSquares, interaction.degrees + within.degrees)
    : within;
  const below = isPooled ? error : interaction;
  const own = root((person.meanSquare - below.meanSquare) / (parts * trials));
  const shared = isPooled ? 0 : root((interaction.meanSquare - within.meanSquare) / trials);
  return {
    ...whole(
      root(error.meanSquare),
      persons === 1 ? undefined : Math.hypot(own, shared),
      parts === 1 ? undefined : root((part.meanSquare - below.meanSquare) / (persons * trials)),
    ),
    person,
    part,
    interaction,
    within,
    isPooled,
  };
}

/** @throws RangeError where no cell has two readings or the cells are not of one size. */
export function averageAndRange(readings: StudyReadings): GaugeVariation {
  const { persons, parts, trials } = sizesOf(readings);
  const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const repeatability =
    mean(readings.flatMap((own) => own.map(range))) / rangeDivisor(trials, persons * parts);
  const between = range(readings.map((own) => mean(own.map(mean))));
  const partMeans = Array.from({ length: parts }, (_, part) => mean(readings.map((own) => mean(own[part]!))));
  return whole(
    repeatability,
    persons === 1
      ? undefined
      : root((between / rangeDivisor(persons, 1)) ** 2 - repeatability ** 2 / (parts * trials)),
    parts === 1 ? undefined : range(partMeans) / rangeDivisor(parts, 1),
  );
}

function sizesOf(readings: StudyReadings): { persons: number; parts: number; trials: number } {
  const parts = readings[0]?.length ?? 0;
  const trials = readings[0]?.[0]?.length ?? 0;
  const isEven = readings.every((own) => own.length === parts && own.every((cell) => cell.length === trials));
  if (!isEven || parts === 0 || trials < 2) {
    throw new RangeError(
      'a study needs the same number of readings, two or more, of every part by every person',
    );
  }
  return { persons: readings.length, parts, trials };
}
