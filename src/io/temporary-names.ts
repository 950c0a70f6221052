/**
 * The names of temporary files, and the removal of those that a killed run left behind. A name tells which process made
 * the file, so that a later run knows whether that process is still there.
 */
import { createHash, randomUUID } from 'node:crypto';
import { readlinkSync } from 'node:fs';
import { lstat, readdir, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { beginningOf, isRunning } from './running-process.js';

const NAME =
  /^\.oilgap-(?:([0-9a-f]{8})-(\d{1,10})-([0-9a-f]{8})-)?[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}\.tmp$/;

/** Writing takes seconds. Of a process of another machine nothing is known but the age of its file. */
const OLD_MILLISECONDS = 24 * 3600 * 1000;

/** Folders that this process has cleared. */
const cleared = new Set<string>();

const short = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 8);

/** The machine and, where it has several, the space of its process numbers: elsewhere a number is another process's. */
const machine = short(`${hostname()} ${processSpace()}`);
const began = short(beginningOf(process.pid));

function processSpace(): string {
  try {
    return readlinkSync('/proc/self/ns/pid');
  } catch {
    return '';
  }
}

/** A name in the folder that no other file has. */
export function temporaryPath(folder: string): string {
  return join(folder, `.oilgap-${machine}-${process.pid}-${began}-${randomUUID()}.tmp`);
}

/**
 * Removes the temporary files of processes that have ended, once a folder and process; those of other machines, and of
 * versions that did not name the process, once they are a day old. What cannot be removed stays: it is in nobody's way.
 */
export async function clearTemporaries(folder: string): Promise<void> {
  if (cleared.has(folder)) return;
  cleared.add(folder);
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const found = NAME.exec(name);
    if (!found) continue;
    const path = join(folder, name);
    const [, made, pid, start] = found;
    const isMakerGone =
      made === machine && !(isRunning(Number(pid)) && short(beginningOf(Number(pid))) === start);
    if (isMakerGone ? await isFile(path) : await isOld(path)) {
      await rm(path, { force: true }).catch(() => undefined);
    }
  }
}

async function isFile(path: string): Promise<boolean> {
  return lstat(path).then(
    (stats) => stats.isFile(),
    () => false,
  );
}

async function isOld(path: string): Promise<boolean> {
  const stats = await lstat(path).catch(() => undefined);
  // The age of the name, not of the content: a second name of an old file is new.
  return stats?.isFile() === true && Date.now() - stats.ctimeMs > OLD_MILLISECONDS;
}
