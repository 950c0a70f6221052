/**
 * `npm run fuzz:formulas -- --runs N --seed S`: random formulas as `calc` evaluates them, and in a book. None may take
 * more than 2 s of the processor or 500 MB, or end the process that evaluates it.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { evaluateAlone, evaluateInBook, formulaOf } from '../tests/fuzz/formulas.js';

const { values } = parseArgs({
  options: {
    runs: { type: 'string', default: '5000' },
    seed: { type: 'string', default: '1' },
    /** Of one process, as the parent gives them to it. */
    from: { type: 'string' },
    count: { type: 'string', default: '100' },
  },
});
const seed = Number(values.seed);
const SECONDS = 2;
const MEGABYTES = 500;
/** Heap of the process, as `calc` has it. */
const HEAP = 400;
const SILENCE_SECONDS = 60;

interface Measured {
  readonly number: number;
  /** Processor time, on its own and in a book. */
  readonly seconds: readonly [number, number];
  /** The most that the process has taken until then. */
  readonly megabytes: number;
  readonly outcome: string;
}

function timed(evaluate: () => string): [number, string] {
  const before = process.cpuUsage();
  const outcome = evaluate();
  const { user, system } = process.cpuUsage(before);
  return [(user + system) / 1e6, outcome];
}

function work(from: number, count: number): void {
  // What is loaded and compiled once belongs to no formula.
  evaluateAlone('1+1');
  evaluateInBook('1+1');
  for (let number = from; number < from + count; number++) {
    const formula = formulaOf(seed, number);
    const [alone, first] = timed(() => evaluateAlone(formula));
    const [inBook, second] = timed(() => evaluateInBook(formula));
    const megabytes = process.resourceUsage().maxRSS / 1024;
    process.send?.({ number, seconds: [alone, inBook], megabytes, outcome: `${first}, in a book ${second}` });
  }
  process.disconnect?.();
}

/** Measures formulas in a process of their own, until one of them ends it. */
async function measure(from: number, count: number): Promise<{ found: Measured[]; words: string }> {
  const args = ['--seed', String(seed), '--from', String(from), '--count', String(count)];
  const child: ChildProcess = fork(fileURLToPath(import.meta.url), args, {
    execArgv: [`--max-old-space-size=${HEAP}`],
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  const found: Measured[] = [];
  let words = '';
  const silence = () => setTimeout(() => child.kill('SIGKILL'), SILENCE_SECONDS * 1000);
  let timer = silence();
  child.stderr?.on('data', (text) => {
    words = `${words}${text}`.slice(-2000);
  });
  child.on('message', (message) => {
    clearTimeout(timer);
    timer = silence();
    found.push(message as Measured);
  });
  await once(child, 'close');
  clearTimeout(timer);
  return { found, words };
}

async function watch(runs: number): Promise<void> {
  const counts = new Map<string, number>();
  let slowest: Measured | undefined;
  let largest: Measured | undefined;
  let bad = 0;
  const complain = (number: number, what: string) => {
    bad += 1;
    console.log(`seed ${seed}, formula ${number}: ${what}\n  =${formulaOf(seed, number).slice(0, 400)}`);
  };
  for (let next = 0; next < runs; ) {
    const { found, words } = await measure(next, Math.min(Number(values.count), runs - next));
    for (let each of found) {
      // What others before it left behind in the process is not its own.
      if (each.megabytes > MEGABYTES) each = (await measure(each.number, 1)).found[0] ?? each;
      if (Math.max(...each.seconds) > SECONDS) each = (await measure(each.number, 1)).found[0] ?? each;
      counts.set(each.outcome, (counts.get(each.outcome) ?? 0) + 1);
      if (Math.max(...each.seconds) > SECONDS) complain(each.number, `${each.seconds.join(' and ')} s`);
      if (each.megabytes > MEGABYTES) complain(each.number, `${Math.round(each.megabytes)} MB`);
      if (!slowest || Math.max(...each.seconds) > Math.max(...slowest.seconds)) slowest = each;
      if (!largest || each.megabytes > largest.megabytes) largest = each;
    }
    const expected = Math.min(Number(values.count), runs - next);
    next += found.length;
    if (found.length < expected) complain(next++, `it ended its process\n${words}`);
  }
  for (const [outcome, count] of [...counts].sort()) console.log(`${String(count).padStart(6)}  ${outcome}`);
  if (slowest)
    console.log(`slowest: formula ${slowest.number}, ${Math.max(...slowest.seconds).toFixed(2)} s`);
  if (largest) console.log(`largest: formula ${largest.number}, ${Math.round(largest.megabytes)} MB`);
  console.log(`seed ${seed}: ${runs} formulas, ${bad === 0 ? 'all within limits' : `${bad} beyond them`}`);
  process.exitCode = bad === 0 ? 0 : 1;
}

if (values.from === undefined) await watch(Number(values.runs));
else work(Number(values.from), Number(values.count));
