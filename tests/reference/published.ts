/** Reads the outside values that the tests of this folder compare with. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';

export interface Published {
  readonly id: string;
  readonly topic: string;
  readonly source: string;
  readonly evidence: string;
  readonly expected_origin: string;
  // biome-ignore lint/suspicious/noExplicitAny: every item has its own shape
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: every item has its own shape
  readonly expected: any;
  readonly unit: string;
  readonly note: string;
  readonly source_quirk?: string;
}

/** Tests and scripts run in the project's folder, wherever they were compiled to. */
const DATA = join(process.cwd(), 'tests', 'reference', 'data');
const read = (file: string) => readFileSync(join(DATA, file), 'utf8');
export const items = JSON.parse(read('published-values.json')) as Published[];

export function published(id: string): Published {
  const item = items.find((one) => one.id === id);
  if (!item) throw new Error(`no published value ${id}`);
  return item;
}

/** How a test names its outside value: source, how it was had, and where the expected value stands. */
export function cite({ source, evidence, expected_origin }: Published): string {
  return `${source} [${evidence}; ${expected_origin}]`;
}

/** The printed bearing sizes, as numbers where there are any. */
export function engineTables(): Record<string, string>[] {
  return Papa.parse<Record<string, string>>(read('engine_tables.csv').trim(), { header: true }).data;
}

/** The values of a data set of the NIST Statistical Reference Datasets: one a line below comments. */
export function statisticalDataset(file: string): number[] {
  return read(file)
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .map(Number);
}

/** The values of a table by two of its columns, in the order in which they first stand. */
export function readingsBy(file: string, first: string, second?: string): number[][][] {
  const table = Papa.parse<Record<string, string>>(read(file).trim(), { header: true }).data;
  const split = (rows: typeof table, column: string) =>
    [...new Set(rows.map((row) => row[column]!))].map((name) => rows.filter((row) => row[column] === name));
  return split(table, first).map((own) =>
    (second === undefined ? [own] : split(own, second)).map((rows) => rows.map((row) => Number(row.value))),
  );
}
