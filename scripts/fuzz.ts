/**
 * `npm run fuzz -- --runs N --seed S`: damaged books, drawn by fast-check, against what must hold of every book.
 * A process of its own does the work; one that stays silent hangs, and the book it hangs on is named.
 */
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { cases } from '../tests/fuzz/cases.js';

const { values } = parseArgs({
  options: { runs: { type: 'string', default: '5000' }, seed: { type: 'string', default: '1' } },
});
const seed = Number(values.seed);
const SILENCE_SECONDS = 60;

async function work(): Promise<void> {
  const counts = new Map<string, number>();
  let run = 0;
  process.on('unhandledRejection', (reason) => {
    console.log(`run ${run}: a rejection that nobody handled: ${reason}`);
    process.exit(1);
  });
  const result = await fc.check(
    fc.asyncProperty(cases, async ({ what, run: hold }) => {
      process.send?.({ run: run++, what });
      const key = `${what}: ${await hold()}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }),
    {
      seed,
      numRuns: Number(values.runs),
      verbose: fc.VerbosityLevel.None,
      interruptAfterTimeLimit: 3_600_000,
    },
  );
  for (const [key, count] of [...counts].sort()) console.log(`${String(count).padStart(6)}  ${key}`);
  console.log(
    `seed ${seed}: ${result.numRuns} books, ${result.failed ? 'one of them broke what must hold' : 'all as they should be'}`,
  );
  if (result.failed)
    console.log(
      `path ${result.counterexamplePath}, error: ${String(result.errorInstance).slice(0, 1500)}\n${(result.errorInstance as Error)?.stack?.slice(0, 1500)}`,
    );
  process.exit(result.failed ? 1 : 0);
}

function watch(): void {
  const child = fork(fileURLToPath(import.meta.url), process.argv.slice(2), {
    env: { ...process.env, OILGAP_FUZZ_WORK: '1' },
  });
  let last = '';
  let timer: NodeJS.Timeout;
  const hear = (message?: unknown) => {
    clearTimeout(timer);
    if (message) last = JSON.stringify(message);
    timer = setTimeout(() => {
      console.log(`seed ${seed}: no answer for ${SILENCE_SECONDS} s at ${last}`);
      child.kill('SIGKILL');
    }, SILENCE_SECONDS * 1000);
  };
  hear();
  child.on('message', hear);
  child.on('close', (code) => {
    clearTimeout(timer);
    if (code !== 0 && code !== 1) console.log(`seed ${seed}: the process ended with ${code} at ${last}`);
    process.exitCode = code ?? 1;
  });
}

if (process.env.OILGAP_FUZZ_WORK === '1') await work();
else watch();
