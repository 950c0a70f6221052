/** Matched sets as a machinist would sign them: what is good stays, halves are pairs, worn cranks take nothing. */
import { describe, expect, test } from 'vitest';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import type { MatchedSet } from '../../../src/engine/assess/matched-sets.js';
import { pickList } from '../../../src/engine/assess/pick-list.js';
import { PICK_LIST } from '../../../src/engine/columns/set-columns.js';
import { matchingNotes } from '../../../src/engine/words/matching-notes.js';
import { sequenceOf } from '../../../src/maths/matching/random.js';
import { bookOf, type Plain, type Sheets, table } from '../book-of.js';

type Row = Record<string, Plain>;

const BIG_END = { 'Engine type': 'X', Fit: 'big end' };
const LIMITS = { ...BIG_END, 'Clearance min': 0.02, 'Clearance max': 0.05, Aim: 0.035 };
const setup = (...items: [string, Plain][]) =>
  table({ Item: 'Length unit', Value: 'mm' }, ...items.map(([Item, Value]) => ({ Item, Value })));

const assessed = (sheets: Sheets) => assessBook(bookOf(sheets), { seconds: 30 });

/** In µm off its nominal. */
const off = (nominal: number, um: number) => Math.round(1000 * nominal + um) / 1000;

interface Stock {
  readonly journals: Row[];
  readonly rods: Row[];
  readonly shells: Row[];
}

/** Engines of four big ends with their own rods and pairs, at clearances from 24 to 46 µm: all in range. */
function enginesThatRan(count: number, seed: number): Stock {
  const random = sequenceOf(seed);
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const stock: Stock = { journals: [], rods: [], shells: [] };
  for (let engine = 1; engine <= count; engine++) {
    for (let pin = 1; pin <= 4; pin++) {
      const place = { Engine: `E${engine}`, Position: pin };
      const [worn, wall, clearance] = [whole(0, 20), whole(-3, 3), whole(24, 46)];
      stock.journals.push({ Part: `J${engine}-${pin}`, ...BIG_END, ...place, 'A 0': off(48, -worn) });
      stock.rods.push({ Part: `R${engine}-${pin}`, ...place, 'A 0': off(51, clearance - worn + 2 * wall) });
      for (const Half of ['upper', 'lower'])
        stock.shells.push({ Part: `${Half[0]}${engine}-${pin}`, ...place, Half, 'Wall 1': off(1.5, wall) });
    }
  }
  return stock;
}

const sheetsOf = ({ journals, rods, shells }: Stock, more: Sheets = {}): Sheets => ({
  Limits: table(LIMITS),
  Journals: table(...journals),
  Rods: table(...rods),
  Shells: table(...shells),
  ...more,
});

const isOwn = ({ journal, parts }: MatchedSet) =>
  [parts.bore, parts.upper, parts.lower].every(
    (part) => part?.row.engine === journal.row.engine && part.row.position === journal.row.position,
  );

describe('what is in range stays', () => {
  test.each([1, 2, 3])(
    'eight engines that are all in range keep all of their parts, seed %d',
    async (seed) => {
      const { fits, sets, matching } = await assessed(sheetsOf(enginesThatRan(8, seed)));
      expect(fits.map(({ status }) => status)).toEqual(Array(32).fill('in range'));
      expect(sets).toHaveLength(32);
      expect(sets.filter((set) => !isOwn(set))).toEqual([]);
      expect(matching!.stages.map(({ reached, bound }) => reached - bound)).toEqual(Array(5).fill(0));
    },
  );

  test('of eight engines one big end is tight: no set that is in range is broken without need', async () => {
    const stock = enginesThatRan(8, 4);
    stock.rods[5] = { ...stock.rods[5]!, 'A 0': off(50.95, 0) };
    const spare = { Part: 'spare', 'A 0': off(51.02, 0) };
    const { sets } = await assessed(sheetsOf({ ...stock, rods: [...stock.rods, spare] }));
    expect(sets).toHaveLength(32);
    expect(sets.filter((set) => !isOwn(set)).map(({ journal }) => journal.row.name)).toEqual(['J2-2']);
  });

  test('with Prefer closest they move', async () => {
    const stock = enginesThatRan(8, 1);
    const { sets } = await assessed(sheetsOf(stock, { Setup: setup(['Prefer', 'closest']) }));
    expect(sets.filter(isOwn).length).toBeLessThan(16);
  });
});

