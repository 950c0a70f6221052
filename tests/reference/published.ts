/** Reads the outside values that the tests of this folder compare with. */
import { readFileSync } from 'node:fs';
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

const read = (file: string) => readFileSync(new URL(`data/${file}`, import.meta.url), 'utf8');
const items = JSON.parse(read('published-values.json')) as Published[];

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
