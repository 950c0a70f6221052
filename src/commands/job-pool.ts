/**
 * Runs jobs in processes of their own, several at once. Whatever a book makes of its process, an endless loop or
 * all memory, becomes one error, and the other books go on.
 *
 * Processes and not threads: a thread that asks for one array beyond its limit takes the whole program with it
 * (measured on Node 20.20: `new Array(3e7)` with maxOldGenerationSizeMb 300).
 */
import { type ChildProcess, fork } from 'node:child_process';
import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { UserError } from '../engine/user-error.js';
import type { Job, JobMessage, JobResult } from './jobs.js';
import { type Outlet, printable, TERMINAL } from './messages.js';

const PROGRAM = fileURLToPath(new URL('./job-process.js', import.meta.url));
/** Signals that a terminal or a system sends to a whole group of processes. */
const SENT_TO_ALL = ['SIGINT', 'SIGTERM', 'SIGHUP'];
/** In milliseconds. */
const MOMENT = 500;
/** How much of a dying process's last words is kept. */
const LAST_WORDS = 8000;
/** What V8 and its library say where stack, memory or the length of a text is at its end. */
const OUT_OF_MEMORY =
  /heap out of memory|javascript OOM|Allocation failed|allocation failed|invalid (?:array|table) size/i;
const EXHAUSTED =
  /^RangeError: (?:Maximum call stack size exceeded|Invalid (?:string|array) length|Array buffer allocation failed)/;

export interface JobLimits {
  /** How many run at once. */
  readonly jobs: number;
  /** Heap of one process, in MB. */
  readonly memory: number;
  /** How long one job may take, in seconds. */
  readonly timeout: number;
}

export interface Running {
  /** Rejects with a UserError, or with an Error whose stack is that of the fault. */
  readonly result: Promise<JobResult>;
  /** Shows what it has said so far, and from now on says it at once. */
  show(): void;
}

/** Keeps what a job says until its turn. */
class Backlog implements Outlet {
  private pending: (() => void)[] | undefined = [];

  say(text: string): void {
    this.pass(() => TERMINAL.say(text));
  }

  print(text: string): void {
    this.pass(() => TERMINAL.print(text));
  }

  progress(text: string): void {
    if (!this.pending) TERMINAL.progress(text);
  }

  show(): void {
    for (const act of this.pending ?? []) act();
    this.pending = undefined;
  }

  private pass(act: () => void): void {
    if (this.pending) this.pending.push(act);
    else act();
  }
}

interface Task {
  readonly job: Job;
  readonly outlet: Backlog;
  readonly resolve: (result: JobResult) => void;
  readonly reject: (error: Error) => void;
}

export class JobPool {
  private readonly waiting: Task[] = [];
  private readonly processes = new Set<ChildProcess>();
  private readonly temporaries = new Set<string>();
  private lanes = 0;
  /** Started ahead, so that it loads while the command looks at its arguments. */
  private spare: ChildProcess | undefined;

  constructor(private readonly limits: JobLimits) {
    this.spare = this.start();
  }

  run(job: Job): Running {
    const outlet = new Backlog();
    const result = new Promise<JobResult>((resolve, reject) => {
      this.waiting.push({ job, outlet, resolve, reject });
    });
    // Whoever waits for it in turn gets the rejection; until then it is not one that nobody handles.
    result.catch(() => undefined);
    if (this.lanes < this.limits.jobs) void this.work();
    return { result, show: () => outlet.show() };
  }

  /** Ends all processes at once and removes their temporary files. */
  close(): void {
    for (const child of this.processes) child.kill('SIGKILL');
    this.processes.clear();
    for (const path of this.temporaries) rmSync(path, { force: true });
    this.temporaries.clear();
  }

  private async work(): Promise<void> {
    this.lanes += 1;
    let child: ChildProcess | undefined;
    for (let task = this.waiting.shift(); task; task = this.waiting.shift()) {
      if (!child?.connected) {
        child = this.spare ?? this.start();
        this.spare = undefined;
      }
      await this.perform(task, child);
    }
    if (child?.connected) child.disconnect();
    this.lanes -= 1;
  }

