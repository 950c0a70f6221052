/** What a search that has no time, or little, must still give. */
import { describe, expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { MatchResult } from '../../../src/maths/matching/stock.js';
import { bestByTryingAll } from './every-set.js';
import { tinyStock, workshopStock } from './random-stock.js';

const reached = ({ stages }: MatchResult, aim: string) => stages.find((stage) => stage.aim === aim)!.reached;

describe('without any time', () => {
  test('the plain search still completes engines', async () => {
    const stock = workshopStock(5, { cranks: 6, pins: 4, mains: 0, rods: 40, shells: 160 });
    const result = await matchStock(stock, { seconds: 0 });
    expect(result.completeEngines.length).toBeGreaterThan(3);
  });

  test('tiny stocks keep every rule, and no bound is beyond what is possible', async () => {
    let open = 0;
    for (let seed = 3001; seed <= 3100; seed++) {
      const stock = tinyStock(seed);
      const result = await matchStock(stock, { seconds: 0 });
      const [complete, beyond] = bestByTryingAll(stock, new Set()) as [number, number];
      const [first] = result.stages;
      expect(first!.reached, `seed ${seed}`).toBeLessThanOrEqual(-complete);
      expect(first!.bound, `seed ${seed}`).toBeGreaterThanOrEqual(-complete);
      if (first!.reached === -complete) {
        expect(reached(result, 'filled journals beyond them'), `seed ${seed}`).toBeLessThanOrEqual(-beyond);
      }
      if (first!.reached < first!.bound) open++;
    }
    // Some are cut short indeed.
    expect(open).toBeGreaterThan(3);
  });
});

test('progress tells of each aim what was found and, where that is not proved, what is best at most', async () => {
  const said = { open: 0, proved: 0 };
  for (let seed = 3001; seed <= 3020; seed++) {
    const messages: string[] = [];
    const { stages } = await matchStock(tinyStock(seed), {
      seconds: 0,
      onProgress: (message) => messages.push(message),
    });
    // Kinds of fit that have nothing to share are searched, and told of, one after the other.
    if (messages.length > stages.length) continue;
    const { reached: found, bound } = stages[0]!;
    const isProved = found === bound;
    said[isProved ? 'proved' : 'open']++;
    expect(messages[0], `seed ${seed}`).toBe(
      isProved
        ? `complete engines: ${found}, proved`
        : `complete engines: found ${found}, proven best ${bound}`,
    );
  }
  expect([said.open > 0, said.proved > 0]).toEqual([true, true]);
});
