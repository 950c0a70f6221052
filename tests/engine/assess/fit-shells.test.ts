/** The aim of a fit, and the shells that its marks and sizes ask for. */
import { describe, expect, test } from 'vitest';
import { DATE, type Plain, type Sheets, table, um } from '../book-of.js';
import { type Cells, fitOf } from './one-fit.js';

describe('the aim', () => {
  test.each<[string, Cells, Plain, number | undefined]>([
    ['the middle', {}, undefined, um(40)],
    ['a share', {}, 0.25, um(30)],
    ['a half grain away from zero', { 'Clearance max': 0.060001 }, undefined, um(40.001)],
    ['of Limits wins over Setup', { Aim: 0.03 }, 0.75, um(30)],
    ['of Limits, without a range', { Aim: 0.03, 'Clearance max': undefined }, undefined, um(30)],
    ['none without a range', { 'Clearance max': undefined }, undefined, undefined],
  ])('%s', (_words, limits, share, aim) => {
    const Setup = table({ Item: 'Aim', Value: share });
    expect(fitOf(0.04, { limits, sheets: { Setup } }).aim).toBe(aim);
  });
});

describe('Shell by marks', () => {
  const Classes = [
    ['Engine type', 'Fit', 'Of', 'Mark', 'From', 'To'],
    ['X', 'big end', 'journal', '1', 41.95, 41.97],
    ['X', 'big end', 'journal', '2', 41.97, 42],
    ['X', 'big end', 'journal', '3', 41.99, 42.01],
    ['X', 'big end', 'bore', 'A', 44.99, 45.01],
  ];
  const Selection = [
    ['Engine type', 'Fit', 'Journal mark', 'Bore mark', 'Shell mark'],
    ['X', 'big end', 1, 'A', 'n'],
    ['x', 'BIG END', '2', 'a', 'l'],
    ['X', 'big end', 3, 'A', 'm'],
    ['X', 'big end', 3, 'A', 'k'],
    ['X', 'big end', 4, 'A', undefined],
    ['X', 'main', 5, 'A', 'other fit'],
    [DATE, 'big end', 6, 'A', 'bad row'],
  ];
  test.each<[string, number, Cells, Cells, string | undefined]>([
    ['by both stamped marks', 0.04, { Mark: 2 }, { Mark: 'A' }, 'l'],
    ['by the measured classes where marks are missing', 0.04, {}, {}, 'n'],
    ['the mark wins over the measured class', 0.04, { Mark: '2' }, {}, 'l'],
    ['blank in an overlap', 0.005, {}, {}, undefined],
    ['blank outside the classes', 0.1, {}, {}, undefined],
    ['blank where Selection has two rows', 0.04, { Mark: 3 }, {}, undefined],
    ['blank where Selection has none', 0.04, { Mark: 9 }, {}, undefined],
    ['blank where its row is', 0.04, { Mark: 4 }, {}, undefined],
    ['blank by a row with a bad cell', 0.04, { Mark: 6 }, {}, undefined],
    ['blank by the row of another fit', 0.04, { Mark: 5 }, {}, undefined],
    ['blank without a measured class', 0.04, { 'A 0': 'x' }, {}, undefined],
  ])('%s', (_words, clearance, journal, bore, mark) => {
    expect(fitOf(clearance, { journal, bore, sheets: { Classes, Selection } }).shellByMarks).toBe(mark);
  });
});

describe('Shell by size', () => {
  const HEAD = ['Engine type', 'Fit', 'Half', 'Mark', 'Wall from', 'Wall to'];
  const newShells = (...rows: [Plain, Plain, Plain][]) => [
    HEAD,
    ...rows.map((row) => ['X', 'big end', 'either', ...row]),
  ];
  const Classes = [
    ['Engine type', 'Fit', 'Of', 'Mark', 'From', 'To'],
    ['X', 'big end', 'shell', 'class', 1.4, 1.6],
  ];
  // Bore 45, journal 41.96, aim 0.04: a wall of 1.5 meets it.
  test.each<[string, Sheets, string | undefined]>([
    [
      'the closest',
      { 'New shells': newShells(['a', 1.49, 1.492], ['b', 1.499, 1.5], ['c', 1.51, 1.512]) },
      'b',
    ],
    [
      'the thicker at a tie',
      { 'New shells': newShells(['thin', 1.497, 1.499], ['thick', 1.501, 1.503]) },
      'thick',
    ],
    [
      'the thicker at a tie, in any order',
      { 'New shells': newShells(['thick', 1.501, 1.503], ['thin', 1.497, 1.499]) },
      'thick',
    ],
    // Middles 1.499000.5 → 1.499001 and 1.501: 1998 and 2000 grains off.
    [
      'by middles on the grain',
      { 'New shells': newShells(['thick', 1.501, 1.501], ['thin', 1.499, 1.499001]) },
      'thin',
    ],
    ['new shells before classes', { 'New shells': newShells(['far', 1.3, 1.31]), Classes }, 'far'],
    [
      'classes where there are no new ones of the fit',
      { 'New shells': [HEAD, ['X', 'main', 'either', 'm', 1.5, 1.5]], Classes },
      'class',
    ],
    ['classes where the new ones are bad', { 'New shells': newShells(['bad', 'x', 1.5]), Classes }, 'class'],
    [
      'not one of a row with a bad cell',
      { 'New shells': [HEAD, [DATE, 'big end', 'either', 'bad', 1.5, 1.5]], Classes },
      'class',
    ],
    ['none', {}, undefined],
  ])('%s', (_words, sheets, mark) => {
    expect(fitOf(0.04, { sheets }).shellBySize).toBe(mark);
  });

  test('blank where a size or the aim is missing', () => {
    const sheets = { Classes };
    expect(fitOf(0.04, { sheets, journal: { 'A 0': undefined } }).shellBySize).toBeUndefined();
    expect(fitOf(0.04, { sheets, bore: { 'A 0': 'x' } }).shellBySize).toBeUndefined();
    expect(fitOf(0.04, { sheets, limits: { 'Clearance max': undefined } }).shellBySize).toBeUndefined();
  });

  test('needs no shells in place', () => {
    const fit = fitOf(0.04, { sheets: { Classes, Shells: [['Part', 'Half']] } });
    expect(fit).toMatchObject({ status: 'not measured', shellBySize: 'class' });
  });
});
