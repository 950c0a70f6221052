/** A part that lacks a spot at which others of its sheet and Fit were read says so. */
import { expect, test } from 'vitest';
import { assess, table, whyOf } from '../book-of.js';

const row = (part: string, fit: string, spots: Readonly<Record<string, number>>) => ({
  ...{ Part: part, Engine: 'E', Fit: fit, Position: part },
  ...spots,
});

test.each([
  ['all spots', { 'A 0': 42, 'A 90': 42, 'B 0': 42, 'B 90': 42 }, undefined],
  ['two of four', { 'A 0': 42, 'B 0': 42 }, '2 of 4 spots read'],
  ['a repeat is no spot', { 'A 0': 42, 'A 0 #2': 42 }, '1 of 4 spots read'],
])('%s', (_words, spots, expected) => {
  const whole = { 'A 0': 42, 'A 90': 42, 'B 0': 42, 'B 90': 42 };
  const journals = table(
    row('1', 'big end', whole),
    row('2', 'big end', spots),
    row('3', 'main', { 'A 0': 50 }),
  );
  const [first, second, main] = assess({ Journals: journals }).parts.of('Journals');
  expect(whyOf(first!)).not.toContain('spots read');
  if (expected === undefined) expect(whyOf(second!)).not.toContain('spots read');
  else expect(second!.why).toContain(expected);
  expect(second!.status).toBe(first!.status);
  // A Fit of its own may have spots of its own.
  expect(whyOf(main!)).not.toContain('spots read');
});

test('a part that was not measured says that alone', () => {
  const journals = table(row('1', 'main', { 'A 0': 50, 'B 0': 50 }), row('2', 'main', {}));
  const [, second] = assess({ Journals: journals }).parts.of('Journals');
  expect([second!.status, whyOf(second!)]).toEqual(['not measured', '']);
});
