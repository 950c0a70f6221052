/** Finds circles of imports, of values or of types alike. */
import { posix } from 'node:path';
import { importsOf } from './check-layers.js';

type Imports = ReadonlyMap<string, readonly string[]>;

/**
 * The circles of imports among these files, one sentence each: of every file that lies in one, the shortest.
 *
 * `sources` holds the text of every file by its path from the project's root, with forward slashes.
 */
export function findCircles(sources: ReadonlyMap<string, string>): string[] {
  const imports: Imports = new Map(
    [...sources].map(([path, text]) => [
      path,
      importsOf(path, text).flatMap((specifier) => fileOf(path, specifier, sources) ?? []),
    ]),
  );
  const circles = [...sources.keys()].flatMap((path) => {
    const circle = shortestCircle(path, imports);
    return circle ? [sentenceOf(circle)] : [];
  });
  return [...new Set(circles)];
}

/** A module `./b.js` is made of the file `b.ts`. Undefined for packages and for what is no file of these. */
function fileOf(
  path: string,
  specifier: string | undefined,
  sources: ReadonlyMap<string, string>,
): string | undefined {
  if (!specifier?.startsWith('.')) return undefined;
  const target = posix.join(posix.dirname(path), specifier);
  const endings = ['ts', 'tsx'].map((ending) => target.replace(/([cm]?)jsx?$/, `$1${ending}`));
  return [target, ...endings].find((file) => sources.has(file));
}

/** The files on the shortest way from a file back to itself; breadth first, so that the first way found is it. */
function shortestCircle(start: string, imports: Imports): string[] | undefined {
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (const path of queue) {
    for (const next of imports.get(path)!) {
      if (next === start) return wayTo(path, start, cameFrom);
      if (cameFrom.has(next)) continue;
      cameFrom.set(next, path);
      queue.push(next);
    }
  }
  return undefined;
}

function wayTo(end: string, start: string, cameFrom: ReadonlyMap<string, string>): string[] {
  const way = [end];
  while (way[0] !== start) way.unshift(cameFrom.get(way[0]!)!);
  return way;
}

/** Begins with the first of the files by name, so that one circle has one sentence. */
function sentenceOf(circle: readonly string[]): string {
  if (circle.length === 1) return `${circle[0]} imports itself`;
  const at = circle.indexOf([...circle].sort()[0]!);
  const [first, second, ...others] = [...circle.slice(at), ...circle.slice(0, at + 1)];
  const steps = others.map((path) => `, which imports ${path}`).join('');
  return `${first} imports ${second}${steps}: a circle of imports`;
}
