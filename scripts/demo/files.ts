/** The bytes of the demonstration workbooks. */
import ExcelJS from 'exceljs';
import { newWorkbookPackage } from '../../src/io/xlsx/new-package.js';
import { OpcPackage } from '../../src/io/xlsx/opc-package.js';
import { decimalCommas } from './decimal-commas.js';
import { type DemoBook, type DemoSheet, modelOf, type Value } from './demo-book.js';
import { inch } from './inch.js';
import { oneEngine } from './one-engine.js';
import { stock } from './stock.js';
import { threeEngines } from './three-engines.js';

/** Characters that a length of three decimals and its unit take in any face. */
const WIDTH_WITH_UNIT = 13;

/** Every file by its path inside `workbooks/`; the same bytes at every call. */
export async function demoFiles(): Promise<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  for (const book of [oneEngine(), threeEngines(), stock(), inch()]) {
    files.set(book.name, await xlsxOf(book));
  }
  const folder = decimalCommas();
  for (const each of folder.sheets) {
    files.set(`${folder.name}/${each.name}.csv`, new TextEncoder().encode(csvOf(each)));
  }
  return files;
}

async function xlsxOf(book: DemoBook): Promise<Uint8Array> {
  const plain = await newWorkbookPackage(modelOf(book));
  return book.sheets.some(({ numberFormat }) => numberFormat) ? withNumberFormats(plain, book) : plain;
}

/** Gives the lengths of a sheet its number format, as a user would who wants to see the unit. */
async function withNumberFormats(bytes: Uint8Array, { name, sheets }: DemoBook): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(Buffer.from(bytes) as unknown as Parameters<typeof workbook.xlsx.load>[0]);
  for (const { name, headers, rows, numberFormat } of sheets) {
    if (numberFormat === undefined) continue;
    for (const column of headers.keys()) {
      if (!rows.some((row) => isThousandths(row[column]))) continue;
      const shown = workbook.getWorksheet(name)!.getColumn(column + 1);
      shown.width = Math.max(shown.width ?? 0, WIDTH_WITH_UNIT);
      rows.forEach((row, at) => {
        if (typeof row[column] !== 'number') return;
        workbook.getWorksheet(name)!.getCell(at + 2, column + 1).numFmt = numberFormat;
      });
    }
  }
  workbook.created = new Date(0);
  workbook.modified = new Date(0);
  const written = await OpcPackage.open(new Uint8Array(await workbook.xlsx.writeBuffer()), name);
  return written.toBytes({ allDatesFixed: true });
}

/** Whether a value is finer than tenths, as lengths are and temperatures, marks and positions are not. */
function isThousandths(value: Value): boolean {
  return typeof value === 'number' && !Number.isInteger(value * 10);
}

/** Fields separated by semicolons, decimal commas, UTF-8 without a mark. */
function csvOf({ headers, rows }: DemoSheet): string {
  const field = (value: Value) => {
    const text = typeof value === 'number' ? String(value).replace('.', ',') : (value ?? '');
    return /[;"\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return [headers, ...rows].map((row) => `${row.map(field).join(';')}\n`).join('');
}
