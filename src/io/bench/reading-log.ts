/**
 * The log beside a book: lines are only ever added, and each is on the disk before the next prompt. After a kill, a
 * full disk or a dead battery it holds every reading that was accepted.
 */
import { constants } from 'node:fs';
import { type FileHandle, open, readFile } from 'node:fs/promises';
import { LOG_HEADER, type LogEntry, logLine, parseLogLine } from '../../engine/bench/log-line.js';
import { UserError } from '../../engine/user-error.js';
import { foreignKind, foreignKindAt } from './own-file.js';

/** As with `a`, but never through a link or into a pipe that has come in the meantime. Windows has neither flag. */
const APPENDING =
  constants.O_APPEND |
  constants.O_CREAT |
  constants.O_WRONLY |
  (constants.O_NOFOLLOW ?? 0) |
  (constants.O_NONBLOCK ?? 0);

/** Of a hard link: what is added would stand under the other name too. */
const SECOND_NAME = 'a file that has a second name elsewhere';

export function logPath(book: string): string {
  return `${book}.log`;
}

export class ReadingLog {
  private constructor(
    readonly path: string,
    private readonly handle: FileHandle,
    readonly entries: readonly LogEntry[],
    /** Sentences about lines that are damaged; they stay where they are. */
    readonly damaged: readonly string[],
    private length: number,
  ) {}

  /**
   * Opens the log of a book, and makes it where it is missing. A last line that was cut short was never accepted:
   * it is closed with a line end, and counts as damaged.
   *
   * Throws a UserError where the log cannot be read or written.
   */
  static async open(book: string): Promise<ReadingLog> {
    const path = logPath(book);
    try {
      refuseForeign(path, await foreignKindAt(path));
      const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
        if (error.code === 'ENOENT') return '';
        throw error;
      });
      const { entries, damaged } = entriesOf(text, path);
      const handle = await open(path, APPENDING);
      const stats = await handle.stat();
      const foreign = foreignKind(stats) ?? (stats.nlink > 1 ? SECOND_NAME : undefined);
      if (foreign !== undefined) await handle.close();
      refuseForeign(path, foreign);
      const log = new ReadingLog(path, handle, entries, damaged, stats.size);
      if (text === '') await log.write(LOG_HEADER);
      else if (!text.endsWith('\n')) await log.write('\n');
      return log;
    } catch (error) {
      throw refusal(error, path, 'the bench was not begun');
    }
  }

  /** Adds entries, and returns once they are on the disk. Throws a UserError where they are not. */
  async add(entries: readonly LogEntry[]): Promise<void> {
    if (entries.length === 0) return;
    try {
      await this.write(entries.map(logLine).join(''));
    } catch (error) {
      throw refusal(error, this.path, 'the last reading was not kept; all before it are in the log');
    }
  }

  async close(): Promise<void> {
    await this.handle.close();
  }

  private async write(text: string): Promise<void> {
    const bytes = Buffer.from(text, 'utf8');
    try {
      await this.handle.writeFile(bytes);
      await this.handle.sync();
      this.length += bytes.length;
    } catch (error) {
      // What a full disk took of it is no whole line: away with it, as far as the system lets us.
      await this.handle.truncate(this.length).catch(() => undefined);
      throw error;
    }
  }
}

function entriesOf(text: string, path: string): { entries: LogEntry[]; damaged: string[] } {
  const entries: LogEntry[] = [];
  const damaged: string[] = [];
  for (const [place, line] of text.split('\n').entries()) {
    if (line === '' || `${line}\n` === LOG_HEADER) continue;
    const entry = parseLogLine(line);
    if (entry) entries.push(entry);
    else {
      damaged.push(
        `${path}: line ${place + 1} is damaged or was cut short, and is passed over; expected ${LOG_HEADER.split('\t').length} fields and their checksum; ` +
          'look at it if a reading is missing.',
      );
    }
  }
  return { entries, damaged };
}

function refuseForeign(path: string, found: string | undefined): void {
  if (found === undefined) return;
  throw new UserError(
    `${path}: found ${found} where the log of the bench belongs; expected a file of its own, or none; move it elsewhere, and run again: the bench was not begun, and nothing was written.`,
  );
}

function refusal(error: unknown, path: string, result: string): unknown {
  const { code } = error as NodeJS.ErrnoException;
  if (error instanceof UserError || code === undefined) return error;
  const found = code === 'ENOSPC' ? 'a full disk' : `that the system refused (${code})`;
  return new UserError(
    `${path}: found ${found}; expected a place where the log can grow; free some space or the file, and run again: ${result}.`,
    { cause: error },
  );
}
