/**
 * `npm run kills -- --runs N`: kills the program with SIGKILL at random moments of a seed, half the times anywhere in
 * `check --in-place`, half while files are written one after the other. After each, the book has to be the old one or
 * the whole new one, and what was kept of it whole too. The next run in the folder has to clear what the kills left.
 */

import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { isWriters, killAfter, killWriter, startGroup } from '../tests/kills/kill.js';
import { seeded } from './demo/random.js';

const { values } = parseArgs({
  options: { runs: { type: 'string', default: '200' }, seed: { type: 'string', default: '1' } },
});
const random = seeded(Number(values.seed));
const runs = Number(values.runs);
const PROGRAM = ['dist/src/commands/main.js', 'check'];
const INPUT = 'workbooks/one-engine.xlsx';

const folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
const book = join(folder, 'engine.xlsx');
const previous = join(folder, 'engine.previous.xlsx');
const failures: string[] = [];
const count = { old: 0, new: 0, late: 0, temporaries: 0, uncleared: 0 };
try {
  const oldBytes = readFileSync(INPUT);
  copyFileSync(INPUT, book);
  const start = performance.now();
  spawnSync(process.execPath, [...PROGRAM, book, '--in-place']);
  const whole = performance.now() - start;
  const newBytes = readFileSync(book);
  for (let run = 0; run < Math.ceil(runs / 2); run++) {
    rmSync(previous, { force: true });
    copyFileSync(INPUT, book);
    const moment = random.between(0, Math.round(whole * 1.1));
    if (!(await killAfter(startGroup([...PROGRAM, book, '--in-place']), moment))) count.late += 1;
    const left = readFileSync(book);
    if (left.equals(oldBytes)) count.old += 1;
    else if (left.equals(newBytes)) count.new += 1;
    else failures.push(`check, killed after ${moment} ms: the book is neither old nor new`);
    if (existsSync(previous) && !readFileSync(previous).equals(oldBytes)) {
      failures.push(`check, killed after ${moment} ms: the previous book is another`);
    }
  }
  for (let run = 0; run < Math.floor(runs / 2); run++) {
    const path = join(folder, 'written.xlsx');
    const moment = random.between(0, 40);
    await killWriter(path, moment);
    if (!isWriters(path)) failures.push(`writer, killed after ${moment} ms: the file is not whole`);
    if (!isWriters(join(folder, 'written.previous.xlsx'))) {
      failures.push(`writer, killed after ${moment} ms: the previous file is not whole`);
    }
  }
  const temporaries = () => readdirSync(folder).filter((name) => name.endsWith('.tmp')).length;
  count.temporaries = temporaries();
  spawnSync(process.execPath, [...PROGRAM, book, '--in-place']);
  count.uncleared = temporaries();
  if (count.uncleared > 0) failures.push(`${count.uncleared} hidden temporary files stay after the next run`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
for (const failure of failures) console.log(failure);
console.log(
  `seed ${values.seed}: ${runs} kills, ${failures.length} with damage. check: ${count.old} left the old book, ${count.new} the whole new one ` +
    `(${count.late} came after its end); ${count.temporaries} hidden temporary files were left behind, ${count.uncleared} after the next run`,
);
process.exitCode = failures.length === 0 ? 0 : 1;
