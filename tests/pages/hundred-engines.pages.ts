/** A page of a hundred engines: its size is held, its times are told. */
import { statSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { runBook } from '../../src/engine/run-book.js';
import { reportPage } from '../../src/io/report/report-page.js';
import { modelOf, type Sheets, table } from '../engine/book-of.js';
import { openBrowser } from './open-pages.js';

const ENGINES = 100;
const SEED = 20_261;
const LARGEST_BYTES = 3e6;

/** Whole numbers below `count`, always the same: Park and Miller's generator, Comm. ACM 31 (1988), 1192. */
function numbers(seed: number): (count: number) => number {
  let state = seed;
  return (count) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % count;
  };
}

/** Engines of four big ends and five mains, each part measured at four spots, with gauges and limits. */
function hundredEngines(): Sheets {
  const next = numbers(SEED);
  const micrometres = (base: number, spread: number) => Number((base + next(spread) / 1000).toFixed(3));
  const spots = (base: number, spread: number) => {
    const size = micrometres(base, spread);
    return Object.fromEntries(['A 0', 'A 90', 'B 0', 'B 90'].map((spot) => [spot, micrometres(size, 3)]));
  };
  const engines = Array.from({ length: ENGINES }, (_, engine) => `E${engine + 1}`);
  const places = (count: number) => Array.from({ length: count }, (_, place) => String(place + 1));
  const fits = engines.flatMap((Engine) => [
    ...places(4).map((Position) => ({ Engine, Position, Fit: 'big end', journal: 42, bore: 45.01 })),
    ...places(5).map((Position) => ({ Engine, Position, Fit: 'main', journal: 50, bore: 53.01 })),
  ]);
  const named = ({ Engine, Fit, Position }: (typeof fits)[number]) => `${Engine} ${Fit[0]}${Position}`;
  const bores = (fit: string) =>
    fits
      .filter(({ Fit }) => Fit === fit)
      .map((place) => ({
        Part: `${named(place)} bore`,
        Engine: place.Engine,
        Position: place.Position,
        Gauge: 'Bore gauge',
        Bin: `B${next(90)}`,
        ...spots(place.bore, 8),
      }));
  return {
    Limits: table(
      ...['big end', 'main'].map((Fit) => ({
        'Engine type': 'K',
        Fit,
        'Clearance min': 0.02,
        'Clearance max': 0.055,
        'Service limit': 0.08,
        'Journal min': Fit === 'main' ? 49.99 : 41.99,
        Source: 'invented',
      })),
    ),
    Gauges: table(
      { Gauge: 'Micrometer', 'Max error': 0.002, Resolution: 0.001 },
      { Gauge: 'Bore gauge', 'Max error': 0.001, Resolution: 0.001, 'Set from': 'Micrometer' },
    ),
    Journals: table(
      ...fits.map((place) => ({
        Part: named(place),
        Engine: place.Engine,
        Fit: place.Fit,
        Position: place.Position,
        Gauge: 'Micrometer',
        Bin: `A${next(90)}`,
        ...spots(place.journal, 10),
      })),
    ),
    Rods: table(...bores('big end')),
    Cases: table(...bores('main')),
    Shells: table(
      ...fits.flatMap((place) =>
        ['upper', 'lower'].map((Half) => ({
          Part: `${named(place)} ${Half}`,
          Engine: place.Engine,
          Fit: place.Fit,
          Position: place.Position,
          Half,
          Gauge: 'Micrometer',
          Bin: `C${next(90)}`,
          'Wall 1': micrometres(1.485, 4),
          'Wall 2': micrometres(1.485, 4),
        })),
      ),
    ),
  };
}

test('a page of 100 engines is under 3 MB', async () => {
  const assessment = await runBook(modelOf(hundredEngines()), { seconds: 20 });
  const start = performance.now();
  const html = reportPage(assessment, {
    program: 'oilgap 0',
    files: [{ name: 'hundred.xlsx', sha256: '0'.repeat(64) }],
  });
  const made = performance.now() - start;
  const folder = await mkdtemp(join(tmpdir(), 'oilgap-hundred-'));
  const file = join(folder, 'hundred.html');
  writeFileSync(file, html);
  const browser = await openBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
    const open = performance.now();
    await page.goto(pathToFileURL(file).href, { waitUntil: 'load' });
    const sections = await page.locator('section.engine').count();
    const drawn = await page.evaluate(() => {
      // Reads the height, which needs all of it laid out.
      return document.documentElement.scrollHeight;
    });
    const opened = performance.now() - open;
    const bytes = statSync(file).size;
    console.log(
      `100 engines, seed ${SEED}: ${assessment.matching?.fits.length} matched fits, ${(bytes / 1e6).toFixed(2)} MB, ` +
        `made in ${(made / 1000).toFixed(2)} s, opened and laid out in ${(opened / 1000).toFixed(2)} s`,
    );
    expect(sections).toBe(ENGINES);
    expect(drawn).toBeGreaterThan(ENGINES * 1000);
    expect(bytes).toBeLessThan(LARGEST_BYTES);
  } finally {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  }
});
