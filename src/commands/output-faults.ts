/** What becomes of a run whose stdout takes nothing any more: a full disk, a reader that has gone. */
import { writeSync } from 'node:fs';
import { EXIT } from './messages.js';

/** What was found, by the system's code. */
const FOUND: Readonly<Record<string, string>> = {
  ENOSPC: 'a full disk',
  EDQUOT: 'that your share of the disk is used up',
  EPIPE: 'that its reader has closed it',
};

/** Books are still written; at the end one sentence says what is missing, and the exit code is that of a failed run. */
export function watchOutput(): void {
  let fault: string | undefined;
  process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
    fault ??= FOUND[code ?? ''] ?? `that the system refused (${code})`;
  });
  // Where messages cannot be written, there is no place to say so.
  process.stderr.on('error', () => undefined);
  process.on('exit', () => {
    if (fault === undefined) return;
    process.exitCode = EXIT.notRun;
    sayAtEnd(
      `stdout: found ${fault}; expected a place that takes the whole result; make room or read it to its end, and run again: files that were written stand.`,
    );
  });
}

/** A sentence that is out before the process ends. */
export function sayAtEnd(sentence: string): void {
  try {
    writeSync(process.stderr.fd, `${sentence}\n`);
  } catch {
    // There is nobody to tell.
  }
}
