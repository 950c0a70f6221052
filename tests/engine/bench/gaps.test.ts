/** Gaps and run-outs at the bench. */
import { expect, test } from 'vitest';
import { BenchBook } from '../../../src/engine/bench/bench-book.js';
import { Dialogue } from '../../../src/engine/bench/dialogue.js';
import { blankSpots } from '../../../src/engine/bench/order.js';
import { placeText } from '../../../src/engine/bench/question.js';
import { modelOf, table } from '../book-of.js';

const at = { Engine: 'E1', Fit: 'end float' };
const read = { 'Gap 1': undefined, Goes: undefined, Stops: undefined };
const benchOf = () => {
  const book = new BenchBook(
    modelOf({
      Limits: table({ 'Engine type': 'X', Fit: 'end float', 'Clearance min': 0.1, 'Clearance max': 0.2 }),
      Gaps: table(
        { ...at, Position: 1, ...read },
        { ...at, Position: 2, ...read },
        { ...at, Position: 3, ...read },
      ),
    }),
  );
  return new Dialogue(book, blankSpots(book), { now: () => '', isPiped: false });
};
const asked = (dialogue: Dialogue) => {
  const question = dialogue.question();
  return question && placeText(question.spot);
};

test('a reading makes feelers needless, a feeler readings', () => {
  const dialogue = benchOf();
  expect(asked(dialogue)).toBe('Gaps E1 end float 1 Gap 1');
  expect(dialogue.question()!.usual).toBe('usual 0.1 to 0.2 mm (Limits)');
  expect(dialogue.answer('0.15').said).toEqual([
    'Gaps E1 end float 1 Gap 1: 0.15 mm',
    'E1 end float 1: gap 0.15 mm; in range',
  ]);
  expect(asked(dialogue)).toBe('Gaps E1 end float 2 Gap 1');
  dialogue.answer('s');
  expect(asked(dialogue)).toBe('Gaps E1 end float 2 Goes');
  expect(dialogue.answer('0.22').said[1]).toContain('E1 end float 2: loose (Goes is 0.02 mm over');
  expect(asked(dialogue)).toBe('Gaps E1 end float 2 Stops');
  dialogue.answer('0.25');
  expect(asked(dialogue)).toBe('Gaps E1 end float 3 Gap 1');
  expect(dialogue.answer('-0.01').refused).toEqual([]);
  expect(asked(dialogue)).toBeUndefined();
});

test('a blade is no negative length', () => {
  const dialogue = benchOf();
  dialogue.answer('s');
  expect(dialogue.answer('-0.1').refused[0]).toContain('expected a length of 0 or more');
});
