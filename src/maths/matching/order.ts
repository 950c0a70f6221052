/** One order of a stock's rows, whatever order they come in: by name, then by content. */
import type { KindLimits, Stock } from './stock.js';

/**
 * Names without regard to case, runs of digits as numbers (R2 before R10). Names that still tie, such
 * as `R01` and `R1`, go by plain code units: the same on every machine and in every language.
 */
export function compareText(a: string, b: string): number {
  const [left, right] = [runsOf(a), runsOf(b)];
  for (const [place, run] of left.entries()) {
    const other = right[place];
    if (other === undefined) return 1;
    const order = isNumber(run) && isNumber(other) ? compareNumbers(run, other) : plainOrder(run, other);
    if (order !== 0) return order;
  }
  return left.length - right.length || plainOrder(a.toLowerCase(), b.toLowerCase());
}

const runsOf = (text: string): readonly string[] => text.toLowerCase().match(/\d+|\D+/g) ?? [];
const isNumber = (run: string) => /^\d/.test(run);

/** Whole numbers of any length, written in digits. */
function compareNumbers(a: string, b: string): number {
  const [left, right] = [a, b].map((digits) => digits.replace(/^0+/, '')) as [string, string];
  return left.length - right.length || plainOrder(left, right);
}

function plainOrder(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/** Sorted copy by the texts that `name` gives; rows of equal names by everything they hold. */
function sorted<Row>(rows: readonly Row[], name: (row: Row) => readonly string[]): Row[] {
  const keyed = rows.map((row) => ({ row, names: name(row) }));
  keyed.sort((a, b) => {
    for (const [place, text] of a.names.entries()) {
      const order = compareText(text, b.names[place]!);
      if (order !== 0) return order;
    }
    return plainOrder(JSON.stringify(a.row).toLowerCase(), JSON.stringify(b.row).toLowerCase());
  });
  return keyed.map(({ row }) => row);
}

/** Of two rows of limits for one kind the first rules. */
function firstOfEach(kinds: readonly KindLimits[]): KindLimits[] {
  const isFirst = ({ engineType, fit }: KindLimits, place: number) =>
    kinds.findIndex((kind) => kind.engineType === engineType && kind.fit === fit) === place;
  return kinds.filter(isFirst);
}

/** Only rods are weighed: of any other fit a mass spread says nothing. */
const weighed = (kind: KindLimits): KindLimits =>
  kind.fit === 'big end' ? kind : { ...kind, massSpread: undefined };

/** The same stock with every list in the order of its names, and no mass spread but of big ends. */
export function orderStock(stock: Stock): Stock {
  const engines = stock.engines.map((engine) => ({
    ...engine,
    journals: sorted(engine.journals, ({ fit, position, name, engineType }) => [
      fit,
      position,
      name,
      engineType,
    ]),
  }));
  return {
    ...stock,
    kinds: sorted(firstOfEach(stock.kinds).map(weighed), ({ engineType, fit }) => [engineType, fit]),
    engines: sorted(engines, ({ name }) => [name]),
    rods: sorted(stock.rods, ({ engineType, name }) => [engineType, name]),
    shells: sorted(stock.shells, ({ engineType, fit, name }) => [engineType, fit, name]),
    newShells: sorted(stock.newShells, ({ engineType, fit, mark, half }) => [engineType, fit, mark, half]),
  };
}
