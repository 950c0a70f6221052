/** The options of commands that work in processes of their own, and such a pool for one command. */
import { availableParallelism, totalmem } from 'node:os';
import { JobPool } from './job-pool.js';
import { whenBrokenOff } from './signals.js';

export interface PoolOptions {
  readonly jobs?: number;
  readonly memory?: number;
  readonly timeout?: number;
}

const TIMEOUT_SECONDS = 600;
const MOST_MEMORY = 4096;
const LEAST_MEMORY = 512;
/** Of the machine's memory, which all processes share. */
const SHARE = 0.75;

/** Runs a command with a pool, whose processes end with it, and also where the run is broken off. */
export async function withPool<Result>(
  { jobs, memory, timeout = TIMEOUT_SECONDS }: PoolOptions,
  books: number,
  run: (pool: JobPool) => Promise<Result>,
): Promise<Result> {
  const atOnce = Math.max(1, Math.min(books, jobs ?? availableParallelism()));
  const share = Math.floor((totalmem() * SHARE) / 1e6 / atOnce);
  const pool = new JobPool({
    jobs: atOnce,
    memory: memory ?? Math.max(LEAST_MEMORY, Math.min(MOST_MEMORY, share)),
    timeout,
  });
  whenBrokenOff(() => pool.close());
  try {
    return await run(pool);
  } finally {
    pool.close();
  }
}
