import { describe, expect, test } from 'vitest';
import { UserError } from '../../../src/engine/user-error.js';
import { parseCsv } from '../../../src/io/csv/parse-csv.js';

/** The texts row by row; null for an absent cell. */
function texts(source: string, name = 'Journals'): (string | null)[][] {
  return Array.from(parseCsv(source, name, 'book/x.csv').rows, (cells) =>
    Array.from(cells ?? [], (cell) => {
      if (!cell) return null;
      expect(cell).toEqual({ content: { kind: 'text', value: expect.any(String) } });
      return String(cell.content!.value);
    }),
  );
}

describe('the delimiter', () => {
  test.each([
    ['a semicolon', 'Part;A 0\nP1;42,003', 'Journals'],
    ['a tab', 'Part\tA 0\nP1\t42,003', 'Journals'],
    ['a comma', 'Part,A 0\nP1,"42,003"', 'Journals'],
    ['a semicolon on an unknown sheet', 'Part;A 0\nP1;42,003', 'Notes'],
    ['a quoted header', '"Part";"A 0"\n"P1";"42,003"', 'Journals'],
    ['a named one', 'sep=|\nPart|A 0\nP1|42,003', 'Journals'],
    ['a named one in quotes', '"SEP=;"\r\nPart;A 0\r\nP1;42,003', 'Journals'],
    ['a named tab', 'sep=\t\nPart\tA 0\nP1\t42,003', 'Journals'],
    ['a line that names none', 'sep=\nPart;A 0\nP1;42,003', 'Journals'],
    ['a line that names a quote', 'sep="\nPart;A 0\nP1;42,003', 'Journals'],
  ])('is %s', (_, source, name) => {
    expect(texts(source, name)).toEqual([
      ['Part', 'A 0'],
      ['P1', '42,003'],
    ]);
  });

  test('is the one that gives known columns, not the most', () => {
    expect(texts('Part;A 0;Lot, shelf, room, house\nP1;42,003;7', 'Journals')).toEqual([
      ['Part', 'A 0', 'Lot, shelf, room, house'],
      ['P1', '42,003', '7'],
    ]);
  });

  test('is not decided by the data', () => {
    expect(texts('Part,Note\nP1,a;b;c;d\nP2,e;f;g;h')).toEqual([
      ['Part', 'Note'],
      ['P1', 'a;b;c;d'],
      ['P2', 'e;f;g;h'],
    ]);
  });

  test('leaves a lone column whole', () => {
    expect(texts('Size\n42,003\n42,004', 'Sizes')).toEqual([['Size'], ['42,003'], ['42,004']]);
  });

  test('is decided by the first filled line', () => {
    expect(texts('\n,,,\nPart,A 0\nP1,42.003')).toEqual([[], [], ['Part', 'A 0'], ['P1', '42.003']]);
  });
});

describe('below a title', () => {
  const HEADERS = ['Part', 'Engine', 'Fit', 'Position', 'A 0'];
  const ROW = ['P1', 'E1', 'main', '1', '42,003'];

  test.each([
    ['a comma in the title', 'Crank, green', ';'],
    ['a semicolon in the title', 'Crank; green; old; used; spare; bent', '\t'],
    ['two lines of titles', 'Crank, green\n\nold, spare', ';'],
  ])('the headers name the delimiter: %s', (_, title, delimiter) => {
    const source = [title, HEADERS.join(delimiter), ROW.join(delimiter)].join('\n');
    expect(texts(source).slice(-2)).toEqual([HEADERS, ROW]);
  });
});

describe('cells', () => {
  test.each([
    ['a number with leading zeros', '007', '007'],
    ['a decimal', '42.0030', '42.0030'],
    ['a word for a boolean', 'TRUE', 'TRUE'],
    ['a formula-like text', '=1+1', '=1+1'],
    ['outer spaces', ' 42.003 ', ' 42.003 '],
    ['an inch sign', '1.6536"', '1.6536"'],
    ['a doubled quote', '"1.6536"""', '1.6536"'],
    ['a quoted delimiter', '"a;b"', 'a;b'],
    ['a quoted line end', '"a\r\nb"', 'a\nb'],
  ])('stay as they are: %s', (_, written, read) => {
    expect(texts(`Part;Note\nP1;${written}\n`)).toEqual([
      ['Part', 'Note'],
      ['P1', read],
    ]);
  });

  test('are absent where blank, and keep their places', () => {
    expect(texts('Part;A 0;A 90\nP1;;"  "\n\n;42;\n\n;;\n')).toEqual([
      ['Part', 'A 0', 'A 90'],
      ['P1'],
      [],
      [null, '42'],
    ]);
  });

  test('stand in rows whatever ends the lines', () => {
    expect(texts('Part\r\nP1\rP2\nP3\r\n')).toEqual([['Part'], ['P1'], ['P2'], ['P3']]);
  });

  test('are none in an empty text', () => {
    expect(texts('')).toEqual([]);
    expect(texts('sep=;')).toEqual([]);
  });
});

test.each([
  ['an opening quote without a closing one', 'Part;Note\nP1;a\nP2;"b\nP3;c\n', 3],
  ['goes on behind its closing quote', 'Part;Note\nP1;a\nP2;"b" c\nP3;d\n', 3],
])('refuses %s', (words, source, row) => {
  const read = () => parseCsv(source, 'Journals', 'book/Journals.csv');
  expect(read).toThrow(UserError);
  expect(read).toThrow(new RegExp(`^book/Journals.csv: .*${words}.* in row ${row};`));
});
