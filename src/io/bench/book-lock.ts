/**
 * One bench a book. A file beside the book names the process that has it; a file whose process is gone is taken over.
 */
import { randomUUID } from 'node:crypto';
import { link, open, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { UserError } from '../../engine/user-error.js';
import { beginningOf, isRunning } from '../running-process.js';
import { foreignKindAt } from './own-file.js';

/** Bytes of a lock: far more than it has. */
const LONGEST = 4096;

interface Owner {
  readonly token: string;
  readonly host: string;
  readonly pid: number;
  /** When the process began, as the system counts it: process numbers are used again. Blank where it is not told. */
  readonly began: string;
  readonly since: string;
}

export interface BookLock {
  /** Throws a UserError where another bench has taken the book in the meantime. */
  verify(): Promise<void>;
  release(): Promise<void>;
}

export function lockPath(book: string): string {
  return `${book}.lock`;
}

/** Throws a UserError where another bench has the book, or the system refuses. */
export async function lockBook(book: string): Promise<BookLock> {
  const own: Owner = {
    token: randomUUID(),
    host: hostname(),
    pid: process.pid,
    began: beginningOf(process.pid),
    since: new Date().toISOString(),
  };
  return take(lockPath(book), `${JSON.stringify(own)}\n`, book);
}

async function take(path: string, text: string, book: string): Promise<BookLock> {
  // Each turn either makes the file, refuses, or clears a dead owner's away.
  for (let turn = 0; turn < 5; turn++) {
    if (await makeFile(path, text)) return held(path, text, book);
    const kind = await foreignKindAt(path);
    if (kind !== undefined) throw foreign(book, path, kind);
    const found = await readBeginning(path).catch(() => undefined);
    if (found === undefined) continue;
    const owner = parseOwner(found);
    if (!owner) throw foreign(book, path, 'a file with other content than the lock of a bench');
    if (isAlive(owner)) throw taken(book, path, owner);
    await clearAway(path, found, text, book);
  }
  throw taken(book, path, undefined);
}

/** Of a file that is no lock, whatever its size, enough to tell. */
async function readBeginning(path: string): Promise<string> {
  const handle = await open(path);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(LONGEST), 0, LONGEST, 0);
    return buffer.toString('utf8', 0, bytesRead);
  } finally {
    await handle.close();
  }
}

function held(path: string, text: string, book: string): BookLock {
  const isOurs = async () => (await readBeginning(path).catch(() => '')) === text;
  return {
    async verify() {
      if (!(await isOurs())) throw taken(book, path, undefined);
    },
    async release() {
      if (await isOurs()) await rm(path, { force: true });
    },
  };
}

/** Under its name the file is whole or not there: a reader never sees half of it. */
async function makeFile(path: string, text: string): Promise<boolean> {
  const temporary = `${path}.${randomUUID()}.tmp`;
  try {
    const handle = await open(temporary, 'wx');
    await handle.writeFile(text);
    await handle.sync();
    await handle.close();
    await link(temporary, path);
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST') return false;
    throw new UserError(
      `${path}: found that the system refused (${code}); expected a folder in which the book can be locked; choose another folder.`,
      { cause: error },
    );
  } finally {
    await rm(temporary, { force: true });
  }
}

/**
 * Removes a dead owner's file. Between the look at it and its removal another bench may have removed it and put its
 * own there; so only the one that holds a lock on the clearing looks again and removes. A bench killed while it
 * clears leaves that lock behind, which is taken over in the same way.
 */
async function clearAway(path: string, found: string, text: string, book: string): Promise<void> {
  const clearing = await take(`${path}.clearing`, text, book);
  try {
    if ((await readBeginning(path).catch(() => '')) === found) await rm(path, { force: true });
  } finally {
    await clearing.release();
  }
}

function parseOwner(text: string): Owner | undefined {
  try {
    const owner = JSON.parse(text) as Partial<Owner>;
    return typeof owner.token === 'string' && typeof owner.pid === 'number' && typeof owner.host === 'string'
      ? (owner as Owner)
      : undefined;
  } catch {
    return undefined;
  }
}

/** Of another machine nothing is known: its process is taken to live. */
function isAlive({ host, pid, began }: Owner): boolean {
  if (host !== hostname()) return true;
  return isRunning(pid) && (began === '' || beginningOf(pid) === began);
}

function foreign(book: string, path: string, found: string): UserError {
  return new UserError(
    `${book}: found ${path}, ${found}; expected the lock of a bench, or none; look at it, and move it elsewhere or remove ${path} if no bench is running.`,
  );
}

function taken(book: string, path: string, owner: Owner | undefined): UserError {
  const who = owner ? ` (process ${owner.pid} on ${owner.host}, since ${owner.since})` : '';
  return new UserError(
    `${book}: found that another bench has this book${who}; expected one bench a book; end the other one first, ` +
      `or remove ${path} if no bench is running.`,
  );
}
