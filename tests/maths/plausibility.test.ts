import { describe, expect, test } from 'vitest';
import { doubtsOf, type Expectation, repeatDoubt, slipOf } from '../../src/maths/plausibility.js';
import { rangeProbability, rangeQuantile } from '../../src/maths/studentized-range.js';

const mm = (value: number) => Math.round(value * 1_000_000);
const known = (given: Partial<Expectation> = {}): Expectation => ({
  kind: 'diameter',
  limits: undefined,
  sisters: [],
  peers: [],
  ...given,
});
const LIMITS = { low: mm(41.985), high: mm(42.005) };

// ISO 5725-6:1994, table 1, critical range factors f(n); typed from memory, printed to one decimal.
test.each([
  [2, 2.8],
  [3, 3.3],
  [4, 3.6],
  [5, 3.9],
  [6, 4.0],
  [8, 4.3],
  [10, 4.5],
])('the critical range of %i readings is %f standard deviations', (n, factor) => {
  expect(Math.abs(rangeQuantile(0.95, n) - factor)).toBeLessThanOrEqual(0.05);
  expect(rangeProbability(rangeQuantile(0.95, n), n)).toBeCloseTo(0.95, 6);
});

describe('a reading is doubted', () => {
  test.each([
    ['half a turn of the thimble from its sisters', 42.501, known({ sisters: [mm(42.001)] }), ['sisters']],
    ['a figure off in a wall', 1.487, known({ kind: 'wall', sisters: [mm(1.512)] }), ['sisters']],
    ['far below worn limits', 41.9, known({ limits: LIMITS }), ['limits']],
    ['half a millimetre from other parts', 42.5, known({ peers: [mm(42)] }), ['peers']],
    ['both ways', 32, known({ limits: LIMITS, sisters: [mm(42)] }), ['limits', 'sisters']],
  ] as const)('%s', (_, value, expectation, kinds) => {
    expect(doubtsOf(mm(value), expectation).map(({ kind }) => kind)).toEqual(kinds);
  });

  test.each([
    ['where nothing is known', 1, known()],
    ['a little beyond its limits: worn', 41.95, known({ limits: LIMITS })],
    ['as tapered as a bad journal', 42.04, known({ sisters: [mm(42.0)] })],
    ['a reground part among others', 41.75, known({ peers: [mm(42.0)] })],
    [
      'unlike the others where its own limits say it is usual',
      42,
      known({ limits: LIMITS, peers: [mm(60)] }),
    ],
  ] as const)('and not %s', (_, value, expectation) => {
    expect(doubtsOf(mm(value), expectation)).toEqual([]);
  });

  test('by how far it is outside', () => {
    const [doubt] = doubtsOf(mm(42.6), known({ sisters: [mm(42.0), mm(42.1)] }));
    expect(doubt).toMatchObject({ beyond: mm(0.5), range: { low: mm(42), high: mm(42.1) } });
  });
});

test.each([
  [1.6536, 'inches'],
  [1066.8, 'millimetres'],
  [4.2001, 'decimal point'],
  [42_001, 'decimal point'],
  [42.5, 'half a turn'],
  [42.3, 'digits exchanged'],
  [42.7, undefined],
] as const)('the slip of %f where 42 is usual: %s', (value, slip) => {
  expect(slipOf(mm(value), known({ limits: LIMITS, sisters: [mm(42.001)] }))?.cause).toBe(slip);
});

/**
 * The pitch of a micrometer's thimble: 0.5 mm (1 mm is known too) of a metric one, DIN 863-1, from memory; 0.025 in
 * (40 threads an inch) of an inch one, common practice, no published source.
 */
