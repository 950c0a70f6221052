/**
 * Printed sizes of bearings with their shells in: held against the printed journals and clearances, and typed into a
 * book. Rows of the TM numbers: evidence seen, expected printed; they lie on the grain, so that no tolerance is needed.
 */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, type Sheets, table } from '../engine/book-of.js';
import { engineTables } from './published.js';

interface Row {
  readonly name: string;
  readonly unit: string;
  readonly bearing: readonly [number, number];
  readonly journal: readonly [number, number];
  readonly clearance: readonly [number, number];
}

const printed = engineTables()
  .filter((row) => row.id_lo && row.journal_lo && row.clr_lo)
  .map((row): Row => {
    const pair = (name: string) => [Number(row[`${name}_lo`]), Number(row[`${name}_hi`])] as const;
    return {
      name: `TM ${row.tm}, ${row.part} ${row.size}`,
      unit: row.unit === 'inch' ? 'in' : 'mm',
      bearing: pair('id'),
      journal: pair('journal'),
      clearance: pair('clr'),
    };
  });

/** Five decimals of an inch, the most that manuals print; constructed for this test. */
const FIVE_DECIMALS: Row = {
  name: 'five decimals of an inch',
  unit: 'in',
  bearing: [1.57418, 1.57638],
  journal: [1.57221, 1.57284],
  clearance: [0.00134, 0.00417],
};

/** A manual whose printed range is narrower than its own sizes give: tm-rod-29700 of the published values. */
const isNarrower = ({ name }: Row) => name.includes('5-6115-545-34');
const exact = [...printed.filter((row) => !isNarrower(row)), FIVE_DECIMALS];

const AT = { Engine: 'E' };

/** The tightest and the loosest pair that a row allows, in a book of its limits. */
function bookOfRow({ unit, bearing, journal, clearance }: Row, of: 'Bearing' | 'Bore'): Sheets {
  const limits: Record<string, Plain> = {
    ...{ 'Engine type': 'X', Fit: 'big end' },
    ...{ 'Clearance min': clearance[0], 'Clearance max': clearance[1] },
    ...{ 'Journal min': journal[0], 'Journal max': journal[1] },
    ...{ [`${of} min`]: bearing[0], [`${of} max`]: bearing[1] },
  };
  const pairs = [
    [bearing[0], journal[1]],
    [bearing[1], journal[0]],
  ] as const;
  return {
    Setup: table({ Item: 'Length unit', Value: unit }),
    Limits: table(limits),
    Journals: table(
      ...pairs.map(([, size], at) => ({ Part: `J${at}`, ...AT, Fit: 'big end', Position: at, 'A 0': size })),
    ),
    Rods: table(
      ...pairs.map(([size], at) => ({
        Part: `R${at}`,
        ...AT,
        Position: at,
        'Shells in': 'yes',
        'A 0': size,
      })),
    ),
  };
}

test('the tables hold what they are said to hold', () => {
  expect(printed).toHaveLength(5);
  expect(exact).toHaveLength(5);
});

describe('sizes with the shells in, typed as such', () => {
  test.each(exact)('$name: consistent, and its extremes lie on the limits', (row) => {
    const { tables, fits, parts } = assess(bookOfRow(row, 'Bearing'));
    expect(tables.Limits[0]).toMatchObject({ status: 'consistent', why: [] });
    expect(parts.all().map(({ status }) => status)).toEqual(Array(4).fill('within limits'));
    const limits = fits[0]!.limits!;
    expect(fits.map(({ clearance }) => clearance!.clearance)).toEqual([
      limits.clearanceMin,
      limits.clearanceMax,
    ]);
    expect(fits.map(({ status }) => status)).toEqual(['in range', 'in range']);
  });

  test.each(exact)('$name: named where they are typed as bare bores', (row) => {
    const { tables } = assess(bookOfRow(row, 'Bore'));
    expect(tables.Limits[0]).toMatchObject({
      status: 'check the source',
      why: ['Bore min and Bore max look like sizes with the shells in'],
    });
  });

  test.each(printed.filter(isNarrower))('$name: the loosest pair is beyond the printed range', (row) => {
    const { fits } = assess(bookOfRow(row, 'Bearing'));
    expect(fits.map(({ status }) => status)).toEqual(['in range', 'loose']);
  });
});
