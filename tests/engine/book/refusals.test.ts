/** What a cell may not hold, and how it is refused: file, sheet, cell, found, expected, what to do. */
import { describe, expect, test } from 'vitest';
import { sentenceOf } from '../../../src/engine/book/problems.js';
import { assess, bookOf, DATE, ERROR, FILE, type Plain, type Sheets, table, um } from '../book-of.js';

const journal = (cells: Readonly<Record<string, Plain>>) =>
  table({ Part: 'J1', Engine: 'E1', Fit: 'big end', Position: 1, ...cells });

function sentences(sheets: Sheets): string[] {
  return bookOf(sheets).bad.map((bad) => sentenceOf(FILE, bad));
}

describe('a reading', () => {
  test.each<[string, Plain, string]>([
    ['a date', DATE, 'a date or time (serial number 45000)'],
    ['TRUE', true, 'TRUE'],
    ['an error', ERROR, 'the error #N/A'],
    ['zero', 0, 'the number 0'],
    ['a negative number', -42.003, 'the number -42.003'],
    ['not a number', Number.NaN, 'the number NaN'],
    ['infinity', Number.POSITIVE_INFINITY, 'the number Infinity'],
    ['zero in text', '0,000 mm', 'the text "0,000 mm"'],
    ['minus in text', '\u221242.003', 'the text "\u221242.003"'],
    ['a word', 'n/a', 'the text "n/a"'],
    ['a mass', '42 g', 'the text "42 g"'],
    ['a temperature', '42 °C', 'the text "42 °C"'],
    ['a unit not known', '1.65 thou', 'the text "1.65 thou"'],
    ['a formula without a value', null, 'the formula "=A1" without a value'],
    ['a long text', 'x'.repeat(50), `the text "${'x'.repeat(40)}…"`],
  ])('%s', (_words, cell, found) => {
    expect(sentences({ Journals: journal({ 'A 0': cell }) })).toEqual([
      `${FILE}: Journals!E2 (A 0): found ${found}; expected a length above 0 (mm, in or µm); measure again or correct the cell.`,
    ]);
  });

  test('with two readings says both', () => {
    expect(sentences({ Journals: journal({ 'A 0 (µm)': '1,234' }) })).toEqual([
      `${FILE}: Journals!E2 (A 0): found the text "1,234"; expected a number with one reading, not 1.234 or 1234; ` +
        'type it as a number, or without the thousands mark.',
    ]);
  });

  test.each<[string, Plain]>([
    ['blank', undefined],
    ['an empty text', ''],
    ['spaces', ' \u00a0 '],
  ])('%s is not measured, never 0', (_words, cell) => {
    const { book, parts } = assess({ Journals: journal({ 'A 0': cell }) });
    expect(book.bad).toEqual([]);
    expect(parts.of('Journals')[0]!.status).toBe('not measured');
  });
});

describe('the texts of a column settle a sign', () => {
  const readings = (header: string, ...cells: string[]) => {
    const rows = cells.map((cell, at) => ({
      Part: `J${at}`,
      Engine: 'E1',
      Fit: 'main',
      Position: at,
      [header]: cell,
    }));
    return assess({ Journals: table(...rows) })
      .parts.of('Journals')
      .map(({ form }) => form?.size);
  };
  test.each<[string, string, string[], (number | undefined)[]]>([
    ['by a decimal comma', 'A 0 (µm)', ['42003,5', '42,125'], [um(42_003.5), um(42.125)]],
    ['by a decimal point', 'A 0 (µm)', ['42003.5', '42,125'], [um(42_003.5), um(42_125)]],
    ['by thousands', 'A 0 (µm)', ['1,042,003', '42,003'], [um(1_042_003), um(42_003)]],
    [
      'not where they disagree',
      'A 0 (µm)',
      ['42003,5', '42003.5', '42,125'],
      [um(42_003.5), um(42_003.5), undefined],
    ],
    [
      'by a text in mm, whose lone sign is decimal',
      'A 0 (µm)',
      ['42,003 mm', '42,125'],
      [um(42_003), um(42.125)],
    ],
    ['by a text in the unit of the book', 'A 0', ['42,003', '42,125 µm'], [um(42_003), um(42.125)]],
  ])('%s', (_words, header, cells, sizes) => {
    expect(readings(header, ...cells)).toEqual(sizes);
  });

  test('in a column of lengths without readings', () => {
    const { gauges } = bookOf({
      Gauges: [
        ['Gauge', 'Max error'],
        ['M1', '1,500'],
        ['M2', '1,250 µm'],
      ],
    });
    expect(gauges.map(({ maxError }) => maxError)).toEqual([um(1500), um(1.25)]);
  });
});

