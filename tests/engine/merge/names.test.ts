/** Names that two books share, and what they are called in the stock. */
import { expect, test } from 'vitest';
import { Context } from '../../../src/engine/assess/context.js';
import type { Book } from '../../../src/engine/book/book.js';
import { type Sheets, table, um } from '../book-of.js';
import { cellsOf, readAnew, stockOf } from './merged.js';

const JOURNAL = { Part: 'J1', Engine: 'E1', Fit: 'big end', Position: 1, 'A 0': 42 };
const ROD = { Part: 'R1', Engine: 'E1', Position: 1, 'A 0': 45 };

const namesOf = (book: Book, sheet: string) =>
  book.parts.of(sheet).map(({ name, engine }) => `${name} of ${engine}`);

test('a part or crank named alike in two books gets the name of its book, and a rod follows its crank', () => {
  const one = { Journals: table(JOURNAL), Rods: table(ROD, { ...ROD, Part: 'R2' }) };
  const other = {
    Journals: table({ ...JOURNAL, Part: ' j1 ' }),
    Rods: table({ ...ROD, Part: 3, Engine: 'e1' }),
  };
  const shelf = { Rods: table({ ...ROD, Part: 'r1' }), Cases: table({ ...ROD, Part: 'J1' }) };
  const stock = stockOf(one, other, shelf);
  for (const book of [stock, readAnew(stock)]) {
    expect(namesOf(book, 'Journals')).toEqual(['a J1 of a E1', 'b j1 of b E1']);
    // The shelf has no crank of its own: its rod names one that is no more.
    expect(namesOf(book, 'Rods')).toEqual(['a R1 of a E1', 'R2 of a E1', '3 of b e1', 'c r1 of E1']);
    expect(namesOf(book, 'Cases')).toEqual(['J1 of E1']);
  }
});

const GAUGE = { Gauge: 'mic', 'Max error': 0.002, Resolution: 0.001, 'Set from': 'ring' };
const RING = { Gauge: 'ring', 'Max error': 0.001 };
const INCH = { Setup: table({ Item: 'Length unit', Value: 'in' }) };
const gaugesOf = ({ gauges }: Book) => gauges.map(({ gauge, setFrom }) => `${gauge} from ${setFrom}`);

test('a gauge is one where all that is known of it is the same, whatever it is typed in', () => {
  const one = { Gauges: table(GAUGE, RING) };
  const inches = {
    Gauge: 'MIC',
    'Max error': '2 µm',
    Resolution: '0,001 mm',
    'Set from': 'Ring',
    Material: 'Steel',
  };
  const other = { ...INCH, Gauges: table(inches, { ...RING, 'Max error': '0.001 mm' }) };
  const stock = stockOf(one, other);
  expect(gaugesOf(stock)).toEqual(['mic from ring', 'ring from undefined']);
  expect(cellsOf(stock, 'Gauges')).toHaveLength(3);
});

test('a gauge that another zero was set by is another gauge', () => {
  const stock = stockOf(
    { Gauges: table(GAUGE, RING), Rods: table({ ...ROD, Gauge: 'mic' }) },
    {
      Gauges: table(GAUGE, { ...RING, 'Max error': 0.003 }),
      Rods: table({ ...ROD, Part: 'R2', Gauge: 'Mic' }),
    },
  );
  const expected = [
    'a mic from a ring',
    'a ring from undefined',
    'b mic from b ring',
    'b ring from undefined',
  ];
  for (const book of [stock, readAnew(stock)]) {
    expect(gaugesOf(book)).toEqual(expected);
    expect(book.parts.of('Rods').map(({ gauge }) => gauge)).toEqual(['a mic', 'b Mic']);
    const context = new Context(book);
    const errors = ['a mic', 'b mic'].map((name) => {
      const found = context.gaugeOf(name);
      return 'gauge' in found && found.gauge!.systematic.map(({ maxError }) => maxError);
    });
    expect(errors).toEqual([
      [um(2), um(1)],
      [um(2), um(3)],
    ]);
  }
});

test('a circle of gauges ends', () => {
  const circle = { Gauges: table({ ...RING, 'Set from': 'mic' }, { ...GAUGE }) };
  expect(gaugesOf(stockOf(circle, circle))).toEqual(['ring from mic', 'mic from ring']);
});

const limits = (material: string, type: string): Sheets => ({
  Limits: table({
    'Engine type': type,
    Fit: 'main',
    'Clearance min': 0.02,
    'Clearance max': 0.05,
    'Bore material': material,
  }),
});
const expansions = (book: Book) => {
  const context = new Context(book);
  return book.limits.map(({ boreMaterial }) => boreMaterial && context.material(boreMaterial)?.value);
};

test.each([
  ['a material of two expansions', 'alloy', 22, 24, [22, 24]],
  ['a built-in material that one book makes another', 'aluminium', 22, undefined, [22, 23]],
  ['a material of one expansion', 'alloy', 22, '22.0', [22, 22]],
])('%s', (_, name, one, other, expected) => {
  const materials = (expansion: string | number | undefined): Sheets =>
    expansion === undefined ? {} : { Materials: table({ Material: name, Expansion: expansion }) };
  const stock = stockOf(
    { ...limits(name, 'X'), ...materials(one) },
    { ...limits(name.toUpperCase(), 'Y'), ...materials(other) },
  );
  for (const book of [stock, readAnew(stock)]) {
    expect(expansions(book)).toEqual(expected);
    expect(book.bad).toEqual([]);
  }
});

test.each([
  ['of another book only', {}],
  ['with a refused expansion', { Materials: table({ Material: 'alloy', Expansion: 'about 20' }) }],
])('a material %s stays refused', (_, own) => {
  const known = { ...limits('alloy', 'X'), Materials: table({ Material: 'alloy', Expansion: 22 }) };
  const unknown = { ...limits('alloy', 'Y'), ...own, Gauges: table({ ...RING, Material: 'alloy' }) };
  for (const books of [
    [known, unknown],
    [unknown, known],
  ]) {
    const stock = stockOf(...books);
    for (const book of [stock, readAnew(stock)]) {
      const ofType = (type: string) => book.limits.find(({ engineType }) => engineType === type)!;
      expect(ofType('X').bad).toEqual([]);
      expect(new Context(book).material(ofType('X').boreMaterial!)?.value).toBe(22);
      expect(ofType('Y').bad).toMatchObject([{ header: 'Bore material', found: 'the text "alloy"' }]);
      expect(book.gauges[0]!.bad).toMatchObject([{ header: 'Material' }]);
    }
  }
});

test('engines of two books are two where they have cylinders only', () => {
  const engine = (bore: number): Sheets => ({
    Cylinders: table({ Part: `C ${bore}`, Engine: 'E1', Position: 1, 'A 0': bore }),
    Pistons: table({ Part: `P ${bore}`, Engine: 'E1', Position: 1, 'A 0': bore - 0.05 }),
  });
  const stock = stockOf(engine(80), engine(82));
  for (const book of [stock, readAnew(stock)])
    expect(
      ['Cylinders', 'Pistons'].flatMap((sheet) => book.parts.of(sheet).map((row) => row.engine)),
    ).toEqual(['a E1', 'b E1', 'a E1', 'b E1']);
});
