/** Results that have no room beside their rows stand on a sheet of the program's own, row for row, and are live there too. */
import { expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { resultHeaders } from '../../../src/engine/columns/result-headers.js';
import { writtenWorkbook } from '../../../src/engine/sheets/written-workbook.js';
import { bookOf, type Plain, type Sheets, table } from '../book-of.js';
import { liveValues } from '../columns/live-values.js';

const LAST = 16_383;
const AT = (position: number) => ({ 'Engine type': 'X', Engine: 'E1', Position: position });

/** The rows of a sheet that reaches the last column. */
function wide(rows: Plain[][]): Plain[][] {
  const header = [...rows[0]!];
  header[LAST] = 'Lot';
  return [Array.from(header), ...rows.slice(1)];
}

const PARTS: Sheets = {
  Limits: table({
    ...{ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 },
    ...{ 'Journal min': 41.9, 'Journal max': 42.1 },
  }),
  Journals: [
    ...table({ Part: 'J1', ...AT(1), Fit: 'big end', 'A 0': 42, 'A 90': 42.002 }),
    [],
    ['J2', 'X', 'E1', 2, 'big end', 42.001, 42.003],
  ],
  Rods: table({ Part: 'R1', ...AT(1), 'A 0': 45.04 }, { Part: 'R2', ...AT(2), 'A 0': 45.04 }),
  Shells: table(
    ...[1, 2].flatMap((position) =>
      ['upper', 'lower'].map((half) => ({
        Part: `${half}${position}`,
        ...AT(position),
        Half: half,
        'Wall 1': 1.5,
      })),
    ),
  ),
  Fits: table(
    ...[1, 2].map((Position) => ({ Engine: 'E1', Fit: 'big end', Position, 'Strip reading': undefined })),
  ),
};

test.each(['Journals', 'Shells', 'Fits', 'Limits'])('the results of %s', async (name) => {
  const beside = await assessBook(bookOf(PARTS), { seconds: 5 });
  const apart = await assessBook(bookOf({ ...PARTS, [name]: wide(PARTS[name] as Plain[][]) }), {
    seconds: 5,
  });
  const written = writtenWorkbook(apart, { valuesOnly: false });
  expect(written.edits.map(({ sheet }) => sheet)).not.toContain(name);
  const sheet = written.sheets.find((own) => own.name === `${name} (oilgap)`)!;
  const rows = [...sheet.rows].map((cells) => Array.from(cells, (cell) => cell?.value));
  expect(rows[0]!.at(-1)).toBe('Made by oilgap');
  const first = rows[0]!.indexOf(resultHeaders(name)[0]!);
  // The values are those that stand beside the rows where there is room, each in its row.
  const edit = writtenWorkbook(beside, { valuesOnly: false }).edits.find((own) => own.sheet === name)!;
  const left = Math.min(...Array.from(edit.cells, ({ column }) => column));
  for (const { row, column, cell } of edit.cells) expect(rows[row]![first + column - left]).toBe(cell.value);
  // Every live formula, there and on the sheets that name its cells, gives what is stored.
  const live = liveValues(apart);
  expect(live.filter((value) => value.sheet === sheet.name).length > 0).toBe(name !== 'Limits');
  expect(live.filter(({ stored, found }) => (found ?? '') !== stored)).toEqual([]);
});

test('no sheet stands apart where there is room', async () => {
  const { sheets } = writtenWorkbook(await assessBook(bookOf(PARTS), { seconds: 5 }), { valuesOnly: false });
  expect(sheets.map(({ name }) => name).filter((name) => name.includes('oilgap'))).toEqual([]);
});
