import { expect, test } from 'vitest';
import { assessMeasured } from '../../../src/engine/assess/assess.js';
import { explainFastener, fastenersMeant } from '../../../src/engine/explain/explain-fastener.js';
import { explanationLines } from '../../../src/engine/explain/explanation-words.js';
import { bookOf, table } from '../book-of.js';

const { fasteners, book } = assessMeasured(
  bookOf({
    Fasteners: table(
      {
        Engine: 'E1',
        Group: 'head',
        Number: 1,
        Torque: '98–108',
        Angle: 90,
        'Length 1': 49,
        'Length max': 48,
      },
      { Engine: 'E1', Group: 'head', Number: 2, 'Torque (lb·in)': undefined },
      { Engine: 'E2', Group: 'head' },
    ),
  }),
);

test.each([
  ['a name', ' e1 HEAD 2', ['E1 head 2']],
  ['a group of one engine', 'E1 head', ['E1 head 1', 'E1 head 2']],
  ['a group of all', 'head', ['E1 head 1', 'E1 head 2', 'E2 head']],
  ['none', 'E3 head', []],
  ['nothing', '', []],
])('%s', (_, query, meant) => {
  expect(fastenersMeant(query, book.fasteners).map(({ name }) => name)).toEqual(meant);
});

const saidOf = (at: number) => {
  const { engine } = fasteners[at]!.row;
  const group = book.fasteners.filter((row) => row.engine === engine);
  return explanationLines(explainFastener(fasteners[at]!, group));
};

test('what is said of it', () => {
  expect(saidOf(0)).toEqual([
    'Fastener E1 head 1 is to be renewed: longest is 1 mm over Length max 48 mm; uncertainty not given: no gauge. ' +
      'Its torque, as typed from the manual: 98–108 N·m (72.3–79.7 lb·ft), then turned on by 90°. ' +
      'Number 1 of 2 in the order of tightening, 2 in that of loosening.',
  ]);
  expect(saidOf(2)).toEqual([
    'Fastener E2 head has no limit typed, so that nothing is said of its use. ' +
      'No torque is typed, and oilgap gives none of its own.',
  ]);
});
