import { describe, expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import { RecheckError, recheck } from '../../../src/maths/matching/recheck.js';
import type { MatchedFit, MatchResult, Stock } from '../../../src/maths/matching/stock.js';
import { workshopStock } from './random-stock.js';

const size = { cranks: 1, pins: 2, mains: 1, rods: 4, shells: 10, massSpread: 5 };

let whole: MatchResult;

async function matched(): Promise<{ stock: Stock; fits: MatchedFit[] }> {
  const stock = workshopStock(11, size);
  whole = await matchStock(stock);
  const { fits } = whole;
  expect(fits).toHaveLength(3);
  // The fits name rows of the stock itself: one pin first, then the other, then the main.
  return { stock, fits: [...fits] };
}

const refused = (stock: Stock, fits: readonly MatchedFit[]) => {
  try {
    recheck(stock, { ...whole, fits });
  } catch (error) {
    expect(error).toBeInstanceOf(RecheckError);
    return (error as RecheckError).message;
  }
  return 'accepted';
};

describe('the recheck', () => {
  test('accepts what the matching made', async () => {
    const { stock, fits } = await matched();
    expect(refused(stock, fits)).toBe('accepted');
  });

  test('refuses a rod that serves twice', async () => {
    const { stock, fits } = await matched();
    const [first, second] = fits as [MatchedFit, MatchedFit];
    const again = { ...second, bore: first.bore, parts: { ...second.parts, bore: first.bore.part } };
    expect(refused(stock, [first, again])).toMatch(/rod .* is used 2 times/);
  });

  test('refuses a journal that is filled twice', async () => {
    const { stock, fits } = await matched();
    expect(refused(stock, [fits[0]!, fits[0]!])).toMatch(/journal .* is used 2 times/);
  });

  test('refuses a shell of another fit, and one on the wrong side', async () => {
    const { stock, fits } = await matched();
    const [pin, , main] = fits as [MatchedFit, MatchedFit, MatchedFit];
    const foreign = { ...pin, upper: main.upper, parts: { ...pin.parts, upper: main.upper.shell.part } };
    expect(refused(stock, [foreign])).toContain('the upper shell is of another fit');
    const parts = { ...pin.parts, upper: pin.lower.shell.part, lower: pin.upper.shell.part };
    expect(refused(stock, [{ ...pin, upper: pin.lower, lower: pin.upper, parts }])).toContain(
      'the upper shell is marked lower',
    );
  });

  test('refuses a fit that is not in range', async () => {
    const { stock, fits } = await matched();
    const kinds = stock.kinds.map((kind) => ({ ...kind, min: 50_000, serviceLimit: undefined }));
    expect(refused({ ...stock, kinds }, fits)).toMatch(/its clearance of .* mm is tight/);
  });

  test('refuses rods that differ by more than the mass spread, and takes a spread met exactly', async () => {
    const { stock, fits } = await matched();
    const masses = [612.1, 612.4];
    const rods = stock.rods.map((rod) => {
      const place = fits.findIndex(({ bore }) => bore.name === rod.name);
      return place < 0 ? rod : { ...rod, mass: masses[place]! };
    });
    const spread = (massSpread: number): Stock => ({
      ...stock,
      rods,
      kinds: stock.kinds.map((kind) => ({ ...kind, massSpread })),
    });
    // 612.4 − 612.1 is 0.2999999999999545 in binary; 0.3 exactly in decimals.
    expect(refused(spread(0.3), fits)).toBe('accepted');
    expect(refused(spread(0.2), fits)).toContain('more than the mass spread');
  });

  test('refuses halves that differ by more than the limit', async () => {
    const { stock, fits } = await matched();
    const differences = fits.map(({ parts }) => Math.abs(parts.upper.size - parts.lower.size));
    const greatest = Math.max(...differences);
    expect(greatest).toBeGreaterThan(0);
    const limited = (halfDifference: number) => ({
      ...stock,
      kinds: stock.kinds.map((kind) => ({ ...kind, halfDifference })),
    });
    expect(refused(limited(greatest), fits)).toBe('accepted');
    expect(refused(limited(greatest - 1), fits)).toContain('its pair of shells is not allowed');
  });
});
