/** What the user has done to written columns stays when the book is checked again. */
import { expect, test } from 'vitest';
import { runBook } from '../../../src/engine/run-book.js';
import { writtenWorkbook } from '../../../src/engine/sheets/written-workbook.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../../../src/io/xlsx/write-package.js';
import { attr, childOf, readTree } from '../../../src/io/xlsx/xml-tree.js';
import { engineBook, textCell } from '../../corpus/corpus-book.js';
import { partText, unzip, zipOf } from './hand-made.js';

const SHEET = 'xl/worksheets/sheet1.xml';
const STYLES = 'xl/styles.xml';

/** @param withMadeCells whether results of an earlier run are read too: it changes nothing */
async function checked(bytes: Uint8Array, withMadeCells = false): Promise<Uint8Array> {
  const model = await readWorkbookPackage(bytes, 'book.xlsx', { withMadeCells });
  const assessment = await runBook(model, { seconds: 5 });
  const edit = writtenWorkbook(assessment, { valuesOnly: false });
  return (await editWorkbookPackage(bytes, edit)).bytes;
}

async function changed(
  bytes: Uint8Array,
  part: string,
  change: (xml: string) => string,
): Promise<Uint8Array> {
  const parts = await unzip(bytes);
  parts.set(part, Buffer.from(change(parts.get(part)!.toString())));
  return zipOf(Object.fromEntries(parts));
}

const written = engineBook({})().then((bytes) => checked(bytes));
/** A cell as it stands in the sheet. */
const cellIn = (xml: string, address: string) =>
  new RegExp(`<c r="${address}"(?:[^>]*/>|.*?</c>)`).exec(xml)?.[0];

/** The fill of a cell, as its format in the styles names it. */
async function fillOf(bytes: Uint8Array, address: string): Promise<string | undefined> {
  const style = /s="(\d+)"/.exec(cellIn(await partText(bytes, SHEET), address) ?? '')?.[1];
  const formats = childOf(readTree(await partText(bytes, STYLES)), 'cellXfs')!.children;
  return attr(formats[Number(style)], 'fillId');
}

/** The written book, with a filled format that cells are given. */
async function filled(...addresses: string[]): Promise<Uint8Array> {
  let style = 0;
  const withFill = await changed(await written, STYLES, (xml) => {
    style = childOf(readTree(xml), 'cellXfs')!.children.length;
    return xml
      .replace('</fills>', '<fill><patternFill patternType="solid"/></fill></fills>')
      .replace(
        '</cellXfs>',
        '<xf numFmtId="0" fontId="0" fillId="2" borderId="0" xfId="0" applyFill="1"/></cellXfs>',
      );
  });
  return changed(withFill, SHEET, (xml) =>
    addresses.reduce((text, address) => {
      const cell = cellIn(text, address);
      const row = /\d+/.exec(address)![0];
      if (!cell)
        return text.replace(
          new RegExp(`(<row r="${row}".*?)(</row>)`),
          `$1<c r="${address}" s="${style}"/>$2`,
        );
      return text.replace(cell, cell.replace(/(<c r="\w+")(?: s="\d+")?/, `$1 s="${style}"`));
    }, xml),
  );
}

test.each([true, false])(
  'fills stay, on results and on cells that hold none (all cells read: %s)',
  async (all) => {
    const again = await checked(await filled('G2', 'N2', 'G1'), all);
    expect(await Promise.all(['G1', 'G2', 'N2', 'G3'].map((cell) => fillOf(again, cell)))).toEqual([
      '2',
      '2',
      '2',
      '0',
    ]);
    // It is a number of as many decimals as the others, and live as they are.
    expect(cellIn(await partText(again, SHEET), 'G2')).toContain('<f>');
    expect(await unzip(await checked(again, all))).toEqual(await unzip(again));
  },
);

test('a fill of an empty Why stays, and takes no value', async () => {
  const before = await filled('O2');
  const again = await checked(before);
  expect(await fillOf(again, 'O2')).toBe('2');
});

test('a width that the user has set stays, and others too', async () => {
  const wide = await changed(await written, SHEET, (xml) =>
    xml.replace(/(<col min="7" max="7" width=")[\d.]+/, '$133.5'),
  );
  const again = await checked(wide);
  expect(await partText(again, SHEET)).toContain('<col min="7" max="7" width="33.5"');
  expect(await unzip(again)).toEqual(await unzip(wide));
});

const WORDS = `<row r="6">${textCell('A6', 'Mean')}<c r="G6"><f>AVERAGE(G2:G4)</f><v>42.0015</v></c>${textCell('N6', 'E. Quill')}</row>`;

test.each([true, false])(
  'what stands below stays, a formula and a link among it (all cells read: %s)',
  async (all) => {
    const before = await changed(await written, SHEET, (xml) =>
      xml.replace(
        '</sheetData>',
        `${WORDS}<row r="9">${textCell('O9', 'see')}</row></sheetData><hyperlinks><hyperlink ref="O9" location="A1"/></hyperlinks>`,
      ),
    );
    const again = await checked(before, all);
    expect(await partText(again, SHEET)).toBe(await partText(before, SHEET));
    expect(await unzip(await checked(again, all))).toEqual(await unzip(again));
  },
);

test('results of a part that is gone go with it, and nothing else does', async () => {
  const before = await changed(await written, SHEET, (xml) => {
    const cells = ['A4', 'B4', 'C4', 'D4', 'E4'].reduce(
      (text, cell) => text.replace(cellIn(text, cell)!, ''),
      xml,
    );
    return cells.replace('</sheetData>', `${WORDS}</sheetData>`);
  });
  for (const all of [true, false]) {
    const xml = await partText(await checked(before, all), SHEET);
    expect(xml).not.toMatch(/<c r="[G-O]4"/);
    expect(xml).toContain(WORDS);
  }
});
