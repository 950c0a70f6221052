/** Fasteners as a user of the command line sees them. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { table } from '../engine/book-of.js';
import { oilgap, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const BOLT = { Engine: 'E1', Group: 'head', Number: 1, Thread: 'M10', Torque: '10–11 kgf·m', Angle: 90 };
const RENEWED = { ...BOLT, Quantity: 4, Renew: 'always', Price: 2.5 };

test('bolts to renew: exit code 1, the line on the terminal, what to buy', async () => {
  const book = await writeBook(folder, 'renew.xlsx', { Fasteners: table(RENEWED) });
  const { status, stdout } = oilgap('check', book, '--out', folder);
  expect(status).toBe(1);
  expect(stdout).toContain('  4 fasteners to renew: sheet To buy\n');
});

test('a bolt without a limit is no finding', async () => {
  const book = await writeBook(folder, 'good.xlsx', { Fasteners: table(BOLT) });
  expect(oilgap('check', book, '--out', folder).status).toBe(0);
});

test('the JSON document, torques in N·m', async () => {
  const book = await writeBook(folder, 'json.xlsx', { Fasteners: table(RENEWED) });
  const [document] = JSON.parse(oilgap('check', book, '--out', folder, '--json').stdout).books;
  expect(document.fasteners).toEqual([
    {
      ...{ row: 2, engine: 'E1', group: 'head', number: 1, thread: 'M10', length: null, quantity: 4 },
      ...{ torqueFrom: 98.0665, torqueTo: 107.87315, angle: 90, renew: 'always' },
      ...{ longest: null, thinnest: null, status: 'renew', why: ['Renew is always'] },
    },
  ]);
  expect(document.toBuy).toEqual([
    {
      ...{ engineType: '', fit: 'head', half: 'fastener', mark: 'M10', quantity: 4 },
      ...{ price: 2.5, priceInAll: 10, for: ['E1 head'] },
    },
  ]);
  expect(document.matching).toBeNull();
});

test('--explain answers for a fastener and for its group, and names the nearest', async () => {
  const book = await writeBook(folder, 'explain.xlsx', { Fasteners: table(BOLT) });
  for (const asked of ['E1 head 1', 'head']) {
    expect(oilgap('match', book, '--explain', asked).stdout).toContain(
      'Fastener E1 head 1 has no limit typed, so that nothing is said of its use. ' +
        'Its torque, as typed from the manual: 98.1–107.9 N·m (72.3–79.6 lb·ft), then turned on by 90°.',
    );
  }
  const { status, stderr } = oilgap('match', book, '--explain', 'E1 head 2');
  expect(status).toBe(2);
  expect(stderr).toContain('the nearest are "E1 head 1"');
});

test('the blank sheet has the bolts, and says how many are measured', () => {
  const out = join(folder, 'blank.xlsx');
  const { status, stdout } = oilgap('sheet', '--bolts', 'head=10 M10 by length, caps=4', '--out', out);
  expect([status, stdout.includes('Fasteners 10')]).toEqual([0, true]);
  expect(oilgap('sheet', '--bolts', 'head', '--out', join(folder, 'none.xlsx'))).toMatchObject({
    status: 2,
    stderr: expect.stringContaining('--bolts: found "head"; expected GROUP=COUNT THREAD'),
  });
});
