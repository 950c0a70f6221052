/**
 * The bench killed at random moments, some of them while it starts, takes its log up or writes the workbook: no
 * reading that it said was taken may be missing. OILGAP_KILLS says how often; the long job takes 200.
 */
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { seeded } from '../../scripts/demo/random.js';
import { benchPiped, cellsOf, logged, typeUntilKilled } from '../commands/at-bench.js';
import { oilgap } from '../commands/books.js';

const KILLS = Number(process.env.OILGAP_KILLS ?? 20);
const SEED = 20_261;

const folder = mkdtempSync(join(tmpdir(), 'oilgap-kills-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test(`${KILLS} kills without a lost reading`, { timeout: 1_200_000 }, async () => {
  const random = seeded(SEED);
  const blank = join(folder, 'blank.xlsx');
  oilgap('sheet', '--out', blank, '--big-ends', '1-110', '--mains', 'none');
  const path = join(folder, 'engine.xlsx');
  copyFileSync(blank, path);
  // 160 journal readings and 240 bore readings, no two alike, so that a lost or doubled one shows.
  const readings = [
    ...Array.from({ length: 440 }, (_, place) => (42 + place * 0.00005).toFixed(5)),
    ...Array.from({ length: 660 }, (_, place) => (45 + place * 0.00005).toFixed(5)),
  ];
  let kept: string[] = [];
  let struck = 0;
  while (struck < KILLS) {
    const isStarting = random.between(1, 5) === 1;
    const isWriting = random.between(1, 3) === 1;
    const kill = {
      answered: isStarting ? 0 : random.between(1, 3),
      milliseconds: random.between(0, isStarting ? 600 : isWriting ? 300 : 30),
      isWriting,
    };
    const rest = readings.slice(kept.length);
    if (rest.length < 8) break;
    const taken = await typeUntilKilled(path, rest, kill);
    struck += 1;
    const now = logged(path).map(Number);
    const said = [...kept, ...taken].map(Number);
    expect(now.slice(0, said.length), `kill ${struck}`).toEqual(said);
    // One more may be on the disk whose answer was not out yet; with it, none is missing between.
    expect(now, `kill ${struck}`).toEqual(readings.slice(0, now.length).map(Number));
    expect(now.length - said.length, `kill ${struck}`).toBeLessThanOrEqual(1);
    kept = readings.slice(0, now.length);
  }
  expect(struck, 'the readings ran out').toBe(KILLS);
  const { status, stderr } = benchPiped(readings.slice(kept.length).join('\n'), path);
  expect(stderr.split('\n').filter((line) => line !== '' && !line.includes('taken up'))).toEqual([]);
  // The walls are still to be measured.
  expect(status).toBe(1);
  const values = async (sheet: string) =>
    Object.values(await cellsOf(path, sheet)).flatMap((row) =>
      Object.entries(row).flatMap(([header, value]) => (/^[AB] \d/.test(header) ? [value] : [])),
    );
  expect(await values('Journals')).toEqual(readings.slice(0, 440).map(Number));
  expect(await values('Rods')).toEqual(readings.slice(440).map(Number));
  expect(readFileSync(`${path}.log`, 'utf8')).not.toContain('\0');
});
