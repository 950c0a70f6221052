/** One part of a workbook with all that its verdicts need, so that a reading is judged without reading a whole stock. */
import type { FitResult } from '../assess/fit.js';
import type { Book, PartSheet } from '../book/book.js';
import type { SheetName } from '../book/input-sheets.js';
import { nameKey } from '../book/names.js';
import { headerRowOf } from '../book/table.js';
import type { SheetModel, WorkbookModel } from '../workbook-model.js';

interface Place {
  readonly sheet: PartSheet;
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
  const own = fits.filter(({ parts }) =>
    Object.values(parts).some((part) => part.row.sheet === sheet && part.row.row === row),
  );
  const rows = new Map<SheetName, Set<number>>([[sheet, new Set([row])]]);
  const take = (name: SheetName, number: number) => {
    rows.set(name, (rows.get(name) ?? new Set()).add(number));
  };
  const all = [...book.journals, ...book.rods, ...book.cases, ...book.shells];
  for (const { parts, source } of own) {
    if (source) take('Fits', source.row);
    for (const { row: part } of Object.values(parts)) {
      take(part.sheet, part.row);
      // A name that stands twice is a fault of both rows.
      for (const other of all) {
        if (other.sheet === part.sheet && nameKey(other.name) === nameKey(part.name))
          take(other.sheet, other.row);
      }
    }
  }
  const sheets = [...book.tables].flatMap(([name, table]): SheetModel[] => {
    const current = model.sheets.find((known) => known.name === table.sheet.name)!;
    if (!['Journals', 'Rods', 'Cases', 'Shells', 'Fits'].includes(name)) return [current];
    const kept: SheetModel['rows'] = [];
    for (const number of [headerRowOf(current), ...(rows.get(name) ?? [])]) {
      const cells = current.rows[number];
      if (cells) kept[number] = cells;
    }
    return [{ name: current.name, rows: kept }];
  });
  return { file: model.file, sheets };
}
