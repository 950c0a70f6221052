/** The marked blocks of README.md, made from the records of the program. */
import { listOf } from '../src/engine/book/problems.js';
import { OWN_TABLES } from '../src/engine/columns/own-tables.js';
import { resultColumns } from '../src/engine/columns/result-headers.js';
import { REACHED, SUMMARY } from '../src/engine/columns/summary-columns.js';
import { functionTable } from '../src/engine/functions/function-help.js';
import { inputSheets } from '../src/engine/input-sheets/index.js';
import { columnsOf, type InputSheet } from '../src/engine/input-sheets/input-sheet.js';
import { recordsOfFits } from '../src/engine/kinds/index.js';

function table(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [header, header.map(() => '---'), ...rows].map(line).join('\n');
}

const READING_COLUMNS = {
  diameters: ['readings', '`A 0`, `A 90`, `B 0`, ...: station and angle, one spot a column.'],
  walls: ['readings', '`Wall 1`, `Wall 2`, ...: one spot a column.'],
  bolts: ['readings', '`Length 1`, `Neck 1`, ...: one spot a column.'],
  gaps: [
    'readings',
    '`Gap 1`, `Gap 2`, ..., signed; or `Goes` and `Stops`: the thickest feeler that goes in, the thinnest that does not.',
  ],
  dial: [
    'readings',
    '`A 0`, `A 90`, ...: station and angle, what the dial shows, signed; or `Total`: its total indicator reading.',
  ],
} as const;

/** The sheets that a user fills; the sheet's name stands in the first of its rows. */
export function inputSheetsTable(): string {
  const sheetRows = (sheet: InputSheet) => {
    const { name, readings } = sheet;
    const rows = columnsOf(sheet).map(({ header, needed, help }) => [
      needed ? `**${header}**` : header,
      help,
    ]);
    if (readings) rows.push([...READING_COLUMNS[readings]]);
    return rows.map((row, place) => [place === 0 ? name : '', ...row]);
  };
  return table(['Sheet', 'Column', 'What it holds'], inputSheets().flatMap(sheetRows));
}

/** The columns that the program writes; sheets with the same columns stand together. */
export function resultColumnsTable(): string {
  const groups = new Map<string, string[]>();
  for (const { name } of inputSheets()) {
    const columns = resultColumns(name).map(({ header, help }) => `${header}: ${help}`);
    if (columns.length > 0) groups.set(columns.join('\n'), [...(groups.get(columns.join('\n')) ?? []), name]);
  }
  const rows = [...groups.values()].flatMap((sheets) =>
    resultColumns(sheets[0]!).map(({ header, help }, place) => [
      place === 0 ? sheets.join(', ') : '',
      header,
      help,
    ]),
  );
  return table(['Sheet', 'Column', 'What it says'], rows);
}

/** The kinds of fit: how the parts add up, and which words of Fit are of the kind. */
export function kindsTable(): string {
  const rows = recordsOfFits().map(({ name, help, equation, words, claimedBy }) => {
    const named = words.map((word) => `\`${word}\``);
    const claimed = claimedBy.length > 0 ? [`any word that ${listOf(claimedBy)} name`] : [];
    return [name, help, equation, [...named, ...claimed].join(', ') || 'the same'];
  });
  return table(['Kind', 'What it is', 'Clearance', 'Words of Fit'], rows);
}

/** The columns of the program's own sheets; the sheet's name stands in the first of its rows. */
export function ownSheetsTable(): string {
  const lists = [
    SUMMARY,
    { ...REACHED, name: `${SUMMARY.name}, what matching reached` },
    ...OWN_TABLES.map((own) => own.table),
  ];
  const rows = lists.flatMap(({ name, columns }) =>
    columns.map(({ header, help }, place) => [place === 0 ? name : '', header, help]),
  );
  return table(['Sheet', 'Column', 'What it says'], rows);
}

const BLOCKS: Readonly<Record<string, () => string>> = {
  'input sheets': inputSheetsTable,
  'kinds of fit': kindsTable,
  'result columns': resultColumnsTable,
  'own sheets': ownSheetsTable,
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
