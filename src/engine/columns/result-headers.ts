/** Which columns a sheet of the user's gets, by its name in the records. */
import type { Assessment } from '../assess/assess.js';
import { CHECKED_SHEETS } from '../assess/table-checks.js';
import type { OwnHeaders } from '../book/own-columns.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import { FITS } from '../input-sheets/fits.js';
import { inputSheet, isPartSheet } from '../input-sheets/index.js';
import { kindsOfFit } from '../kinds/index.js';
import { SHELL_BEARING } from '../kinds/shell-bearing.js';
import { columnsOfKind } from './columns-of-kind.js';
import { FASTENER_COLUMNS } from './fastener-columns.js';
import { fitColumns } from './fit-columns.js';
import { Layout } from './layout.js';
import { partColumns } from './part-columns.js';
import type { ResultColumn } from './result-column.js';
import { TABLE_COLUMNS } from './table-columns.js';

/** The columns of a sheet; none where it gets none. */
export function resultColumns(sheet: string): readonly ResultColumn<never>[] {
  if (sheet === FITS.name) return fitColumns(SHELL_BEARING);
  if (sheet === FASTENERS.name) return FASTENER_COLUMNS;
  const record = inputSheet(sheet);
  const kind = kindsOfFit().find(({ resultsOn }) => resultsOn === sheet);
  if (kind) return columnsOfKind(kind);
  if (record && isPartSheet(record)) return partColumns(record);
  return (CHECKED_SHEETS as readonly string[]).includes(sheet) ? TABLE_COLUMNS : [];
}

/** The headers of the columns of a sheet, in order. */
export function resultHeaders(sheet: string): readonly string[] {
  return resultColumns(sheet).map(({ header }) => header);
}

/** Where the results of a book stand. */
export function layoutOf(assessment: Assessment): Layout {
  return new Layout(assessment, resultHeaders);
}

/** The lists that tell the program's own columns in a sheet: that of this version, then those of earlier ones. */
export const ownHeaders: OwnHeaders = (sheet) => {
  const headers = resultHeaders(sheet);
  return headers.length > 0 ? [headers] : [];
};
