/** Prints a page to PDF with a Chromium that is installed; the program brings none along. */
import { execFile } from 'node:child_process';
import { access, constants, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { UserError } from '../../engine/user-error.js';

export type Paper = 'a4' | 'letter';

/** Names under which it is installed, and where it lies on systems that put programs on no path. */
const NAMES = ['chromium', 'chromium-browser', 'chromium.exe'];
const PLACES = ['/Applications/Chromium.app/Contents/MacOS/Chromium'];
const LONGEST_MS = 180_000;

/**
 * The path of a Chromium: the one that OILGAP_CHROMIUM names, else the first on the path.
 * @throws UserError where there is none.
 */
export async function findChromium(environment: NodeJS.ProcessEnv = process.env): Promise<string> {
  const { OILGAP_CHROMIUM: named, PATH = '' } = environment;
  const folders = PATH.split(delimiter).filter((folder) => folder !== '');
  const candidates = named
    ? [named]
    : [...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))), ...PLACES];
  for (const candidate of candidates) {
    const isThere = await access(candidate, constants.X_OK).then(
      () => true,
      () => false,
    );
    if (isThere) return candidate;
  }
  throw new UserError(
    named
      ? `--pdf: found no program at ${named}, which OILGAP_CHROMIUM names; expected the path of a Chromium; correct it, or leave out --pdf and print the page from any browser.`
      : '--pdf: found no Chromium on this machine; expected one named chromium on the path; install it, name its path in OILGAP_CHROMIUM, or leave out --pdf and print the page from any browser.',
  );
}

/** The page's PDF on that paper. Nothing is fetched: the page names nothing outside itself. */
export async function printPdf(html: string, chromium: string, paper: Paper): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'oilgap-pdf-'));
  try {
    const page = join(folder, 'page.html');
    const pdf = join(folder, 'page.pdf');
    await writeFile(page, html.replace('@page{', `@page{size:${paper};`));
    const flags = [
      '--headless',
      '--disable-gpu',
      '--no-first-run',
      `--user-data-dir=${join(folder, 'profile')}`,
    ];
    // It refuses to run in its sandbox for root.
    if (process.getuid?.() === 0) flags.push('--no-sandbox');
    await promisify(execFile)(
      chromium,
      [...flags, '--no-pdf-header-footer', `--print-to-pdf=${pdf}`, pathToFileURL(page).href],
      { timeout: LONGEST_MS, maxBuffer: 1 << 26 },
    );
    return await readFile(pdf);
  } catch (error) {
    throw new UserError(
      `--pdf: found that ${chromium} made no PDF (${reasonOf(error)}); expected it to print the page; try it by itself, or leave out --pdf and print the page from any browser.`,
      { cause: error },
    );
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 3 });
  }
}

function reasonOf(error: unknown): string {
  const { killed, code, message } = error as { killed?: boolean; code?: unknown; message?: string };
  if (killed) return `stopped after ${LONGEST_MS / 1000} s`;
  return code === undefined ? String(message) : `it ended with ${code}`;
}
