/**
 * `npm run docs`: makes the marked blocks of README.md anew.
 * `npm run docs:check` changes nothing, and ends with 1 where a block is stale.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { withBlocks } from './readme-blocks.js';

const README = 'README.md';

const before = readFileSync(README, 'utf8');
const after = withBlocks(before);
if (before !== after && process.argv.includes('--check')) {
  console.error('README.md: its generated tables are stale; run npm run docs, and commit README.md.');
  process.exitCode = 1;
} else if (before !== after) {
  writeFileSync(README, after);
  console.error('README.md: generated tables made anew.');
}
