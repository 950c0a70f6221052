import { describe, expect, test } from 'vitest';
import { aimWithin, classify, middle, type SizeClass, shellClosestToAim } from '../../src/maths/classes.js';

const row = (mark: string, from: number, to: number): SizeClass => ({ mark, from, to });
const TOUCHING = [row('A', 100, 106), row('B', 106, 112), row('C', 112, 118)];
const GAP = [row('A', 100, 106), row('B', 110, 112)];
const OVERLAP = [row('C', 105, 112), row('B', 100, 107)];

describe('classify', () => {
  test.each([
    ['From belongs to its class', 100, TOUCHING, 'A'],
    ['To belongs to the next', 106, TOUCHING, 'B'],
    ['the largest To belongs to its class', 118, TOUCHING, 'C'],
    ['below', 99, TOUCHING, 'below A'],
    ['above', 119, TOUCHING, 'above C'],
    ['in a gap', 108, GAP, 'between A and B'],
    ['on the To before a gap', 106, GAP, 'between A and B'],
    ['in an overlap, in order of From', 105, OVERLAP, 'B/C'],
    ['at the To of the lower of two', 107, OVERLAP, 'C'],
    ['rows in any order', 101, [TOUCHING[2]!, TOUCHING[0]!, TOUCHING[1]!], 'A'],
    ['no classes', 101, [], ''],
    ['a row upside down takes no part', 104, [row('X', 106, 100), row('B', 106, 112)], 'below B'],
    ['one class inside another', 105, [row('wide', 100, 120), row('narrow', 104, 106)], 'wide/narrow'],
    ['two rows end at the largest To', 112, [row('A', 100, 112), row('B', 106, 112)], 'A/B'],
    ['a class of one size', 100, [row('A', 100, 100)], 'A'],
  ])('%s', (_words, size, classes, text) => {
    expect(classify(size, classes).text).toBe(text);
  });

  test('marks are given where a class holds the size, and only there', () => {
    expect(classify(105, OVERLAP).marks).toEqual(['B', 'C']);
    expect(classify(99, OVERLAP).marks).toEqual([]);
  });
});

test('the middle of a class is on the grain, half away from zero', () => {
  expect(middle(row('A', 100, 103))).toBe(102);
});

describe('shellClosestToAim', () => {
  // Middles 101 and 104 leave 8 and 2.
  const shells = [row('thin', 100, 102), row('thick', 103, 105)];
  test.each([
    ['the closer', 6, 'thin'],
    ['the closer', 4, 'thick'],
    ['the thicker at a tie', 5, 'thick'],
    ['far off, still the closer', 999, 'thin'],
  ])('%s: aim %i', (_words, aim, mark) => {
    expect(shellClosestToAim(1000, 790, aim, shells)?.mark).toBe(mark);
  });

  test('does not depend on the order of rows', () => {
    expect(shellClosestToAim(1000, 790, 5, [...shells].reverse())?.mark).toBe('thick');
  });

  test('none without candidates', () => {
    expect(shellClosestToAim(1000, 790, 5, [])).toBeUndefined();
  });
});

test.each([
  [200, 600, 0.5, 400],
  [200, 600, 0, 200],
  [200, 600, 1, 600],
  [0, 101, 0.5, 51],
  [-101, 0, 0.5, -51],
  // 0.35·30 = 10.5: in doubles 10.499999999999998.
  [0, 30, 0.35, 11],
])('aim within %i and %i at %f is %i', (min, max, share, aim) => {
  expect(aimWithin(min, max, share)).toBe(aim);
});
