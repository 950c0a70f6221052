/** What may have been meant to be read and is not is said, and changes no number. */
import { describe, expect, test } from 'vitest';
import { resultHeaders } from '../../../src/engine/columns/result-headers.js';
import { bookOf, table } from '../book-of.js';

const AT_1 = { Part: 'J1', Engine: 'E1', Fit: 'big end', Position: 1 };

describe('a header that looks like a reading', () => {
  test.each(['A0', 'A-90', 'A_90', 'Center 10', 'B 0 mm', 'A 360', 'Rear-45'])('%s is named', (header) => {
    const { notices, parts } = bookOf({ Journals: table({ ...AT_1, 'C 0': 42, [header]: 41 }) });
    expect(parts.of('Journals')[0]!.readings).toHaveLength(1);
    expect(notices).toHaveLength(1);
    expect(notices[0]).toContain(`sheet Journals: found the header "${header}", which is not read`);
  });

  test.each(['Lot 3', 'Serial', 'Size wanted', 'Anneal 2'])('%s is plainly the user’s own', (header) => {
    expect(bookOf({ Journals: table({ ...AT_1, 'C 0': 42, [header]: 3 }) }).notices).toEqual([]);
  });

  test('Wall1 is named on Shells', () => {
    const { notices } = bookOf({ Shells: table({ Part: 'S1', Half: 'upper', Wall1: 1.5 }) });
    expect(notices).toEqual([expect.stringContaining('expected a reading headed such as "Wall 1"')]);
  });

  test('columns of an earlier run are not named', () => {
    const results = [
      'Size',
      'Largest',
      'Smallest',
      'Taper',
      'Out of round',
      'Class',
      'Size U',
      'Status',
      'Why',
    ];
    const written = Object.fromEntries(results.map((header) => [header, 'x']));
    expect(bookOf({ Journals: table({ ...AT_1, 'C 0': 42, ...written }) }).notices).toEqual([]);
  });
});

describe('an item of Setup that no setting has', () => {
  test('is named with the settings that there are', () => {
    const { notices, setup } = bookOf({
      Setup: [
        ['Item', 'Value'],
        ['Confidnce', 99],
      ],
      Journals: table({ ...AT_1, 'A 0': 42 }),
    });
    expect(setup.confidence).toBe(0.95);
    expect(notices).toEqual([expect.stringMatching(/found the item "Confidnce".+Confidence/)]);
  });

  test('settings themselves, with a unit too, are not named', () => {
    const { notices } = bookOf({
      Setup: [
        ['Item', 'Value'],
        ['confidence', 99],
        ['Half difference (µm)', 5],
      ],
      Journals: table({ ...AT_1, 'A 0': 42 }),
    });
    expect(notices).toEqual([]);
  });
});

test.each([
  ['with a column of the user behind them', [...resultHeaders('Journals'), 'Remark'], 1],
  ['at the right end', resultHeaders('Journals'), 0],
  ['twice, the last at the right end', [...resultHeaders('Journals'), ...resultHeaders('Journals')], 1],
  ['in part', resultHeaders('Journals').slice(1), 0],
])('results of an earlier run %s', (_words, headers, count) => {
  const { notices } = bookOf({ Journals: [['Part', 'Engine', 'Fit', 'Position', 'A 0', ...headers]] });
  expect(notices).toHaveLength(count);
  for (const notice of notices) expect(notice).toContain('sheet Journals: found results of an earlier run');
});

test('a new shell whose walls are upside down is never bought, and named', () => {
  const shell = { 'Engine type': 'X', Fit: 'main', Half: 'upper' };
  const { notices } = bookOf({
    'New shells': table(
      { ...shell, Mark: 'V', 'Wall from': 1.482, 'Wall to': 1.489 },
      { ...shell, Mark: 'W', 'Wall from': 1.489, 'Wall to': 1.482 },
    ),
  });
  expect(notices).toEqual([
    expect.stringContaining('New shells, row 3, mark "W": found Wall from above Wall to'),
  ]);
});
