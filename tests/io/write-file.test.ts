import * as fs from 'node:fs/promises';
import {
  chmod,
  lstat,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  stat,
  symlink,
  writeFile,
} from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { UserError } from '../../src/engine/user-error.js';
import { writeFileWhole } from '../../src/io/write-file.js';

vi.mock('node:fs/promises', async (original) => {
  const actual = await original<typeof fs>();
  return { ...actual, open: vi.fn(actual.open), rename: vi.fn(actual.rename), access: vi.fn(actual.access) };
});

const OLD = Buffer.from('old');
const NEW = Buffer.from('new bytes');
const systemError = (code: string) => Object.assign(new Error(code), { code });

let folder: string;
let path: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'oilgap-'));
  path = join(folder, 'book.xlsx');
});
afterEach(async () => {
  vi.mocked(fs.open).mockReset();
  vi.mocked(fs.rename).mockReset();
  vi.mocked(fs.access).mockReset();
  await rm(folder, { recursive: true });
});

describe('a file', () => {
  test('is made', async () => {
    await writeFileWhole(path, NEW);
    expect(await readFile(path)).toEqual(NEW);
    expect(await readdir(folder)).toEqual(['book.xlsx']);
  });

  test('is made of pieces, one behind the other', async () => {
    await writeFileWhole(path, [NEW, Buffer.alloc(0), OLD, NEW]);
    expect(await readFile(path)).toEqual(Buffer.concat([NEW, OLD, NEW]));
  });

  test('is replaced and keeps its permissions', async () => {
    await writeFile(path, OLD);
    await chmod(path, 0o640);
    const before = (await stat(path)).mode;
    await writeFileWhole(path, NEW);
    expect(await readFile(path)).toEqual(NEW);
    expect((await stat(path)).mode).toBe(before);
    expect(await readdir(folder)).toEqual(['book.xlsx']);
  });

  test('is kept beside the new one where wanted, and an earlier one is replaced', async () => {
    const previous = join(folder, 'book.previous.xlsx');
    await writeFile(path, OLD);
    await writeFileWhole(path, NEW, { isPreviousKept: true });
    expect([await readFile(path), await readFile(previous)]).toEqual([NEW, OLD]);
    // The same again changes nothing, so that the previous file stays another one.
    await writeFileWhole(path, NEW, { isPreviousKept: true });
    expect(await readFile(previous)).toEqual(OLD);
    await writeFileWhole(path, Buffer.from('third'), { isPreviousKept: true });
    expect(await readFile(previous)).toEqual(NEW);
    expect((await readdir(folder)).sort()).toEqual(['book.previous.xlsx', 'book.xlsx']);
  });

  test('that could not be written loses no previous one', async () => {
    await writeFile(path, OLD);
    await writeFile(join(folder, 'book.previous.xlsx'), 'older');
    vi.mocked(fs.open).mockRejectedValueOnce(systemError('ENOSPC'));
    await expect(writeFileWhole(path, NEW, { isPreviousKept: true })).rejects.toThrow('a full disk');
    expect(await readFile(join(folder, 'book.previous.xlsx'), 'utf8')).toBe('older');
    expect(await readFile(path)).toEqual(OLD);
  });

  test.each(['.~lock.book.xlsx#', '~$book.xlsx'])(
    'that is open elsewhere is not written (%s)',
    async (lock) => {
      await writeFile(path, OLD);
      await writeFile(join(folder, lock), '');
      await expect(writeFileWhole(path, NEW)).rejects.toThrow(
        `a spreadsheet program has it open (the file ${lock}`,
      );
      expect(await readFile(path)).toEqual(OLD);
    },
  );

  test('is flushed before it gets its name', async () => {
    const steps: string[] = [];
    const { open, rename } = await vi.importActual<typeof fs>('node:fs/promises');
    vi.mocked(fs.open).mockImplementationOnce(async (...given) => {
      const handle = await open(...given);
      const sync = handle.sync.bind(handle);
      handle.sync = () => sync().then(() => void steps.push('flushed'));
      return handle;
    });
    vi.mocked(fs.rename).mockImplementationOnce((...given) => {
      steps.push('renamed');
      return rename(...given);
    });
    await writeFileWhole(path, NEW);
    expect(steps).toEqual(['flushed', 'renamed']);
  });
});

