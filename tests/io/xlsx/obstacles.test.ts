import { describe, expect, test } from 'vitest';
import { editWorkbookPackage } from '../../../src/io/xlsx/write-package.js';
import { handMadePackage, MAIN, partText, STYLES, unzip } from './hand-made.js';
import { NOTHING, statusEdit } from './sample-edits.js';

describe('what is in the way', () => {
  const sheetWith = (tail: string, cells = '') => `<sheetData>${cells}</sheetData>${tail}`;
  const table = (ref: string) => ({
    relationships: [['rId1', 'table', '../tables/table1.xml']] as const,
    xml: sheetWith('<tableParts count="1"><tablePart r:id="rId1"/></tableParts>'),
    parts: {
      'xl/tables/table1.xml': `<table xmlns="${MAIN}" id="1" name="T" displayName="T" ref="${ref}"/>`,
    },
  });
  const merged = (ref: string) => sheetWith(`<mergeCells count="1"><mergeCell ref="${ref}"/></mergeCells>`);
  const array = (ref: string) =>
    sheetWith(
      '',
      `<row r="2"><c r="${ref.split(':')[0]}"><f t="array" ref="${ref}">A1:B1</f><v>1</v></c></row>`,
    );

  test.each<
    [
      string,
      {
        xml: string;
        relationships?: readonly (readonly [string, string, string])[];
        parts?: Record<string, string>;
      },
      RegExp | undefined,
    ]
  >([
    ['a table under a written cell', table('A1:E2'), /table over A1:E2 is in the way of cell E1/],
    ['a table beside', table('A1:D2'), undefined],
    ['a table in an emptied column', table('G20:H30'), /column G/],
    ['merged cells', { xml: merged('D2:E3') }, /merged cells D2:E3 are in the way of cell E2/],
    ['merged cells in an emptied column', { xml: merged('F50:F51') }, /column F/],
    ['merged cells beside', { xml: merged('A1:D1') }, undefined],
    ['an array formula', { xml: array('D2:E2') }, /array formula over D2:E2/],
    ['an array formula of one cell', { xml: array('E2') }, undefined],
  ])('%s', async (_, { xml, relationships, parts }, reason) => {
    const input = await handMadePackage({
      sheets: [
        { name: 'A', xml, ...(relationships ? { relationships } : {}) },
        { name: 'B', xml: '<sheetData/>' },
      ],
      styles: STYLES,
      ...(parts ? { parts } : {}),
    });
    const { bytes, refused } = await editWorkbookPackage(input, {
      ...NOTHING,
      edits: [statusEdit('A'), statusEdit('B')],
    });
    expect(refused).toEqual(reason ? [{ sheet: 'A', reason: expect.stringMatching(reason) }] : []);
    const isSame =
      (await partText(bytes, 'xl/worksheets/sheet1.xml')) ===
      (await partText(input, 'xl/worksheets/sheet1.xml'));
    expect(isSame).toBe(reason !== undefined);
    expect(await partText(bytes, 'xl/worksheets/sheet2.xml')).toContain('ROUND(B2,5)');
  });

  test('a sheet that is not there', async () => {
    const input = await handMadePackage({ sheets: [{ name: 'A', xml: '<sheetData/>' }] });
    const { bytes, refused } = await editWorkbookPackage(input, { ...NOTHING, edits: [statusEdit('Rods')] });
    expect(refused).toEqual([
      { sheet: 'Rods', reason: expect.stringContaining('no worksheet of this name') },
    ]);
    expect(await unzip(bytes)).toEqual(await unzip(input));
  });
});
