/** What README shows is what happens: its program, its commands and their answers, its files. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PROGRAM = 'dist/src/commands/main.js';
const readme = readFileSync(`${ROOT}README.md`, 'utf8');
const developers = readFileSync(`${ROOT}DEVELOPERS.md`, 'utf8');

function blocks(text: string, language: string): string[] {
  return [...text.matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\`$`, 'gm'))].map(
    (match) => match[1]!,
  );
}

const out = mkdtempSync(join(tmpdir(), 'oilgap-readme-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

test('the program of README prints what README says', () => {
  const [program, ...others] = blocks(readme, 'ts');
  expect(others).toEqual([]);
  // As a module of this folder, in which the package knows itself by its name.
  const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', program!], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(readme).toContain(`This prints \`${stdout.trim()}\`.`);
});

/** What npm itself knows. */
const NPM_COMMANDS = ['ci', 'pack'];

/** Each command line of the console blocks, with the answer below it. */
const sessions = blocks(readme, 'console').flatMap((block) =>
  block
    .split(/^\$ /m)
    .slice(1)
    .map((session) => {
      const [command = '', ...answer] = session.split('\n');
      return { command, answer: answer.join('\n') };
    }),
);

describe('the commands of README', () => {
  test('are there', () => {
    expect(sessions.length).toBeGreaterThan(0);
  });

  test.each(sessions)('$command', ({ command, answer }) => {
    const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
    expect(words.shift()).toBe('oilgap');
    const args = words.map((word) => (word === 'out' ? out : word));
    const { stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...args], {
      cwd: ROOT,
      encoding: 'utf8',
      env: { ...process.env, COLUMNS: '80' },
    });
    expect(stderr).toBe('');
    expect(stdout).toBe(answer.replace('written: out/', `written: ${join(out, '/')}`));
  });
});

test('the fit of the first screen is the one that the demo gives', () => {
  const args = [PROGRAM, 'check', 'workbooks/one-engine.xlsx', '--out', out, '--json'];
  const { stdout } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' });
  const [book] = JSON.parse(stdout).books;
  const fit = book.fits.find(
    (known: Record<string, unknown>) => known.fit === 'big end' && known.position === '3',
  );
  const { engine, position, clearance, tightest, loosest, clearanceU, status } = fit;
  const row = [engine, fit.fit, position, clearance, tightest, loosest, clearanceU, status].join(' | ');
  expect(readme).toContain(`| ${row} |`);
  const statuses = book.matching.sets.map((set: Record<string, unknown>) => set.status);
  expect(statuses).toEqual(Array.from({ length: 9 }, () => 'in range'));
});

describe.each([
  ['README.md', readme],
  ['DEVELOPERS.md', developers],
])('%s', (_file, text) => {
  const links = [...text.matchAll(/\]\(([^)#]+)\)/g)].map((match) => match[1]!);
  const scripts = [...text.matchAll(/npm (?:run )?([a-z:]+)/g)].map((match) => match[1]!);

  test('links to files that are there', () => {
    expect(links.filter((link) => !existsSync(join(ROOT, link)))).toEqual([]);
  });

  test('names scripts that are there', () => {
    const known = Object.keys(JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8')).scripts);
    expect(scripts.filter((script) => !NPM_COMMANDS.includes(script) && !known.includes(script))).toEqual([]);
  });
});

test('every path that DEVELOPERS.md names is there', () => {
  const paths = [
    ...developers.matchAll(/`((?:src|functions|tests|scripts|workbooks|docs|\.ci)\/[^`<*\s]*)`/g),
  ];
  expect(paths.length).toBeGreaterThan(10);
  expect(paths.map((match) => match[1]!).filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
});
