/** What is understood of an engine's description, and what is refused by the name of its option. */
import { describe, expect, test } from 'vitest';
import { blankBook } from '../../../src/engine/blank/blank-book.js';
import { describeEngine } from '../../../src/engine/blank/describe-engine.js';
import { anglesNearParting, type EngineDescription } from '../../../src/engine/blank/description.js';
import {
  type DescriptionTexts,
  descriptionItems,
  standardTexts,
} from '../../../src/engine/blank/description-items.js';
import { drawingOf } from '../../../src/engine/blank/figures.js';

const described = (texts: DescriptionTexts = {}) => describeEngine({ ...standardTexts(), ...texts });
const positionsOf = ({ places }: EngineDescription, fit: string) =>
  places.find(({ asked }) => asked.fit === fit)!.positions;
const headersOf = (name: string, texts: DescriptionTexts = {}) =>
  blankBook(described(texts))
    .sheets.find((sheet) => sheet.name === name)
    ?.columns.map(({ header }) => header)
    .filter((header) => /^([A-Z]|Front|Rear|Wall) \d/.test(header));

test('the standard is two stations, 0 and 90 for journals, three directions clear of the parting line for bores', () => {
  expect(headersOf('Journals')).toEqual(['A 0', 'A 90', 'B 0', 'B 90']);
  expect(headersOf('Rods')).toEqual(['A 0', 'A 45', 'A 135', 'B 0', 'B 45', 'B 135']);
  expect(anglesNearParting(described())).toEqual([]);
});

test.each([
  ['90', ['90']],
  ['0,75,105,111', ['75', '105']],
  ['255,290,291', ['255']],
])('bore angles %s: near the parting line are %j', (boreAngles, near) => {
  expect(anglesNearParting(described({ boreAngles }))).toEqual(near);
});

test('an inline six has six big ends and seven mains; positions may be named instead', () => {
  const six = described({ cylinders: '6' });
  expect([positionsOf(six, 'big end').length, positionsOf(six, 'main').length]).toEqual([6, 7]);
  const named = described({ bigEnds: '1-3, 5', mains: 'none' });
  expect([positionsOf(named, 'big end'), positionsOf(named, 'main')]).toEqual([['1', '2', '3', '5'], []]);
  expect(blankBook(named).sheets.map(({ name }) => name)).not.toContain('Cases');
});

test('repeats stand beside their spots, walls are numbered', () => {
  const texts = { stations: 'Front,Rear', journalAngles: '0', walls: '1', repeats: '2' };
  expect(headersOf('Journals', texts)).toEqual(['Front 0', 'Front 0 #2', 'Rear 0', 'Rear 0 #2']);
  expect(headersOf('Shells', texts)).toEqual(['Wall 1', 'Wall 1 #2']);
});

test('engines take their types; parts of several engines carry their engine in their name', () => {
  const { sheets } = blankBook(
    described({ types: 'short, long', engines: 'E1, E2=LONG', bigEnds: '1', mains: 'none' }),
  );
  const rods = sheets.find(({ name }) => name === 'Rods')!;
  expect(rods.rows.map((row) => row.slice(0, 3))).toEqual([
    ['E1 R1', 'short', 'E1'],
    ['E2 R1', 'long', 'E2'],
  ]);
});

test('a gauge stands in the rows of its parts only with its greatest error', () => {
  const { sheets } = blankBook(described({ journalGauge: 'M1 = 0.002', boreGauge: 'D1' }));
  const column = (name: string, header: string) => {
    const sheet = sheets.find((known) => known.name === name)!;
    const place = sheet.columns.findIndex((known) => known.header === header);
    return sheet.rows.map((row) => row[place]);
  };
  expect(new Set(column('Journals', 'Gauge'))).toEqual(new Set(['M1']));
  expect(new Set(column('Rods', 'Gauge'))).toEqual(new Set([undefined]));
  expect(column('Gauges', 'Gauge').slice(0, 3)).toEqual(['M1', 'D1', undefined]);
  expect(column('Gauges', 'Max error')[0]).toBe(0.002);
});

