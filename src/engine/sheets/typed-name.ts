/** A name as the user typed it: a position typed as the number 2 is written as a number again. */
import type { Book, PartRow } from '../book/book.js';
import { nameKey } from '../book/names.js';

export type TypedName = string | number;

/** @param header a column of names of the part's own sheet */
export function typedName(
  { tables }: Book,
  { sheet, row }: PartRow,
  header: 'Part' | 'Engine' | 'Fit' | 'Position',
  name: string,
): TypedName {
  const content = tables.get(sheet)?.row(row).cell(header)?.cell.content;
  return content?.kind === 'number' && nameKey(String(content.value)) === nameKey(name)
    ? content.value
    : name;
}
