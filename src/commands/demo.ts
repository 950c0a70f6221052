/** `npm start`: the main job on the demo workbooks. */
import { mkdir, readdir } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CAUTION } from '../engine/caution.js';
import { check } from './check.js';
import { EXIT } from './messages.js';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Every demo book: the .xlsx files of the folder, and its folders of .csv files. */
async function demoBooks(): Promise<string[]> {
  const entries = await readdir(join(root, 'workbooks'), { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory() || entry.name.endsWith('.xlsx'))
    .map(({ name }) => relative(process.cwd(), join(root, 'workbooks', name)))
    .sort();
}

const out = relative(process.cwd(), join(root, 'out'));
await mkdir(join(root, 'out'), { recursive: true });
const code = await check(await demoBooks(), { out, seconds: 60 });
process.stdout.write(
  `\nOpen the checked books in ${out}/: the sheet Summary first, then Fits, Matched sets and Re-measure.\n` +
    'What each demo shows: workbooks/README.md.\n' +
    `\nCaution: ${CAUTION.join(' ')}\n`,
);
// Findings are what the demo is there to show; only a book that could not be run is a failure.
process.exitCode = code === EXIT.notRun ? EXIT.notRun : EXIT.good;
