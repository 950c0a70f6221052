/** A limit that cannot be read is never passed over: it leaves the verdict open and is named. */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, table } from '../book-of.js';

const AT_1 = { Engine: 'E1', Position: 1 };
const RANGE = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 };

function bookWith(limits: Readonly<Record<string, Plain>>, journal: Readonly<Record<string, Plain>>) {
  return assess({
    Limits: table({ ...RANGE, ...limits }),
    Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', ...journal }),
    Rods: table({ Part: 'R1', ...AT_1, 'A 0': 45 }),
    Shells: table(
      { Part: 'U', ...AT_1, Half: 'upper', 'Wall 1': 1.5 },
      { Part: 'L', ...AT_1, Half: 'lower', 'Wall 1': 1.5 },
    ),
  });
}

describe('a part', () => {
  test.each([
    ['Taper limit', { 'Journal max': 43 }, 'undecided'],
    ['Taper limit', {}, 'undecided'],
    ['Wear limit', { 'Journal min': 41 }, 'undecided'],
    ['Wear limit', { 'Journal max': 41.9 }, 'beyond limits'],
    ['Bore max', { 'Journal max': 43 }, 'within limits'],
  ] as const)('whose %s is no number, beside %o, is %s', (header, others, status) => {
    const [journal] = bookWith({ [header]: 'x', ...others }, { 'A 0': 42, 'B 0': 41.96 }).parts.journals;
    expect(journal!.status).toBe(status);
    const isNamed = journal!.why.some((reason) => reason.includes(`(${header}): found the text "x"`));
    expect(isNamed).toBe(header !== 'Bore max');
  });
});

describe('a fit over its clearance range with a Service limit that is no number', () => {
  test('is undecided, and names the cell', () => {
    const [fit] = bookWith({ 'Service limit': 'x' }, { 'A 0': 41.9 }).fits;
    expect(fit!.status).toBe('undecided');
    expect(fit!.why[0]).toContain('(Service limit): found the text "x"');
  });

  test('is tight or in range as it would be', () => {
    expect(bookWith({ 'Service limit': 'x' }, { 'A 0': 42 }).fits[0]!.status).toBe('tight');
    expect(bookWith({ 'Service limit': 'x' }, { 'A 0': 41.96 }).fits[0]!.status).toBe('in range');
  });
});

describe('a unit that a column cannot have', () => {
  test('leaves the column to the user: Mass (kg) is no mass in g', () => {
    const { book } = assess({ Rods: table({ Part: 'R1', 'Mass (kg)': 0.5, 'A 0': 45 }) });
    expect(book.rods[0]!.mass).toBeUndefined();
  });

  test('is refused by name: Mass (mm)', () => {
    const { book } = assess({ Rods: table({ Part: 'R1', 'Mass (mm)': 500, 'A 0': 45 }) });
    expect(book.bad[0]).toMatchObject({ header: 'Mass', expected: 'a mass in g above 0, not in mm' });
  });
});
