import { describe, expect, test } from 'vitest';
import { extremesGuards, fitGuards, formGuards, guardOf } from '../../src/maths/guards.js';
import { CERTAIN } from '../../src/maths/uncertainty.js';

describe('guardOf', () => {
  test.each([
    [0.95, 100, 164],
    [0.95, 0, 0],
    [0.5, 1e6, 0],
    [0.9999, 100, 372],
  ])('%f of u = %f is %i', (confidence, u, guard) => {
    expect(guardOf(confidence, u)).toBe(guard);
  });
});

describe('of a fit', () => {
  test('of single spots both are z·u', () => {
    const variance = { common: 3000, scatters: [{ variance: 1000, spots: 1 }] };
    // 1.6449 · √4000 = 104.03.
    expect(fitGuards(0.95, variance)).toEqual({ inside: 104, outside: 104 });
  });

  test('of several spots the outside guard allows for the excess of extremes', () => {
    const scatters = [
      { variance: 10_000, spots: 4 },
      { variance: 2_500, spots: 2 },
    ];
    // Inside: 1.6449 · √(40 000 + 12 500) = 376.9. Outside: 1.6449 · √(40 000 + 0.7012² · 10 000 + 0.8256² · 2 500)
    // + 1.0294 · 100 + 0.5642 · 50 = 355.2 + 102.9 + 28.2 = 486.3.
    expect(fitGuards(0.95, { common: 40_000, scatters })).toEqual({ inside: 377, outside: 486 });
  });
});

test('of the extremes of a part: what its spots share, and one spot', () => {
  const part = { ...CERTAIN, spots: 3, readVariance: 400, temperatureVariance: 100, ownExpansion: 5 };
  const systematic = [{ gauge: 'm', maxError: 30, isConstant: false }];
  // Common 300 + 100 + 25; inside 1.6449 · √825 = 47.2; outside 1.6449 · √(425 + 0.7480² · 400) + 0.8463 · 20 = 59.0.
  expect(extremesGuards(0.95, { ...part, systematic })).toEqual({ inside: 47, outside: 59 });
});

describe('of form: what the spots share cancels', () => {
  test.each([
    // √2 · √400 · 1.6449 = 46.5 inside; of one pair the same outside.
    ['one pair', { groups: 1, spots: 2 }, { inside: 47, outside: 47 }],
    // √2 · Φ⁻¹(√0.95) · 20 = 2.7641 · 20.
    ['two pairs', { groups: 2, spots: 2 }, { inside: 47, outside: 55 }],
    // The studentized range of 3 at 5 % and endless degrees of freedom, 3.314 (handbook tables), · 20.
    ['one group of three', { groups: 1, spots: 3 }, { inside: 47, outside: 66 }],
    ['nothing to form it of', undefined, { inside: 47, outside: 47 }],
  ])('%s', (_words, groups, guards) => {
    expect(formGuards(0.95, 400, groups)).toEqual(guards);
  });

  test('a gauge without scatter needs none', () => {
    expect(formGuards(0.95, 0, { groups: 3, spots: 4 })).toEqual({ inside: 0, outside: 0 });
  });
});
