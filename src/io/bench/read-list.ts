/**
 * A gauge's log or a hand-made list: with the headers Part, Spot and Value, with these three in each line, or values
 * alone, one a line.
 */
import Papa from 'papaparse';
import type { ListedReading } from '../../engine/bench/place-list.js';
import { headerKey } from '../../engine/book/names.js';
import { UserError } from '../../engine/user-error.js';
import { decodeText } from '../csv/decode-text.js';
import { readBytes } from '../csv/read-bytes.js';

/** In order of preference: a comma may be a decimal sign. */
const DELIMITERS = [';', '\t', ','] as const;
const NEEDED = ['part', 'spot', 'value'] as const;
const KNOWN: readonly string[] = [...NEEDED, 'sheet', 'reason'];
const SPOT = /^(?:wall|[a-z]|front|mid|middle|centre|rear)\s+\d{1,3}°?(?:\s*#\s*\d{1,3})?$/i;

/** Throws a UserError where the file cannot be read or is no text. */
export async function readList(path: string): Promise<ListedReading[]> {
  const text = decodeText(await readBytes(path, path));
  if (text === undefined) {
    throw new UserError(
      `${path}: found bytes that are no text; expected a list of readings as .csv or .txt; save it as text.`,
    );
  }
  return readListText(text.replaceAll(/\r\n?/g, '\n'));
}

export function readListText(text: string): ListedReading[] {
  const byDelimiter = DELIMITERS.map((delimiter) => rowsOf(text, delimiter));
  for (const rows of byDelimiter) {
    const header = rows[0]?.cells.map(headerKey) ?? [];
    if (NEEDED.every((name) => header.includes(name))) return headedList(header, rows.slice(1));
  }
  for (const rows of byDelimiter) {
    const isNamed = rows.length > 0 && rows.every(({ cells }) => cells.length === 3 && SPOT.test(cells[1]!));
    if (isNamed) return headedList(NEEDED, rows);
  }
  return text.split('\n').flatMap((line, place) => {
    const value = line.trim();
    return value === '' ? [] : [{ line: place + 1, sheet: '', part: undefined, spot: '', value, reason: '' }];
  });
}

interface ListRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** Rows with anything in them. A cell is on one line: what a quote opens and nothing closes ends there. */
function rowsOf(text: string, delimiter: string): ListRow[] {
  return text.split('\n').flatMap((line, place) => {
    const [cells = []] = Papa.parse<string[]>(line, { delimiter, newline: '\n', quoteChar: '"' }).data;
    const trimmed = cells.map((cell) => cell.trim());
    return trimmed.every((cell) => cell === '') ? [] : [{ line: place + 1, cells: trimmed }];
  });
}

function headedList(header: readonly string[], rows: readonly ListRow[]): ListedReading[] {
  return rows.map(({ line, cells }) => {
    const cell = (name: string) => (KNOWN.includes(name) ? (cells[header.indexOf(name)] ?? '') : '');
    return {
      line,
      sheet: cell('sheet'),
      part: cell('part'),
      spot: cell('spot'),
      value: cell('value'),
      reason: cell('reason'),
    };
  });
}
