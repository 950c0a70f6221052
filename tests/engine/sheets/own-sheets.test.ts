/** The matching sheets as they are written, from books of few parts. */
import { describe, expect, test } from 'vitest';
import { bookJson } from '../../../src/commands/book-json.js';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import { writtenWorkbook } from '../../../src/engine/sheets/written-workbook.js';
import { missingSentence, stopSentence } from '../../../src/engine/words/proof-words.js';
import { bookOf, type Sheets, table, um } from '../book-of.js';

/** A clearance of 45.01 − 2 · 1.4875 − 42 = 0.035 mm; all names typed as numbers. */
const NUMBERED: Sheets = {
  Setup: table({ Item: 'Prefer', Value: 'closest' }),
  Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.05 }),
  Journals: table(
    { Part: 101, Engine: 7, Position: 1, Fit: 'big end', 'A 0': 42 },
    { Part: 102, Engine: 7, Position: '2', Fit: 'big end', 'A 0': 42 },
  ),
  Rods: table({ Part: 31, Engine: 7, Position: 1, 'A 0': 45.01 }),
  Shells: table(
    { Part: 51, Engine: 7, Position: 1, Half: 'upper', 'Wall 1': 1.4875 },
    { Part: 52, Engine: 7, Position: 1, Half: 'lower', 'Wall 1': 1.4875 },
    { Part: '053', Half: 'lower', 'Wall 1': 1.4875 },
  ),
};

const assessed = (sheets: Sheets) => assessBook(bookOf(sheets), { seconds: 30 });

/** The cells of a written sheet, without its headers. */
function valuesOf(assessment: Assessment, name: string) {
  const sheet = writtenWorkbook(assessment, { valuesOnly: true }).sheets.find((each) => each.name === name)!;
  return Array.from(sheet.rows, (row) => row.map((cell) => cell?.value)).slice(1);
}

describe('a name typed as a number is written as a number', () => {
  test.each([
    ['Matched sets', [[7, 'big end', 1, 101, 31, 51, 52]]],
    ['Not matched', [[7, 'big end', '2', 102]]],
    [
      'Pick list',
      [
        ['', 101, 'journal', 7, 'big end', 1],
        ['', 52, 'lower shell', 7, 'big end', 1],
        ['', 31, 'rod', 7, 'big end', 1],
        ['', 51, 'upper shell', 7, 'big end', 1],
      ],
    ],
    ['Left over', [['053', 'lower shell', '']]],
    [
      'Fits',
      [
        [7, 'big end', 1, 101, 31, 51, 52],
        [7, 'big end', '2', 102],
      ],
    ],
  ])('%s', async (name, expected) => {
    const rows = valuesOf(await assessed(NUMBERED), name);
    expect(rows.map((row, place) => row.slice(0, expected[place]!.length))).toEqual(expected);
  });

  test('Summary', async () => {
    expect(valuesOf(await assessed(NUMBERED), 'Summary')[0]![0]).toBe(7);
  });
});

test('To buy says what one costs and what all cost', async () => {
  const rows = valuesOf(
    await assessed({
      ...NUMBERED,
      Setup: table({ Item: 'New shells', Value: 'yes' }, { Item: 'New with used', Value: 'yes' }),
      Rods: table({ Part: 31, 'A 0': 45.01 }, { Part: 32, 'A 0': 45.01 }),
      Shells: table({ Part: 51, Half: 'upper', 'Wall 1': 1.4875 }),
      'New shells': table({
        'Engine type': 'X',
        Fit: 'big end',
        Half: 'either',
        Mark: 'B',
        'Wall from': 1.487,
        'Wall to': 1.488,
        Price: 0.1,
      }),
    }),
    'To buy',
  );
  // Four halves, one of them owned: three at 0.1.
  expect(rows).toEqual([['X', 'big end', 'either', 'B', 3, 0.1, 0.3, '7 big end 1, 7 big end 2']]);
});

describe('what stands below the stages in Summary', () => {
  const summaryText = (assessment: Assessment) =>
    valuesOf(assessment, 'Summary')
      .map(([first]) => first)
      .join('\n');

  test('nothing of time or books where all were read and all is proved', async () => {
    const assessment = await assessed(NUMBERED);
    expect([stopSentence(assessment), missingSentence(assessment)]).toEqual([undefined, undefined]);
    expect(summaryText(assessment)).not.toContain('stopped');
  });

  test('that the time ended the search, and how far it got', async () => {
    const whole = await assessed(NUMBERED);
    const { matching } = whole;
    const stages = matching!.stages.map((stage) =>
      stage.aim === 'distance from the aim' ? { ...stage, reached: um(2.5), bound: um(1) } : stage,
    );
    const stopped = { ...whole, matching: { ...matching!, stages }, seconds: 2 };
    const sentence =
      'Matching was stopped by its time of 2 seconds, before its sets were proved the best: ' +
      'total distance from the aim 0.0025 mm, proven best 0.001 mm. Give it more with --seconds.';
    expect(stopSentence(stopped)).toBe(sentence);
    expect(summaryText(stopped)).toContain(sentence);
  });

  test.each([
    [
      'the search ended by itself',
      { distance: 'search', kept: undefined },
      'The search ended short of the proof with time left: total distance from the aim 0.0025 mm, ' +
        'proven best 0.001 mm. The sets keep every rule, and are no farther than that from the best.',
    ],
    [
      'one gap stays by the time and one by the search',
      { distance: 'time', kept: 'search' },
      'Matching was stopped by its time of 2 seconds, before its sets were proved the best: ' +
        'total distance from the aim 0.0025 mm, proven best 0.001 mm. Give it more with --seconds. ' +
        'The search ended short of the proof with time left: fits kept as they ran 1, proven best 3. ' +
        'The sets keep every rule, and are no farther than that from the best.',
    ],
  ] as const)('why a gap stays: %s', async (_, { distance, kept }, sentence) => {
    const whole = await assessed(NUMBERED);
    const stages = whole.matching!.stages.map((stage) => {
      if (stage.aim === 'distance from the aim')
        return { ...stage, reached: um(2.5), bound: um(1), gapStays: distance };
      return stage.aim === 'pairs kept together' && kept
        ? { ...stage, reached: 1, bound: 3, gapStays: kept }
        : stage;
    });
    const stopped = { ...whole, matching: { ...whole.matching!, stages }, seconds: 2 };
    expect(stopSentence(stopped)).toBe(sentence);
    expect(summaryText(stopped)).toContain(sentence);
    const json = bookJson(stopped, undefined).matching!.stages;
    expect(json.map(({ gapStays }) => gapStays)).toEqual([null, null, null, distance, kept ?? null, null]);
  });

  test('which books the sets are not of', async () => {
    const assessment = await assessBook(bookOf(NUMBERED), { seconds: 30, missingBooks: ['shells.xlsx'] });
    const sentence = 'Not read: shells.xlsx. The matched sets are of the other books only.';
    expect(missingSentence(assessment)).toBe(sentence);
    expect(summaryText(assessment)).toContain(sentence);
  });
});
