/** Pages in a real browser: the Chromium that is installed, driven without one of its own being downloaded. */
import axe from 'axe-core';
import { type Browser, chromium, type Page } from 'playwright-core';
import { findChromium } from '../../src/io/report/print-pdf.js';

export async function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: await findChromium(),
    // It refuses to run in its sandbox for root.
    args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
  });
}

export interface Look {
  readonly width: number;
  readonly media: 'screen' | 'print';
}

/** A telephone, a desk, and the inside of the margins on A4 and Letter, in CSS pixels (96 an inch). */
export const LOOKS = {
  'a telephone of 360 px': { width: 360, media: 'screen' },
  'a window of 1200 px': { width: 1200, media: 'screen' },
  'A4 paper': { width: Math.floor(((210 - 30) / 25.4) * 96), media: 'print' },
  'Letter paper': { width: Math.floor(((8.5 * 25.4 - 30) / 25.4) * 96), media: 'print' },
} as const satisfies Record<string, Look>;

/** Opens the page and records whatever it asks of the network. */
export async function openPage(browser: Browser, html: string, { width, media }: Look) {
  const context = await browser.newContext({ viewport: { width, height: 900 } });
  const page = await context.newPage();
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.emulateMedia({ media });
  await page.setContent(html, { waitUntil: 'load' });
  return { page, asked, close: () => context.close() };
}

/** How far the page goes beyond its window, and what sticks out of it. */
export function overflowOf(page: Page) {
  return page.evaluate(() => {
    const root = document.documentElement;
    const isHidden = (element: Element) =>
      element.closest('.lent,thead') !== null &&
      getComputedStyle(element.closest('.lent,thead')!).position === 'absolute';
    const outside = [...document.body.querySelectorAll('*')].filter((element) => {
      const { left, right, width } = element.getBoundingClientRect();
      return width > 0 && !isHidden(element) && (right > root.clientWidth + 0.5 || left < -0.5);
    });
    const scrolling = [...document.body.querySelectorAll('*')].filter(
      (element) =>
        !isHidden(element) &&
        getComputedStyle(element).overflowX !== 'visible' &&
        element.scrollWidth > element.clientWidth,
    );
    const told = (element: Element) =>
      `${element.tagName} ${element.className} ${element.textContent?.slice(0, 40)}`;
    return {
      beyond: root.scrollWidth - root.clientWidth,
      outside: outside.map(told),
      scrolling: scrolling.map(told),
    };
  });
}

/** Everything that has a colour other than black, white or none. */
export function coloursOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const plain = /^(rgb\(0, 0, 0\)|rgb\(255, 255, 255\)|rgba\(0, 0, 0, 0\)|none|url\("#[\w-]+"\))$/;
    const found = new Set<string>();
    for (const element of document.querySelectorAll('*')) {
      const style = getComputedStyle(element);
      for (const key of [
        'color',
        'backgroundColor',
        'fill',
        'stroke',
        'borderBottomColor',
        'borderTopColor',
      ] as const)
        if (!plain.test(style[key])) found.add(`${element.tagName} ${key} ${style[key]}`);
    }
    return [...found];
  });
}

/** What the accessibility checker has against the page, all its rules on. */
export async function faultsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
      resultTypes: ['violations'],
      rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } },
    }),
  );
  return violations.map(({ id, nodes }) => `${id}: ${nodes.length} × ${nodes[0]?.html.slice(0, 120)}`);
}
