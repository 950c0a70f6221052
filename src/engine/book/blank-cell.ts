/** When a cell counts as blank. */
import type { Cell } from '../workbook-model.js';

/** Blank is "not measured": an empty cell or a text of spaces. */
export function isBlank(cell: Cell | undefined): boolean {
  if (!cell?.content) return !cell?.formula;
  return cell.content.kind === 'text' && cell.content.value.trim() === '';
}
