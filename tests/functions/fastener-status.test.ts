import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['on its limit', '"", 48, , 48', 'within limits'],
  ['one grain longer', '"", 48.000001, , 48', 'renew'],
  ['inside by just the guard', '"", 47.98, , 48, , 0.02, 0.03', 'within limits'],
  ['inside by less', '"", 47.980001, , 48, , 0.02, 0.03', 'undecided'],
  ['outside by just the guard there', '"", 48.03, , 48, , 0.02, 0.03', 'undecided'],
  ['outside by more', '"", 48.030001, , 48, , 0.02, 0.03', 'renew'],
  ['the neck has guards of its own', '"", , 6.98, , 7, 0.5, 0.5, 0.01, 0.01', 'renew'],
  ['one limit kept, the other not', '"", 47, 6.9, 48, 7', 'renew'],
  ['a typed limit without its reading', '"", 47, , 48, 7', 'undecided'],
  ['a limit passed counts before a reading that lacks', '"by neck", 48.5, , 48, 7', 'renew'],
  ['by neck, and only the length was read', '"by neck", 47, , 48, 7', 'not measured'],
  ['by length, read, without a limit', '"by length", 47', 'no limits'],
  ['always', '"always"', 'renew'],
  ['nothing is known', '""', 'no limits'],
])('%s', (_words, given, status) => {
  expect(evaluate(`=FASTENER_STATUS(${given})`)).toBe(status);
});
