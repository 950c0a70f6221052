/** The marked blocks of README.md, made from the records of the program. */
import { INPUT_SHEETS, type InputSheet, type SheetName } from '../src/engine/book/input-sheets.js';
import { FIT_RESULT_HELP } from '../src/engine/columns/fit-columns.js';
import { PART_RESULT_HELP } from '../src/engine/columns/part-columns.js';
import { RESULT_HEADERS } from '../src/engine/columns/result-headers.js';
import { functionTable } from '../src/engine/functions/function-help.js';

const TABLE_RESULT_HELP: Readonly<Record<string, string>> = {
  Status: '`consistent` or `check the source`.',
  Why: 'What is wrong with the row.',
};

function table(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [header, header.map(() => '---'), ...rows].map(line).join('\n');
}

const READING_COLUMNS = {
  diameters: ['readings', '`A 0`, `A 90`, `B 0`, ...: station and angle, one spot a column.'],
  walls: ['readings', '`Wall 1`, `Wall 2`, ...: one spot a column.'],
} as const;

/** The sheets that a user fills; the sheet's name stands in the first of its rows. */
export function inputSheetsTable(): string {
  const sheetRows = ([name, { columns, readings }]: [string, InputSheet]) => {
    const rows = columns.map(({ header, needed, help }) => [needed ? `**${header}**` : header, help]);
    if (readings) rows.push([...READING_COLUMNS[readings]]);
    return rows.map((row, place) => [place === 0 ? name : '', ...row]);
  };
  return table(['Sheet', 'Column', 'What it holds'], Object.entries(INPUT_SHEETS).flatMap(sheetRows));
}

function resultHelp(sheet: SheetName): Readonly<Record<string, string>> {
  if (sheet === 'Fits') return FIT_RESULT_HELP;
  return INPUT_SHEETS[sheet].readings ? PART_RESULT_HELP : TABLE_RESULT_HELP;
}

/** The columns that the program writes; sheets with the same columns stand together. */
export function resultColumnsTable(): string {
  const groups = new Map<readonly string[], SheetName[]>();
  for (const sheet of Object.keys(INPUT_SHEETS) as SheetName[]) {
    const headers = RESULT_HEADERS[sheet];
    if (headers) groups.set(headers, [...(groups.get(headers) ?? []), sheet]);
  }
  const rows = [...groups].flatMap(([headers, sheets]) =>
    headers.map((header, place) => [
      place === 0 ? sheets.join(', ') : '',
      header,
      resultHelp(sheets[0]!)[header] ?? '',
    ]),
  );
  return table(['Sheet', 'Column', 'What it says'], rows);
}

const BLOCKS: Readonly<Record<string, () => string>> = {
  'input sheets': inputSheetsTable,
  'result columns': resultColumnsTable,
  functions: functionTable,
};

/**
 * The text with every block made anew.
 * @throws Error where a block's marks are missing.
 */
export function withBlocks(text: string): string {
  return Object.entries(BLOCKS).reduce((before, [name, make]) => {
    const [start, end] = [`<!-- ${name}: made by npm run docs -->\n`, `<!-- end of ${name} -->`];
    const [from, to] = [before.indexOf(start), before.indexOf(end)];
    if (from < 0 || to < from) {
      throw new Error(`README.md: found no block "${name}"; expected the lines ${start.trim()} and ${end}.`);
    }
    return `${before.slice(0, from)}${start}\n${make().trim()}\n\n${before.slice(to)}`;
  }, text);
}
