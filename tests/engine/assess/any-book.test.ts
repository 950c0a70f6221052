/** Whatever stands in its cells, a book is assessed or refused in words; it never stops with a fault of ours. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inputSheets } from '../../../src/engine/input-sheets/index.js';
import { columnsOf } from '../../../src/engine/input-sheets/input-sheet.js';
import { SETUP_ITEMS } from '../../../src/engine/input-sheets/setup.js';
import { UserError } from '../../../src/engine/user-error.js';
import { assess, DATE, ERROR, type Plain, type Sheets } from '../book-of.js';

const READINGS = {
  diameters: ['A 0', 'A 90', 'A 0 #2', 'B 0 (in)'],
  walls: ['Wall 1', 'Wall 2 (µm)'],
  bolts: ['Length 1', 'Neck 1 (in)'],
  gaps: ['Gap 1', 'Gap 2 (in)', 'Goes', 'Stops'],
  dial: ['A 0', 'A 90', 'Total'],
};
const WORDS = [
  'X',
  'Y',
  'E1',
  'main',
  'big end',
  'upper',
  'either',
  'steel',
  'M1',
  'M2',
  '1',
  'no',
  'journal',
];

const cell: fc.Arbitrary<Plain> = fc.oneof(
  { weight: 3, arbitrary: fc.constant(undefined) },
  { weight: 6, arbitrary: fc.constantFrom<Plain>(...WORDS) },
  { weight: 4, arbitrary: fc.constantFrom<Plain>(1, 2, 0.02, 0.06, 1.5, 42, 42.003, 45, -1, 0) },
  {
    weight: 1,
    arbitrary: fc.constantFrom<Plain>(DATE, ERROR, true, null, '1,234 µm', '36 µm', '1 7/8 in', 'x'),
  },
  { weight: 1, arbitrary: fc.double({ min: -1e9, max: 1e9 }) },
  { weight: 1, arbitrary: fc.string() },
);

const sheets: fc.Arbitrary<Sheets> = fc.record(
  Object.fromEntries(
    inputSheets()
      .filter(({ name }) => name !== 'Setup')
      .map((sheet) => {
        const { name, readings } = sheet;
        const headers = [
          ...columnsOf(sheet).map(({ header }) => header),
          ...(readings ? READINGS[readings] : []),
        ];
        const row = fc.array(cell, { minLength: headers.length, maxLength: headers.length });
        return [name, fc.array(row, { maxLength: 4 }).map((rows) => [headers, ...rows])];
      }),
  ),
);

test('any cells', () => {
  fc.assert(
    fc.property(sheets, (book) => {
      const { parts, fits, tables } = assess(book);
      for (const part of parts.all()) {
        if (part.status === 'bad reading') expect(part.why.length).toBeGreaterThan(0);
        if (part.form) expect(Number.isSafeInteger(part.form.size)).toBe(true);
      }
      for (const fit of fits) {
        // One blade of a feeler gauge leaves the gap itself open.
        expect(fit.clearance !== undefined || fit.feelers !== undefined).toBe(
          !['bad reading', 'unclear', 'not measured'].includes(fit.status),
        );
        if (fit.status !== 'in range') expect(fit.why.length).toBeGreaterThan(0);
      }
      for (const { status, why } of Object.values(tables).flat()) {
        expect(status === 'consistent').toBe(why.length === 0);
      }
    }),
    { numRuns: 500, seed: 20 },
  );
});

test('any settings', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.constantFrom(...SETUP_ITEMS), cell)), (items) => {
      try {
        assess({ Setup: [['Item', 'Value'], ...items], Rods: [['Part'], ['R1']] });
      } catch (error) {
        expect(error).toBeInstanceOf(UserError);
        expect((error as Error).message).toMatch(
          /^engine\.xlsx: Setup!B\d+ \(.+\): found .+; expected .+; .+\.$/s,
        );
      }
    }),
    { numRuns: 500, seed: 20 },
  );
});
