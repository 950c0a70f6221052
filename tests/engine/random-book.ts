/**
 * Seeded books with everything that a user may type: units of book, header and cell, repeats, gauges in
 * chains, errors of gauges and expansions, temperatures, strips, blanks, refused cells, service limits, classes with slips, selection, new shells.
 */
import { type Random, seeded } from '../../scripts/demo/random.js';
import type { Plain, Sheets } from './book-of.js';
import { chance, type Draw, inBook, type Kind, type LengthUnit, refused, typed } from './random-draw.js';
import { gaugesSheet, kindsOf, limitsSheet, marksSheets, materialsSheet } from './random-tables.js';

interface ReadingColumn {
  readonly header: string;
  readonly unit: LengthUnit;
}

function readingColumns(draw: Draw, spots: readonly string[]): ReadingColumn[] {
  const { random, isInch } = draw;
  return spots.flatMap((spot) => {
    const repeats = chance(random, 25) ? random.between(2, 3) : 1;
    return Array.from({ length: repeats }, (_, place): ReadingColumn => {
      const name = place === 0 ? spot : `${spot} #${place + 1}`;
      if (chance(random, 85)) return { header: name, unit: isInch ? 'in' : 'mm' };
      const unit = random.pick(['mm', 'in', 'µm'] as const);
      return { header: random.pick([`${name} (${unit})`, `${name} [${unit}]`]), unit };
    });
  });
}

const TEXTS: readonly ((tenths: number) => string)[] = [
  (tenths) => `${typed(tenths, 'mm')} mm`,
  (tenths) => `${typed(tenths, 'mm')} mm`.replace('.', ','),
  (tenths) => `${typed(tenths, 'in')} in`,
  (tenths) => `${typed(tenths, 'in')}"`,
];

function readingCell({ random }: Draw, tenths: number, { unit }: ReadingColumn): Plain {
  if (chance(random, 8)) return undefined;
  if (chance(random, 0.4)) return refused(random);
  return chance(random, 3) ? random.pick(TEXTS)(tenths) : typed(tenths, unit);
}

function temperature({ random, isFahrenheit }: Draw): Plain {
  if (chance(random, 55)) return undefined;
  if (chance(random, 1)) return refused(random);
  const celsius = random.between(60, 320) / 10;
  if (chance(random, 5)) return `${celsius} °C`;
  return isFahrenheit ? Number((celsius * 1.8 + 32).toFixed(1)) : celsius;
}

interface PartPlan {
  readonly name: string;
  readonly kind: Kind;
  readonly engine: string;
  readonly position: number;
  readonly of: 'journal' | 'bore' | 'shell';
  readonly tenths: number;
  readonly own: Readonly<Record<string, Plain>>;
}

const STATIONS = ['A', 'B', 'Front', 'Mid', 'Rear'] as const;

function spotsOf({ random }: Draw, isShell: boolean): string[] {
  if (isShell) return Array.from({ length: random.between(1, 3) }, (_, place) => `Wall ${place + 1}`);
  const stations = Array.from({ length: random.between(1, 3) }, () => random.pick(STATIONS));
  const angles = random.pick([[0], [0, 90], [0, 60, 120]]);
  return [...new Set(stations)].flatMap((station) => angles.map((angle) => `${station} ${angle}`));
}

const GAUGES = { journal: ['M1', 'm1 ', 'M2'], bore: ['B1', 'B2'], shell: ['M1', 'W1'] } as const;

function partsSheet(draw: Draw, plans: readonly PartPlan[], isShell: boolean): Plain[][] {
  const { random } = draw;
  const columns = readingColumns(draw, spotsOf(draw, isShell));
  const named = Object.keys(Object.assign({}, ...plans.map(({ own }) => own)));
  const rows = plans.map(({ name, kind, engine, position, of, tenths, own }, place) => {
    const isTwin = place > 0 && chance(random, 1);
    const form = random.between(0, 60);
    const marks = kind.marks[of];
    const fixed: Plain[] = [
      isTwin ? plans[place - 1]!.name : name,
      chance(random, 3) ? undefined : kind.engineType,
      engine,
      chance(random, 2) ? undefined : position,
      chance(random, 70) ? random.pick(marks) : undefined,
      temperature(draw),
      chance(random, 80) ? random.pick(GAUGES[of]) : chance(random, 20) ? 'lost' : undefined,
      chance(random, 4) ? 'no' : undefined,
      ...named.map((header) => own[header]),
    ];
    const isRead = !chance(random, 4);
    const readings = columns.map((column) =>
      isRead ? readingCell(draw, tenths + random.between(-form, form), column) : undefined,
    );
    return [...fixed, ...readings];
  });
  const heading = ['Part', 'Engine type', 'Engine', 'Position', 'Mark', 'Temperature', 'Gauge', 'Usable'];
  return [[...heading, ...named, ...columns.map(({ header }) => header)], ...rows];
}

