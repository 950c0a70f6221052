/** A process that is killed while it writes leaves the old file or the whole new one. `npm run kills` tries it often. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { isWriters, killWriter } from './kill.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.skipIf(process.platform === 'win32').each([1, 8, 15, 22])(
  'killed %i ms after its second file',
  async (milliseconds) => {
    const path = join(folder, `book${milliseconds}.xlsx`);
    expect(await killWriter(path, milliseconds)).toBe(true);
    expect(isWriters(path)).toBe(true);
    expect(isWriters(path.replace('.xlsx', '.previous.xlsx'))).toBe(true);
  },
);
