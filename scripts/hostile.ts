/**
 * `npm run hostile`: every hostile shape through the built program, with the time that the whole process took and
 * the largest memory that its processes held together. Linux only: it looks into /proc.
 */
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { HOSTILE_SHAPES } from '../tests/hostile/shapes.js';

/** What a refusal may cost. */
const GOAL = { seconds: 2, megabytes: 300 };
const GIVE_UP_SECONDS = 60;
const PROGRAM = join(process.cwd(), 'dist/src/commands/main.js');

/** Resident memory of a process and all that it started, in bytes. */
function memoryOf(pid: number): number {
  const parents = new Map<number, number>();
  const sizes = new Map<number, number>();
  for (const name of readdirSync('/proc').filter((entry) => /^\d+$/.test(entry))) {
    try {
      const status = readFileSync(`/proc/${name}/status`, 'utf8');
      parents.set(Number(name), Number(/^PPid:\s*(\d+)/m.exec(status)?.[1]));
      sizes.set(Number(name), Number(/^VmRSS:\s*(\d+)/m.exec(status)?.[1] ?? 0) * 1024);
    } catch {
      // It ended while it was looked at.
    }
  }
  const isOurs = (each: number | undefined): boolean =>
    each !== undefined && (each === pid || isOurs(parents.get(each)));
  return [...sizes].filter(([each]) => isOurs(each)).reduce((sum, [, size]) => sum + size, 0);
}

interface Run {
  readonly seconds: number;
  readonly megabytes: number;
  readonly code: number | null;
  readonly stderr: string;
}

function run(path: string, out: string): Promise<Run> {
  const start = performance.now();
  const child = spawn(process.execPath, [PROGRAM, 'check', path, '--out', out, '--seconds', '1']);
  let stderr = '';
  let most = 0;
  child.stderr.on('data', (text) => {
    stderr += text;
  });
  child.stdout.resume();
  const look = setInterval(() => {
    if (child.pid !== undefined) most = Math.max(most, memoryOf(child.pid));
  }, 40);
  const giveUp = setTimeout(() => child.kill('SIGKILL'), GIVE_UP_SECONDS * 1000);
  return new Promise((resolve) => {
    child.on('close', (code) => {
      clearInterval(look);
      clearTimeout(giveUp);
      resolve({ seconds: (performance.now() - start) / 1000, megabytes: most / 1e6, code, stderr });
    });
  });
}

const wanted = process.argv[2] ?? '';
const folder = await mkdtemp(join(tmpdir(), 'oilgap-'));
const worst = { seconds: 0, megabytes: 0 };
let failures = 0;
let refusals = 0;
try {
  for (const { name, make, says } of HOSTILE_SHAPES.filter((shape) => shape.name.includes(wanted))) {
    const place = await mkdtemp(join(folder, 'shape-'));
    const { seconds, megabytes, code, stderr } = await run(await make(place), join(place, 'out'));
    const lines = stderr.trim().split('\n');
    const isRight = says ? code === 2 && lines.length === 1 && says.test(stderr) : code === 0 || code === 1;
    const isInTime = !says || (seconds <= GOAL.seconds && megabytes <= GOAL.megabytes);
    if (says) {
      refusals += 1;
      worst.seconds = Math.max(worst.seconds, seconds);
      worst.megabytes = Math.max(worst.megabytes, megabytes);
    }
    if (!isRight || !isInTime) failures += 1;
    const verdict = isRight ? (isInTime ? 'right' : 'SLOW') : 'WRONG';
    const outcome = says ? 'refused' : 'read';
    console.log(
      `${verdict.padEnd(6)} ${seconds.toFixed(2)} s ${megabytes.toFixed(0).padStart(5)} MB  ${outcome}: ${name}`,
    );
    if (!isRight) console.log(`       exit ${code}: ${stderr.slice(0, 600)}`);
    await rm(place, { recursive: true, force: true });
  }
} finally {
  await rm(folder, { recursive: true, force: true });
}
console.log(
  `${refusals} refused, worst ${worst.seconds.toFixed(2)} s and ${worst.megabytes.toFixed(0)} MB; ${failures} not as they should be`,
);
process.exitCode = failures === 0 ? 0 : 1;
