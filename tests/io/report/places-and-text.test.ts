/** Where pages go, how a user's text is made visible, and what is said where there is no Chromium. */
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findChromium } from '../../../src/io/report/print-pdf.js';
import { reportPath } from '../../../src/io/report/report-path.js';
import { visibleText } from '../../../src/io/report/visible-text.js';

test.each([
  ['bench/engine.xlsx', undefined, join('bench', 'engine.report.html')],
  ['bench/engine.XLSM', undefined, join('bench', 'engine.report.html')],
  ['engine.checked.xlsx', undefined, 'engine.checked.report.html'],
  ['bench/folder/', 'out', join('out', 'folder.report.html')],
  ['engine.xlsx', 'out', join('out', 'engine.report.html')],
])('the page of %s with --out %s is %s', (input, out, expected) => {
  expect(reportPath(input, 'html', out)).toBe(expected);
});

test('a folder named by dots has its own name', () => {
  expect(reportPath('.', 'pdf')).toMatch(/[^./\\]+\.report\.pdf$/);
});

test.each([
  ['plain', 'plain'],
  ['tab\tand\nline', 'tab\tand\nline'],
  ['\u0000\u001b', '[U+0000][U+001B]'],
  ['\u202eabc\u2069\u200f', '[U+202E]abc[U+2069][U+200F]'],
  ['\ud800', '[U+D800]'],
  ['µm ° ● é 字 😀', 'µm ° ● é 字 😀'],
])('%j is shown as %j', (text, expected) => {
  expect(visibleText(text)).toBe(expected);
});

describe('where there is no Chromium', () => {
  test('the sentence says what to do', async () => {
    await expect(findChromium({ PATH: '' })).rejects.toThrow(
      /^--pdf: found no Chromium on this machine; expected one named chromium on the path; install it, /,
    );
  });

  test('a wrong path is named', async () => {
    await expect(findChromium({ PATH: '/usr/bin', OILGAP_CHROMIUM: '/no/such' })).rejects.toThrow(
      '--pdf: found no program at /no/such, which OILGAP_CHROMIUM names',
    );
  });
});
