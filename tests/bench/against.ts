/** This build and another one on the same made books, in turns: what else the machine does disturbs both alike. */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { medians, type Taken } from './measure.js';
import { Peers } from './peers.js';

export interface Against {
  /** The folder `dist` of each build. */
  readonly own: string;
  readonly other: string;
  readonly bench: string;
  /** Takes what is made and written. */
  readonly folder: string;
  readonly rows: readonly number[];
  readonly rounds: number;
}

/** @throws Error where the folder holds no built program. */
export function refuseWithoutProgram(dist: string): void {
  const main = join(resolve(dist), 'src/commands/main.js');
  if (existsSync(main)) return;
  throw new Error(`there is no ${main}; give the folder dist of a build that npm run build has made`);
}

/** The lines of a table: medians of each build, and this one by the other. */
export function againstTable({ own, other, bench, folder, rows, rounds }: Against): string[] {
  const builds = [own, other].map((dist) => new Peers(join(resolve(dist), 'src'), bench, folder));
  const lines = rows.map((length) => {
    const book = join(folder, `${length}.xlsx`);
    builds[0]!.makeBook(length, book);
    const runs: Taken[][] = [[], []];
    for (let round = 0; round < rounds; round++) {
      // Each is the first of every other round, so that neither always finds the caches of the other.
      for (const build of round % 2 === 0 ? [0, 1] : [1, 0]) {
        runs[build]!.push(builds[build]!.check(book, `of-${build}`));
      }
      process.stderr.write(`${length} rows, round ${round + 1} of ${rounds}\n`);
    }
    return lineOf(length, medians(runs[0]!), medians(runs[1]!));
  });
  const header = '| rows | this, s | other, s | this / other | this, MB | other, MB | this / other |';
  return [header, header.replaceAll(/[^|]+/g, ' --- '), ...lines];
}

function lineOf(rows: number, own: Taken, other: Taken): string {
  const time = ({ seconds, processor }: Taken) => `${seconds.toFixed(2)} (${processor.toFixed(2)})`;
  const ratio = (what: keyof Taken) => (own[what] / other[what]).toFixed(2);
  const cells = [
    String(rows),
    ...[own, other].map(time),
    `${ratio('seconds')} (${ratio('processor')})`,
    ...[own, other].map(({ megabytes }) => megabytes.toFixed(0)),
    ratio('megabytes'),
  ];
  return `| ${cells.join(' | ')} |`;
}
