import { expect, test } from 'vitest';
import { agreeingGroups, groupAt, largestGroup, sizeGroups } from '../../src/maths/agreeing-groups.js';

test.each([
  ['all agree', [42, 41.97, 42.04], [[0, 1, 2]]],
  ['neighbours in order of size belong together', [42, 42.08, 42.04], [[0, 1, 2]]],
  ['on the margin they agree', [42, 42.05], [[0, 1]]],
  ['one is apart', [42, 42.5, 42.001], [[0, 2], [1]]],
  [
    'groups come by their first value',
    [42.5, 42, 42.501, 42.001],
    [
      [0, 2],
      [1, 3],
    ],
  ],
  ['none', [], []],
] as const)('%s', (_words, values, groups) => {
  expect(
    agreeingGroups(
      values.map((value) => Math.round(value * 1e6)),
      50_000,
    ),
  ).toEqual(groups);
});

test('sizes of a long list: groups in order of size, and which of them a size lies in', () => {
  const groups = sizeGroups([5, 1, 2, 9, 6], 1);
  expect(groups).toEqual([
    { low: 1, high: 2, count: 2 },
    { low: 5, high: 6, count: 2 },
    { low: 9, high: 9, count: 1 },
  ]);
  expect([0, 1, 2, 4, 6, 9, 10].map((size) => groupAt(groups, size)?.low)).toEqual([
    undefined,
    1,
    1,
    undefined,
    5,
    9,
    undefined,
  ]);
});

test.each([
  ['in a group', 2, 1],
  ['a margin off it', 3, 1],
  ['between two, the lower', 3.5, 1],
  ['farther', 7.5, undefined],
])('the group of a size within a margin: %s', (_words, size, low) => {
  const groups = sizeGroups([1, 2, 5, 6], 1);
  expect(groupAt(groups, size, size === 3.5 ? 1.5 : 1)?.low).toBe(low);
});

test.each([
  ['the larger', [1, 1, 5], 1],
  ['none of two alike', [1, 5], undefined],
  ['none', [], undefined],
  ['a larger one behind two alike', [1, 5, 9, 9], 9],
])('the largest group: %s', (_words, sizes, low) => {
  expect(largestGroup(sizeGroups(sizes, 1))?.low).toBe(low);
});
