/** ExcelJS brings many packages: they are loaded only where a whole workbook is made. */

import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

let folder: string;
let book: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
  book = join(folder, 'engine.xlsx');
  copyFileSync('workbooks/one-engine.xlsx', book);
  // Notes each module of a package, in the program and in the processes that it starts.
  writeFileSync(
    join(folder, 'note.cjs'),
    `const { _extensions: ways } = require('node:module');
const load = ways['.js'];
ways['.js'] = (module, path) => {
  require('node:fs').appendFileSync(process.env.NOTES, path.replaceAll('\\\\', '/') + '\\n');
  return load(module, path);
};`,
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The packages that a run loads as CommonJS, as ExcelJS and all of its own are. */
function packagesOf(...args: readonly string[]): Set<string> {
  const notes = join(folder, 'notes.txt');
  rmSync(notes, { force: true });
  spawnSync(process.execPath, ['dist/src/commands/main.js', ...args], {
    env: { ...process.env, NOTES: notes, NODE_OPTIONS: `--require ${join(folder, 'note.cjs')}` },
  });
  const paths = existsSync(notes) ? readFileSync(notes, 'utf8') : '';
  return new Set(
    [...paths.matchAll(/node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules)/g)].map(([, name]) => name!),
  );
}

const OF_EXCELJS = ['exceljs', 'archiver', 'glob', 'fast-csv', 'tmp', 'unzipper', 'jszip'];

test.each([
  ['check', () => ['check', book]],
  ['report', () => ['report', book]],
  ['match --explain', () => ['match', book, '--explain', 'R1']],
  ['bench', () => ['bench', book, '--from', 'missing.txt']],
  ['calc', () => ['calc', '=1+1']],
  ['functions', () => ['functions']],
])('%s of a workbook loads none of ExcelJS', (_name, args) => {
  const loaded = packagesOf(...args());
  expect(loaded).toContain('commander');
  expect(OF_EXCELJS.filter((name) => loaded.has(name))).toEqual([]);
});

test('a whole new workbook is made by ExcelJS, and all of its packages are loaded', () => {
  expect([...packagesOf('sheet', '--out', join(folder, 'blank.xlsx'))]).toEqual(
    expect.arrayContaining(OF_EXCELJS.filter((name) => !['fast-csv'].includes(name))),
  );
});
