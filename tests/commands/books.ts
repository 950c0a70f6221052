/** The built program and small books for it: one big end of 0.035 mm. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { WorkbookModel } from '../../src/engine/workbook-model.js';
import { newWorkbookPackage } from '../../src/io/xlsx/new-package.js';
import { modelOf, type Plain, type Sheets, table } from '../engine/book-of.js';

export function oilgap(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['dist/src/commands/main.js', ...args], {
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
  return { status, stdout, stderr };
}

export const AT_1 = { Engine: 'E1', Position: 1 };

/** Bore 45.0125, walls 1.4875 and 1.4885, journal 42.0015: 45.0125 − 1.4875 − 1.4885 − 42.0015 = 0.035. */
export function sheetsWith(journal: Readonly<Record<string, Plain>> = {}, others: Sheets = {}): Sheets {
  return {
    Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.05 }),
    Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': 42.0015, ...journal }),
    Rods: table({ Part: 'R1', ...AT_1, 'A 0': 45.0125 }),
    Shells: table(
      { Part: 'U', ...AT_1, Half: 'upper', 'Wall 1': 1.4875 },
      { Part: 'L', ...AT_1, Half: 'lower', 'Wall 1': 1.4885 },
    ),
    ...others,
  };
}

export async function writeBook(folder: string, name: string, book: Sheets | WorkbookModel): Promise<string> {
  const path = join(folder, name);
  const model = Array.isArray((book as WorkbookModel).sheets)
    ? (book as WorkbookModel)
    : modelOf(book as Sheets);
  writeFileSync(path, await newWorkbookPackage(model));
  return path;
}
