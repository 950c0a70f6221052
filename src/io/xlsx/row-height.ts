/** Heights of rows with wrapped text: not every program makes a row as high as its text when it opens a book. */
import type { OutputCell } from '../../engine/workbook-model.js';

/** The height of a line, and of a row that has one, in points. */
export const LINE_HEIGHT = 15;

/** The height of a row in points; undefined for one line. Widths are in characters, by column. */
export function rowHeight(
  cells: readonly (OutputCell | undefined)[],
  widths: readonly number[],
): number | undefined {
  // A row may have holes, which map leaves as they are.
  const lines = Math.max(1, ...Array.from(cells, (cell, column) => linesOf(cell, widths[column])));
  return lines > 1 ? lines * LINE_HEIGHT : undefined;
}

/** The lines of a cell. Programs round differently when they wrap: bold letters are taken as a tenth wider. */
function linesOf(cell: OutputCell | undefined, width: number | undefined): number {
  if (!cell || width === undefined || (cell.format !== 'header' && cell.format !== 'text')) return 1;
  const room = cell.format === 'header' ? width / 1.1 : width;
  let lines = 0;
  for (const paragraph of String(cell.value).split('\n')) {
    let used = Number.POSITIVE_INFINITY;
    for (const word of paragraph.split(' ')) {
      if (used + 1 + word.length <= room) used += 1 + word.length;
      else {
        lines += Math.max(1, Math.ceil(word.length / room));
        used = word.length % room || room;
      }
    }
  }
  return lines;
}
