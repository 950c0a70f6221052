/** Parts that nothing leads to any more once a sheet is gone: its drawings, comments, printer settings. */
import type { OpcPackage } from './opc-package.js';

/** The parts that relationships lead to, from the package on; names in lower case. */
export async function reachableParts(pkg: OpcPackage): Promise<Set<string>> {
  const found = new Set<string>();
  const pending = [''];
  for (let source = pending.pop(); source !== undefined; source = pending.pop()) {
    for (const { part } of await pkg.relationships(source)) {
      if (part === undefined || found.has(part.toLowerCase()) || !pkg.has(part)) continue;
      found.add(part.toLowerCase());
      pending.push(part);
    }
  }
  return found;
}

/** Removes what was reachable before and is no longer; what nothing ever led to is the user's own affair. */
export async function removeOrphans(pkg: OpcPackage, before: ReadonlySet<string>): Promise<void> {
  const after = await reachableParts(pkg);
  for (const part of before) if (!after.has(part)) await pkg.remove(part);
}
