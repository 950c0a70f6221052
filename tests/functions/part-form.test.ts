import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

const cells = (...spots: (number | null)[]) => [['A', 'A', 'b', ' B'], [0, 90, 0, 90], spots];
const call = (name: string) => `=${name}(Cells!A3:D3, Cells!A1:D1, Cells!A2:D2)`;

test.each([
  ['a full grid', [42, 42.003, 42.001, 42.008], 0.005, 0.007],
  ['one spot missing', [42, null, 42.001, 42.008], 0.001, 0.007],
  ['a diagonal has no form', [42, null, null, 42.008], '', ''],
  ['one station', [null, null, 42.001, 42.008], '', 0.007],
  ['one angle', [null, 42.003, null, 42.008], 0.005, ''],
  ['nothing measured', [null, null, null, null], '', ''],
])('%s; stations match without regard to case and outer spaces', (_words, spots, taper, outOfRound) => {
  expect(evaluate(call('SPOT_TAPER'), cells(...spots))).toBe(taper);
  expect(evaluate(call('SPOT_OUT_OF_ROUND'), cells(...spots))).toBe(outOfRound);
});

test('on a full grid they agree with the functions of the sheet', () => {
  const grid = cells(42, 42.003, 42.001, 42.008);
  expect(evaluate(call('SPOT_TAPER'), grid)).toBe(evaluate('=JOURNAL_TAPER(Cells!A3:D3, 2)', grid));
  expect(evaluate(call('SPOT_OUT_OF_ROUND'), grid)).toBe(evaluate('=OUT_OF_ROUND(Cells!A3:D3, 2)', grid));
});
