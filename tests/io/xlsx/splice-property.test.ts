import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Cell, cellAddress, type SheetEdit } from '../../../src/engine/workbook-model.js';
import { readSheetRows } from '../../../src/io/xlsx/read-sheet.js';
import { SharedCells } from '../../../src/io/xlsx/shared-cells.js';
import { spliceSheet } from '../../../src/io/xlsx/splice-sheet.js';

const ROWS = 6;
const COLUMNS = 7;

/** A grid of cells that are there or not, and of those that leave their address out where it follows. */
const cell = fc.record({
  value: fc.option(fc.nat(99), { freq: 3 }),
  hasAddress: fc.boolean(),
  isFormula: fc.boolean(),
  space: fc.constantFrom('', '\n  ', '<!-- <c r="A1"/> -->'),
});
const row = fc.record({
  cells: fc.array(cell, { minLength: COLUMNS, maxLength: COLUMNS }),
  isThere: fc.boolean(),
  hasNumber: fc.boolean(),
  spans: fc.constantFrom('', ' spans="1:7"', ' spans="3:4"'),
});
const grid = fc.array(row, { minLength: ROWS, maxLength: ROWS });
const place = fc.record({
  row: fc.nat(ROWS + 1),
  column: fc.nat(COLUMNS + 1),
  value: fc.integer({ min: 100, max: 199 }),
});
const edit = fc.record({
  clear: fc.option(fc.tuple(fc.nat(COLUMNS), fc.nat(COLUMNS)), { nil: undefined }),
  cells: fc.uniqueArray(place, { selector: (p) => `${p.row} ${p.column}`, maxLength: 12 }),
});

function sheetXml(rows: typeof grid extends fc.Arbitrary<infer G> ? G : never): string {
  let xml = '<worksheet><sheetData>';
  let previousRow = -1;
  rows.forEach((r, i) => {
    if (!r.isThere) return;
    const number = r.hasNumber || previousRow !== i - 1 ? ` r="${i + 1}"` : '';
    previousRow = i;
    xml += `${r.cells[0]!.space}<row${number}${r.spans}>`;
    let previous = -1;
    r.cells.forEach((c, column) => {
      if (c.value === null) return;
      const address = c.hasAddress || previous !== column - 1 ? ` r="${cellAddress(i, column)}"` : '';
      previous = column;
      xml += `${c.space}<c${address}>${c.isFormula ? '<f>A1</f>' : ''}<v>${c.value}</v></c>`;
    });
    xml += '</row>';
  });
  return `${xml}\n</sheetData></worksheet>`;
}

async function values(xml: string): Promise<Map<string, number>> {
  const found = new Map<string, number>();
  const rows = await readSheetRows(
    (async function* () {
      yield xml;
    })(),
    {
      cells: new SharedCells([]),
      dateStyles: [],
      usesDate1904: false,
      madeColumns: () => undefined,
    },
  );
  rows.forEach((cells: (Cell | undefined)[], r) => {
    cells.forEach((c, column) => {
      if (c?.content) found.set(cellAddress(r, column), c.content.value as number);
    });
  });
  return found;
}

test('whatever the sheet and the edit, just the edited cells change, and once', async () => {
  await fc.assert(
    fc.asyncProperty(grid, edit, async (rows, { clear, cells }) => {
      const before = sheetXml(rows);
      const range = clear && { first: Math.min(...clear), last: Math.max(...clear) };
      const sheetEdit: SheetEdit = {
        sheet: 'A',
        clear: range,
        cells: cells.map((c) => ({
          row: c.row,
          column: c.column,
          cell: { value: c.value, format: 'plain' },
        })),
        storedValues: [],
        widths: [],
      };
      const expected = new Map<string, number>();
      rows.forEach((r, i) => {
        if (!r.isThere) return;
        r.cells.forEach((c, column) => {
          const isCleared = range && column >= range.first && column <= range.last;
          if (c.value !== null && !isCleared) expected.set(cellAddress(i, column), c.value);
        });
      });
      for (const c of cells) expected.set(cellAddress(c.row, c.column), c.value);

      const after = spliceSheet(before, sheetEdit, () => 0).xml;
      expect([...(await values(after))].sort()).toEqual([...expected].sort());
      expect(spliceSheet(after, sheetEdit, () => 0).xml).toBe(after);
      // Rows and cells stand in order, each once.
      const addresses = [...(await values(after)).keys()];
      expect(new Set(addresses).size).toBe(addresses.length);
      const numbers = [...after.matchAll(/<row[^>]* r="(\d+)"/g)].map((m) => Number(m[1]));
      expect(numbers).toEqual([...new Set(numbers)].sort((a, b) => a - b));
    }),
    { seed: 20, numRuns: 500 },
  );
});