test.each([
  ['M1=0.002, M2=0.003', ['M1', 'M2'], [0.002, 0.003]],
  ['M1=0,002;M2=0,003', ['M1', 'M2'], [0.002, 0.003]],
  ['M1=0,002,M2=0,003', ['M1', 'M2'], [0.002, 0.003]],
  ['mic 25-50, mic 50-75', ['mic 25-50', 'mic 50-75'], [undefined, undefined]],
])('several gauges in one answer are several gauges: %s', (journalGauge, names, errors) => {
  const { sheets } = blankBook(described({ journalGauge }));
  const { rows } = sheets.find(({ name }) => name === 'Gauges')!;
  expect(rows.slice(0, 3).map(([gauge]) => gauge)).toEqual([...names, undefined]);
  expect(rows.slice(0, 2).map(([, error]) => error)).toEqual(errors);
  const journals = sheets.find(({ name }) => name === 'Journals')!;
  const gauge = journals.columns.findIndex(({ header }) => header === 'Gauge');
  // Which of them measures a part is chosen in its row.
  expect(new Set(journals.rows.map((row) => row[gauge]))).toEqual(new Set([undefined]));
});

test.each([
  ['A,B', 'P1', 'R1', 'M1'],
  ['P,R', 'PP1', 'RR1', 'M1'],
  ['Front,m', 'P1', 'R1', 'MM1'],
])('names of parts are read as no station of %s', (stations, pin, rod, main) => {
  const { sheets } = blankBook(described({ stations }));
  const parts = (name: string) => sheets.find((sheet) => sheet.name === name)!.rows.map(([part]) => part);
  expect(parts('Journals')).toEqual(expect.arrayContaining([pin, main]));
  expect(parts('Rods')).toContain(rod);
});

test('deviations have the column Set to, and readings that may be 0 or signed', () => {
  const column = (texts: DescriptionTexts, header: string) =>
    blankBook(described(texts))
      .sheets.find(({ name }) => name === 'Journals')!
      .columns.find((known) => known.header === header);
  expect(column({}, 'Set to')).toBeUndefined();
  expect(column({}, 'A 0')!.kind).toBe('size');
  expect(column({ deviations: 'yes' }, 'Set to')).toMatchObject({ kind: 'number' });
  expect(column({ deviations: 'yes' }, 'A 0')).toMatchObject({
    kind: 'number',
    help: expect.stringContaining('deviation from Set to'),
  });
});

test('strips have one row a bearing', () => {
  const texts = { strips: 'yes', bigEnds: '1-2', mains: '1' };
  const fits = blankBook(described(texts)).sheets.find(({ name }) => name === 'Fits')!;
  expect(fits.columns.map(({ header }) => header)).toEqual(['Engine', 'Fit', 'Position', 'Strip reading']);
  expect(fits.rows).toEqual([
    ['E1', 'big end', 1, undefined],
    ['E1', 'big end', 2, undefined],
    ['E1', 'main', 1, undefined],
  ]);
  expect(blankBook(described()).sheets.map(({ name }) => name)).not.toContain('Fits');
});

test('the angle of a crankpin counts from its own throw, of a main from that of No. 1, in words and on the drawing', () => {
  const book = blankBook(described());
  expect(book.guide.join(' ')).toContain(
    '0° of a crankpin is in line with its own throw, of a main with the throw of No. 1 crankpin',
  );
  const { shapes, description: words } = drawingOf('journal', described(), []);
  const written = shapes
    .flatMap((shape) => (shape.kind === 'text' ? [shape.text.replaceAll('\n', ' ')] : []))
    .join(' ');
  expect(written).toContain(
    '0° of a crankpin is in line with its own throw, of a main with the throw of No. 1',
  );
  expect(words).toContain("0 in line with a crankpin's own throw, of a main with the throw of No. 1");
});

