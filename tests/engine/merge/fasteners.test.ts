/** Fasteners of several books as one stock: units stay, and engines of one name are told apart. */
import { expect, test } from 'vitest';
import { assessMeasured } from '../../../src/engine/assess/assess.js';
import { torqueText } from '../../../src/engine/assess/torque-words.js';
import { type Sheets, table } from '../book-of.js';
import { cellsOf, expectSameAnew, stockOf } from './merged.js';

const bolt = { Engine: 'E1', Group: 'head', Number: 1 };

test('a torque keeps its unit, which then stands in the cell', () => {
  const stock = stockOf(
    { Fasteners: table({ ...bolt, Torque: 98, 'Torque as printed (lb·ft)': '72–80' }) },
    { Fasteners: table({ ...bolt, 'Torque (kgf·m)': '10–11', 'Torque as printed (lb·ft)': 72.5 }) },
    { Fasteners: table({ ...bolt, 'Torque (lb·ft)': '98 N·m' }) },
  );
  expectSameAnew(stock);
  const torques = stock.fasteners.map(({ torque, torqueAsPrinted }) =>
    [torque, torqueAsPrinted].map((own) => own && torqueText(own)),
  );
  expect(torques).toEqual([
    ['98 N·m', '72–80 lb·ft'],
    ['10–11 kgf·m', '72.5 lb·ft'],
    ['98 N·m', undefined],
  ]);
  expect(cellsOf(stock, 'Fasteners')!.map((cells) => cells.slice(3, 5))).toEqual([
    ['Torque', 'Torque as printed'],
    [98, '72–80 lb·ft'],
    ['10–11 kgf·m', '72.5 lb·ft'],
    ['98 N·m', undefined],
  ]);
});

test('lengths of other units, each reading in its column', () => {
  const stock = stockOf(
    { Fasteners: table({ ...bolt, 'Length max': 48, 'Length 1': 47.5, 'Neck 1': 7 }) },
    {
      Setup: table({ Item: 'Length unit', Value: 'in' }),
      Fasteners: table({ ...bolt, Engine: 'E2', 'Length max': 2, 'Length 1': 1.9, 'Length 2': 2.1 }),
    },
  );
  expectSameAnew(stock);
  const found = assessMeasured(stock).fasteners.map(({ longest, thinnest, status }) => [
    longest,
    thinnest,
    status,
  ]);
  expect(found).toEqual([
    [47_500_000, 7_000_000, 'within limits'],
    [53_340_000, undefined, 'renew'],
  ]);
});

const namesOf = (...engines: readonly Sheets[]) => stockOf(...engines).fasteners.map(({ name }) => name);

test('bolts of one engine name in two books are of two engines', () => {
  const own = { Fasteners: table(bolt) };
  expect(namesOf(own, own)).toEqual(['a E1 head 1', 'b E1 head 1']);
  const stock = stockOf(own, own);
  expectSameAnew(stock);
  expect(assessMeasured(stock).fasteners.flatMap(({ why }) => why)).toEqual([]);
});

test('bolts follow the engine of their journals', () => {
  const journal = table({ Part: 'J1', Engine: 'E1', Fit: 'big end', Position: 1, 'A 0': 42 });
  const own = { Journals: journal, Fasteners: table(bolt) };
  expect(namesOf(own, { Journals: journal })).toEqual(['a E1 head 1']);
  // A book may have the journals of an engine and another its bolts.
  expect(namesOf({ Journals: journal }, { Fasteners: table(bolt) })).toEqual(['E1 head 1']);
});
