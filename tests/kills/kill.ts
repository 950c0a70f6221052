/** Kills processes at a moment, and looks at what they leave behind. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';

/** A process that leads a group of its own, so that all that it starts is killed with it. */
export function startGroup(args: readonly string[]): ChildProcess {
  return spawn(process.execPath, args, { detached: true, stdio: ['ignore', 'pipe', 'ignore'] });
}

/** @returns whether the process was still at work */
export async function killAfter(child: ChildProcess, milliseconds: number): Promise<boolean> {
  child.stdout?.resume();
  const ended = once(child, 'close').then(() => false);
  const isRunning = await Promise.race([ended, wait(milliseconds, true)]);
  if (isRunning) {
    process.kill(-child.pid!, 'SIGKILL');
    await ended;
  }
  return isRunning;
}

/** Starts the writer, which writes without an end, and kills it a while after its second file. */
export async function killWriter(path: string, milliseconds: number): Promise<boolean> {
  const child = startGroup(['tests/kills/writer.mjs', path]);
  await once(child.stdout!, 'data');
  return killAfter(child, milliseconds);
}

/** Whether a file is one of the writer's, to its last byte. */
export function isWriters(path: string): boolean {
  const content = readFileSync(path);
  const first = content[0] ?? 0;
  return content.length === 50_000 * (1 + (first % 30)) && content.every((byte) => byte === first);
}
