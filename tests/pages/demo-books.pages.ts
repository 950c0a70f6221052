/** The pages of the demo books in a browser: nothing sticks out, nothing is coloured, nothing keeps a reader out. */
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runBook } from '../../src/engine/run-book.js';
import { openFile } from '../../src/io/open-file.js';
import { reportPage } from '../../src/io/report/report-page.js';
import { coloursOf, faultsOf, LOOKS, openBrowser, openPage, overflowOf } from './open-pages.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const BOOKS = ['one-engine.xlsx', 'three-engines.xlsx', 'stock.xlsx', 'inch.xlsx', 'decimal-commas'];

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(BOOKS)('%s', (name) => {
  let html: string;
  beforeAll(async () => {
    const { model } = await openFile(`${ROOT}workbooks/${name}`);
    const assessment = await runBook(model, { seconds: 5 });
    html = reportPage(assessment, { program: 'oilgap 0', files: [{ name, sha256: 'f'.repeat(64) }] });
  });

  describe.each(Object.entries(LOOKS))('on %s', (_, look) => {
    test('fits, is black and white, and passes the accessibility checker', async () => {
      const { page, asked, close } = await openPage(browser, html, look);
      try {
        expect(await overflowOf(page)).toEqual({ beyond: 0, outside: [], scrolling: [] });
        expect(await coloursOf(page)).toEqual([]);
        expect(await faultsOf(page)).toEqual([]);
        expect(asked).toEqual([]);
      } finally {
        await close();
      }
    });
  });

  test('what a picture borrows from another looks as it does there', async () => {
    const { page, close } = await openPage(browser, html, LOOKS['A4 paper']);
    try {
      const differing = await page.evaluate(() => {
        const sizeOf = (element: Element) => {
          const { width, height } = element.getBoundingClientRect();
          return `${width.toFixed(1)} by ${height.toFixed(1)}`;
        };
        return [...document.querySelectorAll('use')].flatMap((use) => {
          const lender = document.querySelector(use.getAttribute('href')!)!;
          return sizeOf(use) === sizeOf(lender)
            ? []
            : [`${lender.id}: ${sizeOf(use)}, not ${sizeOf(lender)}`];
        });
      });
      expect(differing).toEqual([]);
    } finally {
      await close();
    }
  });

  test('on paper letters in drawings are of 7.5 pt or more, those of tables and sentences of 9 pt or more', async () => {
    const { page, close } = await openPage(browser, html, LOOKS['A4 paper']);
    try {
      const sizes = await page.evaluate(() => {
        const shown = [...document.body.querySelectorAll('p,li,td,th,caption,figcaption,svg text')];
        return shown
          .filter((element) => element.textContent !== '')
          .map((element) => {
            const css = Number.parseFloat(getComputedStyle(element).fontSize);
            const svg = element.closest('svg');
            const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
            return { isDrawn: svg !== null, points: (css * scale * 72) / 96 };
          });
      });
      const least = (isDrawn: boolean) =>
        Math.min(...sizes.filter((size) => size.isDrawn === isDrawn).map(({ points }) => points));
      expect(least(false)).toBeGreaterThanOrEqual(9);
      expect(least(true)).toBeGreaterThanOrEqual(7.5);
    } finally {
      await close();
    }
  });
});
