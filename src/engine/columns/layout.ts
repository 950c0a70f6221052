/**
 * Where results stand: the columns to the right of the user's in each sheet, and the sheets behind the
 * scenes in which the engine finds the spots at 20 °C.
 */

import type { Grain } from '../../maths/grain.js';
import { isLengthUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { FitResult } from '../assess/fit.js';
import type { PartResult } from '../assess/part-result.js';
import type { LimitsRow } from '../book/book.js';
import { findSheet } from '../book/find-tables.js';
import { freeName, isMadeByProgram } from '../book/own-columns.js';
import { apartName } from '../book/placement-words.js';
import { FITS } from '../input-sheets/fits.js';
import { columnsOf, namedBy } from '../input-sheets/input-sheet.js';
import { LIMITS } from '../input-sheets/limits.js';
import { isOnFits, type KindOfFit } from '../kinds/kind-of-fit.js';
import { cellAddress, columnLetters } from '../workbook-model.js';
import { fixedCell, grains, quotedSheet, sheetCell } from './live-terms.js';

/** Text in a formula is no longer in any program. */
const LONGEST_TEXT = 255;

export class Layout {
  /** Whether the program makes the sheet Fits itself. */
  readonly makesFits: boolean;

  private readonly sheetNames = new Map<string, string>();
  private readonly places = new Map<string, readonly number[]>();
  private readonly byHeader = new Map<string, ReadonlyMap<string, number>>();
  private readonly fitRows: ReadonlyMap<FitResult, number>;
  /** The last row that has a fit, by the sheet that it stands on. */
  private readonly lastRows = new Map<string, number>();

  /** @param headersOf the headers of the columns that a sheet gets, by its name in the records */
  constructor(
    readonly assessment: Assessment,
    private readonly headersOf: (sheet: string) => readonly string[],
  ) {
    this.makesFits = assessment.book.fits === undefined;
    const onFits = assessment.fits.filter(({ kind }) => isOnFits(kind));
    this.fitRows = new Map(onFits.map((fit, place) => [fit, place + 1]));
    for (const fit of assessment.fits) {
      const { resultsOn = FITS.name } = fit.kind;
      this.lastRows.set(resultsOn, Math.max(this.lastRows.get(resultsOn) ?? 0, this.fitRow(fit)));
    }
  }

  /** The sheet that results stand on: the user's, or one that the program makes. */
  sheetName(name: string): string {
    const known = this.sheetNames.get(name) ?? this.findSheetName(name);
    this.sheetNames.set(name, known);
    return known;
  }

  private findSheetName(name: string): string {
    if (this.isApart(name)) return freeName(apartName(name), this.assessment.book.model);
    const sheet = findSheet(this.assessment.book.model, name);
    if (name !== FITS.name || !this.makesFits || !sheet) return sheet?.name ?? name;
    return isMadeByProgram(sheet) ? sheet.name : `${name} (oilgap)`;
  }

  /** Whether the results of a sheet of the user's stand on one of the program's own, row for row. */
  isApart(name: string): boolean {
    if (name === FITS.name && this.makesFits) return false;
    const place = this.assessment.book.places.get(name);
    return place !== undefined && place.columns === undefined;
  }

  /** The columns of the results of a sheet, in the order of their list. */
  columns(name: string): readonly number[] {
    const known = this.places.get(name) ?? this.findColumns(name);
    this.places.set(name, known);
    return known;
  }

  private findColumns(name: string): readonly number[] {
    const from = (first: number) => this.headersOf(name).map((_, at) => first + at);
    if (name === FITS.name && this.makesFits) return from(columnsOf(FITS).length);
    const { tables, places } = this.assessment.book;
    const table = tables.get(name)!;
    const place = places.get(name);
    // A sheet that the program has put together holds nothing beside its table.
    if (!place) return from(table.width);
    return place.columns ?? from(namedBy(table.record).length);
  }

  column(name: string, header: string): number {
    // Asked for by every live formula, and each list of headers is made anew.
    const known = this.byHeader.get(name) ?? this.findByHeader(name);
    this.byHeader.set(name, known);
    return known.get(header)!;
  }

  private findByHeader(name: string): ReadonlyMap<string, number> {
    const columns = this.columns(name);
    return new Map(this.headersOf(name).map((header, at) => [header, columns[at]!]));
  }

  /** The row of a fit on its sheet. */
  fitRow(fit: FitResult): number {
    if (!isOnFits(fit.kind)) return fit.parts[fit.kind.leader]!.row.row;
    return this.makesFits ? this.fitRows.get(fit)! : fit.source!.row;
  }

  /** A column of the sheet of a kind's fits, from its first row to the last that has one, as a reference from any sheet. */
  fitRange({ resultsOn = FITS.name }: KindOfFit, column: number): string {
    const letters = columnLetters(column);
    const last = this.lastRows.get(resultsOn) ?? 0;
    return `${quotedSheet(this.sheetName(resultsOn))}!${letters}2:${letters}${last + 1}`;
  }

  /** A result of a part, as a reference from any sheet that stays where rows are sorted. */
  partCell({ row }: PartResult, header: string): string {
    return fixedCell(this.sheetName(row.sheet), row.row, this.column(row.sheet, header));
  }

  /** A result in the same row of the same sheet. */
  ownCell(name: string, row: number, header: string): string {
    return cellAddress(row, this.column(name, header));
  }

  /** A cell that the user fills, as a reference from the results of its row. */
  inputCell(name: string, row: number, column: number): string {
    if (!this.isApart(name)) return cellAddress(row, column);
    return sheetCell(this.assessment.book.tables.get(name)!.sheet.name, row, column);
  }

  /**
   * Whether the row of a part still holds that part, as a condition: a table over rows may have been sorted.
   * @param isOwnRow whether the formula stands in the row of the part itself
   */
  isPart({ row }: PartResult, isOwnRow: boolean): string | undefined {
    return this.isNamed(row.sheet, row.row, 'Part', isOwnRow);
  }

  /** Whether the parts of a fit stand where they stood at this run, and a row of the user's is still for its place. */
  isFit({ parts, source }: FitResult): (string | undefined)[] {
    const ofParts = Object.values(parts).map((part) => part && this.isPart(part, false));
    if (this.makesFits) return ofParts;
    const { engine, fit, position } = FITS.columns;
    const place = [engine, fit, position];
    return [...ofParts, ...place.map(({ header }) => this.isNamed(FITS.name, source!.row, header, true))];
  }

  /** Whether a row that is known by its place is still of that place. */
  isPlace({ row }: PartResult): (string | undefined)[] {
    const { engine, fit, position } = FITS.columns;
    return [engine, fit, position].map(({ header }) => this.isNamed(row.sheet, row.row, header, true));
  }

  /** Whether a cell of the user's still holds the name that it held at this run; undefined where it holds none. */
  isNamed(name: string, row: number, header: string, isOwnRow: boolean): string | undefined {
    const table = this.assessment.book.tables.get(name);
    const column = table?.columns.get(header)?.column;
    const content = column === undefined ? undefined : table!.sheet.rows[row]?.[column]?.content;
    if (!content || (content.kind !== 'text' && content.kind !== 'number')) return undefined;
    const cell = isOwnRow ? this.inputCell(name, row, column!) : fixedCell(table!.sheet.name, row, column!);
    if (content.kind === 'number') return `${cell}=${content.value}`;
    return content.value.length > LONGEST_TEXT
      ? undefined
      : `${cell}="${content.value.replaceAll('"', '""')}"`;
  }

  /** A limit in grains: its cell of Limits where that holds a plain number, else the number itself. */
  limitTerm(limits: LimitsRow, header: string, value: Grain): string {
    const { book } = this.assessment;
    const table = book.tables.get(LIMITS.name)!;
    const known = table.columns.get(header);
    if (!known || table.sheet.rows[limits.row]?.[known.column]?.content?.kind !== 'number')
      return String(value);
    const unit = known.unit !== undefined && isLengthUnit(known.unit) ? known.unit : book.setup.lengthUnit;
    return grains(fixedCell(table.sheet.name, limits.row, known.column), unit);
  }
}
