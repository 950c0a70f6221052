/** One run of the simulation in a thread of its own; its result depends on its arguments alone. */
import { parentPort, workerData } from 'node:worker_threads';
import { bestOfCounts } from './best-of.js';
import { placeCounts } from './places.js';
import { promisesOf } from './promises.js';
import { formCounts } from './round-parts.js';

const RUNS = { promisesOf, formCounts, placeCounts, bestOfCounts };
export type Runs = typeof RUNS;

const { name, args } = workerData as { name: keyof Runs; args: unknown[] };
parentPort!.postMessage((RUNS[name] as (...own: unknown[]) => unknown)(...args));