  private start(): ChildProcess {
    const child = fork(PROGRAM, [], {
      execArgv: [`--max-old-space-size=${this.limits.memory}`],
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    });
    this.processes.add(child);
    // One that fails between two jobs is replaced by the next.
    child.on('error', () => undefined);
    child.once('exit', () => this.processes.delete(child));
    return child;
  }

  /** Settles the task; afterwards the process is ready for the next one or gone. */
  private perform({ job, outlet, resolve, reject }: Task, child: ChildProcess): Promise<void> {
    const made = new Set<string>();
    let words = '';
    let isLate = false;
    return new Promise((settled) => {
      const hear = (text: Buffer) => {
        words = (words + text).slice(-LAST_WORDS);
      };
      const giveUp = setTimeout(() => {
        isLate = true;
        child.kill('SIGKILL');
      }, this.limits.timeout * 1000);
      const finish = () => {
        clearTimeout(giveUp);
        child.off('message', receive).off('close', died).off('error', failed);
        child.stderr?.off('data', hear);
        settled();
      };
      const receive = (message: JobMessage) => {
        switch (message.kind) {
          case 'said':
            outlet[message.by](message.text);
            return;
          case 'made':
            made.add(message.path);
            this.temporaries.add(message.path);
            return;
          case 'gone':
            made.delete(message.path);
            this.temporaries.delete(message.path);
            return;
          case 'done':
            resolve(message.result);
            break;
          case 'refused':
            reject(new UserError(message.message));
            break;
          case 'failed':
            reject(EXHAUSTED.test(message.stack) ? this.excess(job, 'memory') : faultFrom(message.stack));
        }
        finish();
      };
      const died = (code: number | null, signal: string | null) => {
        for (const path of made) {
          rmSync(path, { force: true });
          this.temporaries.delete(path);
        }
        if (signal !== null && SENT_TO_ALL.includes(signal)) {
          // This process has got it too, and is about to end.
          setTimeout(() => {
            reject(
              new UserError(
                `${nameOf(job)}: found that its process was ended from outside (${signal}); expected it to run to its end; run again. Nothing was written for it.`,
              ),
            );
            finish();
          }, MOMENT);
          return;
        }
        if (isLate) reject(this.excess(job, 'time'));
        else if (OUT_OF_MEMORY.test(words) || signal === 'SIGKILL') reject(this.excess(job, 'memory'));
        else reject(faultFrom(`the process ended by itself (${signal ?? code})\n${printable(words)}`));
        finish();
      };
      const failed = (error: Error) => {
        reject(faultFrom(`the process could not be started or told what to do\n${error.stack}`));
        finish();
      };
      child.on('message', receive).on('close', died).on('error', failed);
      child.stderr?.on('data', hear);
      child.send(job);
    });
  }

  private excess(job: Job, of: 'memory' | 'time'): UserError {
    const { memory, timeout } = this.limits;
    const found = of === 'memory' ? `more memory than ${memory} MB` : `longer than ${timeout} s`;
    if (job.kind === 'calc') {
      return new UserError(
        `${nameOf(job)}: found a formula that takes ${found}; expected less; make it smaller.`,
      );
    }
    return new UserError(
      `${nameOf(job)}: found that it takes ${found}; expected less; split the book, take out formulas that are not needed, or allow more with --${of === 'memory' ? 'memory' : 'timeout'}. Nothing was written for it.`,
    );
  }
}

/** What messages call a job. */
function nameOf(job: Job): string {
  if (job.kind === 'calc') return 'calc';
  return job.kind === 'match' ? (job.options.out ?? job.paths.join(', ')) : job.path;
}

function faultFrom(stack: string): Error {
  const error = new Error(stack);
  error.stack = stack;
  return error;
}
