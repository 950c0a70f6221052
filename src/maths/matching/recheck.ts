/**
 * The last word on the matched sets: every rule again, from the named parts, in whole numbers.
 *
 * It shares nothing with the model but the core's clearance, variance and verdict, so that an error of
 * the model or of the solver stops the run instead of reaching a bench.
 */
import { allowsFit } from './kept-fits.js';
import { withinMassSpread } from './mass-windows.js';
import { BIG_END, keyOfKind } from './part-classes.js';
import type { MatchedFit, Stock, StockRod, TakenShell } from './stock.js';
import { isProvable } from './verdicts.js';

/** Thrown when matched sets break a rule of the matching: a defect of the program, never of the stock. */
export class RecheckError extends Error {
  override readonly name = 'RecheckError';
}

function refuse({ engine, journal }: MatchedFit, what: string): never {
  throw new RecheckError(`the recheck refuses engine ${engine}, ${journal.fit} ${journal.position}: ${what}`);
}

/** Counts uses of parts and refuses one too many. */
class Uses {
  private readonly uses = new Map<object | string, number>();

  add(fit: MatchedFit, part: object | string, quantity: number, what: string): void {
    const used = (this.uses.get(part) ?? 0) + 1;
    this.uses.set(part, used);
    if (used > quantity)
      refuse(fit, `${what} is used ${used} times, there ${quantity === 1 ? 'is' : 'are'} ${quantity}`);
  }
}

function checkShell(stock: Stock, fit: MatchedFit, side: 'upper' | 'lower', uses: Uses): void {
  const taken: TakenShell = fit[side];
  const { shell } = taken;
  if (keyOfKind(shell) !== keyOfKind(fit.journal)) refuse(fit, `the ${side} shell is of another fit`);
  if (shell.half !== side && shell.half !== 'either')
    refuse(fit, `the ${side} shell is marked ${shell.half}`);
  if (shell.part !== fit.parts[side]) refuse(fit, `the ${side} shell has the values of another part`);
  if (taken.from === 'new') {
    if (!stock.newShells.includes(taken.shell)) refuse(fit, `new shell ${taken.shell.mark} is not for sale`);
    return;
  }
  const { name, quantity } = taken.shell;
  if (!stock.shells.includes(taken.shell)) refuse(fit, `shell ${name} is not in the stock`);
  uses.add(fit, taken.shell, quantity, `shell ${name}`);
}

/** @returns the rod, or undefined for a case bore */
function checkBore(stock: Stock, fit: MatchedFit, uses: Uses): StockRod | undefined {
  const { journal, bore, parts } = fit;
  if (bore.part !== parts.bore) refuse(fit, `bore ${bore.name} has the values of another part`);
  if (journal.caseBore) {
    if (bore.name !== journal.caseBore.name || bore.part !== journal.caseBore.part) {
      refuse(fit, `${bore.name} is not the bore of its case`);
    }
    uses.add(fit, `case bore ${bore.name}`, 1, `case bore ${bore.name}`);
    return undefined;
  }
  const rod = stock.rods.find(({ name, part }) => name === bore.name && part === bore.part);
  if (!rod || rod.engineType !== journal.engineType || journal.fit !== BIG_END) {
    refuse(fit, `${bore.name} is not a rod for it`);
  }
  uses.add(fit, rod, 1, `rod ${rod.name}`);
  return rod;
}

function checkFit(stock: Stock, fit: MatchedFit, uses: Uses): StockRod | undefined {
  const { journal, parts } = fit;
  const engine = stock.engines.find(
    ({ name, journals }) => name === fit.engine && journals.includes(journal),
  );
  if (!engine) refuse(fit, 'the engine has no such journal');
  if (!journal.part || journal.part !== parts.journal) refuse(fit, 'the journal cannot be used');
  uses.add(fit, journal, 1, `journal ${journal.name}`);
  const kind = stock.kinds.find((each) => keyOfKind(each) === keyOfKind(journal));
  if (!kind || !isProvable(kind)) refuse(fit, 'its limits are not given');
  checkShell(stock, fit, 'upper', uses);
  checkShell(stock, fit, 'lower', uses);
  const rod = checkBore(stock, fit, uses);
  if (!allowsFit(parts, kind, stock)) refuse(fit, 'its clearance or its pair of shells is not allowed');
  return rod;
}

/**
 * @param stock the rows that the fits' parts are taken from
 * @throws RecheckError naming the engine, the journal and the broken rule
 */
export function recheck(stock: Stock, fits: readonly MatchedFit[]): void {
  const uses = new Uses();
  const masses = new Map<string, number[]>();
  for (const fit of fits) {
    const rod = checkFit(stock, fit, uses);
    const spread = stock.kinds.find((kind) => keyOfKind(kind) === keyOfKind(fit.journal))?.massSpread;
    if (!rod || spread === undefined) continue;
    if (rod.mass === undefined) refuse(fit, `rod ${rod.name} has no mass`);
    const crank = JSON.stringify([fit.engine, rod.engineType]);
    const own = [...(masses.get(crank) ?? []), rod.mass];
    masses.set(crank, own);
    if (!withinMassSpread(own, spread))
      refuse(fit, 'the rods of the crank differ by more than the mass spread');
  }
}
