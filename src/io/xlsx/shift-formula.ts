/**
 * Spells a shared formula out for another cell: its relative references move by the offset between the two
 * (ISO 29500-1, 18.3.1.40). Strings, sheet names, table columns, function names and defined names stay.
 */
import { columnLetters } from '../../engine/workbook-model.js';
import { columnIndex, MAX_COLUMNS, MAX_ROWS } from './cell-reference.js';

const COLUMN = '(\\$?)([A-Za-z]{1,3})';
const ROW = '(\\$?)(\\d{1,7})';
/** What may not follow a reference: it would make it part of a name, a function or a sheet's name. */
const END = '(?![\\p{L}\\p{N}_.(!$\\\\])';

/** In this order: what comes first at a place is what stands there. */
const TOKENS = new RegExp(
  [
    '"(?:[^"]|"")*"',
    "'(?:[^']|'')*'",
    '\\[(?:[^[\\]]|\\[[^\\]]*\\])*\\]',
    '#[A-Z]+(?:/[A-Z0]+)?[!?]?',
    `(?<columns>${COLUMN}:${COLUMN}${END})`,
    `(?<rows>${ROW}:${ROW}${END})`,
    `(?<cell>${COLUMN}${ROW}${END})`,
    // A name, function or sheet name; a backslash may start a name.
    '[\\p{L}_\\\\][\\p{L}\\p{N}_.?\\\\]*',
    '(?:\\d+\\.?\\d*|\\.\\d+)(?:[Ee][+-]?\\d+)?',
  ].join('|'),
  'gu',
);

/** The formula moved by rows and columns; a reference that leaves the sheet becomes `#REF!`. */
export function shiftFormula(formula: string, rows: number, columns: number): string {
  return formula.replace(TOKENS, (token, ...rest) => {
    const groups = rest.at(-1) as { columns?: string; rows?: string; cell?: string };
    const shifted = (text: string): string | undefined => {
      const [, c$ = '', c = '', r$ = '', r = ''] = /^(\$?)([A-Za-z]*)(\$?)(\d*)$/.exec(text)!;
      // Of `$1` alone, the dollar is the row's.
      if (c === '') return shiftedRow(c$ || r$, r, rows);
      const column = shiftedColumn(c$, c, columns);
      const row = r === '' ? '' : shiftedRow(r$, r, rows);
      return column === undefined || row === undefined ? undefined : column + row;
    };
    if (groups.cell !== undefined) {
      return isOnSheet(token) ? (shifted(token) ?? '#REF!') : token;
    }
    if (groups.columns === undefined && groups.rows === undefined) return token;
    const ends = token.split(':');
    if (!ends.every(isOnSheet)) return token;
    const moved = ends.map(shifted);
    return moved.includes(undefined) ? '#REF!' : moved.join(':');
  });
}

/** `ABC9999999` or `ZZZ1` lie outside of every sheet: they are names. */
function isOnSheet(reference: string): boolean {
  const column = /[A-Za-z]+/.exec(reference)?.[0];
  const row = /\d+/.exec(reference)?.[0];
  return (
    (column === undefined || columnIndex(column) < MAX_COLUMNS) &&
    (row === undefined || (Number(row) >= 1 && Number(row) <= MAX_ROWS))
  );
}

function shiftedRow(dollar: string, row: string, by: number): string | undefined {
  if (dollar) return dollar + row;
  const moved = Number(row) + by;
  return moved >= 1 && moved <= MAX_ROWS ? String(moved) : undefined;
}

function shiftedColumn(dollar: string, letters: string, by: number): string | undefined {
  if (dollar) return dollar + letters;
  const moved = columnIndex(letters) + by;
  return moved >= 0 && moved < MAX_COLUMNS ? columnLetters(moved) : undefined;
}
