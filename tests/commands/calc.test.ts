/** `oilgap calc` as a user runs it: no formula ends the program or takes the machine. */
import { describe, expect, test } from 'vitest';
import { oilgap } from './books.js';

describe('a formula that would take the machine is an error value with its reason', () => {
  test.each([
    ['=SUM(1:1048576)', 'it names a range of more than 1000000 cells.'],
    ['=REPT("x",10^9)', 'The formula makes a text of more than 32767 characters.'],
    ['=SUM(SEQUENCE(10^4,10^4))', 'The formula makes an array of more than 1000000 cells.'],
    [`=${'('.repeat(10_000)}1${')'.repeat(10_000)}`, 'it nests more than 64 brackets.'],
    ['=POISSON.DIST(10^9,10^9,1)', 'it takes longer than 0.8 s.'],
  ])('formula %#', (formula, reason) => {
    const { status, stdout, stderr } = oilgap('calc', formula);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain(`: #NUM! `);
    expect(stderr.endsWith(`${reason}\n`)).toBe(true);
    expect(stderr.split('\n')).toHaveLength(2);
    expect(stderr.length).toBeLessThan(400);
  });
});

test('rows of an array are lines, their cells between tabs', () => {
  expect(oilgap('calc', '=SEQUENCE(2,3)').stdout).toBe('1\t2\t3\n4\t5\t6\n');
});

test('control characters of a value never reach the terminal, and are escaped in JSON', () => {
  const formula = '=CHAR(27)&"]0;title"&CHAR(7)';
  expect(oilgap('calc', formula).stdout).toBe(' ]0;title \n');
  const { stdout } = oilgap('calc', formula, '--json');
  expect(stdout).not.toMatch(/[^\P{Cc}\n]/u);
  expect(JSON.parse(stdout)).toEqual({ version: 1, formula, value: '\u001b]0;title\u0007' });
});