describe('a single engine', () => {
  const notesOf = async (stock: Stock, more: Sheets = {}) =>
    matchingNotes(await assessed(sheetsOf(stock, more)));

  test('that is in range: no part has to move', async () => {
    expect(await notesOf(enginesThatRan(1, 1))).toContain('No part has to move.');
  });

  test('whose typed Fits are in range is left as it is, though no row says where its parts ran', async () => {
    const { journals, rods, shells } = enginesThatRan(1, 2);
    const nowhere = ({ Engine: _engine, Position: _position, ...row }: Row): Row => row;
    const Fits = table(
      ...journals.map(({ Part, Engine, Position }, place) => ({
        ...{ Engine, Fit: 'big end', Position, Journal: Part, Bore: rods[3 - place]!.Part },
        'Upper shell': shells[2 * place]!.Part,
        'Lower shell': shells[2 * place + 1]!.Part,
      })),
    );
    const swapped = rods.map((rod, place) => ({ ...nowhere(rod), 'A 0': rods[3 - place]!['A 0']! }));
    const stock = { journals, rods: swapped, shells: shells.map(nowhere) };
    const assessment = await assessed(sheetsOf(stock, { Fits }));
    expect(assessment.fits.map(({ status }) => status)).toEqual(Array(4).fill('in range'));
    expect(assessment.sets.map(({ names }) => names.bore)).toEqual(['R1-4', 'R1-3', 'R1-2', 'R1-1']);
    expect(matchingNotes(assessment)).toContain('No part has to move.');
  });

  test('of which two rods change places says so', async () => {
    const stock = enginesThatRan(1, 1);
    const [first, second] = [stock.rods[0]!, stock.rods[1]!];
    stock.rods.splice(0, 2, { ...first, 'A 0': second['A 0']! }, { ...second, 'A 0': first['A 0']! });
    stock.journals[0] = { ...stock.journals[0]!, 'A 0': off(47.9, 0) };
    stock.journals[1] = { ...stock.journals[1]!, 'A 0': off(48.1, 0) };
    const walls = (at: number, wall: number) => {
      for (const each of [2 * at, 2 * at + 1])
        stock.shells[each] = { ...stock.shells[each]!, 'Wall 1': wall };
    };
    walls(0, 1.5);
    walls(1, 1.5);
    stock.rods[0] = { ...stock.rods[0]!, 'A 0': off(51.135, 0) };
    stock.rods[1] = { ...stock.rods[1]!, 'A 0': off(50.935, 0) };
    expect(await notesOf(stock)).toContain('2 parts move: rod R1-2 to big end 1 and rod R1-1 to big end 2.');
  });

  test('says how many of its sets are expected outside', async () => {
    const gauges = { Gauges: table({ Gauge: 'mic', 'Max error': 0.008 }) };
    const stock = enginesThatRan(1, 1);
    const rods = stock.rods.map((rod) => ({ ...rod, Gauge: 'mic' }));
    const assessment = await assessed(sheetsOf({ ...stock, rods }, gauges));
    const outside = assessment.sets.reduce((sum, { chance }) => sum + 1 - chance, 0);
    expect(outside).toBeGreaterThan(0);
    expect(matchingNotes(assessment).filter((note) => note.startsWith('Expected outside'))).toEqual([
      `Expected outside: ${outside < 0.05 ? 'less than 0.1' : outside.toFixed(1)} of ${assessment.sets.length} fits.`,
    ]);
  });
});

/** Cranks without rods of their own, and of used parts a shelf: pairs that ran together, single halves, new ones. */
function dealersStock(seed: number): Stock {
  const random = sequenceOf(seed);
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const journals = [1, 2, 3, 4, 5].flatMap((crank) =>
    [1, 2, 3, 4].map((Position) => ({
      ...{ Part: `J${crank}-${Position}`, ...BIG_END, Engine: `C${crank}`, Position },
      'A 0': off(48, -whole(0, 30)),
    })),
  );
  const rods = Array.from({ length: 22 }, (_, at) => ({ Part: `R${at}`, 'A 0': off(51.03, whole(-25, 15)) }));
  const shells = Array.from({ length: 16 }, (_, at) => {
    const place = { Engine: `sold ${Math.floor(at / 4)}`, Position: (at % 4) + 1 };
    const wall = () => off(1.5, whole(-4, 8));
    return ['upper', 'lower'].map((Half) => ({ Part: `${Half} ${at}`, ...place, Half, 'Wall 1': wall() }));
  });
  const lone = Array.from({ length: 10 }, (_, at) => ({
    ...{ Part: `lone ${at}`, Half: at % 2 === 0 ? 'upper' : 'lower', 'Wall 1': off(1.5, whole(-4, 8)) },
  }));
  return { journals, rods, shells: [...shells.flat(), ...lone] };
}

const SOLD = table(
  { ...BIG_END, Mark: 'S', Price: 30, 'Wall from': 1.499, 'Wall to': 1.501 },
  { ...BIG_END, Mark: 'T', Price: 34, 'Wall from': 1.509, 'Wall to': 1.511 },
);

