import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

const stations = ['A', 'A', 'B', 'B'];
test.each([
  ['the greatest station counts', [0, 0.01, -0.01, 0.02], '', 0.03],
  ['readings go before a total', [0, 0.01, null, null], '0.05', 0.01],
  ['a station read once shows nothing', [0, null, 0.01, null], '', ''],
  ['then the total counts', [0, null, 0.01, null], '0.05', 0.05],
])('%s', (_words, readings, total, found) => {
  expect(evaluate(`=SPOT_RUN_OUT(Cells!A2:D2, Cells!A1:D1, ${total})`, [stations, readings])).toBe(found);
});

test('worn: beyond max, within the service limit', () => {
  expect(evaluate('=RUN_OUT_VERDICT(0.06,"",0.05,0.003,0.006,0.08)')).toBe('within service limit');
});
