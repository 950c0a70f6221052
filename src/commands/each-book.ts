/** Runs a command's books, several at once; what they say comes in the order asked. A bad book never stops the others. */
import { UserError } from '../engine/user-error.js';
import type { JobPool, Running } from './job-pool.js';
import type { Job } from './jobs.js';
import { EXIT, endProgress, say } from './messages.js';

/**
 * @param plan the job of a book; throws a UserError where it cannot be run. Called one by one, in order
 * @returns the exit code, the worst of the books, and their entries for the JSON document
 */
export async function eachBook(
  books: readonly string[],
  pool: JobPool,
  plan: (path: string) => Promise<Job>,
): Promise<{ code: number; documents: unknown[] }> {
  const runs: [string, Running | Error][] = [];
  for (const path of books) {
    runs.push([
      path,
      await plan(path).then(
        (job) => pool.run(job),
        (error: Error) => error,
      ),
    ]);
  }
  let code: number = EXIT.good;
  const documents: unknown[] = [];
  for (const [path, run] of runs) {
    try {
      if (run instanceof Error) throw run;
      run.show();
      const result = await run.result;
      code = Math.max(code, result.code);
      documents.push(...result.documents);
    } catch (error) {
      const message = error instanceof UserError ? error.message : faultOf(path, error);
      say(message);
      documents.push({ file: path, error: message });
      code = EXIT.notRun;
    }
    endProgress();
  }
  return { code, documents };
}

export function faultOf(path: string, error: unknown): string {
  const stack = error instanceof Error ? error.stack : String(error);
  return `${path}: oilgap failed on this book; this is a fault of the program, not of the book.\n${stack}`;
}
