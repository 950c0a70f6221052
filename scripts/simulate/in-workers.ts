/** Runs of the simulation side by side, each in a thread. */
import { Worker } from 'node:worker_threads';
import type { Runs } from './worker.js';

/** Runs at one time. */
const AT_ONCE = 2;

const waiting: (() => void)[] = [];
let running = 0;

/** The result of a run; it waits for its turn. */
export async function inWorker<Name extends keyof Runs>(
  name: Name,
  ...args: Parameters<Runs[Name]>
): Promise<ReturnType<Runs[Name]>> {
  if (running >= AT_ONCE) await new Promise<void>((start) => waiting.push(start));
  else running += 1;
  try {
    return await new Promise((resolve, reject) => {
      const worker = new Worker(new URL('./worker.js', import.meta.url), {
        workerData: { name, args },
        // A fit leaves nothing but short-lived objects: with more room for them they are collected less often.
        resourceLimits: { maxYoungGenerationSizeMb: 64 },
      });
      worker.on('message', resolve);
      worker.on('error', reject);
    });
  } finally {
    // The place goes to the next one that waits.
    const next = waiting.shift();
    if (next) next();
    else running -= 1;
  }
}
