import { expect, test } from 'vitest';
import type { OutputCell } from '../../../src/engine/workbook-model.js';
import { LINE_HEIGHT, rowHeight } from '../../../src/io/xlsx/row-height.js';

const text = (value: string): OutputCell => ({ value, format: 'text' });

test.each<[string, (OutputCell | undefined)[], number | undefined]>([
  ['no cell', [], undefined],
  ['a text of one line', [text('ten letter')], undefined],
  ['a text that wraps', [text('ten letter s')], 2],
  ['a word longer than the column', [text('abcdefghijklmnopqrstu')], 3],
  ['lines of its own', [text('a\nb\nc')], 3],
  ['a header, whose bold letters are wider', [{ value: 'ten letter', format: 'header' }], 2],
  ['the highest of several', [text('a'), undefined, text('a\nb')], 2],
  // biome-ignore lint/suspicious/noSparseArray: a row of results has a hole where there is no result
  ['a hole before it', [, text('a\nb')], 2],
  ['formats that do not wrap', [{ value: 'ten letters and more', format: 'plain' }], undefined],
  ['a column without a width', [undefined, undefined, undefined, text('a\nb')], undefined],
])('%s', (_, cells, lines) => {
  expect(rowHeight(cells, [10, 10, 10])).toBe(lines && lines * LINE_HEIGHT);
});
