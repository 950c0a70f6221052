import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, readdir, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { clearTemporaries, temporaryPath } from '../../src/io/temporary-names.js';
import { writeFileWhole } from '../../src/io/write-file.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'oilgap-'));
});
afterEach(async () => {
  vi.restoreAllMocks();
  await rm(folder, { recursive: true });
});

const DAY = 24 * 3600 * 1000;
const ended = spawnSync(process.execPath, ['-e', '']).pid;
const own = () => basename(temporaryPath('any'));
const ofProcess = (pid: number) => own().replace(`-${process.pid}-`, `-${pid}-`);
const elsewhere = () => own().replace(/-[0-9a-f]{8}-/, '-00000000-');
const earlier = () => `.oilgap-${randomUUID()}.tmp`;

test.each([
  ['of a process that has ended', ofProcess(ended), 0, []],
  [
    'of one that began at another time under this number',
    own().replace(/-[0-9a-f]{8}-(?=[0-9a-f]{8}-[0-9a-f]{4}-)/, '-00000000-'),
    0,
    [],
  ],
  ['of this process', own(), 0, ['stays']],
  ['of another machine', elsewhere(), 0, ['stays']],
  ['of another machine, a day old', elsewhere(), DAY + 1000, []],
  ['without a process in its name', earlier(), 0, ['stays']],
  ['without a process in its name, a day old', earlier(), DAY + 1000, []],
  ['that only looks like one of ours', '.oilgap-notes.tmp', DAY + 1000, ['stays']],
  ['of another program', '.other.tmp', DAY + 1000, ['stays']],
])('a file %s', async (_, name, age, left) => {
  await writeFile(join(folder, name), 'x');
  const now = Date.now();
  vi.spyOn(Date, 'now').mockReturnValue(now + age);
  await clearTemporaries(folder);
  expect((await readdir(folder)).map(() => 'stays')).toEqual(left);
});

test('what is no file stays', async () => {
  await mkdir(join(folder, ofProcess(ended)));
  await symlink('nowhere', join(folder, ofProcess(ended)));
  await clearTemporaries(folder);
  expect(await readdir(folder)).toHaveLength(2);
});

test('writing a file clears its folder, and no other', async () => {
  await mkdir(join(folder, 'beside'));
  for (const place of [folder, join(folder, 'beside')]) await writeFile(join(place, ofProcess(ended)), 'x');
  await writeFileWhole(join(folder, 'book.xlsx'), Buffer.from('new'));
  expect(await readdir(folder)).toEqual(['beside', 'book.xlsx']);
  expect(await readdir(join(folder, 'beside'))).toHaveLength(1);
});

test('a folder that is not there is passed over', async () => {
  await clearTemporaries(join(folder, 'none'));
});
