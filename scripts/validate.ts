/**
 * `npm run validate`: holds every package that the program writes of the corpora, and those that it makes anew, against
 * the schemas of open packages and spreadsheets. No written book may have an error that the book before did not have; a
 * new one may have none.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CORPUS } from '../tests/corpus/corpus.js';
import { examine } from '../tests/corpus/examine.js';
import { HOSTILE_SHAPES } from '../tests/hostile/shapes.js';
import { handMadePackage } from '../tests/io/xlsx/hand-made.js';
import { newErrors, schemaErrors } from '../tests/validator/schema-errors.js';
import { writtenOf } from '../tests/validator/written-of.js';

interface Written {
  readonly name: string;
  /** Undefined for a book that was made anew. */
  readonly before: Uint8Array | undefined;
  readonly after: Uint8Array;
}

/** A hostile book that is read, and of a size that the validator takes in a second or two. */
const LARGEST = 200_000;
const PROGRAM = 'dist/src/commands/main.js';
const folder = mkdtempSync(join(tmpdir(), 'oilgap-'));

async function* corpusBooks(): AsyncGenerator<Written> {
  for (const book of CORPUS) yield { name: book.holds, ...(await examine(await book.make())) };
}

async function* keptBooks(): AsyncGenerator<Written> {
  for (const place of ['workbooks', 'tests/written-by-0.1']) {
    for (const file of readdirSync(place).filter((each) => each.endsWith('.xlsx'))) {
      const before = readFileSync(join(place, file));
      yield { name: join(place, file), before, after: await writtenOf(before) };
    }
  }
}

async function* hostileBooks(): AsyncGenerator<Written> {
  for (const { name, make, says, isLarge } of HOSTILE_SHAPES) {
    if (says || isLarge) continue;
    const path = await make(mkdtempSync(join(folder, 'shape-')));
    if (!path.endsWith('.xlsx')) continue;
    const before = readFileSync(path);
    if (before.length <= LARGEST) yield { name, before, after: await writtenOf(before) };
  }
}

/** What the commands make that write whole new workbooks. */
function* newBooks(): Generator<Written> {
  const run = (name: string, ...args: string[]): Written => {
    const path = join(folder, `${name}.xlsx`);
    try {
      execFileSync(process.execPath, [PROGRAM, ...args.map((arg) => (arg === 'OUT' ? path : arg))], {
        stdio: 'ignore',
      });
    } catch {
      // It ends with 1 where something is out of limits; the file is there all the same.
    }
    return { name, before: undefined, after: readFileSync(path) };
  };
  yield run('blank sheet', 'sheet', '--out', 'OUT', '--gauge-study', 'yes');
  yield run('blank sheet in inches', 'sheet', '--out', 'OUT', '--unit', 'in', '--paper', 'letter');
  yield run(
    'sets',
    'match',
    'workbooks/stock.xlsx',
    'workbooks/three-engines.xlsx',
    '--seconds',
    '5',
    '--out',
    'OUT',
  );
  yield run('decimal-commas.checked', 'check', 'workbooks/decimal-commas', '--out', folder);
}

/** That the validator finds what is wrong. */
async function refuseBlindness(): Promise<void> {
  const xml = '<sheetData/><cols><col min="1" max="1" width="9"/></cols>';
  const errors = await schemaErrors(await handMadePackage({ sheets: [{ name: 'Journals', xml }] }));
  if (!errors.some((error) => error.includes('cols')))
    throw new Error('the validator finds no error in columns behind the rows');
}

let count = 0;
let failures = 0;
let unopened = 0;
try {
  await refuseBlindness();
  for (const books of [corpusBooks(), keptBooks(), hostileBooks(), newBooks()]) {
    for await (const { name, before, after } of books) {
      count += 1;
      const found = await schemaErrors(after);
      const known = found.length > 0 && before ? await schemaErrors(before) : [];
      const added = newErrors(known, found);
      if (known.some((error) => error.startsWith('not opened'))) unopened += 1;
      if (added.length === 0) continue;
      failures += 1;
      console.log(`${name}:\n  ${added.slice(0, 10).join('\n  ')}`);
    }
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log(
  `${count} written packages, ${failures} with an error that was not there before; ${unopened} that the validator opens neither before nor after`,
);
process.exitCode = failures === 0 ? 0 : 1;
