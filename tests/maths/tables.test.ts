import { describe, expect, test } from 'vitest';
import type { SizeClass } from '../../src/maths/classes.js';
import {
  checkClasses,
  checkSelection,
  crossedLimits,
  type SelectionTables,
  sameMark,
  selectedShell,
  worstCase,
} from '../../src/maths/tables.js';

const row = (mark: string, from: number, to: number): SizeClass => ({ mark, from, to });

describe('checkClasses', () => {
  test('touching classes are consistent', () => {
    expect(checkClasses([row('B', 106, 112), row('A', 100, 106)])).toEqual([]);
  });

  test('From above To stands on its row alone', () => {
    expect(checkClasses([row('A', 100, 106), row('B', 112, 106)])).toEqual([
      { row: 1, kind: 'from above to' },
    ]);
  });

  test('a gap stands on both rows and names the other', () => {
    const gap = { kind: 'gap', from: 106, to: 107 };
    expect(checkClasses([row('B', 107, 112), row('A', 100, 106)])).toEqual([
      { row: 1, mark: 'B', ...gap },
      { row: 0, mark: 'A', ...gap },
    ]);
  });

  test('an overlap stands on both rows', () => {
    const overlap = { kind: 'overlap', from: 105, to: 106 };
    expect(checkClasses([row('A', 100, 106), row('B', 105, 112)])).toEqual([
      { row: 0, mark: 'B', ...overlap },
      { row: 1, mark: 'A', ...overlap },
    ]);
  });

  test('a narrow class inside a wide one is no gap', () => {
    const kinds = checkClasses([row('wide', 100, 120), row('narrow', 104, 106), row('next', 120, 130)]).map(
      ({ kind }) => kind,
    );
    expect(kinds).toEqual(['overlap', 'overlap']);
  });

  test('a mark named twice stands on both rows, whatever its case', () => {
    expect(checkClasses([row('a', 100, 106), row(' A ', 106, 112)])).toEqual([
      { row: 0, kind: 'mark named twice', mark: 'a' },
      { row: 1, kind: 'mark named twice', mark: ' A ' },
    ]);
  });
});

test('marks match without regard to case and outer spaces', () => {
  expect(sameMark(' ab', 'AB ')).toBe(true);
  expect(sameMark('a b', 'ab')).toBe(false);
});

describe('checkSelection', () => {
  const tables: SelectionTables = {
    journals: [row('1', 500, 510), row('2', 510, 520)],
    bores: [row('A', 700, 706)],
    shells: [row('N', 80, 82), row('L', 75, 77)],
    clearance: { min: 20, max: 60 },
  };
  const pair = (journalMark: string, boreMark: string, shellMark: string) => ({
    journalMark,
    boreMark,
    shellMark,
  });
  const GOOD = [pair('1', 'A', 'N'), pair('2', 'A', 'L')];

  test('every pair once, every worst case inside', () => {
    expect(checkSelection(GOOD, tables)).toEqual([]);
  });

  test('no rows, no findings', () => {
    expect(checkSelection([], tables)).toEqual([]);
  });

  test('a missing pair stands on the first row', () => {
    expect(checkSelection([GOOD[1]!], tables)).toEqual([
      { row: 0, kind: 'pair missing', journalMark: '1', boreMark: 'A' },
    ]);
  });

  test('a pair named twice stands on both rows', () => {
    const twice = { kind: 'pair named twice', journalMark: '1', boreMark: 'A' };
    expect(checkSelection([...GOOD, pair('1', 'a', 'N')], tables)).toEqual([
      { row: 0, ...twice },
      { row: 2, ...twice, boreMark: 'a' },
    ]);
  });

  test.each([
    ['journal', pair('3', 'A', 'N'), '3'],
    ['bore', pair('1', 'Z', 'N'), 'Z'],
    ['shell', pair('1', 'A', 'M'), 'M'],
  ])('an unknown %s mark is named', (of, bad, mark) => {
    expect(checkSelection([...GOOD, bad], tables)).toContainEqual({ row: 2, kind: 'unknown mark', of, mark });
  });

  test('a worst case outside of the clearance is named with both ranges', () => {
    const narrow = { ...tables, clearance: { min: 27, max: 60 } };
    // 700 − 2·82 − 510 = 26 and 706 − 2·80 − 500 = 46.
    expect(checkSelection(GOOD, narrow)).toEqual([
      { row: 0, kind: 'worst case outside', worst: [26, 46], range: [27, 60] },
      { row: 1, kind: 'worst case outside', worst: [26, 46], range: [27, 60] },
    ]);
  });

  test.each([
    ['without a clearance', { ...tables, clearance: undefined }],
    ['with a shell class upside down', { ...tables, shells: [row('N', 82, 80), row('L', 77, 75)] }],
  ])('no worst case %s', (_words, partial) => {
    expect(checkSelection(GOOD, partial)).toEqual([]);
  });
});

describe('a mark', () => {
  const tables: SelectionTables = {
    journals: [row('1', 500, 510)],
    bores: [row('A', 700, 706)],
    shells: [row('N', 80, 82)],
    clearance: { min: 20, max: 60 },
  };
  const rows = [{ journalMark: '1', boreMark: 'A', shellMark: 'N' }];

  test('named twice may mean either: the worst of both counts', () => {
    // 700 − 2·82 − 510 = 26 with the first, 706 − 2·70 − 500 = 66 with the second.
    expect(checkSelection(rows, { ...tables, shells: [...tables.shells, row('n', 70, 71)] })).toEqual([
      { row: 0, kind: 'worst case outside', worst: [26, 66], range: [20, 60] },
    ]);
  });

  test('of a row that is no class is known, has no worst case, and wants its pair', () => {
    const others = { journal: ['2'], bore: ['A'], shell: ['N'] };
    expect(checkSelection(rows, { ...tables, bores: [], shells: [], otherMarks: others })).toEqual([
      { row: 0, kind: 'pair missing', journalMark: '2', boreMark: 'A' },
    ]);
  });
});

test('the worst case has both walls at one end', () => {
  expect(worstCase(row('1', 500, 510), row('A', 700, 706), row('N', 80, 82))).toEqual([26, 46]);
});

test('crossed limits are those whose min lies above max', () => {
  const pairs = [
    { name: 'equal', min: 5, max: 5 },
    { name: 'crossed', min: 6, max: 5 },
    { name: 'no max', min: 6, max: undefined },
    { name: 'no min', min: undefined, max: 5 },
  ];
  expect(crossedLimits(pairs).map(({ name }) => name)).toEqual(['crossed']);
});

describe('selectedShell', () => {
  const rows = [
    { journalMark: '1', boreMark: 'A', shellMark: 'N' },
    { journalMark: '2', boreMark: 'A', shellMark: 'L' },
    { journalMark: '2', boreMark: 'a ', shellMark: 'M' },
  ];
  test.each([
    ['1', 'A', 'N'],
    [' 1', 'a', 'N'],
    ['2', 'A', undefined],
    ['3', 'A', undefined],
  ])('journal %s and bore %s', (journalMark, boreMark, shell) => {
    expect(selectedShell(rows, journalMark, boreMark)).toBe(shell);
  });
});
