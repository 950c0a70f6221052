/** The bench run with pipes, and killed at will. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { parseLogLine } from '../../src/engine/bench/log-line.js';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';

const PROGRAM = ['dist/src/commands/main.js', 'bench'];

export function benchPiped(lines: string, ...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...PROGRAM, ...args], {
    input: lines,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  return { status, stdout, stderr };
}

/** What a cell of a part's row holds, in the workbook's file. */
export async function cellsOf(path: string, sheet: string): Promise<Record<string, Record<string, unknown>>> {
  const { sheets } = await readWorkbookPackage(readFileSync(path), path);
  const { rows } = sheets.find(({ name }) => name === sheet)!;
  const headers = Array.from(rows[0]!, (cell) => String(cell?.content?.value));
  const parts = rows.slice(1).flatMap((cells) => {
    const values = headers.map((header, column) => [header, cells[column]?.content?.value] as const);
    return [[String(cells[0]?.content?.value), Object.fromEntries(values)] as const];
  });
  return Object.fromEntries(parts);
}

export interface Kill {
  /** So many readings are answered before the time runs; with 0 it runs from the start of the program. */
  readonly answered: number;
  readonly milliseconds: number;
  /** Whether the workbook is written behind each reading, so that writing is struck too. */
  readonly isWriting?: boolean;
}

/**
 * Types readings one by one, each once the one before was answered, until the bench is killed.
 * @returns the readings that it said were taken
 */
export async function typeUntilKilled(
  path: string,
  readings: readonly string[],
  kill: Kill,
): Promise<string[]> {
  const child = spawn(process.execPath, [...PROGRAM, path], { stdio: ['pipe', 'pipe', 'pipe'] });
  const ended = once(child, 'exit');
  const taken: string[] = [];
  let next = 0;
  let text = '';
  let timer: NodeJS.Timeout | undefined;
  const strike = () => child.kill('SIGKILL');
  const type = () => child.stdin.write(`${readings[next++]}\n${kill.isWriting ? 'w\n' : ''}`);
  child.stdin.on('error', () => undefined);
  child.stderr.on('data', (chunk) => {
    // Nothing is refused here; what is taken up from the log is said, and no more.
    if (!/taken up/.test(String(chunk))) taken.push(`stderr: ${chunk}`);
  });
  child.stdout.on('data', (chunk) => {
    text += chunk;
    for (let end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n')) {
      const line = text.slice(0, end);
      text = text.slice(end + 1);
      const reading = /^(?:Journals|Rods|Cases|Shells) \S+ (?:\w+ \d+): ([\d.]+) mm$/.exec(line);
      if (!reading) continue;
      taken.push(reading[1]!);
      if (taken.length === kill.answered) timer = setTimeout(strike, kill.milliseconds);
      if (next < readings.length) type();
    }
  });
  type();
  if (kill.answered === 0) timer = setTimeout(strike, kill.milliseconds);
  await ended;
  clearTimeout(timer);
  return taken;
}

/** The readings of a book's log, in order. */
export function logged(path: string): string[] {
  if (!existsSync(`${path}.log`)) return [];
  return readFileSync(`${path}.log`, 'utf8')
    .split('\n')
    .flatMap((line) => parseLogLine(line) ?? [])
    .filter(({ kind }) => kind === 'reading')
    .map(({ mm }) => mm);
}
