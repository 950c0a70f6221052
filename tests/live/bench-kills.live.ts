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

// 160 journal readings and 240 bore readings, no two alike, so that a lost or doubled one shows.
const READINGS = [
  ...Array.from({ length: 440 }, (_, place) => (42 + place * 0.00005).toFixed(5)),
  ...Array.from({ length: 660 }, (_, place) => (45 + place * 0.00005).toFixed(5)),
];

/**
 * Fills one book through kills, then to its end.
 * @returns how often it was struck: as often as asked for, or until its readings ran out
 */
async function fillThroughKills(
  path: string,
  random: ReturnType<typeof seeded>,
  most: number,
): Promise<number> {
  let kept: string[] = [];
  let struck = 0;
  while (struck < most && READINGS.length - kept.length >= 8) {
    const isStarting = random.between(1, 5) === 1;
    const isWriting = random.between(1, 3) === 1;
    const kill = {
      answered: isStarting ? 0 : random.between(1, 3),
      milliseconds: random.between(0, isStarting ? 600 : isWriting ? 300 : 30),
      isWriting,
    };
    const taken = await typeUntilKilled(path, READINGS.slice(kept.length), kill);
    struck += 1;
    const now = logged(path).map(Number);
    const said = [...kept, ...taken].map(Number);
    expect(now.slice(0, said.length), `kill ${struck}`).toEqual(said);
    // One more may be on the disk whose answer was not out yet; with it, none is missing between.
    expect(now, `kill ${struck}`).toEqual(READINGS.slice(0, now.length).map(Number));
    expect(now.length - said.length, `kill ${struck}`).toBeLessThanOrEqual(1);
    kept = READINGS.slice(0, now.length);
  }
  const { status, stderr } = benchPiped(READINGS.slice(kept.length).join('\n'), path);
  expect(stderr.split('\n').filter((line) => line !== '' && !line.includes('taken up'))).toEqual([]);
  // The walls are still to be measured.
  expect(status).toBe(1);
  const values = async (sheet: string) =>
    Object.values(await cellsOf(path, sheet)).flatMap((row) =>
      Object.entries(row).flatMap(([header, value]) => (/^[AB] \d/.test(header) ? [value] : [])),
    );
  expect(await values('Journals')).toEqual(READINGS.slice(0, 440).map(Number));
  expect(await values('Rods')).toEqual(READINGS.slice(440).map(Number));
  expect(readFileSync(`${path}.log`, 'utf8')).not.toContain('\0');
  return struck;
}

test(`${KILLS} kills without a lost reading`, { timeout: 1_200_000 }, async () => {
  const random = seeded(SEED);
  const blank = join(folder, 'blank.xlsx');
  oilgap('sheet', '--out', blank, '--big-ends', '1-110', '--mains', 'none');
  // A fast machine answers more readings between two kills: one book may not last for all of them.
  let struck = 0;
  for (let book = 1; struck < KILLS; book++) {
    const path = join(folder, `engine ${book}.xlsx`);
    copyFileSync(blank, path);
    struck += await fillThroughKills(path, random, KILLS - struck);
  }
});
