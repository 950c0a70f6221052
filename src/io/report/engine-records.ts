/** What of a book belongs to which engine, and what to none: a page each. */
import type { Assessment } from '../../engine/assess/assess.js';
import type { NeighbourResult } from '../../engine/assess/neighbours.js';
import type { PartResult } from '../../engine/assess/part-result.js';
import { type PartsOfBook, partsOf } from '../../engine/assess/placed-fit.js';
import type { Remeasure } from '../../engine/assess/remeasure-words.js';
import { nameKey } from '../../engine/book/names.js';
import { kindsOfFit } from '../../engine/kinds/index.js';
import { termOf } from '../../engine/kinds/kind-of-fit.js';

export interface EngineRecord {
  readonly name: string;
  readonly engineTypes: readonly string[];
  /** Its fits, one group for each Fit. */
  readonly fits: readonly NeighbourResult[];
  /** Its parts: those that ran on it, and those that its fits name. */
  readonly parts: PartsOfBook;
  readonly remeasure: readonly Remeasure[];
}

export interface Records {
  readonly engines: readonly EngineRecord[];
  /** Parts of no engine that has a part that leads a fit, or a fit. */
  readonly loose: PartsOfBook;
  readonly looseRemeasure: readonly Remeasure[];
}

export function recordsOf({ parts, spreads, remeasure }: Assessment): Records {
  const leaders = kindsOfFit().flatMap((kind) => parts.ofAll(termOf(kind, kind.leader)!.sheets));
  const names = new Map<string, string>();
  for (const engine of [...spreads.map((group) => group.engine), ...leaders.map(({ row }) => row.engine)])
    if (engine !== '' && !names.has(nameKey(engine))) names.set(nameKey(engine), engine);
  const fitted = new Map<PartResult, Set<string>>();
  for (const { engine, fits } of spreads) {
    for (const part of fits.flatMap(partsOf)) {
      const own = fitted.get(part) ?? new Set();
      fitted.set(part, own.add(nameKey(engine)));
    }
  }
  const keysOf = (part: PartResult) =>
    [nameKey(part.row.engine), ...(fitted.get(part) ?? [])].filter((key) => names.has(key));
  const belongs = (key: string | undefined) => (part: PartResult) =>
    key === undefined ? keysOf(part).length === 0 : keysOf(part).includes(key);
  const remeasureOf = (own: PartsOfBook) => {
    const named = new Set(own.all().map(partKey));
    return remeasure.filter(({ sheet, parts: names }) =>
      names.some((part) => named.has(`${sheet} ${nameKey(part)}`)),
    );
  };
  const engines = [...names].map(([key, name]): EngineRecord => {
    const own = parts.filter(belongs(key));
    const types = own.all().flatMap(({ row }) => row.engineType || []);
    return {
      name,
      engineTypes: [...new Set(types)],
      fits: spreads.filter((group) => nameKey(group.engine) === key),
      parts: own,
      remeasure: remeasureOf(own),
    };
  });
  const loose = parts.filter(belongs(undefined));
  return { engines, loose, looseRemeasure: remeasureOf(loose) };
}

function partKey({ row }: PartResult): string {
  return `${row.sheet} ${nameKey(row.name)}`;
}
