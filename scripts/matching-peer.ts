/**
 * Matching against another solver: the same stocks as one whole-number program over every possible fit,
 * part by part. Every aim must reach the same value. Small stocks are solved by glpsol (GLPK, Debian's
 * package glpk-utils), middling ones by cbc (COIN-OR, Debian's package coinor-cbc).
 *
 * `npm run matching:peer -- [small|middling] [FIRST_SEED] [COUNT]`
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { matchStock } from '../src/maths/matching/match.js';
import type { MatchResult, Stock } from '../src/maths/matching/stock.js';
import { type Option, optionsOf } from '../tests/maths/matching/every-set.js';
import { type WorkshopSize, withDefaults, workshopStock } from '../tests/maths/matching/random-stock.js';

const DEFAULT_FIRST = 1;
const DEFAULT_COUNT = 50;

interface Peer {
  readonly solver: 'glpsol' | 'cbc';
  /** Its Debian package. */
  readonly package: string;
  /** What its stocks are made of; more is beyond the peer. */
  readonly size: (seed: number) => Omit<WorkshopSize, 'wear' | 'range'>;
  readonly arguments: (program: string, answer: string) => readonly string[];
  /** The proven least value in the text of an answer. */
  readonly proven: RegExp;
}

const SECONDS = '60';

const PEERS: Readonly<Record<string, Peer>> = {
  /** Four to eight journals. */
  small: {
    solver: 'glpsol',
    package: 'glpk-utils',
    size: (seed) => ({
      cranks: 2,
      pins: 2 + (seed % 2),
      mains: seed % 3 === 0 ? 1 : 0,
      rods: 6 + (seed % 3),
      shells: 10 + 2 * (seed % 3),
    }),
    arguments: (program, answer) => ['--lp', program, '--cuts', '--tmlim', SECONDS, '--write', answer],
    proven: /^s mip \d+ \d+ o (-?[\d.e+]+)$/m,
  },
  /** Twelve to sixteen journals. */
  middling: {
    solver: 'cbc',
    package: 'coinor-cbc',
    size: (seed) => ({
      cranks: 4,
      pins: 3,
      mains: seed % 3 === 0 ? 1 : 0,
      rods: 13 + (seed % 3),
      shells: 24 + 2 * (seed % 3),
    }),
    arguments: (program, answer) => [program, 'sec', SECONDS, 'ratio', '0', 'solve', 'solu', answer],
    proven: /^Optimal - objective value (-?[\d.e+]+)$/m,
  },
};

/** A stock of a seed, its rules taking turns by it. */
function stockOf({ size }: Peer, seed: number): Stock {
  const stock = workshopStock(seed, {
    ...size(seed),
    newShells: seed % 4 === 0,
    range: seed % 2 === 0 ? [28_000, 52_000] : [29_000, 51_000],
    wear: 4000,
    ...(seed % 5 < 2 ? { massSpread: 3 } : {}),
  });
  const ruled = seed % 3 === 0 ? withDefaults(stock) : stock;
  return { ...ruled, preferKeptPairs: seed % 7 < 2, allowUndecided: seed % 6 === 0 };
}

interface Fit extends Option {
  readonly name: string;
  readonly engine: number;
  readonly journal: object;
}

type Terms = readonly (readonly [coefficient: number, variable: string])[];

const sum = (terms: Terms) =>
  terms.length === 0
    ? '0 zero'
    : terms.map(([value, name]) => `${value < 0 ? '-' : '+'} ${Math.abs(value)} ${name}`).join('\n ');

/** Rows in the format of CPLEX's .lp files, which glpsol reads. */
function rowsOf(stock: Stock, fits: readonly Fit[]): string[] {
  const rows: string[] = [];
  const atMost = (terms: Terms, most: number) => rows.push(`${sum(terms)} <= ${most}`);
  const by = (key: (fit: Fit) => readonly (object | undefined)[]) => {
    const groups = new Map<object, [number, string][]>();
    for (const fit of fits) {
      for (const part of key(fit)) if (part) groups.set(part, [...(groups.get(part) ?? []), [1, fit.name]]);
    }
    return groups;
  };
  for (const terms of by(({ journal }) => [journal]).values()) atMost(terms, 1);
  for (const terms of by(({ rod }) => [rod]).values()) atMost(terms, 1);
  for (const [shell, terms] of by(({ upper, lower }) => [upper, lower])) {
    if ('quantity' in shell) atMost(terms, shell.quantity as number);
  }
  for (const [place, { journals }] of stock.engines.entries()) {
    for (const journal of journals) {
      const own = fits.filter((fit) => fit.journal === journal).map(({ name }) => [-1, name] as const);
      atMost([[1, `e${place}`], ...own], 0);
    }
  }
  const spread = stock.kinds.find(({ fit }) => fit === 'big end')?.massSpread;
  if (spread === undefined) return rows;
  // Of two rods of one crank that differ by more only one can be taken.
  for (const [engine] of stock.engines.entries()) {
    for (const [first, a] of stock.rods.entries()) {
      for (const b of stock.rods.slice(first + 1)) {
        if (Math.round(10 * Math.abs(a.mass! - b.mass!)) <= Math.round(10 * spread)) continue;
        const both = fits.filter((fit) => fit.engine === engine && (fit.rod === a || fit.rod === b));
        atMost(
          both.map(({ name }) => [1, name] as const),
          1,
        );
      }
    }
  }
  return rows;
}

