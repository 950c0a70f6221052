/** Runs a command's books one by one: a bad book never stops the others. */
import { UserError } from '../engine/user-error.js';
import { EXIT, endProgress, say } from './messages.js';

/**
 * @param run whether everything about the book is good
 * @param failed told of a book that could not be run, after its message was shown
 * @returns the exit code: the worst of the books
 */
export async function eachBook(
  books: readonly string[],
  run: (path: string) => Promise<boolean>,
  failed: (path: string, message: string) => void = () => undefined,
): Promise<number> {
  let code: number = EXIT.good;
  for (const path of books) {
    try {
      if (!(await run(path))) code = Math.max(code, EXIT.findings);
    } catch (error) {
      endProgress();
      const message = error instanceof UserError ? error.message : faultOf(path, error);
      say(message);
      failed(path, message);
      code = EXIT.notRun;
    }
  }
  return code;
}

function faultOf(path: string, error: unknown): string {
  const stack = error instanceof Error ? error.stack : String(error);
  return `${path}: oilgap failed on this book; this is a fault of the program, not of the book.\n${stack}`;
}
