/** A name as the user typed it: a position typed as the number 2 is written as a number again. */
import type { Book, PartRow } from './book.js';
import { nameKey } from './names.js';
import type { Table } from './table.js';

export type TypedName = string | number;

/** @param header a column of names of the part's own sheet */
export function typedName(
  { tables }: Book,
  { sheet, row }: PartRow,
  header: 'Part' | 'Engine' | 'Fit' | 'Position',
  name: string,
): TypedName {
  const content = nameCellOf(tables.get(sheet), row, header);
  return content?.kind === 'number' && nameKey(String(content.value)) === nameKey(name)
    ? content.value
    : name;
}

function nameCellOf(table: Table | undefined, row: number, header: string) {
  const known = table?.columns.get(header);
  return known && table!.sheet.rows[row]?.[known.column]?.content;
}
