/** What the built program writes for each demo workbook goes on working in LibreOffice, value for value. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { describeDifference, describeReport, reportLive } from '../../scripts/live-check.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PROGRAM = join(ROOT, 'dist/src/commands/main.js');
const DEMOS = join(ROOT, 'workbooks');

/** The workbooks among the demos, and the folders that hold one as .csv files. */
function demoNames(): string[] {
  return readdirSync(DEMOS, { withFileTypes: true })
    .filter((entry) => {
      if (entry.isDirectory())
        return readdirSync(join(DEMOS, entry.name)).some((file) => /\.csv$/i.test(file));
      return /^[^.~].*\.xlsx$/i.test(entry.name) && !/\.checked\.xlsx$/i.test(entry.name);
    })
    .map(({ name }) => name)
    .sort();
}

describe('the demo workbooks in LibreOffice', () => {
  const demos = demoNames();
  const folder = mkdtempSync(join(tmpdir(), 'oilgap-demos-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('there are some', () => {
    expect(demos).not.toEqual([]);
  });

  test.each(demos)('%s', async (name) => {
    const out = mkdtempSync(join(folder, 'out-'));
    const { status, stderr, error } = spawnSync(
      process.execPath,
      [PROGRAM, 'check', join(DEMOS, name), '--out', out],
      { encoding: 'utf8', timeout: 240_000 },
    );
    expect(error).toBeUndefined();
    expect([0, 1], `the program ended with ${status}:\n${stderr}`).toContain(status);
    const written = readdirSync(out).filter((file) => file.endsWith('.xlsx'));
    expect(written, stderr).toHaveLength(1);

    const report = await reportLive([join(out, written[0]!)]);
    console.log(`${name}: ${describeReport(report)}`);
    expect(report.differences.map(describeDifference)).toEqual([]);
    expect(report.compared, 'formulas compared').toBeGreaterThan(0);
  });
});
