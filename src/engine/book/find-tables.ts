/** Finds the sheets of a workbook that the records know, and says what in them a user may have meant to be read. */

import { inputSheets, partSheets } from '../input-sheets/index.js';
import { SETUP, SETUP_ITEMS } from '../input-sheets/setup.js';
import { UserError } from '../user-error.js';
import type { SheetModel, WorkbookModel } from '../workbook-model.js';
import { isBlank } from './blank-cell.js';
import { dataRowsOf } from './data-rows.js';
import { headerKey } from './names.js';
import { isOwnColumn, type OwnColumns, type OwnHeaders, ownColumnsOf } from './own-columns.js';
import { type Placement, placeResults } from './placement.js';
import { columnNotices, rowNotices } from './placement-words.js';
import { listOf, quoted } from './problems.js';
import { READING_EXAMPLES, splitHeader } from './reading-headers.js';
import { Row } from './row.js';
import { type BookUnits, Table } from './table.js';

/** Looks a sheet up by its name in the records, without regard to case and punctuation. */
export function findSheet(model: WorkbookModel, name: string): SheetModel | undefined {
  return model.sheets.find((sheet) => headerKey(sheet.name) === headerKey(name));
}

/** What is found of the sheets of a workbook. */
export interface FoundTables {
  /** By their names in the records. */
  readonly tables: Map<string, Table>;
  /** The program's own columns of an earlier run, by the same names. */
  readonly own: Map<string, OwnColumns>;
  /** Where results stand, by the same names; nothing for a sheet that gets none or is made anew. */
  readonly places: Map<string, Placement>;
  readonly notices: string[];
}

/**
 * The sheets that the records know, each as a table.
 * @throws UserError where none is known, or none that is known can be read
 */
export function findTables(model: WorkbookModel, units: BookUnits, ownHeaders: OwnHeaders): FoundTables {
  const tables = new Map<string, Table>();
  const own = new Map<string, OwnColumns>();
  const places = new Map<string, Placement>();
  const notices: string[] = [];
  const unread: string[] = [];
  for (const record of inputSheets()) {
    const { name } = record;
    const sheet = findSheet(model, name);
    if (!sheet) continue;
    const made = ownColumnsOf(name, sheet, ownHeaders);
    const table = new Table(record, sheet, units, made && ((column) => isOwnColumn(made, column)));
    if (table.missing.length > 0) {
      const isEmpty = sheet.rows.every((cells) => cells?.every((cell) => isBlank(cell)) ?? true);
      if (!isEmpty) unread.push(noHeaderRow(model.file, table));
      continue;
    }
    tables.set(name, table);
    if (made) own.set(name, made);
    const [headers = []] = ownHeaders(name);
    if (headers.length > 0 && !made?.isWholeSheet) {
      const place = placeResults(table, made, headers);
      places.set(name, place);
      notices.push(...columnNotices(table, made, place, ownHeaders, model.file));
    }
    for (const header of table.repeatedHeaders) {
      notices.push(
        `${model.file}: sheet ${sheet.name}: found a second column of what the header "${header}" means; only the first is read; ` +
          'give each column its own header; a second reading of the spot "A 0" is "A 0 #2".',
      );
    }
  }
  for (const table of tables.values()) {
    notices.push(...unreadNotices(table, model.file), ...rowNotices(table, model.file));
  }
  if (tables.size === 0)
    throw unread.length > 0 ? new UserError(unread.join('\n')) : noKnownSheet(model.file);
  return { tables, own, places, notices: [...unread, ...notices] };
}

/** What is said of a sheet without a row that holds its needed headers. */
function noHeaderRow(file: string, { sheet, missing, headerRow, isHeaderRowGuessed }: Table): string {
  const headers = missing.map((header) => `"${header}"`);
  const place = isHeaderRowGuessed ? 'its first five rows' : `row ${headerRow + 1}`;
  return (
    `${file}: sheet ${sheet.name}: found no column ${listOf(headers)} in ${place}; ` +
    'expected one header row with it; add the column, or rename the sheet if it is not meant for measured parts; ' +
    'until then the sheet is not read.'
  );
}

/** What is said of a book without a sheet that can be read. */
export function noKnownSheet(file: string): UserError {
  return new UserError(
    `${file}: found no sheet that oilgap knows; expected ${partSheets()
      .map(({ name }) => name)
      .join(', ')} or another of ` + `${inputSheets().length} sheets; name the sheets as the README shows.`,
  );
}

/** What a user may have meant to be read: headers like a reading's, and Setup items that no setting has. */
function unreadNotices(table: Table, file: string): string[] {
  const example = READING_EXAMPLES[table.record.readings ?? 'diameters'];
  const headers = table.nearReadings.map(
    (header) =>
      `${file}: sheet ${table.sheet.name}: found the header ${quoted(header)}, which is not read; ` +
      `expected a reading headed such as ${example}; rename the column if it holds readings.`,
  );
  if (table.record !== SETUP) return headers;
  const known = SETUP_ITEMS.map(headerKey);
  const items = dataRowsOf(table).flatMap((number) => {
    const name = new Row(table, number).name(SETUP.columns.item.header);
    return name === undefined || known.includes(headerKey(splitHeader(name).name)) ? [] : [name];
  });
  return items.map(
    (item) =>
      `${file}: sheet ${table.sheet.name}: found the item ${quoted(item)}, which is not read; ` +
      `expected ${listOf(SETUP_ITEMS)}; correct its name if a setting is meant.`,
  );
}
