/** A stock with the parts of a plan added to it, as somebody would who has found them. */
import type { Stock, StockJournal, StockRod, StockShell } from '../../../src/maths/matching/stock.js';
import type { CrankPlan, SuggestionFacts } from '../../../src/maths/suggestions/crank-plan.js';
import type { Added, PlacePlan } from '../../../src/maths/suggestions/plan.js';
import type { Regrind } from '../../../src/maths/suggestions/regrind.js';
import type { Window } from '../../../src/maths/suggestions/windows.js';

/** A size of a window: 0 its first, 1 its last. */
export type At = (window: Window) => number;

export function withPlan(stock: Stock, plan: CrankPlan, facts: SuggestionFacts, at: At): Stock {
  const rods: StockRod[] = [];
  const shells: StockShell[] = [];
  for (const place of plan.places) {
    for (const added of place.added) addTo(rods, shells, place, added, facts, at);
  }
  const ground = plan.regrinds.flatMap((regrind) => groundJournals(regrind, facts, shells, at));
  const newJournal = new Map(ground);
  return {
    ...stock,
    rods: [...stock.rods, ...rods],
    shells: [...stock.shells, ...shells],
    engines: stock.engines.map((engine) => ({
      ...engine,
      journals: engine.journals.map((journal) => newJournal.get(journal) ?? journal),
    })),
  };
}

function addTo(
  rods: StockRod[],
  shells: StockShell[],
  { journal }: PlacePlan,
  added: Added,
  facts: SuggestionFacts,
  at: At,
): void {
  const { engineType, fit } = journal;
  const parts = facts.partsOf(journal)!;
  const shell = (half: 'upper' | 'lower', part: StockShell['part']) =>
    shells.push({ name: `added ${shells.length}`, engineType, fit, half, quantity: 1, part, ran: undefined });
  const rod = (size: number, mass: { from: number | undefined; to: number | undefined } | undefined) =>
    rods.push({
      name: `added ${rods.length}`,
      engineType,
      part: parts.measureBore(size),
      mass: mass?.from ?? mass?.to ?? 600,
      ran: undefined,
    });
  switch (added.is) {
    case 'new shell':
      shell(added.side, added.shell.part);
      break;
    case 'wall':
      shell(added.side, parts.measureWall(at(added.window)));
      break;
    case 'walls': {
      const size = at(added.window);
      shell('upper', parts.measureWall(size));
      shell('lower', parts.measureWall(size));
      break;
    }
    case 'rod':
      rod(at(added.window), added.mass);
      break;
    case 'rod and walls': {
      const wall = parts.usualWall!;
      rod(at(added.window) + 2 * wall, added.mass);
      shell('upper', parts.measureWall(wall));
      shell('lower', parts.measureWall(wall));
    }
  }
}

function groundJournals(
  { places, window, step }: Regrind,
  facts: SuggestionFacts,
  shells: StockShell[],
  at: At,
): [StockJournal, StockJournal][] {
  return places.map(({ journal, upper, lower }) => {
    for (const [half, { part, engineType, fit }] of [
      ['upper', upper],
      ['lower', lower],
    ] as const) {
      shells.push({
        name: `step ${shells.length}`,
        engineType,
        fit,
        half,
        quantity: 1,
        part,
        ran: undefined,
      });
    }
    const { measureJournal } = facts.undersizesOf(journal).find((each) => each.step === step)!;
    return [journal, { ...journal, part: measureJournal(at(window)) }];
  });
}
