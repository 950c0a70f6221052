/**
 * Fills cells of a user's sheets. Each cell keeps its look and its protection, so that a form stays a form; all else
 * stays character for character.
 */
import { cellAddress, type OutputCell, type SheetEdit } from '../../engine/workbook-model.js';
import { parseAddress } from './cell-reference.js';
import { obstacleTo } from './obstacles.js';
import { parseXml } from './sax.js';
import { spliceSheet } from './splice-sheet.js';
import { findSheetEntry } from './workbook-edit.js';
import { openWorkbook } from './workbook-package.js';

export interface CellFilling {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** A blank text empties the cell. */
  readonly value: number | string;
  /** The column whose look the cell takes where it has none of its own. */
  readonly like?: number;
}

export interface FilledWorkbook {
  readonly bytes: Uint8Array;
  /** Sheets that could not be filled; the reason is a sentence for the user. */
  readonly refused: readonly { readonly sheet: string; readonly reason: string }[];
}

/** Throws a UserError where the bytes are no readable workbook. */
export async function fillCells(
  bytes: Uint8Array,
  fillings: readonly CellFilling[],
  file: string,
): Promise<FilledWorkbook> {
  const { pkg, sheets } = await openWorkbook(bytes, file);
  const refused: { sheet: string; reason: string }[] = [];
  for (const name of new Set(fillings.map(({ sheet }) => sheet))) {
    const part = findSheetEntry(sheets, name)?.part;
    const own = fillings.filter(({ sheet }) => sheet === name);
    const cells = own.map(({ row, column, value }) => ({
      row,
      column,
      cell: { value, format: 'plain' } satisfies OutputCell,
    }));
    const edit: SheetEdit = { sheet: name, cells, storedValues: [], widths: [] };
    const reason =
      part === undefined ? 'the workbook has no worksheet of this name.' : await obstacleTo(pkg, part, edit);
    if (part === undefined || reason !== undefined) {
      refused.push({ sheet: name, reason: reason ?? '' });
      continue;
    }
    const xml = await pkg.text(part);
    const looks = looksOf(xml);
    const styles = new Map<OutputCell, number>(
      cells.map(({ row, column, cell }, place) => [cell, looks(row, column, own[place]!.like)]),
    );
    await pkg.setText(part, spliceSheet(xml, edit, (cell) => styles.get(cell) ?? 0).xml);
  }
  return { bytes: await pkg.toBytes(), refused };
}

type Looks = (row: number, column: number, like: number | undefined) => number;

/** The index of the style of every cell: its own, else its row's, else its column's (ISO 29500-1, 18.3.1.4). */
function looksOf(xml: string): Looks {
  const cells = new Map<string, number>();
  const rows = new Map<number, number>();
  const columns: { min: number; max: number; style: number }[] = [];
  let row = -1;
  let column = -1;
  parseXml(xml, {
    open(local, attribute) {
      const number = (name: string) => Number(attribute(name) ?? 0);
      if (local === 'col' && attribute('style') !== undefined) {
        columns.push({ min: number('min') - 1, max: number('max') - 1, style: number('style') });
      } else if (local === 'row') {
        row = attribute('r') === undefined ? row + 1 : number('r') - 1;
        column = -1;
        if (['1', 'true'].includes(attribute('customFormat') ?? '')) rows.set(row, number('s'));
      } else if (local === 'c') {
        column = parseAddress(attribute('r') ?? '')?.column ?? column + 1;
        cells.set(cellAddress(row, column), number('s'));
      }
    },
    close() {},
    text() {},
  });
  const own = (at: number, place: number) =>
    cells.get(cellAddress(at, place)) ??
    rows.get(at) ??
    columns.find(({ min, max }) => min <= place && place <= max)?.style;
  return (at, place, like) => own(at, place) ?? (like === undefined ? undefined : own(at, like)) ?? 0;
}
