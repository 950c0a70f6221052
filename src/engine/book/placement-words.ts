/** What is said of a sheet's rows and columns that the user may not expect. */
import { columnLetters, rangeText } from '../workbook-model.js';
import { dataRowsOf, leftOutOf } from './data-rows.js';
import { leftColumns } from './left-columns.js';
import { headerKey } from './names.js';
import type { OwnColumns, OwnHeaders } from './own-columns.js';
import type { Placement } from './placement.js';
import { listOf, quoted } from './problems.js';
import type { Table } from './table.js';

/** The sheet that results of another sheet stand on, where they cannot stand beside its rows. */
export function apartName(sheet: string): string {
  return `${sheet} (oilgap)`;
}

/** Rows in which something stands that is no part, once a sheet. */
export function rowNotices(table: Table, file: string): string[] {
  const rows = leftOutOf(table);
  if (rows.length === 0) return [];
  const [one, hold] = rows.length === 1 ? ['row', 'holds'] : ['rows', 'hold'];
  return [
    `${file}: sheet ${table.sheet.name}: found that ${one} ${runs(rows.map((row) => row + 1))} ${hold} no part, but a total, a mean or words; ` +
      'such rows are left out; where one is a part, name it, give it readings, and leave no empty row above it.',
  ];
}

/** More are counted. */
const MOST_RUNS = 12;

/** Ascending numbers in few words: `3, 5 to 9`. */
function runs(numbers: readonly number[]): string {
  const found: { from: number; to: number }[] = [];
  for (const number of numbers) {
    const last = found.at(-1);
    if (last && last.to === number - 1) last.to = number;
    else found.push({ from: number, to: number });
  }
  const texts = found
    .slice(0, MOST_RUNS)
    .map(({ from, to }) => (from === to ? String(from) : `${from} to ${to}`));
  return found.length > MOST_RUNS ? `${texts.join(', ')} and more` : texts.join(', ');
}

const lettersOf = (first: number, last: number) =>
  first === last
    ? `column ${columnLetters(first)}`
    : `columns ${columnLetters(first)} to ${columnLetters(last)}`;

/** Results that stand elsewhere than beside their rows, or beside results of an earlier run. */
export function columnNotices(
  table: Table,
  own: OwnColumns | undefined,
  place: Placement,
  ownHeaders: OwnHeaders,
  file: string,
): string[] {
  const at = `${file}: sheet ${table.sheet.name}:`;
  const notices: string[] = [];
  const { columns, obstacle, listFault } = place;
  const apart = `on the sheet ${quoted(apartName(table.name))}, row for row`;
  const now = columns ? `in ${lettersOf(columns[0]!, columns.at(-1)!)}` : apart;
  if (obstacle !== undefined && dataRowsOf(table).length > 0) {
    const stale =
      own && !own.isWholeSheet ? ` ${lettersOf(own.first, own.last)} hold those of an earlier run;` : '';
    notices.push(
      `${at} found ${obstacle}; they stand ${apart};${stale} make room there and run again to have them beside the rows.`,
    );
  }
  const left = leftColumns(table, own, ownHeaders);
  if (left) {
    notices.push(
      `${at} found results of an earlier run in ${lettersOf(left.first, left.last)}, changed so that they are no longer known for the program's; expected them last and under their own headers; ` +
        `they are kept as columns of yours and no longer brought up to date; the results now stand ${now}; delete the old ones, or move your columns before them.`,
    );
  }
  const renamed = renamedIn(table, own, ownHeaders);
  if (renamed.length > 0) {
    notices.push(
      `${at} found ${listOf(renamed)}; expected the headers that the program writes; the columns are brought up to date and keep your headers.`,
    );
  }
  if (listFault !== undefined) {
    const list = table.sheet.lists!.find(({ bounds }) => bounds.top === table.headerRow)!;
    notices.push(
      `${at} found that the table over ${rangeText(list.bounds)} cannot reach over the results: ${listFault}; run again after sorting it: Status says run again beside every row that has moved.`,
    );
  }
  return notices;
}

function renamedIn(table: Table, own: OwnColumns | undefined, ownHeaders: OwnHeaders): string[] {
  const [ours = []] = ownHeaders(table.name);
  return (own?.columns ?? []).flatMap((column, at) => {
    const found = table.headers[column] ?? '';
    const header = ours[at]!;
    return headerKey(found) === headerKey(header)
      ? []
      : [`the results ${header} in column ${columnLetters(column)} under the header ${quoted(found)}`];
  });
}