describe('what it would be without the slip', () => {
  const inch = (value: number) => Math.round(value * 25_400_000);
  const round = { sisters: [mm(42.001), mm(42.003)] };
  const inches = { sisters: [inch(1.6535), inch(1.6536)] };
  const [IN_MM, IN_INCHES] = [
    { typed: 'mm', book: 'mm' },
    { typed: 'in', book: 'in' },
  ] as const;

  test.each([
    ['half a turn too much', mm(42.502), round, IN_MM, 'half a turn', mm(42.002)],
    ['half a turn too little', mm(41.502), round, IN_MM, 'half a turn', mm(42.002)],
    ['a turn too much', mm(43.002), round, IN_MM, 'a turn', mm(42.002)],
    ['a turn too little', mm(41.002), round, IN_MM, 'a turn', mm(42.002)],
    ['a turn of an inch thimble too much', inch(1.6785), inches, IN_INCHES, 'a turn', inch(1.6535)],
    ['a turn of an inch thimble too little', inch(1.6285), inches, IN_INCHES, 'a turn', inch(1.6535)],
    [
      'an inch thimble, in a book in mm',
      inch(1.6785),
      inches,
      { typed: 'in', book: 'mm' },
      'a turn',
      inch(1.6535),
    ],
    [
      'an inch thimble, typed in mm in a book in inches',
      mm(42.637),
      round,
      { typed: 'mm', book: 'in' },
      'a turn',
      mm(42.002),
    ],
    ['a turn of an inch thimble, where nobody has one', mm(42.637), round, IN_MM, undefined, undefined],
    [
      'half a metric turn, where nobody has one',
      inch(1.6535) + mm(0.5),
      inches,
      IN_INCHES,
      undefined,
      undefined,
    ],
    ['inches', mm(1.6536), round, IN_MM, 'inches', mm(42.00144)],
    ['millimetres', inch(42.002), inches, IN_INCHES, 'millimetres', mm(42.002)],
    ['ten times', mm(420.02), round, IN_MM, 'decimal point', mm(42.002)],
    ['a tenth', mm(4.2002), round, IN_MM, 'decimal point', mm(42.002)],
    ['two digits exchanged', mm(42.2), { sisters: [mm(42.02)] }, IN_MM, 'digits exchanged', mm(42.02)],
    ['over the decimal point', mm(40.202), { sisters: [mm(42.002)] }, IN_MM, 'digits exchanged', mm(42.002)],
    ['of inches', inch(1.6356), inches, IN_INCHES, 'digits exchanged', inch(1.6536)],
    ['of micrometres', mm(24.002), round, { typed: 'µm', book: 'mm' }, 'digits exchanged', mm(42.002)],
    [
      'digits that are no neighbours',
      mm(42.201),
      { sisters: [mm(42.102 - 0.3)] },
      IN_MM,
      undefined,
      undefined,
    ],
  ] as const)('%s', (_words, value, expectation, units, cause, without) => {
    expect(slipOf(value, known(expectation), units)).toEqual(cause && { cause, value: without });
  });

  test('of several the one that comes nearest to what is expected', () => {
    // 42.501: half a turn makes 42.001, two digits exchanged 42.051, both within the margin of the limits.
    expect(slipOf(mm(42.501), known({ limits: LIMITS }))).toEqual({
      cause: 'half a turn',
      value: mm(42.001),
    });
    expect(slipOf(mm(42.501), known({ sisters: [mm(42.045)] }))).toMatchObject({ cause: 'digits exchanged' });
  });
});

test.each([
  ['a step of Undersizes is usual', 41.495, true],
  ['and so is what is worn beyond it', 41.45, true],
  ['what lies between the steps is not', 41.7, false],
])('%s', (_words, value, usual) => {
  const undersizes = [{ low: mm(41.485), high: mm(41.505) }];
  expect(doubtsOf(mm(value), known({ limits: LIMITS, undersizes }))).toHaveLength(usual ? 0 : 1);
});

describe('repeats', () => {
  const gauge = { repeatability: mm(0.001), maxError: mm(0.004), resolution: 0 };

  test.each([
    ['agree within 2.77 standard deviations', [42, 42.0027], gauge, undefined],
    ['differ by more', [42, 42.0028], gauge, mm(0.0028)],
    ['three may differ by more than two', [42, 42.0015, 42.0033], gauge, undefined],
    [
      'may differ by a step of the gauge besides',
      [42, 42.003],
      { ...gauge, resolution: mm(0.001) },
      undefined,
    ],
    [
      'without a repeatability: within twice the greatest error',
      [42, 42.008],
      { ...gauge, repeatability: 0 },
      undefined,
    ],
    ['without a repeatability: beyond it', [42, 42.0081], { ...gauge, repeatability: 0 }, mm(0.0081)],
    [
      'of a gauge of which nothing is known',
      [42, 43],
      { repeatability: 0, maxError: 0, resolution: 0 },
      undefined,
    ],
    ['that are none', [42], gauge, undefined],
  ] as const)('%s', (_, values, use, spread) => {
    const doubt = repeatDoubt(values.map(mm), use);
    expect(doubt && 'spread' in doubt ? doubt.spread : undefined).toBe(spread);
  });
});
