/** The matching of bores that were measured with their shells in: they bring them, and take no others. */
import { describe, expect, test } from 'vitest';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import { pickList } from '../../../src/engine/assess/pick-list.js';
import { explain } from '../../../src/engine/explain/explain.js';
import { explanationLines } from '../../../src/engine/explain/explanation-words.js';
import { partsMeant } from '../../../src/engine/explain/find-parts.js';
import { unmatchedRows } from '../../../src/engine/words/not-matched.js';
import { bookOf, type Plain, type Sheets, table } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const BIG_END = { 'Engine type': 'X', Fit: 'big end' };
const LIMITS = { ...BIG_END, 'Clearance min': 0.02, 'Clearance max': 0.05 };
const BUY = table({ Item: 'New shells', Value: 'yes' });
const NEW = table({ ...BIG_END, Half: 'either', Mark: 'N', Price: 1, 'Wall from': 1.487, 'Wall to': 1.488 });

const at = (Position: number) => ({ Engine: 'C', Position });
const pin = (Position: number, cells: Cells = {}) => ({
  ...{ Part: `P${Position}`, ...at(Position), Fit: 'big end', 'A 0': 42 },
  ...cells,
});
const rod = (Part: string, size: number, cells: Cells = {}) => ({ Part, 'A 0': size, ...cells });
const IN = { 'Shells in': 'yes' };

const matched = (sheets: Sheets): Promise<Assessment> => assessBook(bookOf(sheets), { seconds: 20 });

/** Where each set has which parts. */
const setsOf = ({ sets }: Assessment) =>
  sets.map(({ position, names: { bore, upper, lower } }) => `${position}: ${bore} ${upper} ${lower}`.trim());

describe('a rod that was measured with its shells in', () => {
  const SHEETS: Sheets = {
    Limits: table(LIMITS),
    Setup: BUY,
    'New shells': NEW,
    // P1 suits R2 alone, and R1 alone suits P2.
    Journals: table(pin(1, { 'A 0': 41.98 }), pin(2)),
    Rods: table(rod('R1', 42.035, { ...at(1), ...IN }), rod('R2', 42.015, { ...at(2), ...IN })),
    Shells: table(
      { Part: 'U1', ...at(1), Half: 'upper', 'Wall 1': 1.4875, Bin: 'A' },
      { Part: 'L1', ...at(1), Half: 'lower', Bin: 'A' },
    ),
  };

  test('goes to another journal with the shells of its place; one without rows has blank cells', async () => {
    const assessment = await matched(SHEETS);
    expect(setsOf(assessment)).toEqual(['1: R2', '2: R1 U1 L1']);
    expect(assessment.sets.map(({ kind, status }) => [kind.name, status])).toEqual(
      Array(2).fill(['shell bearing, shells in', 'in range']),
    );
    expect(assessment.sets.map(({ clearance }) => clearance.clearance)).toEqual([35_000, 35_000]);
    expect(assessment.matching!.completeEngines).toEqual(['c']);
  });

  test('nothing is bought or picked for it, and its shells are not left over', async () => {
    const assessment = await matched(SHEETS);
    expect(assessment.toBuy).toEqual([]);
    expect(assessment.leftOver).toEqual([]);
    expect(pickList(assessment.sets).map(({ part }) => part.row.name)).toEqual(['P1', 'P2', 'R1', 'R2']);
  });

  test('ran together with them where it ran', async () => {
    const { sets } = await matched({ ...SHEETS, Journals: table(pin(1), pin(2, { 'A 0': 41.98 })) });
    expect(sets.map(({ names, found }) => [names.bore, found.ranTogether])).toEqual([
      ['R1', true],
      ['R2', true],
    ]);
  });

  test('its shells serve no other bore, however well they fit', async () => {
    const walls = (own: Cells) => ({ ...at(1), 'Wall 1': 1.4875, ...own });
    const assessment = await matched({
      ...{ Limits: table(LIMITS), Journals: table(pin(2)) },
      Rods: table(rod('R1', 43, { ...at(1), ...IN }), rod('R2', 45.01)),
      Shells: table(walls({ Part: 'U', Half: 'upper' }), walls({ Part: 'L', Half: 'lower' })),
    });
    expect(assessment.sets).toEqual([]);
    expect(unmatchedRows(assessment).map(({ why }) => why.split(';')[0])).toEqual([
      'no upper shell of its engine type and fit can be used: U in R1, which was measured with its shells in',
    ]);
    const [shell] = explain(partsMeant('U', assessment.book.parts.all()), assessment);
    expect(explanationLines(shell!)).toEqual([
      'Shell U may not be matched: in R1, which was measured with its shells in.',
    ]);
  });

  test('no bare rod goes without shells', async () => {
    const assessment = await matched({
      ...{ Limits: table({ ...LIMITS, 'Clearance max': 5 }), Journals: table(pin(1)) },
      Rods: table(rod('R1', 45.01), rod('R2', 90, IN)),
    });
    expect(assessment.sets).toEqual([]);
  });

  test('stands in the way of grinding: what other shells would make of it is not known', async () => {
    const ground = {
      ...{ Limits: table(LIMITS), 'New shells': NEW },
      Journals: table(pin(1), pin(2, { 'A 0': 41.9 })),
      Undersizes: table({ ...BIG_END, Step: '0.25', 'Journal min': 41.74, 'Journal max': 41.76 }),
    };
    const step = table({
      ...BIG_END,
      Half: 'either',
      Mark: 'G',
      Step: '0.25',
      'Wall from': 1.612,
      'Wall to': 1.613,
    });
    const bare = { Rods: table(rod('R1', 45.01), rod('R2', 45.01)) };
    const shells = { Shells: table({ Part: 'S', Half: 'either', Quantity: 2, 'Wall 1': 1.4875 }) };
    const grinds = async (more: Sheets) =>
      (await matched({ ...ground, 'New shells': step, ...more })).plans.flatMap(({ regrinds }) => regrinds);
    expect(await grinds({ ...bare, ...shells })).toHaveLength(1);
    expect(await grinds({ Rods: table(rod('R1', 42.035, IN), rod('R2', 45.01)) })).toEqual([]);
  });
});

describe('a case bore that was measured with its shells in', () => {
  const MAIN = { ...LIMITS, Fit: 'main' };
  const SHEETS: Sheets = {
    Limits: table(MAIN),
    Setup: BUY,
    'New shells': table({
      ...BIG_END,
      Fit: 'main',
      Half: 'either',
      Mark: 'N',
      'Wall from': 1,
      'Wall to': 1.001,
    }),
    Journals: table(pin(1, { Fit: 'main' })),
    Cases: table({ Part: 'C1', ...at(1), ...IN, 'A 0': 42.035 }),
    Shells: table({ Part: 'S', ...at(1), Fit: 'main', Half: 'either', Quantity: 2 }),
  };

  test('keeps them', async () => {
    const assessment = await matched(SHEETS);
    expect(setsOf(assessment)).toEqual(['1: C1 S S']);
    expect(assessment.sets[0]!.found.ranTogether).toBe(true);
    expect([assessment.toBuy, assessment.leftOver]).toEqual([[], []]);
  });

  test('and says so where they do not suit', async () => {
    const assessment = await matched({
      ...SHEETS,
      Cases: table({ Part: 'C1', ...at(1), ...IN, 'A 0': 42.1 }),
    });
    expect(unmatchedRows(assessment).map(({ why }) => why)).toEqual([
      'case C1 was measured with its shells in, which give no allowed fit: measure it bare to choose others',
    ]);
  });
});
