/** What a header of a user's sheet stands for, by the record of the sheet, and which row holds the headers. */
import { isTorqueUnit } from '../../maths/torque.js';
import { columnsOf, type InputColumn, type InputSheet } from '../input-sheets/input-sheet.js';
import type { TextUnit } from '../input-sheets/quantities.js';
import type { SheetModel } from '../workbook-model.js';
import { isBlank } from './blank-cell.js';
import { headerKey, nameText } from './names.js';
import { looksLikeReading, partsOfHeader, readingOf, splitHeader } from './reading-headers.js';

/** Title rows may stand above the headers, but not more than leave them within these rows. */
const FIRST_ROWS = 5;

export interface ReadHeader {
  /** Columns of the record that the header names; two where each of its names is one. */
  readonly inputs: readonly InputColumn[];
  readonly reading: (NonNullable<ReturnType<typeof readingOf>> & { readonly header: string }) | undefined;
  readonly unit: TextUnit | undefined;
  /** Whether it is the user's own, but may have been meant for a reading. */
  readonly isNearReading: boolean;
}

export class HeaderReader {
  private readonly known: ReadonlyMap<string, InputColumn>;

  constructor(private readonly record: InputSheet) {
    this.known = new Map(columnsOf(record).map((column) => [headerKey(column.header), column]));
  }

  /** The whole text is a name, or each of the names that it is split into: `Part / Teil`. */
  read(text: string): ReadHeader {
    const whole = this.readNames([splitHeader(text)]);
    return isKnown(whole) ? whole : this.readNames(partsOfHeader(text));
  }

  private readNames(names: readonly { name: string; unit: TextUnit | undefined }[]): ReadHeader {
    const { readings } = this.record;
    const inputs = names.flatMap(({ name }) => this.known.get(headerKey(name)) ?? []);
    // A cell is one reading: of two names that are spots, the first counts.
    const [reading] = readings
      ? names.flatMap(({ name, unit }) => {
          // A torque or an angle is no reading of a length, whatever it is called.
          const spot = unit === '°' || isTorqueUnit(unit) ? undefined : readingOf(name, readings);
          return spot ? [{ ...spot, header: name.trim() }] : [];
        })
      : [];
    return {
      inputs: [...new Set(inputs)],
      reading: inputs.length > 0 ? undefined : reading,
      unit: names.find(({ unit }) => unit !== undefined)?.unit,
      isNearReading: readings !== undefined && names.some(({ name }) => looksLikeReading(name, readings)),
    };
  }
}

export function isKnown({ inputs, reading }: ReadHeader): boolean {
  return inputs.length > 0 || reading !== undefined;
}

export interface HeaderRow {
  /** From 0. Where no row holds all needed headers, the one that holds most of them. */
  readonly row: number;
  /** Needed headers that the row does not hold. */
  readonly missing: readonly string[];
  /** Whether the row holds none of the needed headers, and is only the first that holds anything. */
  readonly isGuess: boolean;
}

/**
 * The first of the first rows that holds every needed header; what stands above it is the user's.
 * @param record of a sheet that no record knows undefined: its headers are in the first row that holds anything
 */
export function findHeaderRow(sheet: SheetModel, record: InputSheet | undefined): HeaderRow {
  const filled = sheet.rows.findIndex((cells) => cells?.some((cell) => !isBlank(cell)));
  const needed = record ? columnsOf(record).filter((column) => column.needed) : [];
  const first = Math.max(filled, 0);
  const headers = needed.map(({ header }) => header);
  if (!record || needed.length === 0) return { row: first, missing: headers, isGuess: needed.length > 0 };
  const reader = new HeaderReader(record);
  let best: HeaderRow = { row: first, missing: headers, isGuess: true };
  for (let row = first; row < FIRST_ROWS; row++) {
    const inputs = headersOf(sheet, row).flatMap((text) => (text ? reader.read(text).inputs : []));
    const missing = needed.filter((column) => !inputs.includes(column)).map(({ header }) => header);
    if (missing.length < best.missing.length) best = { row, missing, isGuess: false };
    if (missing.length === 0) break;
  }
  return best;
}

export function headersOf(sheet: SheetModel, headerRow: number): (string | undefined)[] {
  const headers: (string | undefined)[] = [];
  sheet.rows[headerRow]?.forEach((cell, column) => {
    const text = cell?.content && nameText(cell.content);
    if (text) headers[column] = text;
  });
  return headers;
}
