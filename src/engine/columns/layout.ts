/**
 * Where results stand: the columns to the right of the user's in each sheet, and the sheets behind the
 * scenes in which the engine finds the spots at 20 °C.
 */

import type { Grain } from '../../maths/grain.js';
import { isLengthUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { FitResult } from '../assess/fit.js';
import type { PartResult } from '../assess/part.js';
import type { LimitsRow } from '../book/book.js';
import type { SheetName } from '../book/input-sheets.js';
import { INPUT_SHEETS } from '../book/input-sheets.js';
import { findSheet } from '../book/open-book.js';
import { isMadeByProgram, ownColumnsOf } from '../book/own-columns.js';
import { cellAddress, columnLetters } from '../workbook-model.js';
import { grains, quotedSheet, sheetCell } from './live-terms.js';
import { RESULT_HEADERS } from './result-headers.js';

export class Layout {
  /** Whether the program makes the sheet Fits itself. */
  readonly makesFits: boolean;

  private readonly sheetNames = new Map<SheetName, string>();
  private readonly firsts = new Map<SheetName, number>();
  private readonly fitRows: ReadonlyMap<FitResult, number>;
  private readonly lastFitRow: number;

  constructor(readonly assessment: Assessment) {
    this.makesFits = assessment.book.fits === undefined;
    this.fitRows = new Map(assessment.fits.map((fit, place) => [fit, place + 1]));
    this.lastFitRow = assessment.fits.reduce((last, fit) => Math.max(last, this.fitRow(fit)), 0);
  }

  /** The user's sheet, or for a Fits sheet of the program's the one that it makes. */
  sheetName(name: SheetName): string {
    const known = this.sheetNames.get(name) ?? this.findSheetName(name);
    this.sheetNames.set(name, known);
    return known;
  }

  private findSheetName(name: SheetName): string {
    const sheet = findSheet(this.assessment.book.model, name);
    if (name !== 'Fits' || !this.makesFits || !sheet) return sheet?.name ?? name;
    return isMadeByProgram(sheet) ? sheet.name : `${name} (oilgap)`;
  }

  /** The first result column of a sheet. */
  first(name: SheetName): number {
    const known = this.firsts.get(name) ?? this.findFirst(name);
    this.firsts.set(name, known);
    return known;
  }

  private findFirst(name: SheetName): number {
    if (name === 'Fits' && this.makesFits) return INPUT_SHEETS.Fits.columns.length;
    const table = this.assessment.book.tables.get(name)!;
    return ownColumnsOf(name, table.sheet)?.first ?? table.width;
  }

  column(name: SheetName, header: string): number {
    return this.first(name) + RESULT_HEADERS[name]!.indexOf(header);
  }

  /** The row of a fit on its sheet. */
  fitRow(fit: FitResult): number {
    return this.makesFits ? this.fitRows.get(fit)! : fit.source!.row;
  }

  /** A column of Fits from its first row to the last that has a fit, as a reference from any sheet. */
  fitRange(column: number): string {
    const letters = columnLetters(column);
    return `${quotedSheet(this.sheetName('Fits'))}!${letters}2:${letters}${this.lastFitRow + 1}`;
  }

  /** A result of a part, as a reference from any sheet. */
  partCell({ row }: PartResult, header: string): string {
    return sheetCell(this.sheetName(row.sheet), row.row, this.column(row.sheet, header));
  }

  /** A result in the same row of the same sheet. */
  ownCell(name: SheetName, row: number, header: string): string {
    return cellAddress(row, this.column(name, header));
  }

  /** A limit in grains: its cell of Limits where that holds a plain number, else the number itself. */
  limitTerm(limits: LimitsRow, header: string, value: Grain): string {
    const { book } = this.assessment;
    const table = book.tables.get('Limits')!;
    const known = table.columns.get(header);
    if (!known || table.sheet.rows[limits.row]?.[known.column]?.content?.kind !== 'number')
      return String(value);
    const unit = known.unit !== undefined && isLengthUnit(known.unit) ? known.unit : book.setup.lengthUnit;
    return grains(sheetCell(table.sheet.name, limits.row, known.column), unit);
  }
}
