/** What is left over, in words. */
import { expect, test } from 'vitest';
import { leftWords } from '../../../src/engine/words/stock-words.js';
import { assess, type Plain, table } from '../book-of.js';

test.each<[string, Record<string, Plain>, number, string]>([
  ['Rods', {}, 1, 'rod'],
  ['Shells', { Half: 'upper' }, 1, 'upper shell'],
  ['Shells', { Half: 'either', Quantity: 5 }, 2, 'either shell, 2 of 5'],
  ['Shells', { Half: 'lower', Quantity: 5 }, 5, 'lower shell, 5 of 5'],
])('of %s %j, %i left', (sheet, columns, count, words) => {
  const { parts } = assess({ [sheet]: table({ Part: 'S', ...columns, 'A 0': 45, 'Wall 1': 1.5 }) });
  expect(leftWords({ part: parts.of(sheet)[0]!, count })).toBe(words);
});
