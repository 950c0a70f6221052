/** `oilgap bench BOOK --from FILE`: readings of a list, shown before they are written. */

import { countText } from '../engine/assess/words.js';
import type { BenchSpot } from '../engine/bench/bench-book.js';
import { placeList } from '../engine/bench/place-list.js';
import { linesOf } from '../io/bench/lines.js';
import { readList } from '../io/bench/read-list.js';
import type { BenchSession } from './bench-session.js';
import { EXIT, print, printable, say } from './messages.js';

/**
 * @param spots for values without a part, in the order in which the bench would ask
 * @returns the exit code
 */
export async function benchList(
  session: BenchSession,
  file: string,
  spots: readonly BenchSpot[],
  isAgreed: boolean,
): Promise<number> {
  const list = await readList(file);
  const now = () => new Date().toISOString();
  const { placed, refused, entries } = placeList(session.book, list, spots, now);
  for (const line of placed) process.stdout.write(`${printable(line)}\n`);
  for (const sentence of refused) say(`${file}: ${sentence}`);
  if (placed.length === 0) {
    say(`${file}: found no reading that can be placed; nothing was written.`);
    return EXIT.notRun;
  }
  const readings = countText(placed.length, 'reading');
  if (!isAgreed && !(await isWanted(`Write ${readings} into ${session.path}? y or n: `))) {
    say(`${session.path}: nothing was written; add --yes to write ${readings} without being asked.`);
    return EXIT.notRun;
  }
  await session.keep(entries);
  if (!(await session.write(true))) return EXIT.notRun;
  print(`${session.path}\n  written: ${readings}, ${refused.length} refused`);
  return refused.length > 0 ? EXIT.findings : EXIT.good;
}

/** Asked on a terminal only: without one, nobody can agree. */
async function isWanted(question: string): Promise<boolean> {
  if (!process.stdin.isTTY) return false;
  process.stdout.write(printable(question));
  for await (const line of linesOf(process.stdin)) return /^y(es)?$/i.test(line.trim());
  return false;
}
