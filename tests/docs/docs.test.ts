/** README says what the program does today: its tables, its commands, the caution. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { functionRecords } from '../../functions/index.js';
import { withBlocks } from '../../scripts/readme-blocks.js';
import { CAUTION } from '../../src/engine/caution.js';
import { OWN_TABLES } from '../../src/engine/columns/own-tables.js';
import { resultColumns } from '../../src/engine/columns/result-headers.js';
import { REACHED, SUMMARY } from '../../src/engine/columns/summary-columns.js';
import { inputSheets } from '../../src/engine/input-sheets/index.js';
import { columnsOf } from '../../src/engine/input-sheets/input-sheet.js';
import { SETUP_ITEMS } from '../../src/engine/input-sheets/setup.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const readme = readFileSync(`${ROOT}README.md`, 'utf8');

function oilgap(...args: string[]): string {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['dist/src/commands/main.js', ...args], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  expect(status, stderr).toBe(0);
  return stdout;
}

describe('the generated tables', () => {
  test('are what npm run docs makes', () => {
    expect(readme).toBe(withBlocks(readme));
  });

  test('are made anew where they were changed by hand', () => {
    const stale = readme.replace('| Journals | **Part** |', '| Journals | Part |');
    expect(stale).not.toBe(readme);
    expect(withBlocks(stale)).toBe(readme);
  });

  test('need their marks', () => {
    expect(() => withBlocks(readme.replace('<!-- end of functions -->', ''))).toThrow(
      'README.md: found no block "functions"',
    );
  });

  test('name every function, and every column that is typed', () => {
    const columns = inputSheets().flatMap(columnsOf);
    const missing = [
      ...columns.filter(
        ({ header, help }) =>
          !readme.includes(`| ${header} | ${help} |`) && !readme.includes(`| **${header}** | ${help} |`),
      ),
      ...functionRecords.filter(({ name }) => !readme.includes(`| \`${name}(`)),
    ];
    expect(missing).toEqual([]);
  });

  test('hold a sentence for every column that is written', () => {
    const lists = [SUMMARY, REACHED, ...OWN_TABLES.map(({ table }) => table)];
    const columns = [
      ...inputSheets().flatMap(({ name }) => resultColumns(name)),
      ...lists.flatMap((list) => list.columns.map(({ header, help }) => ({ header, help }))),
    ];
    expect(columns.filter(({ header, help }) => !readme.includes(`| ${header} | ${help} |`))).toEqual([]);
    expect(columns.length).toBeGreaterThan(0);
    expect(readme).not.toMatch(/\| *\|$/m);
  });
});

test('README names every item of Setup', () => {
  expect(SETUP_ITEMS.filter((item) => !readme.includes(`\n| ${item} | `))).toEqual([]);
});

test.each(CAUTION)('README holds the caution: %s', (sentence) => {
  expect(readme).toContain(sentence);
});

/** The names under a heading of a help text, such as `check` or `--out`. */
function listed(help: string, heading: string): string[] {
  const lines = help.split('\n');
  const names: string[] = [];
  const start = lines.indexOf(`${heading}:`);
  for (const line of start < 0 ? [] : lines.slice(start + 1)) {
    if (line === '') break;
    const name = /^ {2}(?:-\w, )?([\w-]+)/.exec(line)?.[1];
    if (name) names.push(name);
  }
  return names;
}

describe('the command line', () => {
  const commands = listed(oilgap('--help'), 'Commands');
  /** README's table of commands; a row without a command goes on with the one above. */
  const rows = readme
    .slice(readme.indexOf('| Command | Option |'))
    .split('\n\n')[0]!
    .split('\n')
    .slice(2)
    .map((row) => row.split(' | '));
  const documented = new Map<string, string>();
  let current: string[] = [];
  for (const [command = '', option = ''] of rows) {
    const named = [...command.matchAll(/`(\w+)/g)].map((match) => match[1]!);
    if (named.length > 0) current = named;
    for (const name of current) documented.set(name, `${documented.get(name) ?? ''} ${option}`);
  }

  test('has commands', () => {
    expect(commands.length).toBeGreaterThan(4);
  });

  test.each(commands)('README documents %s and its options', (command) => {
    expect([...documented.keys()]).toContain(command);
    const options = listed(oilgap(command, '--help'), 'Options').filter((option) => option !== '--help');
    const missing = options.filter((option) => !documented.get(command)!.includes(`\`${option}`));
    expect(missing).toEqual([]);
  });

  test('README documents no command that is not there', () => {
    expect([...documented.keys()].filter((command) => !commands.includes(command))).toEqual([]);
  });
});
