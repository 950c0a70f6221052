/** The page: sound HTML, and every number on it that of the workbook. */
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Assessment } from '../../../src/engine/assess/assess.js';
import { CAUTION } from '../../../src/engine/caution.js';
import { partSheet } from '../../../src/engine/input-sheets/index.js';
import { runBook } from '../../../src/engine/run-book.js';
import { writtenWorkbook } from '../../../src/engine/sheets/written-workbook.js';
import { FORMAT_DECIMALS, type OutputCell } from '../../../src/engine/workbook-model.js';
import { openFile } from '../../../src/io/open-file.js';
import { reportPage } from '../../../src/io/report/report-page.js';
import { AT_1, sheetsWith } from '../../commands/books.js';
import { modelOf, type Sheets, table } from '../../engine/book-of.js';
import { attribute, type ReadPage, readPage } from './read-page.js';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const SHA256 = 'f'.repeat(64);

function pageOf(assessment: Assessment): string {
  return reportPage(assessment, { program: 'oilgap 0', files: [{ name: 'engine.xlsx', sha256: SHA256 }] });
}

async function pageOfSheets(sheets: Sheets): Promise<string> {
  return pageOf(await runBook(modelOf(sheets), { seconds: 5 }));
}

/** A cell as a spreadsheet program shows it. */
function shown({ value, format }: OutputCell): string {
  const decimals = FORMAT_DECIMALS[format];
  return typeof value === 'number' && decimals !== undefined ? value.toFixed(decimals) : String(value);
}

const NUMBER = /^[-+]?\d+(\.\d+)?$/;