describe('another cell of a part', () => {
  test.each<[string, Plain, string, string]>([
    ['Mark', DATE, 'a name', 'type it as text'],
    ['Usable', 'maybe', 'yes or no', 'type one of these words'],
    ['Usable', true, 'yes or no', 'type one of these words'],
    ['Temperature', '20 mm', 'a temperature (°C or °F)', 'correct the cell'],
    ['Temperature', -101, 'a temperature from −100 to 400 °C', 'check the reading and its unit'],
    ['Temperature', '753 F', 'a temperature from −100 to 400 °C', 'check the reading and its unit'],
    ['Gauge', ERROR, 'a name', 'type it as text'],
  ])('%s: %s', (header, cell, expected, remedy) => {
    const [sentence] = sentences({ Journals: journal({ [header]: cell, 'A 0': 42.003 }) });
    expect(sentence).toContain(`${FILE}: Journals!E2 (${header}): found `);
    expect(sentence).toContain(`; expected ${expected}; ${remedy}.`);
  });

  test.each<[string, Plain, string]>([
    ['Quantity', 0, 'a whole number from 1'],
    ['Quantity', 1.5, 'a whole number from 1'],
    ['Quantity', '2 mm', 'a whole number from 1'],
    ['Half', 'middle', 'upper, lower or either'],
    ['Half', 3, 'upper, lower or either'],
  ])('%s of a shell: %s', (header, cell, expected) => {
    const row = { Part: 'S1', Half: 'upper', [header]: cell };
    expect(sentences({ Shells: table(row) })[0]).toContain(`expected ${expected}`);
  });

  test.each<Plain>([0, -1, '500 mm', DATE])('the Mass of a rod: %s', (cell) => {
    expect(sentences({ Rods: table({ Part: 'R1', Mass: cell }) })[0]).toContain(
      'expected a mass in g above 0',
    );
  });

  test('a row without its Part', () => {
    expect(sentences({ Rods: table({ Part: undefined, 'A 0': 45 }) })).toEqual([
      `${FILE}: Rods!A2 (Part): found nothing; expected the part's name; name the part.`,
    ]);
  });
});

describe('the tables', () => {
  const limits = (cells: Readonly<Record<string, Plain>>) => ({
    Limits: table({ 'Engine type': 'X', Fit: 'main', 'Clearance min': 0, 'Clearance max': 0.06, ...cells }),
  });

  test('limits of a clearance may be negative, limits of form zero', () => {
    const press = { 'Clearance min': -0.03, 'Clearance max': -0.01, 'Service limit': -0.005, Aim: -0.02 };
    const book = bookOf(limits({ ...press, 'Taper limit': 0, 'Out-of-round limit': 0 }));
    expect(book.bad).toEqual([]);
    expect(book.limits[0]).toMatchObject({
      ...{ clearanceMin: um(-30), clearanceMax: um(-10), serviceLimit: um(-5), aim: um(-20) },
      taperLimit: 0,
    });
  });

  test.each<[string, Plain]>([
    ['Taper limit', -0.01],
    ['Journal min', 0],
    ['Bore max', -1],
    ['Wear limit', 0],
  ])('%s %s is refused', (header, cell) => {
    expect(sentences(limits({ [header]: cell }))).toHaveLength(1);
  });

  test('a material in no table', () => {
    expect(sentences({ ...limits({ 'Journal material': 'unobtainium' }) })).toEqual([
      `${FILE}: Limits!E2 (Journal material): found the text "unobtainium"; expected a material of Materials or ` +
        'steel, cast iron, aluminium or magnesium; give its expansion in Materials.',
    ]);
  });

  test('a material of Materials, in any case', () => {
    const Materials = table({ Material: 'Bronze', Expansion: 18 });
    expect(sentences({ ...limits({ 'Bore material': ' BRONZE ' }), Materials })).toEqual([]);
  });

  test.each<Plain>([-1, 1001, 'much'])('an expansion of %s', (cell) => {
    expect(sentences({ Materials: table({ Material: 'odd', Expansion: cell }) })[0]).toContain(
      'expected an expansion in 1e-6 per K from 0 to 1000',
    );
  });

  test('gauge errors and prices may be zero, not less', () => {
    const Gauges = table({ Gauge: 'M1', 'Max error': 0, Resolution: 0, Repeatability: 0 });
    const shell = {
      'Engine type': 'X',
      Fit: 'main',
      Half: 'either',
      Mark: 'a',
      'Wall from': 1,
      'Wall to': 2,
    };
    expect(sentences({ Gauges, 'New shells': table({ ...shell, Price: 0 }) })).toEqual([]);
    expect(sentences({ 'New shells': table({ ...shell, Price: -1 }) })[0]).toContain('a price of 0 or more;');
    expect(sentences({ 'New shells': table({ ...shell, Price: 1e8 }) })[0]).toContain(
      'a price of 0 or more, less than 100000000',
    );
    expect(bookOf({ 'New shells': table({ ...shell, Price: 10 / 3 }) }).newShells[0]!.price).toBe(3.3333);
  });

  test('one bad cell leaves the rest of its row and the other rows', () => {
    const book = bookOf({
      Journals: table(
        { Part: 'J1', Engine: 'E1', Fit: 'main', Position: 1, 'A 0': 'x', 'A 90': 42 },
        { Part: 'J2', Engine: 'E1', Fit: 'main', Position: 2, 'A 0': 42, 'A 90': 42 },
      ),
    });
    expect(book.parts.of('Journals').map(({ bad, readings }) => [bad.length, readings.length])).toEqual([
      [1, 1],
      [0, 2],
    ]);
  });
});
