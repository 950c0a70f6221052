/** A book that is damaged, disguised or made to harm, and what has to be said of it. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type HandMade, handMadeParts, STYLES, zipOf } from '../io/xlsx/hand-made.js';

export interface Shape {
  readonly name: string;
  /** Makes it in a folder of its own and gives its path. */
  readonly make: (folder: string) => Promise<string>;
  /** What the one message has to say; undefined where the shape does no harm and is read. */
  readonly says: RegExp | undefined;
  /** True where making it takes long: then only `npm run hostile` tries it. */
  readonly isLarge?: boolean;
}

type Parts = Readonly<Record<string, string | Uint8Array>>;

export function file(name: string, content: () => string | Uint8Array | Promise<Uint8Array>) {
  return async (folder: string) => {
    const path = join(folder, name);
    await writeFile(path, await content());
    return path;
  };
}

export function csvFolder(files: Readonly<Record<string, string | Uint8Array>>) {
  return async (folder: string) => {
    const path = join(folder, 'book');
    await mkdir(path);
    for (const [name, content] of Object.entries(files)) await writeFile(join(path, name), content);
    return path;
  };
}

export const HEAD =
  '<row r="1"><c r="A1" t="inlineStr"><is><t>Part</t></is></c><c r="B1" t="inlineStr"><is><t>Engine</t></is></c><c r="C1" t="inlineStr"><is><t>Fit</t></is></c><c r="D1" t="inlineStr"><is><t>Position</t></is></c><c r="E1" t="inlineStr"><is><t>A 0</t></is></c></row>';
export const ROW =
  '<row r="2"><c r="A2"><v>1</v></c><c r="B2"><v>1</v></c><c r="C2" t="inlineStr"><is><t>big end</t></is></c><c r="D2"><v>1</v></c><c r="E2"><v>42.003</v></c></row>';

export const SHEET = `<sheetData>${HEAD}${ROW}</sheetData>`;

/** One sheet Journals of this content, and whatever else is given. */
export function journals(xml: string, more: Partial<HandMade> = {}): Parts {
  return handMadeParts({ sheets: [{ name: 'Journals', xml }], styles: STYLES, ...more });
}

export function book(parts: Parts | (() => Parts), name = 'book.xlsx') {
  return file(name, () => zipOf(typeof parts === 'function' ? parts() : parts));
}

/** A sheet's rows, with further cells in row 2 from F on or further rows. */
export function sheetWith({ cells = '', rows = '', behind = '', before = '' }): Parts {
  return journals(
    `${before}<sheetData>${HEAD}${ROW.replace('</row>', `${cells}</row>`)}${rows}</sheetData>${behind}`,
  );
}
