/** What the core computed for every result cell: the other side of the columns that the engine evaluates. */
import type { Assessment } from '../../../src/engine/assess/assess.js';
import type { FitResult } from '../../../src/engine/assess/fit.js';
import type { PartResult } from '../../../src/engine/assess/part-result.js';
import { layoutOf } from '../../../src/engine/columns/result-headers.js';
import type { Grain } from '../../../src/maths/grain.js';
import { inUnit } from '../../../src/maths/units.js';

export interface CoreValue {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly header: string;
  /** Lengths in the book's unit, exactly on the grain; undefined is a blank cell. */
  readonly value: string | number | undefined;
}

type Values = Readonly<Record<string, string | number | undefined>>;

export function coreValues(assessment: Assessment): CoreValue[] {
  const { parts, fits, book } = assessment;
  const layout = layoutOf(assessment);
  const unit = book.setup.lengthUnit;
  const length = (grain: Grain | undefined) => (grain === undefined ? undefined : inUnit(grain, unit));
  const text = (words: string | undefined) => words || undefined;
  const placed = (sheet: string, row: number, values: Values): CoreValue[] =>
    Object.entries(values).map(([header, value]) => ({
      sheet,
      row,
      column: layout.column(sheet, header),
      header,
      value,
    }));
  const ofPart = ({ row, form, classification, sizeU, status, why }: PartResult): CoreValue[] => {
    const isShell = row.sheet === 'Shells';
    return placed(row.sheet, row.row, {
      [isShell ? 'Wall' : 'Size']: length(form?.size),
      Largest: length(form?.largest),
      Smallest: length(form?.smallest),
      ...(!isShell && { Taper: length(form?.taper), 'Out of round': length(form?.outOfRound) }),
      Class: text(classification?.text),
      [isShell ? 'Wall U' : 'Size U']: length(sizeU),
      Status: status,
      Why: text(why.join('; ')),
    });
  };
  const ofFit = (fit: FitResult): CoreValue[] =>
    placed('Fits', layout.fitRow(fit), {
      Clearance: length(fit.clearance?.clearance),
      Tightest: length(fit.clearance?.tightest),
      Loosest: length(fit.clearance?.loosest),
      'Clearance U': length(fit.clearanceU),
      'Chance in range': fit.chance,
      'Shell by marks': fit.shellByMarks,
      'Shell by size': fit.shellBySize,
      Status: fit.status,
      Why: text(fit.why.join('; ')),
    });
  return [...parts.all().flatMap(ofPart), ...fits.flatMap(ofFit)];
}

type Value = string | number | boolean | undefined | null;

/** Blank and no value are one. Texts and lengths are the same or not; chances are of doubles that were rounded on other ways. */
export function isSameValue(header: string, found: Value, expected: Value): boolean {
  if (typeof found === 'number' && typeof expected === 'number') {
    return header === 'Chance in range' || header === ''
      ? Math.abs(found - expected) < 1e-9
      : found === expected;
  }
  return (found ?? '') === (expected ?? '');
}
