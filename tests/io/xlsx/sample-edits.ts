/** What the tests write into workbooks. */
import type { OutputCell, OutputSheet, SheetEdit, WorkbookEdit } from '../../../src/engine/workbook-model.js';

export const NOTHING: WorkbookEdit = { edits: [], sheets: [], remove: [] };
/** The column in which ours begin. */
export const FIRST = 4;

/** Status columns as a run writes them, into rows that are there and one that is not. */
export function statusEdit(sheet: string, more: Partial<SheetEdit> = {}): SheetEdit {
  const cell = (row: number, column: number, output: OutputCell) => ({
    row,
    column: FIRST + column,
    cell: output,
  });
  return {
    sheet,
    clear: { first: FIRST, last: FIRST + 2 },
    cells: [
      cell(0, 0, { value: 'Size', format: 'header' }),
      cell(0, 1, { value: 'Status', format: 'header' }),
      cell(1, 0, { value: 42.003, format: 'mm', formula: 'ROUND(B2,5)' }),
      cell(1, 1, { value: 'within limits', format: 'plain', formula: 'IF(E2>1,"within limits","")' }),
      cell(1, 2, { value: '=not a formula', format: 'text' }),
      cell(6, 1, { value: 'not measured', format: 'plain' }),
    ],
    storedValues: [],
    widths: [{ column: FIRST, characters: 12 }],
    ...more,
  };
}

/** A sheet of the program's own with a cell of every kind. */
export function outputSheet(name: string, more: Partial<OutputSheet> = {}): OutputSheet {
  return {
    name,
    rows: [
      [{ value: `About ${name}`, format: 'title' }],
      [{ value: 'Engine', format: 'header' }, undefined, { value: 'Clearance', format: 'header' }],
      [
        { value: '-1 & <2>', format: 'text' },
        { value: 0.25, format: 'chance' },
        { value: 0.04125, format: 'mm', formula: 'ROUND(0.041251,5)' },
        { value: '', format: 'in', formula: 'IF(1=1,"","x")' },
        { value: 3, format: 'whole' },
        { value: false, format: 'plain', formula: '1=2' },
      ],
    ],
    widths: [20, 10, 12],
    headerRows: 2,
    landscape: true,
    ...more,
  };
}
