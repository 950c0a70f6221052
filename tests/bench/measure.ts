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
/** Where each tool is, and the package that brings it. */
const TOOLS = {
  time: [TIME, 'time'],
  office: ['/usr/bin/soffice', 'libreoffice-calc'],
} as const;
type Tool = keyof typeof TOOLS;

/** @throws Error where one of the tools is not installed. */
export function refuseWithoutTools(tools: readonly Tool[] = ['time', 'office']): void {
  const missing = tools.map((tool) => TOOLS[tool]).filter(([path]) => !existsSync(path));
  if (missing.length === 0) return;
  const paths = missing.map(([path]) => path).join(' and ');
  throw new Error(`the bench needs ${paths}: apt-get install ${missing.map(([, name]) => name).join(' ')}`);
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
