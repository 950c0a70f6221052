/** What parts of a book are called where another book has parts of the same names. */
import { basename, dirname, extname, resolve, sep } from 'node:path';
import { nameKey } from './book/names.js';

/**
 * One label a book, all different, and the same in whatever order the books come: the file's name, with
 * as much of its folders and ending as tells it from the others.
 */
export function labelsOf(files: readonly string[]): string[] {
  const paths = files.map((file) => resolve(file));
  const labels = paths.map((path) => labelOf(path, [...new Set(paths)]));
  // One book given twice has two copies that nothing tells apart.
  return labels.map((label, place) => {
    const before = labels.slice(0, place).filter((other) => other === label).length;
    return before === 0 ? label : `${label} ${before + 1}`;
  });
}

function labelOf(path: string, paths: readonly string[]): string {
  const isAlone = (label: (path: string) => string) =>
    paths.every((other) => other === path || nameKey(label(other)) !== nameKey(label(path)));
  const name = (file: string) => basename(file, extname(file));
  const depth = path.split(sep).length;
  for (const last of [name, (file: string) => basename(file)]) {
    for (let folders = 0; folders < depth; folders++) {
      const label = (file: string) => [...lastFolders(file, folders), last(file)].join('/');
      if (isAlone(label)) return label(path);
    }
  }
  return path;
}

function lastFolders(path: string, count: number): string[] {
  return count === 0
    ? []
    : dirname(path)
        .split(sep)
        .filter((folder) => folder !== '')
        .slice(-count);
}
