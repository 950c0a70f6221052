/** Names of parts (Open Packaging Conventions, ISO 29500-2). */

/** A part's name as it is compared: without regard to case, and however its slashes are written. */
export function partNameKey(part: string): string {
  return part.replace(/\\/g, '/').replace(/^\//, '').toLowerCase();
}

/**
 * The same with each percent-encoded character as itself: what one program stores as `a b.xml`, another stores as
 * `a%20b.xml` (ECMA-376-2:2006, annex A).
 */
export function plainNameKey(part: string): string {
  try {
    return partNameKey(decodeURIComponent(part));
  } catch {
    return partNameKey(part);
  }
}

/** A part's name as content types write it: with the characters encoded that an address cannot hold. */
export function partAddress(part: string): string {
  return encodeURI(`/${part}`).replaceAll('%25', '%');
}

/** The part that holds a part's relationships; of the package for ''. */
export function relationshipsPart(source: string): string {
  const slash = source.lastIndexOf('/') + 1;
  return `${source.slice(0, slash)}_rels/${source.slice(slash)}.rels`;
}

/** A relationship's target as a part name, without a leading slash, its characters as they are written. */
export function resolvePart(source: string, target: string): string {
  const path = target.replace(/\\/g, '/').replace(/#.*$/, '');
  const steps = path.startsWith('/') ? [] : source.split('/').slice(0, -1);
  for (const step of path.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.' && step !== '') steps.push(step);
  }
  return steps.join('/');
}
