/**
 * Holds the stored value of every formula cell in written workbooks against what LibreOffice calculates.
 *
 *   npm run live:files -- FILE.xlsx...
 *
 * Ends with 0 where all agree, with 1 upon any difference or where there was no formula to compare.
 */
import { spawn } from 'node:child_process';
import { access, copyFile, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { functionRecords } from '../functions/index.js';
import { type Cell, type CellContent, cellAddress, cellAt } from '../src/engine/workbook-model.js';
import { readWorkbookPackage } from '../src/io/xlsx/read-package.js';

export interface Difference {
  readonly file: string;
  readonly sheet: string;
  /** Its address, such as `D2`. */
  readonly cell: string;
  /** Without its leading `=`. */
  readonly formula: string;
  /** What stands in our file, in words. */
  readonly ours: string;
  /** What LibreOffice made of it, in words. */
  readonly theirs: string;
}

export interface LiveReport {
  /** How many formula cells were compared. */
  readonly compared: number;
  /** How many cells call one of the project's own functions, which LibreOffice does not know. */
  readonly custom: number;
  readonly differences: readonly Difference[];
}

/** The formula cells whose stored value is not the one that LibreOffice calculates. */
export async function compareLive(files: readonly string[]): Promise<readonly Difference[]> {
  return (await reportLive(files)).differences;
}

/**
 * As compareLive, with the counts of what was compared.
 * @param recalculated what `recalculate` gave for these files, where that is at hand
 */
export async function reportLive(
  files: readonly string[],
  recalculated?: readonly Uint8Array[],
): Promise<LiveReport> {
  const saved = recalculated ?? (files.length === 0 ? [] : await recalculate(files));
  let compared = 0;
  let custom = 0;
  const differences: Difference[] = [];
  for (const [i, file] of files.entries()) {
    const ours = await readWorkbookPackage(await readFile(file), file);
    const theirs = await readWorkbookPackage(saved[i]!, `${file} as LibreOffice saved it`);
    for (const sheet of ours.sheets) {
      const theirSheet = theirs.sheets.find(({ name }) => name === sheet.name);
      for (const { row, column, cell } of cellsOf(sheet.rows)) {
        const { formula } = cell;
        if (formula === undefined) continue;
        const theirCell = theirSheet && cellAt(theirSheet, row, column);
        if (callsOwnFunction(formula) && isUnknownName(theirCell?.content)) {
          custom += 1;
          continue;
        }
        compared += 1;
        if (theirCell?.formula !== undefined && isSameValue(cell.content, theirCell.content)) continue;
        differences.push({
          file,
          sheet: sheet.name,
          cell: cellAddress(row, column),
          formula,
          ours: inWords(cell.content),
          theirs:
            inWords(theirCell?.content) + (theirCell?.formula === undefined ? ' without a formula' : ''),
        });
      }
    }
  }
  return { compared, custom, differences };
}

/**
 * Whether two stored values are one: numbers within 1e-9, or within 1e-12 of the larger; a text of no
 * characters is a blank.
 */
export function isSameValue(a: CellContent | undefined, b: CellContent | undefined): boolean {
  if (isBlank(a) || isBlank(b)) return isBlank(a) && isBlank(b);
  if (isNumber(a!) && isNumber(b!)) {
    const apart = Math.abs(a.value - b.value);
    return apart <= 1e-9 || apart <= 1e-12 * Math.max(Math.abs(a.value), Math.abs(b.value));
  }
  return a!.kind === b!.kind && a!.value === b!.value;
}

/** One line for a person: where, the formula, both values. */
export function describeDifference({ file, sheet, cell, formula, ours, theirs }: Difference): string {
  return `${file}: ${sheet}!${cell}: =${formula}: the file holds ${ours}, LibreOffice calculates ${theirs}`;
}

/** The summary of a report in one line. */
export function describeReport({ compared, custom, differences }: LiveReport): string {
  const unknown = custom === 0 ? '' : `; ${custom} of the project's own functions not compared`;
  return `${compared} formulas compared, ${differences.length} differences${unknown}`;
}

function* cellsOf(rows: readonly (Cell | undefined)[][]) {
  for (const [row, cells] of rows.entries()) {
    for (const [column, cell] of (cells ?? []).entries()) {
      if (cell) yield { row, column, cell };
    }
  }
}

function isBlank(content: CellContent | undefined): boolean {
  return content === undefined || content.value === '';
}

/** Whether the format shows a date has no part in what is calculated. */
function isNumber(content: CellContent): content is CellContent & { readonly value: number } {
  return content.kind === 'number' || content.kind === 'date';
}

function isUnknownName(content: CellContent | undefined): boolean {
  return content?.kind === 'error' && content.value === '#NAME?';
}

const OWN_CALL = new RegExp(
  `(?<![\\w.])(?:${functionRecords.map(({ name }) => name).join('|')})\\s*\\(`,
  'i',
);

function callsOwnFunction(formula: string): boolean {
  return OWN_CALL.test(formula.replaceAll(/"[^"]*"/g, '""'));
}

function inWords(content: CellContent | undefined): string {
  if (isBlank(content)) return 'a blank';
  return content!.kind === 'text' ? JSON.stringify(content!.value) : `${content!.value}`;
}

/**
 * LibreOffice's own default is to trust the values that are stored in an .xlsx file; 0 is "always calculate".
 * The language settles how texts are read as numbers.
 */
const SETTINGS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>en-US</value></prop></item>
</oor:items>
`;

const TIMEOUT_MS = 150_000;

/** LibreOffice opens the files, calculates and saves: the .xlsx bytes of each, in their order. The files themselves are only read. */
export async function recalculate(files: readonly string[]): Promise<Uint8Array[]> {
  const folder = await mkdtemp(join(tmpdir(), 'oilgap-live-'));
  try {
    const profile = join(folder, 'profile');
    await mkdir(join(profile, 'user'), { recursive: true });
    await writeFile(join(profile, 'user', 'registrymodifications.xcu'), SETTINGS);
    // Numbered copies, since two folders may hold workbooks of one name.
    const copies = await Promise.all(
      files.map(async (file, i) => {
        const copy = join(folder, `${i}.xlsx`);
        await copyFile(file, copy);
        return copy;
      }),
    );
    const saved = join(folder, 'saved');
    const output = await runOffice([
      `-env:UserInstallation=${pathToFileURL(profile).href}`,
      '--headless',
      '--norestore',
      '--convert-to',
      'xlsx:Calc MS Excel 2007 XML',
      '--outdir',
      saved,
      ...copies,
    ]);
    return await Promise.all(
      files.map(async (file, i) => {
        const result = join(saved, `${i}.xlsx`);
        // LibreOffice ends with 0 even where it could not open a file.
        await access(result).catch(() => {
          throw new Error(`${file}: LibreOffice did not open and save this workbook. It said:\n${output}`);
        });
        return readFile(result);
      }),
    );
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 3 });
  }
}

/** Runs soffice in a process group of its own, since the program that it starts would outlive it. */
function runOffice(args: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const office = spawn('soffice', args, { detached: true, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    office.stdout.on('data', (data) => {
      output += data;
    });
    office.stderr.on('data', (data) => {
      output += data;
    });
    let isLate = false;
    const timer = setTimeout(() => {
      isLate = true;
      process.kill(-office.pid!, 'SIGKILL');
    }, TIMEOUT_MS);
    office.on('error', (error) => {
      clearTimeout(timer);
      reject(new Error(`soffice could not be started; install LibreOffice Calc. ${error.message}`));
    });
    office.on('close', (code, signal) => {
      clearTimeout(timer);
      if (code === 0) resolve(output);
      else if (isLate) reject(new Error(`LibreOffice did not end within ${TIMEOUT_MS / 1000} s:\n${output}`));
      else reject(new Error(`LibreOffice ended with ${code ?? signal}:\n${output}`));
    });
  });
}

async function main(files: readonly string[]): Promise<number> {
  if (files.length === 0) {
    console.error('No workbook is named. Expected: npm run live:files -- FILE.xlsx...');
    return 1;
  }
  const report = await reportLive(files);
  for (const difference of report.differences) console.log(describeDifference(difference));
  console.log(describeReport(report));
  return report.compared === 0 || report.differences.length > 0 ? 1 : 0;
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  process.exitCode = await main(process.argv.slice(2));
}
