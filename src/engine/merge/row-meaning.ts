/** What a row of a table says, so that rows which two books share are known for one. */
import { nameKey } from '../book/names.js';
import type { TableRow } from '../book/read-row.js';

/**
 * The quantities of a row as one text: the same for two rows that say the same, in whatever unit and letters. Of a refused
 * cell it is what was found there. The user's own words, which the program does not read, say nothing.
 */
export function meaningOf<Row extends TableRow>(row: Row): string {
  return JSON.stringify(row, (key, value: unknown) => {
    if (key === 'row') return undefined;
    if (key === 'bad') return row.bad.map(({ header, found }) => [header, found]);
    return typeof value === 'string' ? nameKey(value) : value;
  });
}
