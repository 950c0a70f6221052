/** Names that try to be markup, script or style, in a browser that would run them. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runBook } from '../../src/engine/run-book.js';
import { reportPage } from '../../src/io/report/report-page.js';
import { sheetsWith } from '../commands/books.js';
import { modelOf, table } from '../engine/book-of.js';
import { LOOKS, openBrowser, overflowOf } from './open-pages.js';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const RUNS = 'document.title=`taken`';
const NAMES = [
  `<script>${RUNS}</script>`,
  `"><img src=x onerror=${RUNS}>`,
  `</style></title><svg onload=${RUNS}>`,
  `a\u202eb\u0007c`,
  'W'.repeat(300),
];

test.each(NAMES)('%j', async (name) => {
  const sheets = sheetsWith(
    { Part: name, Engine: name, Position: name, Mark: name },
    { Rods: table({ Part: name, Engine: name, Position: name, 'A 0': 45.0125, Bin: name, Gauge: name }) },
  );
  const assessment = await runBook(
    { ...modelOf(sheets), file: `${name.replaceAll('/', '')}.xlsx` },
    { seconds: 5 },
  );
  const html = reportPage(assessment, { program: 'oilgap 0', files: [{ name, sha256: '0' }] });
  const context = await browser.newContext({
    viewport: { width: LOOKS['a telephone of 360 px'].width, height: 900 },
  });
  const page = await context.newPage();
  await page.setContent(html, { waitUntil: 'load' });
  const visible = name.replace('\u202e', '[U+202E]').replace('\u0007', '[U+0007]');
  expect(await page.title()).toContain('Clearance record');
  expect(await page.locator('h2').first().textContent()).toBe(`Engine ${visible}`);
  expect(await page.locator('script,img,[onload],[onerror]').count()).toBe(0);
  expect((await overflowOf(page)).beyond).toBe(0);
  await context.close();
});
