/**
 * What the column formulas work on: sheets that only the engine sees. Each measured part has a row with
 * its spots at 20 °C, the standard contributions to its uncertainty, and its limits and guards. They are
 * read and corrected once, exactly, and handed over as numbers in the book's unit.
 */
import type { RawCellContent } from 'hyperformula';
import type { SizeClass } from '../../maths/classes.js';
import type { SelectionRow } from '../../maths/tables.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import { kindKey } from '../assess/context.js';
import type { FitResult } from '../assess/fit.js';
import type { PartResult } from '../assess/part.js';
import type { ClassOf } from '../book/book.js';
import type { RawSheets } from '../spreadsheet.js';
import { cellAddress } from '../workbook-model.js';
import { quotedSheet } from './live-terms.js';

/** A sheet under construction: blocks of cells, each with its address. */
class InputSheet {
  readonly rows: RawCellContent[][] = [];

  constructor(readonly name: string) {}

  /** Adds rows below what is there and returns the range's address. */
  add(block: readonly (readonly RawCellContent[])[]): string {
    const first = this.rows.length;
    const width = Math.max(1, ...block.map((row) => row.length));
    for (const row of block)
      this.rows.push(Array.from({ length: width }, (_, column) => row[column] ?? null));
    return `${quotedSheet(this.name)}!${cellAddress(first, 0)}:${cellAddress(this.rows.length - 1, width - 1)}`;
  }
}

export class EngineInputs {
  private readonly spots = new InputSheet('~spots');
  private readonly tables = new InputSheet('~tables');
  private readonly known = new Map<string, string>();
  private readonly unit: LengthUnit;

  constructor(readonly assessment: Assessment) {
    this.unit = assessment.book.setup.lengthUnit;
  }

  sheets(): RawSheets {
    return { [this.spots.name]: this.spots.rows, [this.tables.name]: this.tables.rows };
  }

  /** The spots that were read, one range. */
  spotsOf(part: PartResult): string {
    return this.once(part, 'spots', () =>
      this.spots.add([part.spots.map(({ value }) => this.length(value))]),
    );
  }

  stationsOf(part: PartResult): string {
    return this.once(part, 'stations', () =>
      this.spots.add([part.spots.map(({ station }) => `'${station}`)]),
    );
  }

  anglesOf(part: PartResult): string {
    return this.once(part, 'angles', () => this.spots.add([part.spots.map(({ angle }) => angle ?? null)]));
  }

  contributionsOf(part: PartResult): string {
    return this.once(part, 'contributions', () =>
      this.spots.add([part.contributions.map((grains) => this.length(grains))]),
    );
  }

  /** One number as a cell, so that no literal of the formula language comes between. */
  number(grains: number): string {
    return this.one(`grains ${grains}`, this.length(grains));
  }

  plain(value: number): string {
    return this.one(`plain ${value}`, value);
  }

  text(value: string): string {
    return this.one(`text ${value}`, `'${value}`);
  }

  classesOf(part: PartResult, of: ClassOf): string | undefined {
    const { row } = part;
    const { classes } = this.assessment.context.classesOf(row.engineType, row.fit, of);
    return this.classTable(`${kindKey(row.engineType ?? '', row.fit)} ${of}`, classes);
  }

  candidatesOf(fit: FitResult): string | undefined {
    return this.classTable(`${kindKey(fit.engineType ?? '', fit.fit)} candidates`, fit.candidates);
  }

  selectionOf(fit: FitResult): string | undefined {
    const rows = this.assessment.context.selectionOf(fit.engineType, fit.fit);
    if (rows.length === 0) return undefined;
    return this.block(`${kindKey(fit.engineType ?? '', fit.fit)} selection`, () =>
      rows.map(({ journalMark, boreMark, shellMark }: SelectionRow) => [
        `'${journalMark}`,
        `'${boreMark}`,
        `'${shellMark}`,
      ]),
    );
  }

  private classTable(key: string, classes: readonly SizeClass[]): string | undefined {
    if (classes.length === 0) return undefined;
    return this.block(key, () =>
      classes.map(({ mark, from, to }) => [`'${mark}`, this.length(from), this.length(to)]),
    );
  }

  private block(key: string, rows: () => RawCellContent[][]): string {
    const address = this.known.get(key) ?? this.tables.add(rows());
    this.known.set(key, address);
    return address;
  }

  private one(key: string, value: RawCellContent): string {
    const range = this.block(key, () => [[value]]);
    return range.slice(0, range.lastIndexOf(':'));
  }

  private once({ row }: PartResult, what: string, add: () => string): string {
    const key = `${what} ${row.sheet} ${row.row}`;
    const address = this.known.get(key) ?? add();
    this.known.set(key, address);
    return address;
  }

  private length(grains: number): number {
    return inUnit(grains, this.unit);
  }
}
