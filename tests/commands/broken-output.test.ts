/** A stdout that takes nothing, and signals: one sentence each, never a fault of the program. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const PROGRAM = 'dist/src/commands/main.js';

let folder: string;
let book: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
  book = join(folder, 'engine.xlsx');
  copyFileSync('workbooks/one-engine.xlsx', book);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Of a shell, which knows pipes and devices; `$1` is the program's script. */
function shell(script: string) {
  const { status, stdout, stderr } = spawnSync('bash', ['-c', script, 'bash', PROGRAM, book], {
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

describe.skipIf(!existsSync('/dev/full'))('stdout', () => {
  test.each([
    ['check', 'node "$1" check "$2" --json > /dev/full'],
    ['check without JSON', 'node "$1" check "$2" > /dev/full'],
    ['calc', 'node "$1" calc =1+1 > /dev/full'],
    ['functions', 'node "$1" functions > /dev/full'],
    ['--help', 'node "$1" --help > /dev/full'],
  ])('%s into a full disk', (_name, script) => {
    const { status, stderr } = shell(script);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^stdout: found a full disk; expected [^\n]+\n$/);
  });

  test('a pipe that its reader has closed: the book is written all the same', () => {
    const { status, stderr } = shell('node "$1" check "$2" --json | true; exit $' + '{PIPESTATUS[0]}');
    expect(status).toBe(2);
    expect(stderr).toMatch(/^stdout: found that its reader has closed it; expected [^\n]+\n$/);
    expect(existsSync(join(folder, 'engine.checked.xlsx'))).toBe(true);
  });

  test('messages into a full disk leave the result as it is', () => {
    const { status, stdout } = shell('node "$1" calc =1+1 2> /dev/full');
    expect([status, stdout]).toEqual([0, '2\n']);
  });
});

describe.skipIf(process.platform !== 'linux')('a signal', () => {
  /** The program at work on the book, and the process that it has started for it. */
  async function startCheck() {
    const child = spawn(process.execPath, [PROGRAM, 'check', book], { stdio: ['ignore', 'ignore', 'pipe'] });
    const said: string[] = [];
    child.stderr!.on('data', (text) => said.push(String(text)));
    let worker = '';
    while (worker === '') {
      await wait(10);
      worker = readFileSync(`/proc/${child.pid}/task/${child.pid}/children`, 'utf8').trim();
    }
    // By then it has been told what to do.
    await wait(200);
    return { child, ended: once(child, 'close'), worker: Number(worker), said: () => said.join('') };
  }

  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    '%s ends the program with one sentence',
    async (signal) => {
      const { child, ended, said } = await startCheck();
      child.kill(signal);
      // Of such an end a shell makes 128 and the signal's number.
      expect(await ended).toEqual([null, signal]);
      expect(said()).toMatch(new RegExp(`^Ended by ${signal}: [^\\n]+\\n$`));
    },
  );

  test('one that ends the process of a book alone is a message of that book', async () => {
    const { ended, worker, said } = await startCheck();
    process.kill(worker, 'SIGTERM');
    expect(await ended).toEqual([2, null]);
    expect(said()).toMatch(
      /^.*engine\.xlsx: found that its process was ended from outside \(SIGTERM\)[^\n]+\n$/,
    );
  });
});