/** What each fit and each engine counts for an aim that is minimised. */
function objectiveOf(aim: string, stock: Stock, fits: readonly Fit[], hopeless: ReadonlySet<string>): Terms {
  const engines = stock.engines.map((engine, place) => ({
    count: engine.journals.length,
    name: `e${place}`,
  }));
  const price = (shell: object) => ('price' in shell ? Math.round(100 * (shell.price as number)) : 0);
  if (aim === 'complete engines') return engines.map(({ name }) => [-1, name]);
  if (aim === 'filled journals beyond them' || aim === 'filled journals of engines that could be completed') {
    const isCounted = ({ engine }: Fit) =>
      aim === 'filled journals beyond them' || !hopeless.has(stock.engines[engine]!.name);
    return [
      ...fits.filter(isCounted).map(({ name }) => [-1, name] as const),
      ...engines.map(({ count, name }) => [count, name] as const),
    ];
  }
  const value = ({ upper, lower, distance, kept, stays }: Fit) => {
    if (aim === 'price of bought shells') return price(upper) + price(lower);
    if (aim === 'rods that stay') return -Number(stays);
    return aim === 'distance from the aim' ? distance : -Number(kept);
  };
  return fits.map((fit) => [value(fit), fit.name] as const).filter(([coefficient]) => coefficient !== 0);
}

/** The least value of an objective; undefined when the peer does not prove it in the time. */
function solve(
  peer: Peer,
  folder: string,
  objective: Terms,
  rows: readonly string[],
  names: readonly string[],
): number | undefined {
  const [program, answer] = [join(folder, 'program.lp'), join(folder, 'answer')];
  const text = [
    'Minimize',
    sum(objective),
    'Subject To',
    ...rows,
    'Bounds',
    'zero = 0',
    'Binary',
    ...names,
    'End',
  ];
  writeFileSync(program, text.join('\n'));
  rmSync(answer, { force: true });
  const run = spawnSync(peer.solver, peer.arguments(program, answer), { encoding: 'utf8' });
  if (run.error) throw new Error(`${peer.solver} cannot be run: install ${peer.package}`);
  const value = peer.proven.exec(readFileSync(answer, 'utf8'))?.[1];
  return value === undefined ? undefined : Math.round(Number(value));
}

/** The values of the aims that the peer decides in the time, from the first on. */
function peerValues(peer: Peer, stock: Stock, result: MatchResult, folder: string): number[] {
  const fits = stock.engines.flatMap((engine, place) =>
    engine.journals.flatMap((journal) =>
      optionsOf(stock, engine, journal).map((option) => ({ ...option, engine: place, journal })),
    ),
  );
  const named = fits.map((fit, place): Fit => ({ ...fit, name: `f${place}` }));
  const names = [...named.map(({ name }) => name), ...stock.engines.map((_, place) => `e${place}`)];
  const rows = rowsOf(stock, named);
  const values: number[] = [];
  const hopeless = new Set(result.hopelessEngines);
  for (const { aim } of result.stages) {
    const objective = objectiveOf(aim, stock, named, hopeless);
    const value = solve(peer, folder, objective, rows, names);
    if (value === undefined) break;
    rows.push(`${sum(objective)} <= ${value}`);
    values.push(value + 0);
  }
  return values;
}

const MOST = [
  'complete engines',
  'filled journals of engines that could be completed',
  'filled journals beyond them',
  'fits in range',
  'pairs kept together',
  'rods that stay',
];

/** Values as the peer states them: all to be least, prices in cents. */
function ownValues({ stages }: MatchResult, of: 'reached' | 'bound'): number[] {
  return stages.map((stage) => {
    if (MOST.includes(stage.aim)) return 0 - stage[of];
    return stage.aim === 'price of bought shells' ? Math.round(100 * stage[of]) : stage[of];
  });
}

const [kind = 'small', ...numbers] = process.argv.slice(2);
const peer = PEERS[kind];
if (!peer) throw new Error(`"${kind}" is no kind of stock: small or middling`);
const [first = DEFAULT_FIRST, count = DEFAULT_COUNT] = numbers.map(Number);
const folder = mkdtempSync(join(tmpdir(), 'oilgap-peer-'));
let [same, whole, journals, incomplete] = [0, 0, 0, 0];
try {
  for (let seed = first; seed < first + count; seed++) {
    const stock = stockOf(peer, seed);
    const result = await matchStock(stock, { seconds: 300 });
    const values = peerValues(peer, stock, result, folder);
    const [reached, bound] = [ownValues(result, 'reached'), ownValues(result, 'bound')];
    const decided = (all: readonly number[]) => String(all.slice(0, values.length));
    const equal = String(values) === decided(reached) && String(values) === decided(bound);
    if (equal) same++;
    whole += Number(values.length === result.stages.length);
    journals += stock.engines.flatMap((engine) => engine.journals).length;
    incomplete += Number(result.completeEngines.length < stock.engines.length);
    console.log(
      `seed ${seed}: ${peer.solver} ${values.join(' ')}, matching ${reached.join(' ')}${equal ? '' : `, bounds ${bound.join(' ')}: DIFFERENT`}`,
    );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log(
  `${same} of ${count} stocks equal at every aim that ${peer.solver} decided, ${whole} of them decided whole; ${journals} journals; ${incomplete} stocks not all complete`,
);
process.exitCode = same === count ? 0 : 1;
