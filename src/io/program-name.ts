/** The program and its version, as package.json has them. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Name and version, such as `oilgap 0.1.0`. */
export function programName(): string {
  // Built files lie one folder deeper than sources.
  for (let folder = new URL('.', import.meta.url); folder.pathname !== '/'; folder = new URL('..', folder)) {
    const file = fileURLToPath(new URL('package.json', folder));
    if (!existsSync(file)) continue;
    const { name, version } = JSON.parse(readFileSync(file, 'utf8'));
    return `${name} ${version}`;
  }
  throw new Error('package.json is missing');
}
