/**
 * The bench on a terminal of 80 × 24 without colour: a whole engine filled by typed keys. `script` (util-linux) lends
 * the pseudo-terminal.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { kindsOfFit } from '../../src/engine/kinds/index.js';
import { cellsOf } from '../commands/at-bench.js';
import { oilgap } from '../commands/books.js';

const ESCAPE = '\u001b';
const COLUMNS = 80;
const ROWS = 24;

let folder: string;
let path: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-terminal-'));
  path = join(folder, 'engine.xlsx');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A program on a terminal, typed to as a person types: the next line once a prompt is there. */
class Terminal {
  text = '';
  private readonly child;
  private readonly ended;

  constructor(args: readonly string[], cwd?: string) {
    const size = `stty cols ${COLUMNS} rows ${ROWS}`;
    // The program takes the shell's place: a shell that Ctrl-C reaches too may end with a code of its own.
    const typed = `${size}; exec ${process.execPath} ${PROGRAM} ${args.join(' ')}`;
    this.child = spawn('script', ['--quiet', '--return', '--command', typed, '/dev/null'], {
      cwd,
      env: { ...process.env, TERM: 'dumb', NO_COLOR: '1', SHELL: '/bin/sh' },
    });
    this.ended = once(this.child, 'exit');
    this.child.stdout.on('data', (chunk) => {
      this.text += chunk;
    });
  }

  /** Waits until what is shown since the last call fits, and gives it. */
  async until(pattern: RegExp): Promise<string> {
    for (let wait = 0; wait < 600; wait++) {
      if (pattern.test(this.text)) {
        const shown = this.text;
        this.text = '';
        return shown;
      }
      await setTimeout(50);
    }
    throw new Error(`waited for ${pattern}; the terminal shows:\n${this.text}`);
  }

  type(line: string): void {
    this.child.stdin.write(line);
  }

  async end(): Promise<number> {
    return (await this.ended)[0];
  }
}

const PROMPT = /\n> $/;
const PROGRAM = resolve('dist/src/commands/main.js');

test('a whole engine by typed keys', async () => {
  oilgap('sheet', '--out', path, '--cylinders', '2', '--mains', 'none', '--journal-gauge', 'M1=0.002');
  const terminal = new Terminal(['bench', path]);
  const screens = [await terminal.until(PROMPT)];
  const answer = async (line: string) => {
    terminal.type(`${line}\r`);
    const screen = await terminal.until(PROMPT);
    screens.push(screen);
    return screen;
  };
  expect(screens[0]).toContain('Journals, gauge M1; 28 readings left');
  // A 0 of P1 in letters five lines high.
  expect(screens[0]).toContain('####     #            ###           ###');
  expect(await answer('42.5a')).toContain('found "42.5a"'.replace('found ', 'found the text '));
  await answer('42.0015');
  expect(await answer('42.5015')).toContain('is doubtful: 0.5 mm away from the other spots');
  await answer('k sprayed');
  expect(await answer('u')).toContain('taken back');
  // A slip of the finger, put right with the backspace key before Enter.
  await answer('43\u007f2.0015');
  for (let spot = 0; spot < 6; spot++) await answer('42.0015');
  for (let spot = 0; spot < 12; spot++) await answer('45.0125');
  for (let spot = 0; spot < 7; spot++) await answer(['1.4875', '1.4875', '1.4885', '1.4885'][spot % 4]!);
  const last = await answer('1.4885');
  expect(last.replaceAll(/\s+/g, ' ')).toContain(
    'E1 big end 2: clearance 0.035 mm, 0.035 to 0.035 mm; no limits',
  );
  terminal.type('q\r');
  expect(await terminal.end()).toBe(0);
  for (const screen of screens) {
    const lines = screen.split(/\r?\n/);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(COLUMNS);
    expect(lines.length).toBeLessThanOrEqual(ROWS);
    // No colours, no moving about: a screen reader reads what is printed.
    expect(screen).not.toContain(ESCAPE);
  }
  const journals = await cellsOf(path, 'Journals');
  expect(
    Object.values(journals).flatMap((row) => [row['A 0'], row['A 90'], row['B 0'], row['B 90']]),
  ).toEqual(Array(8).fill(42.0015));
});

