/** The process that a JobPool starts: does the jobs that it is sent, one after the other, and tells how they go. */
import { setFlagsFromString } from 'node:v8';
import { UserError } from '../engine/user-error.js';
import { watchTemporaries } from '../io/temporaries.js';
import type { Job, JobMessage, JobResult } from './jobs.js';
import { EXIT, setOutlet } from './messages.js';

// By default V8 lets a large heap grow to several times what is in use before it collects, and compiles early what soon
// ends: on 10,000 rows, both cost a quarter of the processor time. A version that does not know a flag ignores it.
setFlagsFromString('--heap-growing-percent=40');
setFlagsFromString('--interrupt-budget=1080000');

function tell(message: JobMessage): void {
  process.send?.(message);
}

/** Modules of one kind of job are not loaded for another. */
async function perform(job: Job): Promise<JobResult> {
  switch (job.kind) {
    case 'check':
      return (await import('./check-book.js')).checkBook(job.path, job.target, job.options);
    case 'match':
      return (await import('./match-books.js')).matchBooks(job.paths, job.options);
    case 'report':
      return (await import('./report-book.js')).reportBook(job.path, job.options);
    case 'calc': {
      const { evaluateFormula } = await import('../engine/functions/one-formula.js');
      return { code: EXIT.good, documents: [evaluateFormula(job.formula, job.units)] };
    }
  }
}

setOutlet({
  say: (text) => tell({ kind: 'said', by: 'say', text }),
  print: (text) => tell({ kind: 'said', by: 'print', text }),
  progress: (text) => tell({ kind: 'said', by: 'progress', text }),
});
// The file is made only once the waiting process is sure to know of it.
watchTemporaries(
  (path) =>
    new Promise((resolve) => {
      process.send?.({ kind: 'made', path } satisfies JobMessage, () => resolve());
    }),
  (path) => tell({ kind: 'gone', path }),
);
// A terminal sends its interrupt to both; the one that waits tidies up.
process.on('SIGINT', () => undefined);
process.on('disconnect', () => process.exit());
process.on('message', (job: Job) => {
  perform(job).then(
    (result) => tell({ kind: 'done', result }),
    (error: unknown) =>
      tell(
        error instanceof UserError
          ? { kind: 'refused', message: error.message }
          : { kind: 'failed', stack: error instanceof Error ? `${error.stack}` : String(error) },
      ),
  );
});
