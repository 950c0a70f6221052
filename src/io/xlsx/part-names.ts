/** Names of parts (Open Packaging Conventions, ISO 29500-2). */

/** A part's name as it is compared: without regard to case, and however its slashes are written. */
export function partNameKey(part: string): string {
  return part.replace(/\\/g, '/').replace(/^\//, '').toLowerCase();
}

/** The part that holds a part's relationships; of the package for ''. */
export function relationshipsPart(source: string): string {
  const slash = source.lastIndexOf('/') + 1;
  return `${source.slice(0, slash)}_rels/${source.slice(slash)}.rels`;
}

/** A relationship's target as a part name, without a leading slash. */
export function resolvePart(source: string, target: string): string {
  const path = target.replace(/\\/g, '/').replace(/#.*$/, '');
  const steps = path.startsWith('/') ? [] : source.split('/').slice(0, -1);
  for (const step of path.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.' && step !== '') steps.push(step);
  }
  try {
    return decodeURIComponent(steps.join('/'));
  } catch {
    return steps.join('/');
  }
}