describe.each(['one-engine.xlsx', 'three-engines.xlsx', 'inch.xlsx', 'decimal-commas'])(
  'the page of %s',
  (name) => {
    let assessment: Assessment;
    let html: string;
    let page: ReadPage;
    beforeAll(async () => {
      const { model } = await openFile(`${ROOT}workbooks/${name}`);
      assessment = await runBook(model, { seconds: 20 });
      html = pageOf(assessment);
      page = readPage(html);
    });

    test('is HTML without a fault', () => {
      expect(page.errors).toEqual([]);
      const ids = page.elements.flatMap((node) => attribute(node, 'id') ?? []);
      expect(ids.length).toBe(new Set(ids).size);
      expect(page.elements.find(({ tagName }) => tagName === 'html')?.attrs).toContainEqual({
        name: 'lang',
        value: 'en-GB',
      });
    });

    test('has no script, no style of an element and no address outside itself', () => {
      expect(
        page.elements.filter(({ tagName }) => ['script', 'link', 'iframe', 'img'].includes(tagName)),
      ).toEqual([]);
      const addresses = page.elements.flatMap((node) =>
        ['href', 'src', 'style', 'xlink:href', 'onclick'].flatMap((key) => attribute(node, key) ?? []),
      );
      expect(addresses.filter((address) => !address.startsWith('#'))).toEqual([]);
      expect(html.replaceAll(/url\(#[\w-]+\)/g, '')).not.toMatch(/url\(|@import|https?:/);
    });

    test('names every table and says which way its headers go', () => {
      expect(page.tables.length).toBeGreaterThan(5);
      for (const { caption, headers, rows } of page.tables) {
        expect(caption).not.toBe('');
        expect(headers.filter((header) => header === '')).toEqual([]);
        for (const row of rows) expect(row.length, caption).toBe(headers.length);
      }
      const heads = page.elements.filter(({ tagName }) => tagName === 'th');
      expect(heads.filter((head) => !['row', 'col'].includes(attribute(head, 'scope') ?? ''))).toEqual([]);
    });

    test('tells in words what each picture shows', () => {
      const pictures = page.elements.filter(
        (node) => node.tagName === 'svg' && attribute(node, 'role') === 'img',
      );
      const journals = assessment.parts.of('Journals').filter(({ spots }) => spots.length > 0);
      expect(pictures.length).toBeGreaterThan(journals.length);
      for (const picture of pictures) expect(attribute(picture, 'aria-label')?.length).toBeGreaterThan(20);
    });

    test('holds the caution, the digest and the program', () => {
      for (const sentence of CAUTION) expect(page.text).toContain(sentence);
      expect(page.text).toContain(SHA256);
      expect(page.text).toContain('oilgap 0');
    });

    test('gives every part and fit with the numbers of the workbook', () => {
      const edit = writtenWorkbook(assessment, { valuesOnly: true });
      const written = new Map<string, string>();
      const add = (sheet: string, row: number, header: string, cell: OutputCell) =>
        written.set(`${sheet} ${row} ${header}`, shown(cell));
      for (const { sheet, cells } of edit.edits) {
        const headers = new Map(
          [...cells]
            .filter(({ cell }) => cell.format === 'header')
            .map(({ column, cell }) => [column, cell.value]),
        );
        for (const { row, column, cell } of cells) add(sheet, row, String(headers.get(column)), cell);
      }
      for (const { name: sheet, rows: made } of edit.sheets) {
        const rows = [...made];
        rows.forEach((cells, row) => {
          cells.forEach((cell, column) => {
            if (cell) add(sheet, row, String(rows[0]?.[column]?.value), cell);
          });
        });
      }
      const { parts, fits } = assessment;
      let compared = 0;
      const compare = (row: readonly string[], headers: readonly string[], sheet: string, at: number) => {
        for (const [column, header] of headers.entries()) {
          const cell = written.get(`${sheet} ${at} ${header}`);
          if (cell === undefined && !RESULTS.includes(header)) continue;
          expect(row[column], `${sheet} row ${at + 1}, ${header}`).toBe(cell ?? '');
          compared += 1;
        }
      };
      for (const { row, form } of parts.all()) {
        const places = page.tables.filter(
          ({ caption, headers, rows }) =>
            headers[0] === 'Part' &&
            caption.startsWith(partSheet(row.sheet).plural.split(' ')[0]!) &&
            rows.some(([part]) => part === row.name),
        );
        expect(places.length, row.name).toBeGreaterThan(0);
        for (const { headers, rows } of places)
          compare(rows.find(([part]) => part === row.name)!, headers, row.sheet, row.row);
        expect(form === undefined || compared > 0).toBe(true);
      }
      fits.forEach((fit, order) => {
        const place = page.tables.find(
          ({ caption, under }) => under.includes(`Engine ${fit.engine}`) && caption === `Fits, ${fit.fit}`,
        );
        const row = place?.rows.find(([position]) => position === fit.position);
        expect(row, `${fit.engine} ${fit.fit} ${fit.position}`).toBeDefined();
        compare(row!, place!.headers, 'Fits', fit.source?.row ?? order + 1);
      });
      expect(compared).toBeGreaterThan(6 * fits.length);
    });

    test('has no number in a table that the workbook does not show', () => {
      const edit = writtenWorkbook(assessment, { valuesOnly: true });
      const known = new Set<string>();
      for (const { cells } of edit.edits) for (const { cell } of cells) known.add(shown(cell));
      for (const { rows } of edit.sheets)
        for (const cell of [...rows].flat()) if (cell) known.add(shown(cell));
      for (const { rows } of assessment.book.model.sheets)
        for (const cell of rows.flat()) if (cell?.content) known.add(String(cell.content.value));
      for (const { strip } of assessment.book.fits ?? [])
        if (strip !== undefined) known.add((strip / 25_400_000).toFixed(7));
      const rowNumbers = (headers: readonly string[]) => headers[0] === 'Row';
      const strange = page.tables.flatMap(({ caption, headers, rows }) =>
        rows.flatMap((row) =>
          row
            .filter(
              (text, column) =>
                NUMBER.test(text) && !known.has(text) && !(rowNumbers(headers) && column === 0),
            )
            .map((text) => `${caption}: ${text}`),
        ),
      );
      expect(strange).toEqual([]);
    });
  },
);

/** Result columns that must stand in the page, blank where the workbook has nothing. */
const RESULTS = ['Size', 'Wall', 'Largest', 'Smallest', 'Clearance', 'Tightest', 'Loosest', 'Status'];

describe('hostile names', () => {
  const HOSTILE = [
    '<script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    "'; } </style><b>",
    '&lt;b&gt; &amp; ]]> -->',
    'a\u202eb\u2066c',
    'bell\u0007 and \u001b[31m',
    '\u05e9\u05dc\u05d5\u05dd',
    '{{x}} $(y) %s',
  ];

  test.each(HOSTILE)('%j is text', async (name) => {
    const sheets = sheetsWith(
      { Part: name, Engine: name },
      {
        Rods: table({ Part: `R ${name}`, Engine: name, Position: 1, 'A 0': 45.0125, Bin: name }),
        Shells: table(
          { Part: 'U', ...AT_1, Engine: name, Half: 'upper', 'Wall 1': 1.4875 },
          { Part: 'L', ...AT_1, Engine: name, Half: 'lower', 'Wall 1': 1.4885 },
        ),
        Gauges: table({ Gauge: name, 'Max error': 0.001, Material: 'steel' }),
      },
    );
    const html = await pageOfSheets(sheets);
    const page = readPage(html);
    expect(page.errors).toEqual([]);
    const tags = new Set(page.elements.map(({ tagName }) => tagName));
    expect([...tags].filter((tag) => ['script', 'img', 'x'].includes(tag))).toEqual([]);
    expect(page.elements.filter(({ tagName }) => tagName === 'style')).toHaveLength(1);
    const visible = name
      .replaceAll('\u202e', '[U+202E]')
      .replaceAll('\u2066', '[U+2066]')
      .replaceAll('\u0007', '[U+0007]')
      .replaceAll('\u001b', '[U+001B]');
    expect(page.text).toContain(visible);
    expect(page.tables.find(({ caption }) => caption === 'Journals')?.rows[0]?.[0]).toBe(visible);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be in a page
    expect(html).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
  });
});

test('a book with nothing measured makes a page all the same', async () => {
  const page = readPage(await pageOfSheets({ Journals: [['Part', 'Engine', 'Fit', 'Position', 'A 0']] }));
  expect(page.errors).toEqual([]);
  expect(page.tables.filter(({ rows }) => rows.length === 0)).toEqual([]);
});
