/** A slip of the hand in a checked book: on stderr, in the JSON document and in the written sheets; the exit code stays. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { table } from '../engine/book-of.js';
import { cellsOf } from './at-bench.js';
import { AT_1, oilgap, sheetsWith, writeBook } from './books.js';

const folder = mkdtempSync(join(tmpdir(), 'oilgap-slips-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A good fit, and a spare shell with a wall that may be half a turn off. */
const withSpare = (wall: number) =>
  sheetsWith(
    {},
    {
      Shells: table(
        { Part: 'U', ...AT_1, Half: 'upper', 'Wall 1': 1.4875, 'Wall 2': 1.4875, 'Wall 3': 1.4875 },
        { Part: 'L', ...AT_1, Half: 'lower', 'Wall 1': 1.4885, 'Wall 2': 1.4885, 'Wall 3': 1.4885 },
        { Part: 'S', Half: 'upper', 'Wall 1': 1.488, 'Wall 2': wall, 'Wall 3': 1.489 },
      ),
    },
  );

test('is named everywhere, and costs no exit code', async () => {
  const good = oilgap('check', await writeBook(folder, 'good.xlsx', withSpare(1.489)), '--json');
  const path = await writeBook(folder, 'slip.xlsx', withSpare(1.989));
  const { status, stdout, stderr } = oilgap('check', path, '--json');
  expect([good.status, status]).toEqual([0, 0]);
  expect(JSON.parse(good.stdout).books[0].slips).toEqual([]);
  const message =
    'slip.xlsx: Shells!F4 (S, Wall 2): found 1.989 mm; 1.489 mm would agree with the other spots ' +
    '(half a turn of the thimble); read it again, and correct the cell if it was a slip.';
  expect(stderr).toContain(message);
  const [book] = JSON.parse(stdout).books;
  expect(book.slips).toEqual([
    {
      ...{ sheet: 'Shells', part: 'S', cell: 'F4', spot: 'Wall 2' },
      ...{ found: 1.989, withoutSlip: 1.489, cause: 'half a turn' },
      message: expect.stringContaining(message),
    },
  ]);
  const why = 'Wall 2 is 1.989 mm: 1.489 mm would agree with the other spots (half a turn of the thimble)';
  const spare = book.parts.find(({ part }: { part: string }) => part === 'S');
  expect([spare.status, spare.why.at(-1)]).toEqual(['measured', `${why}; read Shells!F4 again`]);
  expect(book.remeasure[0]).toMatchObject({ sheet: 'Shells', part: 'S', spot: 'Wall 2' });

  expect((await cellsOf(join(folder, 'slip.checked.xlsx'), 'Shells')).S).toMatchObject({
    Why: expect.stringContaining(why),
  });
});

test('stands on the page', async () => {
  const path = await writeBook(folder, 'page.xlsx', withSpare(1.989));
  oilgap('report', path, '--out', join(folder, 'pages'));
  expect(readFileSync(join(folder, 'pages', 'page.report.html'), 'utf8')).toContain(
    '1.489 mm would agree with the other spots',
  );
});
