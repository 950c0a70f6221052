import { describe, expect, test } from 'vitest';
import { functionRecords } from '../../../functions/index.js';
import {
  functionHelp,
  functionList,
  functionTable,
  signatureOf,
} from '../../../src/engine/functions/function-help.js';

const names = functionRecords.map(({ name }) => name);

describe('functionHelp', () => {
  test.each(names)('%s fits 80 columns', (name) => {
    const tooWide = functionHelp(name)
      .split('\n')
      .filter((line) => line.length > 80);
    expect(tooWide).toEqual([]);
  });

  test.each(functionRecords.map((record) => ({ record, name: record.name })))(
    '$name states its arguments, errors, examples and source',
    ({ record }) => {
      const words = functionHelp(record.name).replaceAll(/\s+/g, ' ');
      const stated = [
        signatureOf(record),
        record.sentence,
        ...record.arguments.map(({ meaning }) => meaning),
        ...record.errors.map(({ message }) => message),
        ...record.examples.map(({ says }) => says),
        ...record.examples.map(({ formula }) => formula),
        record.source,
        ...record.related,
      ];
      expect(stated.filter((text) => !words.includes(text.replaceAll(/\s+/g, ' ')))).toEqual([]);
    },
  );

  test('finds a name without regard to case and outer spaces', () => {
    expect(functionHelp(' shell_clearance ')).toBe(functionHelp('SHELL_CLEARANCE'));
  });

  test('refuses a name that no function has', () => {
    expect(() => functionHelp('CLEARANCE')).toThrow('no function is named CLEARANCE');
  });

  test('reads as a user reads it', () => {
    expect(functionHelp('EXPANDED_UNCERTAINTY')).toBe(`EXPANDED_UNCERTAINTY(contributions)

The expanded uncertainty of independent contributions: twice their standard
uncertainty.

Arguments
  contributions: the contributions to the standard uncertainty, independent of
      each other; a range of lengths in mm, blanks allowed. Blank: no
      contribution.

Result
  the expanded uncertainty (k = 2), on the grain of 0.001 µm; in the book's unit
  of length. The empty text where every contribution is blank.

Errors
  #VALUE! where an argument, or a cell of its range, is blank or of another kind
      and that is not allowed above
  #NUM! where a number lies outside its range
  #N/A where an argument is missing, or there are too many
  #VALUE! where a cell holds no number: "EXPANDED_UNCERTAINTY: contributions
      (cell 2 of 2) is TRUE; expected a range of lengths in mm, blanks allowed"
  An error value in an argument is handed on as it is.

Examples (lengths in mm unless said otherwise)
  twice the root of the sum of squares
         A       B
      1  0.0003  0.0004
    =EXPANDED_UNCERTAINTY(A1:B1)
    → 0.001

  nothing is known
         A
      1  (blank)
    =EXPANDED_UNCERTAINTY(A1:A1)
    → (empty text)

  TRUE is not 1
         A      B
      1  0.001  TRUE
    =EXPANDED_UNCERTAINTY(A1:B1)
    → #VALUE! EXPANDED_UNCERTAINTY: contributions (cell 2 of 2) is TRUE;
      expected a range of lengths in mm, blanks allowed

Source: JCGM 100:2008, 5.1.2 and 6.2.
Since 0.1.0. See also STANDARD_UNCERTAINTY.
`);
  });
});

test('the list names every function and fits 80 columns', () => {
  const lines = functionList().split('\n');
  expect(names.filter((name) => !lines.some((line) => line.startsWith(`  ${name}(`)))).toEqual([]);
  expect(lines.filter((line) => line.length > 80)).toEqual([]);
});

test('the table has one row a function, of three cells', () => {
  const rows = functionTable().trimEnd().split('\n').slice(2);
  expect(rows.map((row) => /^\| `([A-Z0-9_]+)\(/.exec(row)?.[1])).toEqual(names);
  expect(rows.map((row) => row.split(/(?<!\\)\|/).length)).toEqual(names.map(() => 5));
});
