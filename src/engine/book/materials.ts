/** Expansions by the names of materials. */
import { BUILT_IN_EXPANSION } from '../../maths/expansion.js';
import type { Expansion, MaterialRow } from './book.js';
import { nameKey } from './names.js';
import { listOf } from './problems.js';
import type { Row } from './row.js';

/** What goes without saying of a gauge. */
export const STEEL = 'steel';

/** The expansion of a material; undefined where no table knows it. */
export type MaterialLookup = (name: string) => Expansion | undefined;

/** How far the expansion of one alloy may lie from a table's: handbooks differ by so much. Common practice, no source. */
const ERROR_SHARE = 0.1;

/** @param error as typed; undefined where it is blank */
export function expansionOf(value: number, error?: number): Expansion {
  return { value, error: error ?? ERROR_SHARE * value };
}

/** The expansion of a material, from Materials first, then built in; unknown where its row was refused. */
export function materialLookup(rows: readonly MaterialRow[]): MaterialLookup {
  const known = new Map(
    Object.entries(BUILT_IN_EXPANSION).map(([name, value]) => [name, expansionOf(value)]),
  );
  for (const { material, expansion, bad } of [...rows].reverse()) {
    if (expansion !== undefined) known.set(nameKey(material), expansion);
    else if (bad.length > 0) known.delete(nameKey(material));
  }
  return (name) => known.get(nameKey(name));
}

/** A material's name, refused where no table has it. */
export function knownMaterial(
  row: Row,
  header: string,
  name: string | undefined,
  knows: MaterialLookup,
): string | undefined {
  if (name === undefined || knows(name) !== undefined) return name;
  row.refuse(
    row.cell(header)!,
    `a material of Materials or ${listOf(Object.keys(BUILT_IN_EXPANSION))}`,
    'give its expansion in Materials',
  );
  return undefined;
}