describe("a dealer's stock", () => {
  test.each([1, 2, 3, 4, 5])(
    'breaks no pair and mixes no new half with a used one, seed %d',
    async (seed) => {
      const more = { 'New shells': SOLD, Setup: setup(['New shells', 'yes']) };
      const { sets, toBuy, matching } = await assessed(sheetsOf(dealersStock(seed), more));
      expect(matching!.completeEngines).toHaveLength(5);
      for (const { found, names } of sets) {
        const [upper, lower] = [found.upper, found.lower];
        expect(upper.from, JSON.stringify(names)).toBe(lower.from);
        const mates = [upper, lower].map((taken) => (taken.from === 'stock' ? taken.shell.mates : undefined));
        expect(mates[0], JSON.stringify(names)).toBe(mates[1]);
      }
      const bought = sets.filter(({ found }) => found.upper.from === 'new');
      expect(toBuy.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(bought.length);
      const prices = toBuy.reduce((sum, { priceInAll }) => sum + priceInAll!, 0);
      expect(matching!.stages.find(({ aim }) => aim === 'price of bought shells')!.reached).toBe(prices);
      for (const { half } of toBuy) expect(half).toBe('pair');
    },
  );

  test('with Halves free, breaks some', async () => {
    const { sets } = await assessed(sheetsOf(dealersStock(1), { Setup: setup(['Halves', 'free']) }));
    const isBroken = ({ parts: { upper, lower } }: MatchedSet) =>
      upper?.row.engine !== lower?.row.engine || upper?.row.position !== lower?.row.position;
    expect(sets.some(isBroken)).toBe(true);
  });

  test('the mate of a half that may not be used is not used either', async () => {
    const stock = enginesThatRan(1, 1);
    const shells = stock.shells.map((shell) => (shell.Part === 'u1-1' ? { ...shell, Usable: 'no' } : shell));
    const lone = { Part: 'lone', Half: 'upper', 'Wall 1': 1.5 };
    const { sets, leftOver } = await assessed(sheetsOf({ ...stock, shells: [...shells, lone] }));
    expect(sets.map(({ journal }) => journal.row.name)).toEqual(['J1-2', 'J1-3', 'J1-4']);
    expect(leftOver.map(({ part }) => part.row.name)).toContain('l1-1');
  });
});

test('with Rods stay a rod serves where it ran, and nowhere else', async () => {
  const stock = enginesThatRan(2, 1);
  stock.journals[0] = { ...stock.journals[0]!, Usable: 'no' };
  stock.rods[5] = { ...stock.rods[5]!, 'A 0': off(50.9, 0) };
  const boreOf = ({ sets }: Assessment) => sets.map(({ names }) => names.bore);
  expect(boreOf(await assessed(sheetsOf(stock)))).toContain('R1-1');
  expect(boreOf(await assessed(sheetsOf(stock, { Setup: setup(['Rods', 'stay']) })))).not.toContain('R1-1');
});

describe('worn fits', () => {
  const worn = enginesThatRan(1, 1);
  worn.rods[0] = { ...worn.rods[0]!, 'A 0': off(51.065, -20) };
  worn.journals[0] = { ...worn.journals[0]!, 'A 0': off(48, -20) };
  for (const at of [0, 1]) worn.shells[at] = { ...worn.shells[at]!, 'Wall 1': 1.5 };
  const Limits = table({ ...LIMITS, 'Service limit': 0.08 });

  test('are refused, and made where Worn fits allows them, the fewest', async () => {
    expect((await assessed(sheetsOf(worn, { Limits }))).matching!.completeEngines).toEqual([]);
    const { sets, matching } = await assessed(
      sheetsOf(worn, { Limits, Setup: setup(['Worn fits', 'allow']) }),
    );
    expect(matching!.completeEngines).toEqual(['e1']);
    expect(sets.map(({ status }) => status).sort()).toEqual([
      'in range',
      'in range',
      'in range',
      'within service limit',
    ]);
    expect(matching!.stages.find(({ aim }) => aim === 'fits in range')).toMatchObject({
      reached: 3,
      bound: 3,
    });
  });
});

describe('a crank that cannot be completed', () => {
  /** Engine H has a journal beyond use; engine O lacks one rod. Both want the pair of H. */
  const stock = enginesThatRan(2, 1);
  stock.journals[0] = { ...stock.journals[0]!, 'A 0': off(47.5, 0) };
  const nowhere = stock.rods.map(({ Engine: _engine, Position: _position, ...row }) => row);
  const scarce = { ...stock, rods: nowhere.slice(1, 5) };

  test('takes nothing that another could use', async () => {
    const { sets, matching } = await assessed(sheetsOf(scarce, { Setup: setup(['Halves', 'free']) }));
    expect(matching!.hopelessEngines).toEqual(['e1']);
    const counts = (engine: string) => sets.filter(({ journal }) => journal.row.engine === engine).length;
    expect(counts('E2')).toBeGreaterThanOrEqual(counts('E1'));
    const [open] = matching!.stages.slice(1);
    expect(open).toMatchObject({ aim: 'filled journals of engines that could be completed' });
  });

  test('is not on the pick list beside complete ones', async () => {
    const { sets, matching } = await assessed(sheetsOf(stock));
    expect(matching!.completeEngines).toEqual(['e2']);
    expect(new Set(sets.map(({ engine }) => engine))).toEqual(new Set(['E1', 'E2']));
    const picked = PICK_LIST.rows(await assessed(sheetsOf(stock)));
    expect(new Set(picked.map(({ set }) => set.engine))).toEqual(new Set(['E2']));
    expect(pickList(sets).length).toBeGreaterThan(picked.length);
  });
});
