/** The blank workbook in its package: what is locked, what helps, how it is printed, what is drawn. */
import ExcelJS from 'exceljs';
import JSZip from 'jszip';
import { beforeAll, describe, expect, test } from 'vitest';
import { blankBook } from '../../../src/engine/blank/blank-book.js';
import { describeEngine } from '../../../src/engine/blank/describe-engine.js';
import { type DescriptionTexts, standardTexts } from '../../../src/engine/blank/description-items.js';
import { CAUTION } from '../../../src/engine/caution.js';
import { blankPackage } from '../../../src/io/xlsx/blank-package.js';

const packageOf = (texts: DescriptionTexts = {}) =>
  blankPackage(blankBook(describeEngine({ ...standardTexts(), ...texts })));

let bytes: Uint8Array;
let workbook: ExcelJS.Workbook;
let zip: JSZip;
beforeAll(async () => {
  bytes = await packageOf({ gaugeStudy: 'yes' });
  workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(bytes.buffer as ArrayBuffer);
  zip = await JSZip.loadAsync(bytes);
});

const textOf = (part: string) => zip.file(part)!.async('string');

test('the same description gives the same bytes', async () => {
  expect(Buffer.compare(bytes, await packageOf({ gaugeStudy: 'yes' }))).toBe(0);
});

test('every sheet is protected without a password, and its header stays in view', async () => {
  expect(workbook.worksheets.length).toBeGreaterThan(7);
  for (const [place, worksheet] of workbook.worksheets.entries()) {
    const xml = await textOf(`xl/worksheets/sheet${place + 1}.xml`);
    const protection = /<sheetProtection[^>]*>/.exec(xml)![0];
    expect(protection).toContain('sheet="1"');
    expect(protection).not.toMatch(/password|hashValue/);
    expect(worksheet.views[0]).toMatchObject({ state: 'frozen', ySplit: 1 });
  }
});

test('cells to fill are unlocked and say what they want; headers are locked', () => {
  for (const name of ['Limits', 'Gauges', 'Journals', 'Rods', 'Cases', 'Shells', 'Gauge study']) {
    const worksheet = workbook.getWorksheet(name)!;
    worksheet.getRow(1).eachCell((cell) => {
      expect(cell.protection?.locked ?? true, `${name} ${cell.address}`).toBe(true);
    });
    for (let row = 2; row <= worksheet.rowCount; row++) {
      for (let column = 1; column <= worksheet.getRow(1).cellCount; column++) {
        const cell = worksheet.getCell(row, column);
        expect(cell.protection?.locked, `${name} ${cell.address}`).toBe(false);
        expect(cell.dataValidation?.prompt, `${name} ${cell.address}`).toMatch(/\.$/);
        expect(cell.dataValidation.prompt!.length).toBeLessThanOrEqual(255);
        // A reading typed with its unit is a text: a rule may warn, and must not refuse.
        expect(cell.dataValidation.errorStyle).toBe('warning');
      }
    }
  }
});

test('Setup offers the words of each setting', () => {
  const setup = workbook.getWorksheet('Setup')!;
  expect(setup.getCell('A2').protection?.locked ?? true).toBe(true);
  expect(setup.getCell('B2').dataValidation).toMatchObject({ type: 'list', formulae: ['"mm,in"'] });
  expect(setup.getCell('B6').dataValidation).toMatchObject({ type: 'list', formulae: ['"refuse,allow"'] });
});

test.each([
  ['a4', 9],
  ['letter', 1],
])('prints on %s, one page wide, header on each page', async (paper, size) => {
  const printed = new ExcelJS.Workbook();
  await printed.xlsx.load((await packageOf({ paper })).buffer as ArrayBuffer);
  for (const { name, pageSetup } of printed.worksheets) {
    // The library reads the size 1, which is the format's own default, as none.
    expect(pageSetup.paperSize ?? 1, name).toBe(size);
    expect(pageSetup).toMatchObject({
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
    });
    if (name !== 'Start here') expect(pageSetup.printTitlesRow, name).toBe('1:1');
  }
});

describe('the drawings', () => {
  test('show stations and angles in black, and the caution on every sheet', async () => {
    const drawings = Object.keys(zip.files).filter((part) => /^xl\/drawings\/drawing\d+\.xml$/.test(part));
    // Every sheet but the first, which has the caution in its cells.
    expect(drawings).toHaveLength(workbook.worksheets.length - 1);
    for (const part of drawings) {
      const xml = await textOf(part);
      for (const sentence of CAUTION) expect(xml).toContain(sentence);
      expect(new Set([...xml.matchAll(/srgbClr val="(\w+)"/g)].map((match) => match[1]))).toEqual(
        new Set(['000000']),
      );
    }
    const journals = await textOf('xl/drawings/drawing4.xml');
    for (const word of ['A', 'B', '0°', '90°']) expect(journals).toContain(`<a:t>${word}</a:t>`);
    const rods = await textOf('xl/drawings/drawing5.xml');
    for (const word of ['45°', '135°', 'parting line']) expect(rods).toContain(`<a:t>${word}</a:t>`);
    const guide = workbook.getWorksheet('Start here')!;
    const words = guide.getColumn(1).values.join('\n');
    for (const sentence of CAUTION) expect(words).toContain(sentence);
  });

  test('draw no shape of a negative or endless size', async () => {
    for (const part of Object.keys(zip.files).filter((name) => /drawing\d+\.xml$/.test(name))) {
      const sizes = [...(await textOf(part)).matchAll(/ext cx="([^"]*)" cy="([^"]*)"/g)];
      expect(sizes.length).toBeGreaterThan(1);
      for (const [, cx, cy] of sizes) {
        expect(cx).toMatch(/^\d+$/);
        expect(cy).toMatch(/^\d+$/);
      }
    }
  });
});
