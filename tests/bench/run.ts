/**
 * The bench: `run.js [ROWS,ROWS,...] [RUNS]`. Every round runs all programs once, so that what else the machine does
 * disturbs them alike. Prints a table, which docs/speed.md keeps. With `--against DIST` it compares this build with
 * the one in that folder, and runs no other program.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir, totalmem } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { againstTable, refuseWithoutProgram } from './against.js';
import { medians, refuseWithoutTools, type Taken } from './measure.js';
import { Peers } from './peers.js';

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: { against: { type: 'string' } },
});
const ROWS = (positionals[0] ?? '1000,10000,50000,100000').split(',').map(Number);
const RUNS = Number(positionals[1] ?? 5);
const BENCH = dirname(fileURLToPath(import.meta.url));
const ROOT = join(BENCH, '../../../..');

type Name = 'first' | 'again' | 'office' | 'stream';
type Line = Readonly<Record<Name, Taken>>;

function rounds(peers: Peers, folder: string, rows: number): Line {
  const book = join(folder, `${rows}.xlsx`);
  const checked = join(folder, 'checked', `${rows}.checked.xlsx`);
  peers.makeBook(rows, book);
  const runs: Record<Name, Taken[]> = { first: [], again: [], office: [], stream: [] };
  for (let round = 0; round < RUNS; round++) {
    runs.first.push(peers.check(book, 'checked'));
    // The checked book has the live formulas that LibreOffice calculates: its input, the stream's and the second check's.
    runs.office.push(peers.libreOffice(checked));
    runs.stream.push(peers.streamCopy(checked));
    runs.again.push(peers.check(checked, 'again'));
    process.stderr.write(`${rows} rows, round ${round + 1} of ${RUNS}\n`);
  }
  return {
    first: medians(runs.first),
    again: medians(runs.again),
    office: medians(runs.office),
    stream: medians(runs.stream),
  };
}

const one = (value: number) => value.toFixed(1);
const two = (value: number) => value.toFixed(2);
const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;

function tableOf(lines: ReadonlyMap<number, Line>): string[] {
  const header = [
    'rows',
    'check, s',
    'check again, s',
    'LibreOffice, s',
    'stream copy, s',
    'check / LibreOffice',
    'again / LibreOffice',
    'check / stream',
    'again / stream',
    'check, MB',
    'again, MB',
    'LibreOffice, MB',
  ];
  const cells = [...lines].map(([rows, { first, again, office, stream }]) => [
    String(rows),
    ...[first, again, office, stream].map(({ seconds, processor }) => `${one(seconds)} (${one(processor)})`),
    ...[first, again].map((own) => ratio(own, office)),
    ...[first, again].map((own) => ratio(own, stream)),
    ...[first, again, office].map(({ megabytes }) => megabytes.toFixed(0)),
  ]);
  return [row(header), row(header.map(() => '---')), ...cells.map(row)];
}

function ratio(own: Taken, other: Taken): string {
  return `${two(own.seconds / other.seconds)} (${two(own.processor / other.processor)})`;
}

/** The exponent of growth from the smaller to the larger number of rows. */
function growth(lines: ReadonlyMap<number, Line>, from: number, to: number): string[] {
  const [small, large] = [lines.get(from), lines.get(to)];
  if (!small || !large) return [];
  const exponent = (name: Name, what: 'seconds' | 'processor') =>
    two(Math.log(large[name][what] / small[name][what]) / Math.log(to / from));
  return [
    `Growth from ${from} to ${to} rows, as an exponent: check ${exponent('first', 'seconds')} (${exponent('first', 'processor')}), LibreOffice ${exponent('office', 'seconds')} (${exponent('office', 'processor')}).`,
  ];
}

function machineLine(): string {
  const machine = `${cpus().length} processors (${cpus()[0]!.model}), ${Math.round(totalmem() / 1e9)} GB, Node ${process.version}`;
  return `${machine}; medians of ${RUNS} round${RUNS === 1 ? '' : 's'}; seconds on the clock, of all processors in brackets.`;
}

/** All lines of the table of programs side by side, and what starting takes. */
function programsTable(folder: string): string[] {
  const peers = new Peers(join(ROOT, 'dist/src'), BENCH, folder);
  const demo = join(ROOT, 'workbooks/one-engine.xlsx');
  const starts = Array.from({ length: RUNS }, () => ({
    help: peers.help(),
    demo: peers.check(demo, 'demo'),
  }));
  const help = medians(starts.map((start) => start.help));
  const engine = medians(starts.map((start) => start.demo));
  const lines = new Map<number, Line>();
  for (const rows of ROWS) lines.set(rows, rounds(peers, folder, rows));
  return [
    ...tableOf(lines),
    '',
    ...growth(lines, 10_000, 100_000),
    `oilgap --help: ${two(help.seconds)} s (${two(help.processor)}); check of the one-engine demo: ${two(engine.seconds)} s (${two(engine.processor)}).`,
  ];
}

const { against } = values;
if (against === undefined) refuseWithoutTools();
else {
  refuseWithoutTools(['time']);
  refuseWithoutProgram(against);
}
const folder = mkdtempSync(join(tmpdir(), 'oilgap-bench-'));
try {
  const table =
    against === undefined
      ? programsTable(folder)
      : againstTable({
          own: join(ROOT, 'dist'),
          other: against,
          bench: BENCH,
          folder,
          rows: ROWS,
          rounds: RUNS,
        });
  process.stdout.write([machineLine(), '', ...table, ''].join('\n'));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