describe('bores that are measured with their shells in', () => {
  const texts = { bores: 'with shells in', cylinders: '2' };
  const sheetOf = (name: string, own: DescriptionTexts = texts) =>
    blankBook(described(own)).sheets.find((sheet) => sheet.name === name);
  const headersIn = (name: string, own?: DescriptionTexts) =>
    sheetOf(name, own)!.columns.map(({ header }) => header);

  test.each(['Rods', 'Cases'])('%s say so in every row', (name) => {
    const { columns, rows } = sheetOf(name)!;
    const place = columns.findIndex(({ header }) => header === 'Shells in');
    expect(columns[place]!.choices).toEqual(['yes', 'no']);
    expect(new Set(rows.map((row) => row[place]))).toEqual(new Set(['yes']));
    expect(columns.at(-3)!.help).toContain('Bore, cap torqued, its shells in it at B 135');
  });

  test('Limits asks for the sizes of the bearing in place of the bare bore', () => {
    const sizes = (headers: readonly string[]) =>
      headers.filter((header) => /^(Bore|Bearing) (min|max)$/.test(header));
    expect(sizes(headersIn('Limits'))).toEqual(['Bearing min', 'Bearing max']);
    expect(sizes(headersIn('Limits', { cylinders: '2' }))).toEqual(['Bore min', 'Bore max']);
  });

  test('walls are not asked for, in sheet, guide or drawing', () => {
    expect(sheetOf('Shells')).toBeUndefined();
    const { guide } = blankBook(described(texts));
    expect(guide.join('\n')).not.toContain('wall');
    expect(guide).toContain('4. Journals: measure at every station and angle of the drawing.');
    expect(guide.join('\n')).toContain('with caps torqued and their shells in them');
  });

  test.each([
    ['bare', false],
    ['Bare', false],
    ['shells in', true],
    ['With shells in', true],
  ])('the answer %s', (bores, shellsIn) => {
    expect(described({ bores }).shellsIn).toBe(shellsIn);
    const asked = descriptionItems().filter(({ isPassedOver }) => !isPassedOver?.({ bores }));
    expect(asked.some(({ option }) => option === 'walls')).toBe(!shellsIn);
  });

  test('bare is the standard, and has no column for it', () => {
    expect(headersIn('Rods', { cylinders: '2' })).not.toContain('Shells in');
    expect(sheetOf('Shells', { cylinders: '2' })).toBeDefined();
  });
});

describe('is refused by the name of the option', () => {
  test.each([
    ['types', ' , '],
    ['types', 'a,A'],
    ['engines', 'E1=unknown'],
    ['engines', 'E1,e1'],
    ['cylinders', '0'],
    ['cylinders', '4.5'],
    ['cylinders', '999'],
    ['bigEnds', '4-1'],
    ['bigEnds', '1,1'],
    ['stations', 'AB'],
    ['stations', 'A,A'],
    ['stations', '*A'],
    ['journalAngles', '0,x'],
    ['journalAngles', '360'],
    ['journalAngles', '90:'],
    ['boreAngles', '0,0'],
    ['journalAngles', '0 (in)'],
    ['walls', '-1'],
    ['repeats', '10'],
    ['journalGauge', 'M1=wide'],
    ['journalGauge', '=0.002'],
    ['bores', 'in'],
    ['wallGauge', 'W1='],
    ['wallGauge', 'W1, w1=0.002'],
    ['deviations', 'maybe'],
    ['wallGauge', 'W1=-0.1'],
    ['unit', 'cm'],
    ['paper', 'a3'],
  ] as const)('%s "%s"', (name, text) => {
    const { option } = descriptionItems().find((known) => known.name === name)!;
    expect(() => described({ [name]: text })).toThrow(`--${option}: found "${text}"; expected`);
  });

  test('an engine with nothing to measure', () => {
    expect(() => described({ bigEnds: 'none', mains: 'none' })).toThrow('--mains: found "none"');
  });
});
