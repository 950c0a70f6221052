import { expect, test } from 'vitest';
import type { SheetModel } from '../../../src/engine/workbook-model.js';
import { refuseLongSheets } from '../../../src/io/gate/sheet-layout.js';

/** A sheet whose last row is the only one. */
function sheetOf(rows: number): SheetModel {
  const sheet: SheetModel = { name: 'Shells', rows: [] };
  sheet.rows[rows - 1] = [];
  return sheet;
}

test('a stock of more rows than a sheet has is refused by its sheet', () => {
  expect(() => refuseLongSheets([sheetOf(1_048_576)], 'sets.xlsx')).not.toThrow();
  expect(() => refuseLongSheets([sheetOf(1_048_577)], 'sets.xlsx')).toThrow(
    'sets.xlsx: found 1048577 rows in the sheet Shells of all books together; expected at most 1048576, as many as a sheet has; ' +
      'match fewer books at once.',
  );
});
