/** Readings as several programs and countries save them: one number each, or none, with both its readings shown. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runBook } from '../../src/engine/run-book.js';
import { openFile } from '../../src/io/open-file.js';
import { mmOfGrain } from '../../src/maths/grain.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Sizes in mm and the cells that were refused, of a folder with a Journals.csv of these bytes. */
async function read(journals: string | Uint8Array) {
  const place = mkdtempSync(join(folder, 'book-'));
  writeFileSync(join(place, 'Journals.csv'), journals);
  const { model } = await openFile(place);
  const { parts, book } = await runBook(model, { seconds: 1 });
  return {
    names: parts.of('Journals').map(({ row }) => row.name),
    sizes: parts.of('Journals').map(({ form }) => form && mmOfGrain(form.size)),
    refused: book.bad.map(({ cell, found, expected }) => `${cell}: ${found}; ${expected}`),
  };
}

const HEADER = 'Part;Engine;Fit;Position;A 0;Temperature';
const row = (size: string, part = 'J1') => `${part};E1;big end;1;${size};`;
const GOOD = `${HEADER}\r\n${row('42,003 mm')}\r\n`;

describe('one number, however the file was saved', () => {
  test.each<[string, string | Uint8Array]>([
    ['UTF-8', GOOD],
    ['UTF-8 behind its mark', `\ufeff${GOOD}`],
    ['UTF-16, little end first', Buffer.from(`\ufeff${GOOD}`, 'utf16le')],
    ['UTF-16, big end first', Buffer.from(`\ufeff${GOOD}`, 'utf16le').swap16()],
    [
      'Windows-1252, a dash in its own code',
      Buffer.from(GOOD.replace(/;\r\n$/, ';\x96\r\n').replace('Temperature', 'Note'), 'latin1'),
    ],
    ['a separator line', `sep=;\r\n${GOOD}`],
    ['tabs', GOOD.replaceAll(';', '\t')],
    ['commas and quotes', `"${GOOD.trim().replaceAll(';', '","').replaceAll('\r\n', '"\r\n"')}"`],
    ['old line ends', GOOD.replaceAll('\r\n', '\r')],
    ['mixed line ends', `${HEADER}\n${row('42,003 mm')}\r\r\n`],
    ['blank rows before the header', `;;;;;\r\n\r\n${GOOD}`],
    ['a unit in the header', GOOD.replace('A 0', 'A 0 (µm)').replace('42,003 mm', '42003')],
  ])('%s', async (_, text) => {
    const { sizes, refused } = await read(text);
    expect({ sizes, refused }).toEqual({ sizes: [42.003], refused: [] });
  });
});

describe('one number, however it was typed', () => {
  // 1.6536 in = 42.00144 mm exactly, at 25.4 mm to the inch (international inch of 1959).
  test.each<[string, number]>([
    ['42,003', 42.003],
    ['42.003', 42.003],
    ['+42.003', 42.003],
    ['42.003 mm', 42.003],
    ['\u00a042,003\u202fmm\u2009', 42.003],
    ['４２，００３', 42.003],
    ['42.003MM', 42.003],
    ['1.6536 in', 42.00144],
    ['1,6536 in', 42.00144],
    ['42003 µm', 42.003],
    ['42003 μm', 42.003],
    ['42,003.5 µm', 42.0035],
    ['42.003,5 µm', 42.0035],
    ['4,2003e1', 42.003],
  ])('%s', async (text, size) => {
    expect(await read(`${HEADER}\n${row(text)}`)).toMatchObject({ sizes: [size], refused: [] });
  });

  test.each(['-', '\u2212', '\u2010', '\u2011', '\u2012', '\u2013', '\ufe63', '\uff0d', '\u207b'])(
    'below zero with the sign %s',
    async (minus) => {
      const { refused } = await read(`${HEADER}\n${row('42')}${minus}4,5 °C`);
      expect(refused).toEqual([]);
      // A size below zero is refused, so the sign was seen.
      expect((await read(`${HEADER}\n${row(`${minus}42`)}`)).refused).toHaveLength(1);
    },
  );
});

describe('what is not one number is refused by cell', () => {
  test('two readings are both shown', async () => {
    const { sizes, refused } = await read(`${HEADER}\n${row('42,003 µm')}`);
    expect(sizes).toEqual([undefined]);
    expect(refused).toEqual([expect.stringMatching(/^E2: .*42,003 µm.*not 42\.003 or 42003$/)]);
  });

  test('other texts of the column settle it', async () => {
    const { sizes } = await read(`${HEADER}\n${row('42,003 µm')}\n${row('41.999,5 µm', 'J2')}`);
    expect(sizes).toEqual([0.042003, 41.9995]);
  });

  test.each([
    '42.003 or so',
    '~42.003',
    '42 003',
    '42.003.1',
    '42,003,1',
    '1,234,567',
    '4 2.003',
    '42-003',
    '0x2A',
    'NaN',
    'Infinity',
    '1e999',
    '٤٢',
    '42.003 kg',
    '42.003 mm in',
    '12/05/2024',
    '=42',
    '--42',
    '1/0 in',
  ])('%s', async (text) => {
    const { sizes, refused } = await read(`${HEADER}\n${row(text)}`);
    expect(sizes).toEqual([undefined]);
    expect(refused).toHaveLength(1);
    expect(refused[0]).toMatch(/^E2: /);
  });
});

test('a Part keeps its zeros', async () => {
  const { names } = await read(`${HEADER}\n${row('42', '007')}\n${row('42', '7')}\n${row('42', '1e3')}`);
  expect(names).toEqual(['007', '7', '1e3']);
});
