/** An engine as it was described to `oilgap sheet`, and the headers and cells that follow from it. */
import { toNumber } from '../../maths/decimal.js';
import type { Renewal } from '../../maths/fastener-verdict.js';
import { readScanned, scanNumber } from '../book/number-text.js';
import { isLength } from '../book/table.js';
import type { AskedPlaces, KindOfFit } from '../kinds/kind-of-fit.js';

/** A gauge for one kind of part; without its greatest error no row can be judged by it yet. */
export interface BlankGauge {
  readonly name: string;
  /** As typed: with or without its unit. */
  readonly maxError: string | undefined;
}

/** The positions of one fit, as one kind of fit asks for them. */
export interface DescribedPlaces {
  readonly kind: KindOfFit;
  readonly asked: AskedPlaces;
  readonly positions: readonly string[];
}

export interface EngineDescription {
  readonly types: readonly string[];
  readonly engines: readonly { readonly name: string; readonly type: string }[];
  /** The places of one engine that are measured, by the word of Fit. */
  readonly places: readonly DescribedPlaces[];
  /** Bores are measured with their shells in, whose walls are then not measured. */
  readonly shellsIn: boolean;
  readonly stations: readonly string[];
  /** Whole degrees. */
  readonly journalAngles: readonly string[];
  readonly boreAngles: readonly string[];
  /** Spots of each half-shell. */
  readonly walls: number;
  /** How often each spot is read. */
  readonly repeats: number;
  readonly journalGauges: readonly BlankGauge[];
  readonly boreGauges: readonly BlankGauge[];
  readonly wallGauges: readonly BlankGauge[];
  /** Readings are deviations from the size that a gauge is set to. */
  readonly deviations: boolean;
  /** Rows for readings of gauge strips. */
  readonly strips: boolean;
  readonly unit: 'mm' | 'in';
  readonly temperature: 'C' | 'F';
  readonly paper: 'a4' | 'letter';
  readonly gaugeStudy: boolean;
  /** Bolts that the maker has renewed. */
  readonly bolts: readonly DescribedBolts[];
}

/** Bolts of one group of an engine. */
export interface DescribedBolts {
  readonly group: string;
  readonly count: number;
  readonly thread: string | undefined;
  readonly renew: Renewal;
}

/** A bore reading nearer to the parting line sees the step of the halves and their relief; workshop convention, no published source. */
const PARTING_ZONE_DEGREES = 20;

/** Bore angles at which the parting line is read rather than the bore. */
export function anglesNearParting({ boreAngles }: EngineDescription): string[] {
  return boreAngles.filter((angle) => Math.abs((Number(angle) % 180) - 90) < PARTING_ZONE_DEGREES);
}

export function readingHeaders(
  stations: readonly string[],
  angles: readonly string[],
  repeats: number,
): string[] {
  return repeated(
    stations.flatMap((station) => angles.map((angle) => `${station} ${angle}`)),
    repeats,
  );
}

export function wallHeaders(walls: number, repeats: number): string[] {
  return repeated(
    Array.from({ length: walls }, (_, place) => `Wall ${place + 1}`),
    repeats,
  );
}

/** One reading of each gap, and its repeats. */
export function gapHeaders(repeats: number): string[] {
  return repeated(['Gap 1'], repeats);
}

/** Repeats stand beside their spot. */
function repeated(spots: readonly string[], repeats: number): string[] {
  return spots.flatMap((spot) =>
    Array.from({ length: repeats }, (_, place) => (place === 0 ? spot : `${spot} #${place + 1}`)),
  );
}

/** What a cell of a length holds for a text: its number, or with a unit the text; undefined for no length. */
export function lengthCell(text: string): number | string | undefined {
  const scan = scanNumber(text);
  const read = scan && readScanned(scan, true, undefined);
  const isLengthText = scan && (scan.unit === undefined || isLength(scan.unit));
  if (!isLengthText || typeof read !== 'object' || !('value' in read)) return undefined;
  const value = toNumber(read.value);
  if (!Number.isFinite(value) || value < 0) return undefined;
  return scan.unit === undefined ? value : text;
}
