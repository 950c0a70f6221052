import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

const inches = { lengthUnit: 'in' } as const;

// TM 10-3930-664-24, p. 3-41: 0, +.003, −.002 and +.003 in are a total of .005 in.
test('the worked example of a manual', () => {
  expect(evaluate('=RUN_OUT(Cells!A1:D1)', [[0, 0.003, -0.002, 0.003]], inches)).toBe(0.005);
});

test('a blank is named, never taken as 0', () => {
  expect(evaluate('=RUN_OUT(Cells!A1:C1)', [[0.01, null, 0.02]])).toEqual({
    error: 'VALUE',
    message: 'RUN_OUT: readings (cell 2 of 3) is blank; expected a length in mm, or a range of them',
  });
});
