/** Runs a program whole and says what it took. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

export interface Taken {
  /** Seconds on the clock. */
  readonly seconds: number;
  /** Seconds of all processors, of the program and of those that it starts: less disturbed by what else runs. */
  readonly processor: number;
  /** Greatest memory of one process, MB. */
  readonly megabytes: number;
}

const TIME = '/usr/bin/time';

export function refuseWithoutTools(): void {
  const missing = [TIME, '/usr/bin/soffice'].filter((path) => !existsSync(path));
  if (missing.length === 0) return;
  throw new Error(`the bench needs ${missing.join(' and ')}: apt-get install time libreoffice-calc`);
}

/** Throws an Error where the program ends with another code than those allowed. */
export function measure(command: readonly string[], allowed: readonly number[] = [0]): Taken {
  const run = spawnSync(TIME, ['-f', '\n%e %U %S %M', ...command], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (!allowed.includes(run.status ?? -1)) {
    throw new Error(`${command.join(' ')} ended with ${run.status}\n${run.stderr}`);
  }
  const [seconds, user, system, kilobytes] = run.stderr.trimEnd().split('\n').at(-1)!.split(' ').map(Number);
  return { seconds: seconds!, processor: user! + system!, megabytes: kilobytes! / 1000 };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** The medians of several runs. */
export function medians(runs: readonly Taken[]): Taken {
  return {
    seconds: median(runs.map(({ seconds }) => seconds)),
    processor: median(runs.map(({ processor }) => processor)),
    megabytes: median(runs.map(({ megabytes }) => megabytes)),
  };
}