describe.skipIf(process.platform === 'win32')('a symbolic link stays, and its target is written', () => {
  test.each([
    ['beside it', 'book.xlsx'],
    ['in another folder', 'real/book.xlsx'],
    ['by way of a second link', 'second.xlsx'],
    ['that is not there yet', 'real/absent.xlsx'],
  ])('%s', async (_, target) => {
    await mkdir(join(folder, 'real'));
    await writeFile(path, OLD);
    await writeFile(join(folder, 'real/book.xlsx'), OLD);
    await symlink('real/book.xlsx', join(folder, 'second.xlsx'));
    const link = join(folder, 'link.xlsx');
    await symlink(target, link);
    await writeFileWhole(link, NEW);
    expect((await lstat(link)).isSymbolicLink()).toBe(true);
    expect((await lstat(join(folder, 'second.xlsx'))).isSymbolicLink()).toBe(true);
    expect(await readFile(join(folder, target))).toEqual(NEW);
  });

  test('of a link in a linked folder', async () => {
    await mkdir(join(folder, 'real/inner'), { recursive: true });
    await symlink('real/inner', join(folder, 'short'));
    await symlink('../book.xlsx', join(folder, 'real/inner/link.xlsx'));
    await writeFileWhole(join(folder, 'short/link.xlsx'), NEW);
    expect(await readFile(join(folder, 'real/book.xlsx'))).toEqual(NEW);
  });
});

describe('a refusal names the file and leaves everything as it was:', () => {
  async function refused(place: string, words: string) {
    const before = await readdir(folder, { recursive: true });
    const writing = writeFileWhole(place, NEW);
    await expect(writing).rejects.toThrow(UserError);
    await expect(writing).rejects.toThrow(`${place}: found ${words}; expected`);
    expect(await readdir(folder, { recursive: true })).toEqual(before);
  }

  test('a missing folder', () => refused(join(folder, 'none/book.xlsx'), 'no such folder'));

  test('a file for a folder', async () => {
    await writeFile(path, OLD);
    await refused(join(path, 'inner.xlsx'), 'a file where a folder of the path was meant');
  });

  test('a folder of that name', () => refused(folder, 'a folder of that name'));

  test.skipIf(process.platform === 'win32')('a device', () => refused('/dev/null', 'a device or pipe'));

  test.skipIf(process.platform === 'win32')('links in a circle', async () => {
    await symlink('book.xlsx', path);
    await refused(path, 'symbolic links that lead in a circle');
  });

  test.each([
    ['ENOSPC', 'a full disk'],
    ['EIO', 'that the system refused (EIO)'],
  ])('%s while writing', async (code, words) => {
    await writeFile(path, OLD);
    const { open } = await vi.importActual<typeof fs>('node:fs/promises');
    vi.mocked(fs.open).mockImplementationOnce(async (...given) => {
      const handle = await open(...given);
      handle.writeFile = () => Promise.reject(systemError(code));
      return handle;
    });
    await refused(path, words);
    expect(await readFile(path)).toEqual(OLD);
  });

  test.each([
    ['open', vi.mocked(fs.open)],
    ['rename', vi.mocked(fs.rename)],
    ['access', vi.mocked(fs.access)],
  ] as const)('no permission to %s', async (_, step) => {
    await writeFile(path, OLD);
    step.mockRejectedValueOnce(systemError('EACCES'));
    await refused(path, 'no permission to write it, or another program that holds it');
    expect(await readFile(path)).toEqual(OLD);
  });
});
