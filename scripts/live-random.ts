/**
 * Three ways to the value of each column, on random books: the core, the column's formula on HyperFormula,
 * and the live formula that is written, calculated by LibreOffice.
 *
 *   npm run live:random [-- BOOKS [FIRST SEED]]
 *
 * Ends with 0 where all three agree to the grain and every other live formula has its stored value.
 */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Assessment, assessBook } from '../src/engine/assess/assess.js';
import { evaluateColumns } from '../src/engine/columns/evaluate.js';
import { layoutOf } from '../src/engine/columns/result-headers.js';
import { readBook } from '../src/engine/run-book.js';
import { writtenWorkbook } from '../src/engine/sheets/written-workbook.js';
import { cellAddress, cellAt, type WorkbookModel } from '../src/engine/workbook-model.js';
import { newWorkbookPackage } from '../src/io/xlsx/new-package.js';
import { readWorkbookPackage } from '../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../src/io/xlsx/write-package.js';
import { unroundedGrains } from '../src/maths/units.js';
import { modelOf } from '../tests/engine/book-of.js';
import { coreValues, isSameValue } from '../tests/engine/columns/core-values.js';
import { randomBook } from '../tests/engine/random-book.js';
import { describeDifference, recalculate, reportLive } from './live-check.js';
import { tableText } from './table-text.js';

/** What was found of one column over all books. */
interface ColumnReport {
  /** Cells that are not blank. */
  cells: number;
  /** Of them, those that hold a live formula. */
  live: number;
  /** Largest difference from the core, grains; chances as they are. */
  engineOff: number;
  officeOff: number;
}

export interface RandomReport {
  readonly columns: ReadonlyMap<string, ColumnReport>;
  /** Formula cells of all sheets that were held against their stored values. */
  readonly formulas: number;
  /** One sentence each. */
  readonly differences: readonly string[];
}

/** As many books as LibreOffice opens at once. */
const BATCH = 40;

export async function compareRandomBooks(seeds: readonly number[]): Promise<RandomReport> {
  const columns = new Map<string, ColumnReport>();
  const differences: string[] = [];
  let formulas = 0;
  const folder = await mkdtemp(join(tmpdir(), 'oilgap-random-'));
  try {
    for (let first = 0; first < seeds.length; first += BATCH) {
      const written = [];
      for (const seed of seeds.slice(first, first + BATCH)) written.push(await writeBook(seed, folder));
      const files = written.map(({ file }) => file);
      const saved = await recalculate(files);
      const report = await reportLive(files, saved);
      formulas += report.compared;
      differences.push(...report.differences.map(describeDifference));
      for (const [place, { file, assessment }] of written.entries()) {
        const office = await readWorkbookPackage(saved[place]!, file);
        differences.push(...compareColumns(assessment, office, columns).map((line) => `${file}: ${line}`));
      }
    }
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 3 });
  }
  return { columns, formulas, differences };
}

async function writeBook(seed: number, folder: string): Promise<{ file: string; assessment: Assessment }> {
  const file = join(folder, `${seed}.xlsx`);
  const bytes = await newWorkbookPackage(modelOf(randomBook(seed)));
  const assessment = await assessBook(readBook(await readWorkbookPackage(bytes, file)), { seconds: 30 });
  const edit = writtenWorkbook(assessment, { valuesOnly: false });
  await writeFile(file, (await editWorkbookPackage(bytes, edit, file)).bytes);
  return { file, assessment };
}

/** The differences of one book in words; what was compared is added to the columns. */
function compareColumns(
  assessment: Assessment,
  office: WorkbookModel,
  columns: Map<string, ColumnReport>,
): string[] {
  const layout = layoutOf(assessment);
  const { lengthUnit } = assessment.book.setup;
  const found = new Map(
    [...evaluateColumns(assessment).cells].flatMap(([sheet, cells]) =>
      Array.from(cells, ({ row, column, cell }) => [`${sheet} ${row} ${column}`, cell] as const),
    ),
  );
  return coreValues(assessment).flatMap(({ sheet, row, column, header, value }) => {
    const cell = found.get(`${sheet} ${row} ${column}`);
    const officeSheet = office.sheets.find(({ name }) => name === layout.sheetName(sheet));
    const officeValue = officeSheet && cellAt(officeSheet, row, column)?.content?.value;
    const name = sheet === 'Fits' ? `Fits: ${header}` : header;
    const known = columns.get(name) ?? { cells: 0, live: 0, engineOff: 0, officeOff: 0 };
    columns.set(name, known);
    if (value !== undefined) known.cells += 1;
    if (cell?.formula !== undefined) known.live += 1;
    const off = (other: unknown) => {
      if (typeof value !== 'number' || typeof other !== 'number') return 0;
      const apart = Math.abs(other - value);
      return header === 'Chance in range' ? apart : unroundedGrains(apart, lengthUnit);
    };
    known.engineOff = Math.max(known.engineOff, off(cell?.value));
    known.officeOff = Math.max(known.officeOff, off(officeValue));
    // Lengths are parted from their neighbours on the grain by far more than a double is rounded.
    const isOfficeSame =
      typeof value === 'number' && typeof officeValue === 'number'
        ? off(officeValue) < (header === 'Chance in range' ? 1e-9 : 1e-3)
        : isSameValue(header, officeValue, value);
    if (isSameValue(header, cell?.value, value) && isOfficeSame) return [];
    const at = `${sheet}!${cellAddress(row, column)} (${header})`;
    return [`${at}: core ${value}, HyperFormula ${cell?.value}, LibreOffice ${officeValue}`];
  });
}

export function describeRandom({ columns, formulas, differences }: RandomReport): string {
  const digits = (value: number) => (value === 0 ? '0' : value.toExponential(1));
  const rows = [...columns].map(([name, { cells, live, engineOff, officeOff }]) => [
    name,
    String(cells),
    String(live),
    digits(engineOff),
    digits(officeOff),
  ]);
  const headers = ['Column', 'Cells', 'Live', 'HyperFormula off by', 'LibreOffice off by'];
  return `${tableText(headers, rows)}\n\n${formulas} live formulas of all sheets compared, ${differences.length} differences.`;
}

async function main(count = '200', first = '1'): Promise<number> {
  const seeds = Array.from({ length: Number(count) }, (_, place) => Number(first) + place);
  const report = await compareRandomBooks(seeds);
  for (const line of report.differences) console.log(line);
  console.log(
    `${count} random books, seeds ${seeds[0]} to ${seeds.at(-1)}; lengths in grains of 0.001 µm:\n`,
  );
  console.log(describeRandom(report));
  return report.formulas === 0 || report.differences.length > 0 ? 1 : 0;
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  process.exitCode = await main(...process.argv.slice(2));
}
