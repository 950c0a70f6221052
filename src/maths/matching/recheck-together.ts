/** The rules that sets keep together: how often a part serves, and the masses of a crank. */
import { add, exact, multiply, type Ratio } from '../decimal.js';
import { type Breach, type StockRows, setInWords, shellInWords } from './recheck-rows.js';
import type { MatchedFit, StockRod } from './stock.js';

const SERVES_ONCE = 'a part serves once, half-shells of one row Quantity times';
const MASS_SPREAD = 'the rods of one crank stay within their Mass spread; one without Mass is not used';

/** A part that serves more often than it is there is named with each set that has it once too often. */
export function usedTooOften(fits: readonly MatchedFit[], rows: StockRows): Breach[] {
  const uses = new Map<object | string, number>();
  const breaches: Breach[] = [];
  for (const fit of fits) {
    const use = (part: object | string, quantity: number, name: string) => {
      const used = (uses.get(part) ?? 0) + 1;
      uses.set(part, used);
      if (used <= quantity) return;
      const what = `${name} is used ${used} times, there ${quantity === 1 ? 'is' : 'are'} ${quantity}`;
      breaches.push({ rule: SERVES_ONCE, where: setInWords(fit), what });
    };
    const { journal, bore } = fit;
    use(journal, 1, `journal ${journal.name}`);
    const rod = rows.rodOf(fit);
    if (rod) use(rod, 1, `rod ${rod.name}`);
    // Two journals may name one case bore.
    if (journal.caseBore) use(`case bore ${bore.name}`, 1, `case bore ${bore.name}`);
    for (const taken of [fit.upper, fit.lower]) {
      if (taken.from === 'stock') use(taken.shell, taken.shell.quantity, shellInWords(taken));
    }
  }
  return breaches;
}

/** The rods of a crank, with the sets that they are in. */
type WeighedRods = readonly { readonly fit: MatchedFit; readonly rod: StockRod; readonly mass: number }[];

const MINUS_ONE: Ratio = { numerator: -1n, denominator: 1n };

/** Whether two masses differ by more than a spread, as typed: 612.4 − 612.1 is 0.3. */
function differByMore(light: number, heavy: number, spread: number): boolean {
  const difference = add(exact(heavy), multiply(exact(light), MINUS_ONE));
  const most = exact(spread);
  return difference.numerator * most.denominator > most.numerator * difference.denominator;
}

export function beyondMassSpread(fits: readonly MatchedFit[], rows: StockRows): Breach[] {
  const breaches: Breach[] = [];
  const cranks = new Map<string, { readonly spread: number; readonly rods: WeighedRods }>();
  for (const fit of fits) {
    const rod = rows.rodOf(fit);
    const spread = rows.limitsOf(fit.journal)?.massSpread;
    if (!rod || spread === undefined) continue;
    const { mass } = rod;
    if (mass === undefined) {
      breaches.push({ rule: MASS_SPREAD, where: setInWords(fit), what: `rod ${rod.name} has no mass` });
      continue;
    }
    const key = JSON.stringify([fit.engine, fit.journal.engineType]);
    cranks.set(key, { spread, rods: [...(cranks.get(key)?.rods ?? []), { fit, rod, mass }] });
  }
  for (const { spread, rods } of cranks.values()) {
    const order = [...rods].sort((a, b) => a.mass - b.mass);
    const [light, heavy] = [order[0]!, order.at(-1)!];
    if (!differByMore(light.mass, heavy.mass, spread)) continue;
    const what =
      `the rods of the crank differ by more than the mass spread of ${spread} g: ` +
      `rod ${light.rod.name} of ${light.mass} g, rod ${heavy.rod.name} of ${heavy.mass} g`;
    breaches.push({ rule: MASS_SPREAD, where: setInWords(heavy.fit), what });
  }
  return breaches;
}
