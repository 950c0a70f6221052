/** `oilgap bench BOOK --from FILE`: what goes where is shown before it is written; what cannot be placed is refused. */
import { copyFileSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { benchPiped, cellsOf, logged } from './at-bench.js';
import { oilgap } from './books.js';

let folder: string;
let blank: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-list-'));
  blank = join(folder, 'blank.xlsx');
  oilgap('sheet', '--out', blank, '--cylinders', '1', '--mains', 'none');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function given(name: string, list: string): { path: string; file: string } {
  const path = join(folder, `${name}.xlsx`);
  const file = join(folder, `${name}.csv`);
  copyFileSync(blank, path);
  writeFileSync(file, list);
  return { path, file };
}

test('places readings by name, and refuses by its line what it cannot place', async () => {
  const { path, file } = given(
    'named',
    [
      'Part;Spot;Value;Reason',
      'P1;A 0;42,003;',
      'p1;a 0;42,004;',
      'P1;B 0;42.5;sprayed',
      'P1;A 90;43;',
      'R1;A 45;45.01 mm;',
      'X1;A 0;42;',
      'R1;A 46;42;',
      'R1;;42;',
      'P1U;Wall 1;=1+1;',
    ].join('\n'),
  );
  const { status, stdout, stderr } = benchPiped('', path, '--from', file, '--yes');
  expect(status).toBe(1);
  expect(stdout).toContain(
    'line 2: Journals P1 A 0: 42.003 mm\nline 4: Journals P1 B 0: 42.5 mm\nline 6: Rods R1 A 45: 45.01 mm\n',
  );
  const refused = stderr.split('\n').filter((line) => line !== '');
  expect(refused.map((line) => /line (\d+)/.exec(line)?.[1])).toEqual(['3', '5', '7', '8', '9', '10']);
  expect(refused[0]).toContain('Journals P1 A 0 holds "42.003" already');
  expect(refused[1]).toContain('is doubtful');
  expect((await cellsOf(path, 'Journals')).P1).toMatchObject({
    'A 0': 42.003,
    'A 90': undefined,
    'B 0': 42.5,
    Note: 'B 0 42.5: sprayed',
  });
  expect(logged(path)).toEqual(['42.003', '42.5', '45.01']);
});

test('without agreement it only shows', async () => {
  const { path, file } = given('shown', 'P1,A 0,42.003\n');
  const { status, stdout, stderr } = benchPiped('y\n', path, '--from', file);
  expect(status).toBe(2);
  expect(stdout).toContain('Journals P1 A 0: 42.003 mm');
  expect(stderr).toContain('nothing was written; add --yes');
  expect((await cellsOf(path, 'Journals')).P1).toMatchObject({ 'A 0': undefined });
  expect(logged(path)).toEqual([]);
});

test("a gauge's values go where the bench would ask, one that is none leaves its spot blank", async () => {
  const { path, file } = given(
    'values',
    ['42,001', 'error', '42,003', '42,004', ...Array(6).fill('45.01'), ...Array(5).fill('1.5')].join('\r\n'),
  );
  const { status, stderr } = benchPiped('', path, '--from', file, '--yes');
  expect(status).toBe(1);
  expect(stderr).toContain('line 2: Journals P1 A 90: found the text "error"');
  expect(stderr).toContain('line 15: found more values than the bench would ask for');
  expect((await cellsOf(path, 'Journals')).P1).toMatchObject({
    'A 0': 42.001,
    'A 90': undefined,
    'B 0': 42.003,
    'B 90': 42.004,
  });
  expect((await cellsOf(path, 'Shells')).P1L).toMatchObject({ 'Wall 2': 1.5 });
});

test.each([
  ['a list without a reading', 'hello\n', 'found no reading that can be placed'],
  ['bytes that are no text', '\u0000\u0001', 'found bytes that are no text'],
])('%s is refused with 2, and nothing is written', (name, list, words) => {
  const { path, file } = given(name.replaceAll(' ', '-'), list);
  const { status, stderr } = benchPiped('', path, '--from', file, '--yes');
  expect(status).toBe(2);
  expect(stderr).toContain(words);
  expect(existsSync(`${path}.lock`)).toBe(false);
});
