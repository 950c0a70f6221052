import { expect, test } from 'vitest';
import { partsMeant, unknownPart } from '../../../src/engine/explain/find-parts.js';
import { bookOf, table } from '../book-of.js';

const { parts } = bookOf({
  Journals: table(
    { Part: 'P 1', Engine: 'E1', Fit: 'big end', Position: 1, 'A 0': 42 },
    { Part: 'north P 2', Engine: 'north E1', Fit: 'big end', Position: 2, 'A 0': 42 },
    { Part: 'south P 2', Engine: 'south E1', Fit: 'big end', Position: 2, 'A 0': 42 },
  ),
  Rods: table({ Part: 'R1', 'A 0': 45 }, { Part: 31, 'A 0': 45 }, { Part: 'S1', 'A 0': 45 }),
  Shells: table({ Part: 'S1', Half: 'upper', 'Wall 1': 1.5 }),
});
const rows = parts.all();

test.each([
  ['a name, without regard to case and spaces', ' p  1 ', ['Journals P 1']],
  ['a name that was typed as a number', '31', ['Rods 31']],
  ['a name of two sheets', 's1', ['Rods S1', 'Shells S1']],
  ['a place', 'e1 big end 1', ['Journals P 1']],
  ["a place of a book's engine", 'north E1 Big End 2', ['Journals north P 2']],
  ["a name that got its book's name", 'P 2', ['Journals north P 2', 'Journals south P 2']],
  ['nothing', ' ', []],
  ['a name of none', 'R2', []],
])('%s', (_, query, meant) => {
  expect(partsMeant(query, rows).map(({ sheet, name }) => `${sheet} ${name}`)).toEqual(meant);
});

test('a name that no part has is answered with the nearest', () => {
  expect(unknownPart('R11', rows)).toBe(
    '--explain: found the name "R11", which no part has; expected a part, or a place such as "E1 big end 1"; ' +
      'the nearest are "R1", "31" or "P 1".',
  );
  expect(unknownPart('R1', [])).toBe(
    '--explain: found the name "R1", which no part has; expected a part; the books have no parts.',
  );
});
