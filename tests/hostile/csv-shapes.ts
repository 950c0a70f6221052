/** Folders of .csv files that are no tables, or too much of one. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvFolder, type Shape } from './shape.js';

const HEADER = 'Part;Engine;Fit;Position;A 0';
const ROW = '1;1;big end;1;42,003';
const journals = (text: string | Uint8Array) => csvFolder({ 'Journals.csv': text });

export const CSV_SHAPES: readonly Shape[] = [
  {
    name: 'zero characters',
    make: journals(`${HEADER}\n${ROW}\0\n`),
    says: /Journals\.csv: found bytes that are no text.* save it as "CSV UTF-8"/,
  },
  {
    name: 'UTF-16 without its mark',
    make: journals(Buffer.from(`${HEADER}\n${ROW}`, 'utf16le')),
    says: /no text/,
  },
  {
    name: 'a program of a sheet’s name',
    make: journals(Buffer.from([0x7f, 0x45, 0x4c, 0x46, 2, 1, 1, 0, 0, 0])),
    says: /no text/,
  },
  {
    name: 'a workbook of a sheet’s name',
    make: journals(Buffer.from('PK\x03\x04\x14\0\0\0')),
    says: /no text/,
  },
  {
    name: 'a quote that is never closed',
    make: async (folder) =>
      journals(`${HEADER}\n"1;1;big end;1;42,003\n${`${ROW}\n`.repeat(200_000)}`)(folder),
    says: /opening quote without a closing one in row 2/,
  },
  {
    name: 'a cell that goes on behind its quote',
    make: journals(`${HEADER}\n"1"x;1;big end;1;42,003\n`),
    says: /goes on behind its closing quote in row 2/,
  },
  {
    name: '20,000 columns',
    make: journals(`${HEADER}${';x'.repeat(20_000)}\n${ROW}\n`),
    says: /20005 columns in row 1; expected at most 16384/,
  },
  {
    name: 'more rows than a sheet has',
    make: async (folder) => journals(`${HEADER}\n${`${ROW}\n`.repeat(1_048_577)}`)(folder),
    says: /rows; expected at most 1048576/,
  },
  {
    name: 'a cell of 40,000 characters',
    make: journals(`${HEADER};Note\n${ROW};${'x'.repeat(40_000)}\n`),
    says: /40000 characters in cell F2; expected at most 32767/,
  },
  {
    name: 'two files of one sheet',
    make: csvFolder({ 'Journals.csv': HEADER, 'JOURNALS.CSV': HEADER }),
    says: /make the same sheet/,
  },
  {
    name: 'a file name that no sheet can have',
    make: csvFolder({ 'Journals.csv': `${HEADER}\n${ROW}\n`, [`${'x'.repeat(40)}.csv`]: 'a' }),
    says: /cannot be the name of a sheet/,
  },
  {
    name: 'a link in a circle',
    make: async (folder) => {
      mkdirSync(join(folder, 'book'));
      symlinkSync('Journals.csv', join(folder, 'book', 'Journals.csv'));
      return join(folder, 'book');
    },
    says: /symbolic links that lead in a circle/,
  },
  {
    name: 'a pipe that nobody writes into',
    make: async (folder) => {
      mkdirSync(join(folder, 'book'));
      execFileSync('mkfifo', [join(folder, 'book', 'Journals.csv')]);
      writeFileSync(join(folder, 'book', 'x.csv'), 'a');
      return join(folder, 'book');
    },
    says: /Journals\.csv: found a pipe; expected a \.csv file; take it out/,
  },
  {
    name: 'a pipe beside a sound sheet',
    make: async (folder) => {
      const path = await journals(`${HEADER}\n${ROW}\n`)(folder);
      execFileSync('mkfifo', [join(path, 'rods.CSV')]);
      return path;
    },
    says: /rods\.CSV: found a pipe/,
  },
  {
    name: 'a device beside a sound sheet',
    make: async (folder) => {
      const path = await journals(`${HEADER}\n${ROW}\n`)(folder);
      symlinkSync('/dev/null', join(path, 'New shells.csv'));
      return path;
    },
    says: /New shells\.csv: found a device/,
  },
  {
    name: 'a folder of a sheet’s name',
    make: async (folder) => {
      const path = await journals(`${HEADER}\n${ROW}\n`)(folder);
      mkdirSync(join(path, 'Rods.csv'));
      return path;
    },
    says: /Rods\.csv: found a folder of that name/,
  },
  {
    name: 'a pipe of a name that is no sheet’s',
    make: async (folder) => {
      const path = await journals(`${HEADER}\n${ROW}\n`)(folder);
      execFileSync('mkfifo', [join(path, 'Prices.csv')]);
      return path;
    },
    says: undefined,
  },
  {
    name: 'a line of 30 MB',
    make: async (folder) => journals(`${HEADER}\n${'x'.repeat(30_000_000)}\n`)(folder),
    says: /30000000 characters in cell A2/,
  },
];
