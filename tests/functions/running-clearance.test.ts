import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['bore and journal of one material, equally warm', '0.05, 60, 90, 11.5, 90, 11.5', 0.05],
  ['a journal warmer than its bore', '0.05, 60, 80, 11.5, 100, 11.5', 0.0362],
  ['a cast-iron bore', '0.05, 60, 100, 10.5, 100, 11.5', 0.0452],
  ['a clearance that is used up goes below zero', '0.01, 60, 20, 23, 80, 11.5', -0.0314],
  ['no expansion at all', '0.05, 60, 300, 0, -40, 0', 0.05],
])('%s', (_words, given, running) => {
  expect(evaluate(`=RUNNING_CLEARANCE(${given})`)).toBe(running);
});

test('temperatures in °F', () => {
  const found = evaluate('=RUNNING_CLEARANCE(0.05, 60, 176, 23, 176, 11.5)', [], { temperatureUnit: 'F' });
  expect(found).toBe(evaluate('=RUNNING_CLEARANCE(0.05, 60, 80, 23, 80, 11.5)'));
});
