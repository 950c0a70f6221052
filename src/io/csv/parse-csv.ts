/** The cells of one .csv text. The delimiter is never guessed from the data: decimal commas would split columns. */
import Papa from 'papaparse';
import { headerKey } from '../../engine/book/names.js';
import { Table } from '../../engine/book/table.js';
import { inputSheets } from '../../engine/input-sheets/index.js';
import { UserError } from '../../engine/user-error.js';
import { type Cell, cellAddress, type SheetModel } from '../../engine/workbook-model.js';
import { LIMITS } from '../gate/limits.js';

/** In order of preference where the header line leaves a choice. */
const DELIMITERS = [';', '\t', ','] as const;

/** A first line that names the delimiter for spreadsheet programs. They do not show it, nor count it as a row. */
const SEPARATOR_LINE = /^"?sep=([^\n]*?)"?(?:\n|$)/i;

/** As much of the text as a header line can be expected to take. */
const HEADER_REACH = 65_536;

/**
 * The sheet of that name. Every cell is a text as it stands, a formula-like one too; a blank cell is absent.
 *
 * Throws a UserError where a quoted cell is not closed or goes on behind its closing quote.
 *
 * @param file what messages call the text
 */
export function parseCsv(source: string, name: string, file: string): SheetModel {
  let text = source.replaceAll(/\r\n?/g, '\n');
  const separator = SEPARATOR_LINE.exec(text);
  if (separator) text = text.slice(separator[0].length);
  const delimiter = namedDelimiter(separator?.[1]) ?? headerDelimiter(text, name);
  refuseManyLines(text, file);
  const { data, errors } = parse(text, delimiter);
  const slip = errors.find(({ type }) => type === 'Quotes');
  if (slip) {
    throw new UserError(
      `${file}: found ${slip.code === 'MissingQuotes' ? 'an opening quote without a closing one' : 'a cell that goes on behind its closing quote'} ` +
        `in row ${(slip.row ?? 0) + 1}; expected a cell between two quotes, and each quote inside it doubled; correct that cell.`,
    );
  }
  refuseBeyondGrid(data, file);
  return { name, rows: textRows(data) };
}

function parse(text: string, delimiter: string, preview = 0) {
  return Papa.parse<string[]>(text, { delimiter, newline: '\n', quoteChar: '"', preview });
}

/** Without a quote, a line is a row: too many are refused before they are taken apart. */
function refuseManyLines(text: string, file: string): void {
  if (text.length <= LIMITS.rows || text.includes('"')) return;
  let lines = 1;
  for (let at = text.indexOf('\n'); at >= 0 && at < text.length - 1; at = text.indexOf('\n', at + 1)) lines++;
  if (lines > LIMITS.rows) throw excess(`${lines} rows`, LIMITS.rows, 'rows', file);
}

function excess(found: string, limit: number, unit: string, file: string): UserError {
  return new UserError(
    `${file}: found ${found}; expected at most ${limit} ${unit}, as many as a sheet has; split the file or take out what is not needed.`,
  );
}

/** The grid of a spreadsheet program, which the rows are to be written into. */
function refuseBeyondGrid(data: readonly (readonly string[])[], file: string): void {
  if (data.length > LIMITS.rows) throw excess(`${data.length} rows`, LIMITS.rows, 'rows', file);
  data.forEach((values, row) => {
    if (values.length > LIMITS.columns)
      throw excess(`${values.length} columns in row ${row + 1}`, LIMITS.columns, 'columns', file);
    const column = values.findIndex(({ length }) => length > LIMITS.cellCharacters);
    if (column < 0) return;
    throw new UserError(
      `${file}: found ${values[column]!.length} characters in cell ${cellAddress(row, column)}; expected at most ${LIMITS.cellCharacters}, as many as a cell holds; shorten the text, or look for a quote that is not closed.`,
    );
  });
}

/** One sign that is neither a letter, a figure nor a quote; else the header line has to decide. */
function namedDelimiter(named: string | undefined): string | undefined {
  return named !== undefined && /^(?:\t|[^\p{L}\p{N}\s"\ufeff])$/u.test(named) ? named : undefined;
}

/** Lines that a title may take, the headers with them. */
const FIRST_LINES = 5;

/**
 * The delimiter that splits the first line into the most columns known for the sheet, then into the most. Where that is no
 * line of headers, a title stands above them, and the next lines decide.
 */
function headerDelimiter(text: string, name: string): string {
  const beginning = text.slice(firstFilledLine(text)).slice(0, HEADER_REACH);
  const first = bestSplit(beginning, name, 1);
  if (first.isWhole) return first.delimiter;
  const below = bestSplit(beginning, name, FIRST_LINES);
  return below.isWhole ? below.delimiter : first.delimiter;
}

interface Split {
  readonly delimiter: string;
  readonly known: number;
  readonly filled: number;
  /** Whether a line holds all headers that the sheet needs. */
  readonly isWhole: boolean;
}

function bestSplit(beginning: string, name: string, lines: number): Split {
  let best: Split | undefined;
  for (const delimiter of DELIMITERS) {
    const { data, errors } = parse(beginning, delimiter, lines);
    const isQuoted = errors.every(({ type }) => type !== 'Quotes');
    const split = { delimiter, ...headersIn({ name, rows: isQuoted ? textRows(data) : [] }) };
    if (!best || split.known > best.known || (split.known === best.known && split.filled > best.filled)) {
      best = split;
    }
  }
  return best!;
}

/** Where the first line begins that has more than delimiters, quotes and spaces. */
function firstFilledLine(text: string): number {
  const letter = text.search(/[^\s;,"]/);
  return letter < 0 ? text.length : text.lastIndexOf('\n', letter) + 1;
}

function headersIn(sheet: SheetModel): Pick<Split, 'known' | 'filled' | 'isWhole'> {
  const record = inputSheets().find(({ name }) => headerKey(name) === headerKey(sheet.name));
  if (!record) return { known: 0, filled: Object.keys(sheet.rows[0] ?? []).length, isWhole: false };
  const table = new Table(record, sheet, { length: 'mm', temperature: 'C' });
  const { columns, readingColumns, headers, missing } = table;
  return {
    known: columns.size + readingColumns.length,
    filled: Object.keys(headers).length,
    isWhole: missing.length === 0,
  };
}

/** Rows and cells by their places; a blank one is a hole. */
function textRows(data: readonly (readonly string[])[]): (Cell | undefined)[][] {
  const rows: (Cell | undefined)[][] = [];
  data.forEach((values, row) => {
    values.forEach((value, column) => {
      if (value.trim() === '') return;
      rows[row] ??= [];
      rows[row][column] = { content: { kind: 'text', value } };
    });
  });
  return rows;
}
