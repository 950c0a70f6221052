/** A book at the bench: locked, its log open, its readings written at pauses and at the end. */
import { realpath } from 'node:fs/promises';
import { BenchBook } from '../engine/bench/bench-book.js';
import type { LogEntry } from '../engine/bench/log-line.js';
import { replay } from '../engine/bench/replay.js';
import { UserError } from '../engine/user-error.js';
import { type BookLock, lockBook } from '../io/bench/book-lock.js';
import { ReadingLog } from '../io/bench/reading-log.js';
import { filledBook } from '../io/bench/write-readings.js';
import { openFile } from '../io/open-file.js';
import { writeFileWhole } from '../io/write-file.js';
import { readWorkbookPackage } from '../io/xlsx/read-package.js';
import { assessAndWrite } from './check-book.js';
import { say } from './messages.js';

/** Time that matching may take where the book's results are made anew. */
const SECONDS = 30;

export class BenchSession {
  private isWritten = false;

  private constructor(
    readonly path: string,
    readonly book: BenchBook,
    readonly log: ReadingLog,
    private readonly lock: BookLock,
  ) {}

  /** @throws UserError where the book cannot be read, another bench has it, or the log cannot be kept. */
  static async open(path: string): Promise<BenchSession> {
    // By whatever link a book is named, it has one lock and one log.
    const real = await realpath(path).catch(() => path);
    const { kind } = await openFile(real);
    if (kind === 'folder') {
      throw new UserError(
        `${path}: found a folder; expected an .xlsx workbook, whose cells can be filled in place; oilgap check ${path} makes one.`,
      );
    }
    const lock = await lockBook(real);
    try {
      const book = new BenchBook((await openFile(real)).model);
      const log = await ReadingLog.open(real);
      const session = new BenchSession(path, book, log, lock);
      session.takeUp();
      return session;
    } catch (error) {
      await lock.release();
      throw error;
    }
  }

  private takeUp(): void {
    for (const sentence of this.log.damaged) say(sentence);
    const { readings, left } = replay(this.book, this.log.entries);
    for (const sentence of left) say(sentence);
    if (readings > 0)
      say(`${this.path}: ${readings} readings of the log were not in the book yet, and are taken up.`);
  }

  /** Returns once the entries are on the disk. */
  async keep(entries: readonly LogEntry[]): Promise<void> {
    await this.log.add(entries);
  }

  /**
   * Writes the workbook. A failure loses nothing: the log has it all, and the next start takes it up.
   * @param isEnd of the sitting; only then are results of an earlier run made anew, since that takes its time
   * @returns whether the workbook's file has everything
   */
  async write(isEnd: boolean): Promise<boolean> {
    if (this.book.pending.list().length === 0) return true;
    if (this.book.hasResults && !isEnd) return true;
    try {
      await this.lock.verify();
      const { bytes, refused } = await filledBook(this.path, this.book);
      for (const { sheet, reason } of refused) say(`${this.path}: sheet ${sheet}: ${reason}`);
      // The file as it was before the sitting is kept, not that of the last pause.
      const isPreviousKept = !this.isWritten;
      if (this.book.hasResults) await this.writeResults(bytes, isPreviousKept);
      else await writeFileWhole(this.path, bytes, { isPreviousKept });
      this.isWritten = true;
      if (refused.length > 0) return false;
      await this.log.add([writtenEntry()]);
      this.book.pending.written();
      return true;
    } catch (error) {
      if (!(error instanceof UserError)) throw error;
      say(error.message);
      say(
        `${this.path}: the readings are in ${this.log.path}, and go into the book at the next start of the bench.`,
      );
      return false;
    }
  }

  /** Makes the results of an earlier run anew, which new readings would leave stale. */
  private async writeResults(bytes: Uint8Array, isPreviousKept: boolean): Promise<void> {
    const model = await readWorkbookPackage(bytes, this.path);
    await assessAndWrite(model, bytes, this.path, { values: false, seconds: SECONDS, isPreviousKept });
  }

  async close(): Promise<void> {
    await this.log.close();
    await this.lock.release();
  }
}

function writtenEntry(): LogEntry {
  return {
    time: new Date().toISOString(),
    kind: 'written',
    sheet: undefined,
    part: '',
    spot: '',
    typed: '',
    mm: '',
    gauge: '',
    temperature: '',
    before: '',
    reason: '',
  };
}