test('a zero that is set, an end and a new start, an older reading, and --again', async () => {
  path = join(folder, 'zero.xlsx');
  const options = ['--cylinders', '1', '--mains', 'none', '--walls', '1', '--strips', 'yes'];
  oilgap(
    'sheet',
    '--out',
    path,
    ...options,
    '--journal-gauge',
    'M1=0.002,M2=0.003',
    '--bore-gauge',
    'D1=0.002',
  );
  const begin = async (...args: string[]) => {
    const terminal = new Terminal(['bench', '--plain', ...args, path]);
    const first = await terminal.until(PROMPT);
    const answer = async (line: string) => {
      terminal.type(`${line}\r`);
      return (await terminal.until(PROMPT)).replaceAll(/\s+/g, ' ');
    };
    const end = async () => {
      terminal.type('q\r');
      return terminal.end();
    };
    return { first, answer, end };
  };
  const { first, answer, end } = await begin();
  expect(first).toContain('Journals, no gauge named; 13 readings left');
  expect(first).toContain('gauge: type g and its name: M1, M2, D1');
  await answer('g M1');
  await answer('t 21.5');
  expect(await answer('z 42.000')).toContain('Gauges does not say what set the zero of M1');
  expect(await answer('+501')).toContain('Journals P1 A 0: 42.501 mm (+0.501 mm from 42 mm)');
  expect(await answer('+1')).toContain('is doubtful');
  expect(await answer('k sure')).toContain('Journals P1 A 90: 42.001 mm');
  expect(await end()).toBe(1);

  const second = await begin();
  expect(second.first).toContain('Journals, gauge M1, set to 42 mm; 11 readings left');
  expect(second.first).toContain('temperature: 21.5; t changes it');
  await second.answer('+0.002');
  expect(await second.answer('+3')).toContain(
    'Journals P1 A 0: 42.501 mm stands against readings that agree, 42.001 mm to 42.003 mm: measure it again',
  );
  await second.answer('+2');
  expect(await second.answer('j P1 B 0')).toContain(
    'Journals P1 B 0 holds 42.002 mm: the next reading replaces it',
  );
  expect(await second.answer('s')).toContain('Rods, gauge D1');
  expect(await second.answer('j E1 big end 1')).toContain('Fits, step 0.025 mm');
  expect(await second.answer('0.05')).toContain('by the strip');
  expect(await second.end()).toBe(1);
  expect((await cellsOf(path, 'Journals')).P1).toMatchObject({
    'Set to': 42,
    'A 0': 0.002,
    Temperature: 21.5,
  });
  const fits = await cellsOf(path, 'Fits');
  expect(fits.E1).toMatchObject({ 'Strip reading': 0.05 });
  const third = await begin('--again');
  expect(third.first).toMatch(/Rods, gauge D1; \d+ readings left/);
  await third.end();
});

test('Ctrl-C ends the sitting, and the book has what was read', async () => {
  path = join(folder, 'broken-off.xlsx');
  oilgap('sheet', '--out', path, '--cylinders', '1', '--mains', 'none');
  const terminal = new Terminal(['bench', '--plain', path]);
  await terminal.until(PROMPT);
  terminal.type('42.0015\r');
  expect(await terminal.until(PROMPT)).not.toContain('####');
  terminal.type('\u0003');
  expect(await terminal.end()).toBe(1);
  expect((await cellsOf(path, 'Journals')).P1).toMatchObject({ 'A 0': 42.0015 });
});

/** The question of every fit that the records of kinds ask for: big ends as they come, nothing else. */
const PLACES = kindsOfFit()
  .flatMap(({ asked }) => asked)
  .map(({ fit, help }) => [new RegExp(help.slice(0, 18)), fit === 'big end' ? '' : 'none'] as const);

test('the questions of oilgap sheet make a workbook', async () => {
  path = join(folder, 'asked.xlsx');
  const terminal = new Terminal(['sheet'], folder);
  for (const [question, answer] of [
    [/engine types/, ''],
    [/engines, each/, ''],
    [/cylinders:/, '2'],
    ...PLACES,
    [/bare or with shells in\?/, ''],
    [/stations/, 'AB'],
  ] as const) {
    await terminal.until(question);
    terminal.type(`${answer}\r`);
  }
  await terminal.until(/--stations: found "AB"/);
  // The question is ready again a moment after its refusal is shown.
  await setTimeout(500);
  terminal.type('A\r');
  for (const question of [/angles of journals/, /angles of bores/, /spots on the wall/, /readings of each/]) {
    await terminal.until(question);
    terminal.type('\r');
  }
  for (const question of [
    /for journals/,
    /for bores/,
    /for walls/,
    /deviations/,
    /strips/,
    /lengths/,
    /temperatures/,
    /paper/,
    /study/,
    /bolts/,
  ]) {
    await terminal.until(question);
    terminal.type('\r');
  }
  expect(await terminal.end()).toBe(0);
  expect(Object.keys(await cellsOf(join(folder, 'measurements.xlsx'), 'Journals'))).toEqual(['P1', 'P2']);
});
