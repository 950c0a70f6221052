/** One part of a workbook with all that its verdicts need, so that a reading is judged without reading a whole stock. */
import type { FitResult } from '../assess/fit.js';
import { partsOf } from '../assess/placed-fit.js';
import type { Book } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { FITS } from '../input-sheets/fits.js';
import { isPartSheet } from '../input-sheets/index.js';
import type { SheetModel, WorkbookModel } from '../workbook-model.js';

interface Place {
  readonly sheet: string;
  readonly row: number;
}

/**
 * The tables whole; of the part sheets and Fits only the rows that the part's fits concern, each in its own place.
 * @param fits of the whole book, which say what belongs together
 */
export function modelAround(
  model: WorkbookModel,
  book: Book,
  fits: readonly FitResult[],
  { sheet, row }: Place,
): WorkbookModel {
  const own = fits.filter((fit) =>
    partsOf(fit).some((part) => part.row.sheet === sheet && part.row.row === row),
  );
  const rows = new Map<string, Set<number>>([[sheet, new Set([row])]]);
  const take = (name: string, number: number) => {
    rows.set(name, (rows.get(name) ?? new Set()).add(number));
  };
  for (const fit of own) {
    if (fit.source) take(FITS.name, fit.source.row);
    for (const { row: part } of partsOf(fit)) {
      take(part.sheet, part.row);
      // A name that stands twice is a fault of both rows.
      for (const other of book.parts.of(part.sheet)) {
        if (nameKey(other.name) === nameKey(part.name)) take(other.sheet, other.row);
      }
    }
  }
  const sheets = [...book.tables].flatMap(([name, table]): SheetModel[] => {
    const current = model.sheets.find((known) => known.name === table.sheet.name)!;
    if (name !== FITS.name && !isPartSheet(table.record)) return [current];
    const kept: SheetModel['rows'] = [];
    for (const number of [table.headerRow, ...(rows.get(name) ?? [])]) {
      const cells = current.rows[number];
      if (cells) kept[number] = cells;
    }
    // Each of these rows holds a part, whatever stood between them.
    return [{ name: current.name, rows: kept, leftOut: [] }];
  });
  return { file: model.file, sheets };
}