function plansOf(draw: Draw): Record<'Journals' | 'Rods' | 'Cases' | 'Shells', PartPlan[]> {
  const { random, aside, kinds } = draw;
  const plans = { Journals: [], Rods: [], Cases: [], Shells: [] } as Record<string, PartPlan[]>;
  for (const kind of kinds) {
    const engine = `E${kind.engineType}`;
    for (let position = 1; position <= random.between(2, 4); position++) {
      const key = `${kind.engineType}${kind.fit[0]}${position}`;
      const at = { kind, engine, position };
      const around = (middle: number, spread: number) => middle + random.between(-spread, spread);
      const { journal, bore, wall } = kind;
      const journalOwn = { Fit: kind.fit };
      plans.Journals!.push({
        ...at,
        name: `J${key}`,
        of: 'journal',
        tenths: around(journal, 200),
        own: journalOwn,
      });
      const isMain = kind.fit === 'main';
      const shellsIn = shellsInCell(aside);
      const boreOwn = { ...(!isMain && { Mass: random.between(600, 610) }), 'Shells in': shellsIn };
      if (!chance(random, 4))
        plans[isMain ? 'Cases' : 'Rods']!.push({
          ...at,
          name: `B${key}`,
          of: 'bore',
          tenths: around(bore, 150) - (shellsIn === 'yes' ? 2 * wall : 0),
          own: boreOwn,
        });
      const pair = chance(random, 10) ? [{ half: 'either', quantity: 2 }] : halves(random);
      for (const [place, { half, quantity }] of pair.entries()) {
        const own = { Fit: kind.fit, Half: half, Quantity: quantity };
        plans.Shells!.push({ ...at, name: `S${key}${place}`, of: 'shell', tenths: around(wall, 60), own });
      }
    }
  }
  return plans as Record<'Journals' | 'Rods' | 'Cases' | 'Shells', PartPlan[]>;
}

/** Most bores are measured bare. */
function shellsInCell(random: Random): Plain {
  if (chance(random, 5)) return 'yes';
  if (chance(random, 1)) return refused(random);
  return chance(random, 10) ? 'no' : undefined;
}

function halves(random: Random): { half: Plain; quantity?: Plain }[] {
  if (chance(random, 5)) return [{ half: 'upper' }];
  if (chance(random, 5)) return [{ half: 'either' }, { half: 'either' }];
  if (chance(random, 3))
    return [{ half: 'either' }, { half: 'either' }, { half: 'upper' }, { half: 'lower' }];
  return [{ half: 'upper' }, { half: chance(random, 3) ? undefined : 'lower' }];
}

/** The user's own Fits: most cells left to be filled by place, some named, some strips, some slips. */
function fitsSheet(draw: Draw, plans: readonly PartPlan[]): Plain[][] {
  const { random } = draw;
  const rows = plans.map(({ name, kind, engine, position }) => {
    const key = name.slice(1);
    const strip = chance(random, 15) ? inBook(draw, random.between(100, 900)) : undefined;
    return [
      engine,
      kind.fit,
      position,
      chance(random, 30) ? name : undefined,
      chance(random, 30) ? `B${key}` : chance(random, 5) ? 'nobody' : undefined,
      chance(random, 20) ? `S${key}0` : undefined,
      chance(random, 10) ? `S${key}1` : undefined,
      chance(random, 1) ? refused(random) : strip,
    ];
  });
  const heading = [
    'Engine',
    'Fit',
    'Position',
    'Journal',
    'Bore',
    'Upper shell',
    'Lower shell',
    'Strip reading',
  ];
  return [heading, ...rows];
}

function setupSheet({ random, isInch, isFahrenheit }: Draw): Plain[][] {
  const rows: Plain[][] = [['Item', 'Value']];
  if (isInch || chance(random, 50)) rows.push(['Length unit', isInch ? 'in' : 'mm']);
  if (isFahrenheit) rows.push(['Temperature unit', 'F']);
  if (chance(random, 50)) rows.push(['Confidence', random.pick<Plain>(['95 %', 0.9, 99, '50%', 99.9])]);
  if (chance(random, 30)) rows.push(['Aim', random.pick<Plain>(['middle', 0.25, 0.35])]);
  if (chance(random, 30)) rows.push(['Undecided fits', 'allow']);
  if (chance(random, 30)) rows.push(['New shells', 'yes']);
  if (chance(random, 30)) rows.push(['Strip step', random.pick<Plain>(['10 µm', '0.02 mm'])]);
  return rows;
}

/** The book of a seed, always the same. */
export function randomBook(seed: number): Sheets {
  const random = seeded(seed);
  const [isInch, isFahrenheit] = [chance(random, 35), chance(random, 25)];
  const aside = seeded(seed + 900_001);
  const draw: Draw = { random, aside, isInch, isFahrenheit, kinds: kindsOf(random) };
  const plans = plansOf(draw);
  const has = (name: 'Rods' | 'Cases') => plans[name].length > 0;
  return {
    Setup: setupSheet(draw),
    Limits: limitsSheet(draw),
    ...marksSheets(draw),
    Gauges: gaugesSheet(draw),
    ...(chance(random, 50) && { Materials: materialsSheet(draw) }),
    Journals: partsSheet(draw, plans.Journals, false),
    ...(has('Rods') && { Rods: partsSheet(draw, plans.Rods, false) }),
    ...(has('Cases') && { Cases: partsSheet(draw, plans.Cases, false) }),
    Shells: partsSheet(draw, plans.Shells, true),
    ...(chance(random, 50) && { Fits: fitsSheet(draw, plans.Journals) }),
  };
}
