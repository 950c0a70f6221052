import { describe, expect, test } from 'vitest';
import { formOf, type Spot, spotsByStation, spotValue } from '../../src/maths/form.js';

const spot = (station: string, angle: number | undefined, ...readings: number[]): Spot => ({
  station,
  angle,
  readings,
});

test('a spot is the mean of its repeats, half away from zero', () => {
  expect(spotValue(spot('A', 0, 100, 101))).toBe(101);
});

describe('formOf', () => {
  const cases: [string, Spot[], number | undefined, number | undefined][] = [
    ['a full grid', [spot('A', 0, 10), spot('A', 90, 14), spot('B', 0, 13), spot('B', 90, 11)], 3, 4],
    ['one station', [spot('A', 0, 10), spot('A', 90, 14)], undefined, 4],
    ['one angle', [spot('A', 0, 10), spot('B', 0, 14)], 4, undefined],
    ['no angle twice, no station twice', [spot('A', 0, 10), spot('B', 90, 14)], undefined, undefined],
    ['a hole in the grid', [spot('A', 0, 10), spot('A', 90, 14), spot('B', 0, 30)], 20, 4],
    ['one spot', [spot('A', 0, 10)], undefined, undefined],
    [
      'walls have no form',
      [spot('Wall 1', undefined, 10), spot('Wall 2', undefined, 14)],
      undefined,
      undefined,
    ],
    ['equal readings have a form of 0', [spot('A', 0, 10), spot('A', 90, 10), spot('B', 0, 10)], 0, 0],
  ];
  test.each(cases)('%s', (_words, spots, taper, outOfRound) => {
    expect(formOf(spots)).toMatchObject({ taper, outOfRound });
  });

  test('size, largest and smallest are of spot means', () => {
    // Means 10 and 15: the repeat of 20 is no extreme.
    expect(formOf([spot('A', 0, 10), spot('A', 90, 10, 20)])).toMatchObject({
      size: 13,
      largest: 15,
      smallest: 10,
    });
  });

  test('the greatest of stations and of angles counts', () => {
    const spots = [spot('A', 0, 0), spot('A', 90, 5), spot('B', 0, 9), spot('B', 90, 2), spot('C', 0, 1)];
    expect(formOf(spots)).toMatchObject({ taper: 9, outOfRound: 7 });
  });

  test('no spots have no form', () => {
    expect(() => formOf([])).toThrow(RangeError);
  });
});

describe('spotsByStation', () => {
  test('takes the readings station by station', () => {
    expect(spotsByStation([1, 2, 3, 4, 5, 6], 2).map(({ station, angle }) => [station, angle])).toEqual([
      ['0', 0],
      ['0', 1],
      ['0', 2],
      ['1', 0],
      ['1', 1],
      ['1', 2],
    ]);
  });

  test('refuses stations that cannot share evenly', () => {
    expect(() => spotsByStation([1, 2, 3], 2)).toThrow(RangeError);
  });
});
