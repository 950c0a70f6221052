/** What is said of a command line that cannot be understood. */
import { describe, expect, test } from 'vitest';
import { oilgap } from './books.js';

describe('two lines, what was found and the nearest', () => {
  test.each([
    [['chek', 'engine.xlsx'], 'the command "chek"', 'check'],
    [['mtach'], 'the command "mtach"', 'match'],
    [['engine.xlsx'], 'the command "engine.xlsx"', 'check'],
    [['check', '--inplace', 'x.xlsx'], 'the option "--inplace"', '--in-place'],
    [['check', 'x.xlsx', '--sconds=3'], 'the option "--sconds"', '--seconds'],
    [['sheet', '--cylinder', '6'], 'the option "--cylinder"', '--cylinders'],
    [['bench', '-x', 'x.xlsx'], 'the option "-x"', '--'],
    [['--versoin'], 'the option "--versoin"', '--version'],
  ])('%j', (args, found, nearest) => {
    const { status, stdout, stderr } = oilgap(...args);
    expect([status, stdout]).toEqual([2, '']);
    const lines = stderr.split('\n');
    expect(lines).toHaveLength(3);
    expect(lines[0]).toContain(`: found ${found}; expected `);
    expect(lines[1]).toContain(`The nearest is ${nearest}`);
  });
});

/** A name that colours the terminal, sets its title and breaks its line. */
const NAME = 'a\u001b[31m\u009b31m\nb\u0007';

test.each([
  [NAME],
  ['check', `--${NAME}`],
  ['check', 'x.xlsx', '--jobs', NAME],
  ['check', `missing/${NAME}.xlsx`],
  ['check', NAME, '--in-place'],
  ['match', NAME, '--out', `${NAME}.xls`],
  ['match', `${NAME}.xlsx`, '--out', 'x.xlsx'],
  ['report', NAME],
  ['bench', `${NAME}.xlsx`],
  ['sheet', '--out', NAME],
  ['sheet', '--cylinders', NAME],
  ['functions', NAME],
  ['calc', `=${NAME}`],
])('control characters of a name never reach the terminal: %j', (...args) => {
  const { status, stdout, stderr } = oilgap(...args);
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).not.toMatch(/[^\P{Cc}\n]/u);
  expect(stderr).not.toContain('31m\nb');
  expect(stderr.trimEnd().split('\n').length).toBeLessThanOrEqual(2);
});

test('a message is no longer than ten lines', () => {
  const { stderr } = oilgap('check', `missing${'\n'.repeat(40)}.xlsx`, `x${'\n'.repeat(40)}`);
  expect(stderr.trimEnd().split('\n')).toHaveLength(2);
});
