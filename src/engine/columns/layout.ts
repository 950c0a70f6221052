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
import { isMadeByProgram } from '../book/own-columns.js';
import { FITS } from '../input-sheets/fits.js';
import { columnsOf } from '../input-sheets/input-sheet.js';
import { LIMITS } from '../input-sheets/limits.js';
import { cellAddress, columnLetters } from '../workbook-model.js';
import { grains, quotedSheet, sheetCell } from './live-terms.js';

export class Layout {
  /** Whether the program makes the sheet Fits itself. */
  readonly makesFits: boolean;

  private readonly sheetNames = new Map<string, string>();
  private readonly firsts = new Map<string, number>();
  private readonly fitRows: ReadonlyMap<FitResult, number>;
  private readonly lastFitRow: number;

  /** @param headersOf the headers of the columns that a sheet gets, by its name in the records */
  constructor(
    readonly assessment: Assessment,
    private readonly headersOf: (sheet: string) => readonly string[],
  ) {
    this.makesFits = assessment.book.fits === undefined;
    this.fitRows = new Map(assessment.fits.map((fit, place) => [fit, place + 1]));
    this.lastFitRow = assessment.fits.reduce((last, fit) => Math.max(last, this.fitRow(fit)), 0);
  }

  /** The user's sheet, or for a Fits sheet of the program's the one that it makes. */
  sheetName(name: string): string {
    const known = this.sheetNames.get(name) ?? this.findstring(name);
    this.sheetNames.set(name, known);
    return known;
  }

  private findstring(name: string): string {
    const sheet = findSheet(this.assessment.book.model, name);
    if (name !== FITS.name || !this.makesFits || !sheet) return sheet?.name ?? name;
    return isMadeByProgram(sheet) ? sheet.name : `${name} (oilgap)`;
  }

  /** The first result column of a sheet. */
  first(name: string): number {
    const known = this.firsts.get(name) ?? this.findFirst(name);
    this.firsts.set(name, known);
    return known;
  }

  private findFirst(name: string): number {
    if (name === FITS.name && this.makesFits) return columnsOf(FITS).length;
    const { tables, own } = this.assessment.book;
    return own.get(name)?.first ?? tables.get(name)!.width;
  }

  column(name: string, header: string): number {
    return this.first(name) + this.headersOf(name).indexOf(header);
  }

  /** The row of a fit on its sheet. */
  fitRow(fit: FitResult): number {
    return this.makesFits ? this.fitRows.get(fit)! : fit.source!.row;
  }

  /** A column of Fits from its first row to the last that has a fit, as a reference from any sheet. */
  fitRange(column: number): string {
    const letters = columnLetters(column);
    return `${quotedSheet(this.sheetName(FITS.name))}!${letters}2:${letters}${this.lastFitRow + 1}`;
  }

  /** A result of a part, as a reference from any sheet. */
  partCell({ row }: PartResult, header: string): string {
    return sheetCell(this.sheetName(row.sheet), row.row, this.column(row.sheet, header));
  }

  /** A result in the same row of the same sheet. */
  ownCell(name: string, row: number, header: string): string {
    return cellAddress(row, this.column(name, header));
  }

  /** A limit in grains: its cell of Limits where that holds a plain number, else the number itself. */
  limitTerm(limits: LimitsRow, header: string, value: Grain): string {
    const { book } = this.assessment;
    const table = book.tables.get(LIMITS.name)!;
    const known = table.columns.get(header);
    if (!known || table.sheet.rows[limits.row]?.[known.column]?.content?.kind !== 'number')
      return String(value);
    const unit = known.unit !== undefined && isLengthUnit(known.unit) ? known.unit : book.setup.lengthUnit;
    return grains(sheetCell(table.sheet.name, limits.row, known.column), unit);
  }
}
