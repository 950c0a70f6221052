/** The sheet Gauge study: what is taken as a whole study, and what is said of one that is not. */
import { describe, expect, test } from 'vitest';
import { gaugeStudies } from '../../../src/engine/assess/gauge-study.js';
import { takenRepeatability } from '../../../src/engine/assess/taken-repeatability.js';
import { bookOf, type Plain, type Sheets, table, um } from '../book-of.js';

type Reading = Readonly<Record<string, Plain>>;

/** Two parts, two persons, two trials; the readings of a cell differ by `spread`. */
function rows(spread = 0.002, changes: Readonly<Record<string, Reading>> = {}): Reading[] {
  return [1, 2].flatMap((trial) =>
    ['A', 'B'].flatMap((person) =>
      [1, 2].map((part) => ({
        Gauge: 'M1',
        Part: part,
        Person: person,
        Trial: trial,
        Value: Number((42 + part * 0.01 + (trial - 1) * spread).toFixed(4)),
        ...changes[`${part}${person}${trial}`],
      })),
    ),
  );
}

const GAUGES = table({ Gauge: 'M1', 'Max error': 0.004, Repeatability: undefined });
const studied = (readings: readonly Reading[], others: Sheets = {}) =>
  bookOf({ Gauges: GAUGES, 'Gauge study': table(...readings), ...others });

test('two parts, persons and trials: 2 µm between trials are a repeatability of √2 µm', () => {
  const [study] = gaugeStudies(studied(rows()));
  expect(study).toMatchObject({ gauge: 'M1', parts: 2, persons: 2, trials: 2, why: [] });
  // Within: 4 cells of (−1, +1) µm, 8 µm² by 4 degrees; the interaction adds one degree and nothing else: 8/5.
  expect(study!.byAnalysis!.within.meanSquare).toBeCloseTo(2 * um(1) ** 2, 6);
  expect(study!.byAnalysis!.repeatability).toBeCloseTo(Math.sqrt(8 / 5) * um(1), 6);
  // Mean range 2 µm by d2* of 4 ranges of two, √(1.128² + 0.853²/4) = 1.206.
  expect(study!.byRange!.repeatability).toBeCloseTo(um(2) / Math.sqrt(1.12838 ** 2 + 0.8525 ** 2 / 4), 0);
  expect(study!.byAnalysis!.reproducibility).toBe(0);
});

test('gauges are studied each by itself, whatever the case of their names', () => {
  const other = rows().map((row) => ({ ...row, Gauge: 'm2' }));
  const studies = gaugeStudies(
    studied([...rows(), ...other, ...rows().map((row) => ({ ...row, Trial: `${row.Trial}b`, Gauge: 'm1' }))]),
  );
  expect(studies.map(({ gauge, trials }) => [gauge, trials])).toEqual([
    ['M1', 4],
    ['m2', 2],
  ]);
  expect(studies[1]!.why).toEqual(['gauge m2 is not in Gauges']);
});

test('one person, one part: what cannot be seen is left open', () => {
  const [study] = gaugeStudies(studied(rows().filter(({ Person, Part }) => Person === 'A' && Part === 1)));
  expect(study!.byAnalysis).toMatchObject({
    reproducibility: undefined,
    parts: undefined,
    categories: undefined,
  });
  expect(study!.byAnalysis!.repeatability).toBeCloseTo(Math.SQRT2 * um(1), 6);
  expect(study!.why).toHaveLength(2);
});

test('an interaction that chance does not give is named, and kept out of the repeatability', () => {
  // Person B reads part 2 a tenth of a millimetre off.
  const off = { '2B1': { Value: 42.12 }, '2B2': { Value: 42.122 } };
  const [study] = gaugeStudies(studied(rows(0.002, off)));
  expect(study!.byAnalysis!.isPooled).toBe(false);
  expect(study!.byAnalysis!.repeatability).toBeCloseTo(Math.SQRT2 * um(1), 6);
  expect(study!.why[0]).toContain('interact');
});

test('a gauge that shows no spread at all has endless categories, and no number of them', () => {
  const [study] = gaugeStudies(studied(rows(0)));
  expect(study!.byAnalysis).toMatchObject({
    repeatability: 0,
    gauge: 0,
    categories: Number.POSITIVE_INFINITY,
  });
});

describe('is no study yet where', () => {
  test.each([
    [
      'a reading is missing',
      rows(0.002, { '1A2': { Value: undefined } }),
      'not measured: part 1, A, trial 2',
    ],
    ['a reading is none', rows(0.002, { '1A2': { Value: 'wide' } }), 'found the text "wide"'],
    ['a row is missing', rows().slice(1), '7 of 8 readings'],
    ['a trial stands twice', rows(0.002, { '1A2': { Trial: 1 } }), 'named twice: part 1, A, trial 1'],
    [
      'a person is not named',
      rows(0.002, { '1A2': { Person: undefined } }),
      '1 row without a gauge, a part or a person',
    ],
    ['nothing was read twice', rows().filter(({ Trial }) => Trial === 1), 'repeatability needs two or more'],
  ])('%s', (_, readings, words) => {
    const [study] = gaugeStudies(studied(readings));
    expect(study).toMatchObject({ byAnalysis: undefined, byRange: undefined });
    expect(study!.why.join()).toContain(words);
  });
});

describe('the repeatability is taken into Gauges', () => {
  test('in the unit of the column, by name of what stood there', () => {
    const gauges = table({ Gauge: 'm1', 'Max error': 0.004, 'Repeatability (µm)': 3 });
    const { fills, sentences } = takenRepeatability(studied(rows(), { Gauges: gauges }));
    // √(8/5) µm.
    expect(fills).toEqual([{ sheet: 'Gauges', row: 1, column: 2, value: 1.265 }]);
    expect(sentences[0]).toContain(
      'Gauges!C2: Repeatability of gauge m1 is 1.265 µm, from Gauge study; it was 3.',
    );
  });

  test.each([
    ['there is no study', bookOf({ Gauges: GAUGES }), 'no sheet Gauge study'],
    ['it is not whole', studied(rows().slice(1)), '7 of 8 readings'],
    [
      'Gauges does not name the gauge',
      studied(rows().map((row) => ({ ...row, Gauge: 'M9' }))),
      'Gauges does not name it',
    ],
    [
      'there is no column',
      studied(rows(), { Gauges: table({ Gauge: 'M1', 'Max error': 1 }) }),
      'no column Repeatability',
    ],
  ])('and is not where %s', (_, book, words) => {
    const { fills, sentences } = takenRepeatability(book);
    expect(fills).toEqual([]);
    expect(sentences[0]).toContain(words);
  });
});
