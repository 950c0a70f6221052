import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['readings', [0.1, 0.13, null], ',', [0.115, 0.1, 0.13]],
  ['readings of either sign', [-0.02, 0, null], ',', [-0.01, -0.02, 0]],
  ['readings before feelers', [0.1, 0.13, null], '0.2,0.3', [0.115, 0.1, 0.13]],
  ['feelers', [null, null, null], '0.2,0.3', [0.25, 0.2, 0.3]],
  ['one feeler that goes in', [null, null, null], '0.2,', ['', 0.2, '']],
  ['nothing', [null, null, null], ',', ['', '', '']],
])('%s', (_words, readings, feelers, found) => {
  const names = ['GAP_MEAN', 'GAP_TIGHTEST', 'GAP_LOOSEST'];
  expect(names.map((name) => evaluate(`=${name}(Cells!A1:C1,${feelers})`, [readings]))).toEqual(found);
});
