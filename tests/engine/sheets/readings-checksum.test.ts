/** The live cell that says whether a reading changed, evaluated by the engine over changed books. */
import { expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { readingsUnchanged } from '../../../src/engine/sheets/readings-checksum.js';
import { buildEngine, rawSheets } from '../../../src/engine/spreadsheet.js';
import { bookOf, modelOf, type Plain, table } from '../book-of.js';

const shells = (...walls: Plain[]) => ({
  Shells: table(
    ...walls.map((wall, at) => ({
      Part: `S${at}`,
      Half: 'upper',
      Temperature: 20,
      'Wall 1': wall,
      'Wall 2': 1.5,
    })),
  ),
});

test.each([
  ['as it was', [1.487, 1.488, '1.489 mm'], 'unchanged'],
  ['one grain more', [1.48701, 1.488, '1.489 mm'], 'changed: run again'],
  ['two readings exchanged', [1.488, 1.487, '1.489 mm'], 'changed: run again'],
  ['a reading emptied', [undefined, 1.488, '1.489 mm'], 'changed: run again'],
  ['a text of the same length', [1.487, 1.488, '1.488 mm'], 'changed: run again'],
  ['a part added', [1.487, 1.488, '1.489 mm', 1.49], 'changed: run again'],
] as const)('readings %s: %o is %s', async (_, walls, expected) => {
  const assessment = await assessBook(bookOf(shells(1.487, 1.488, '1.489 mm')), { seconds: 1 });
  const { formula } = readingsUnchanged(assessment);
  const sheets = { ...rawSheets(modelOf(shells(...walls))), Live: [[`=${formula}`]] };
  const engine = buildEngine(sheets, { lengthUnit: 'mm', temperatureUnit: 'C' });
  expect(engine.getCellValue({ sheet: engine.getSheetId('Live')!, row: 0, col: 0 })).toBe(expected);
  engine.destroy();
});

test('a book with more than can be watched says so', async () => {
  const texts = Array.from({ length: 300 }, (_, at) => `1.${4000 + at} mm`);
  const assessment = await assessBook(bookOf(shells(...texts)), { seconds: 1 });
  expect(readingsUnchanged(assessment)).toEqual({
    value: 'not watched: run again after a change',
    format: 'plain',
    formula: undefined,
  });
});
