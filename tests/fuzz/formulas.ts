/** Formulas drawn to cost as much as a formula can: large ranges, arrays, texts, numbers and depths, in any mixture. */
import { HyperFormula } from 'hyperformula';
import { functionRecords } from '../../functions/index.js';
import { type Random, seeded } from '../../scripts/demo/random.js';
import { evaluateFormula } from '../../src/engine/functions/one-formula.js';
import { readBook } from '../../src/engine/run-book.js';
import type { EngineUnits } from '../../src/engine/spreadsheet.js';
import { cellAt, type WorkbookModel } from '../../src/engine/workbook-model.js';
import { modelOf, table } from '../engine/book-of.js';

const FUNCTIONS = [
  ...HyperFormula.getRegisteredFunctionNames('enGB'),
  ...functionRecords.map(({ name }) => name),
  // What fills the most, more often than the rest.
  ...Array(8)
    .fill(['SEQUENCE', 'REPT', 'ARRAYFORMULA', 'MMULT', 'TRANSPOSE', 'SUMPRODUCT', 'SUBSTITUTE'])
    .flat(),
];

const OPERATORS = ['+', '-', '*', '/', '^', '&', '=', '<>', '<', '>='];

const LEAVES: readonly ((random: Random) => string)[] = [
  (random) => String(random.between(0, 9)),
  (random) => String(10 ** random.between(1, 15)),
  (random) => `10^${random.between(1, 300)}`,
  (random) => `-${random.between(1, 1e9) / 1000}`,
  (random) => `"${'*a?~'.slice(0, random.between(0, 4)).repeat(random.between(0, 9))}"`,
  (random) =>
    `REPT("${random.pick(['x', '*a', ' ', '1'])}",${random.pick(['99', '3*10^4', 'A1*10^4', '10^9'])})`,
  (random) => `${random.pick(['A', 'B', '$C', 'XFD'])}${random.pick(['1', '$2', '7', '1048576'])}`,
  (random) => `A1:${random.pick(['B9', 'A1000', 'A200000', 'CZ2000', 'A1048576', 'XFD1', 'XFD1048576'])}`,
  (random) => random.pick(['A:A', 'A:XFD', '1:1', '1:1048576', '2:90000', 'Journals!A:D', 'Missing!1:50000']),
  (random) =>
    random.pick(['SEQUENCE(9,9)', 'SEQUENCE(900,900)', 'SEQUENCE(10^3,10^3)', 'SEQUENCE(A1*10^5,A2)']),
  (random) => random.pick(['{1,2;3,4}', 'TRUE()', 'NA()', '', 'G1', '"12/05/2024"']),
];

function expression(random: Random, depth: number): string {
  const kind = depth <= 0 ? 0 : random.between(0, 9);
  if (kind < 3) return random.pick(LEAVES)(random);
  if (kind < 5) {
    return `(${expression(random, depth - 1)}${random.pick(OPERATORS)}${expression(random, depth - 1)})`;
  }
  const given = Array.from({ length: random.between(0, 4) }, () => expression(random, depth - 1));
  return `${random.pick(FUNCTIONS)}(${given.join(',')})`;
}

/** Formulas of one thing over and over, which exhaust what takes them apart. */
const LONG: readonly ((random: Random, times: number) => string)[] = [
  (_random, times) => `${'('.repeat(times)}1${')'.repeat(times)}`,
  (random, times) => `${`${random.pick(['ABS', 'LEN', 'TRANSPOSE'])}(`.repeat(times)}A1${')'.repeat(times)}`,
  (random, times) => `1${random.pick(['+1', '&A1', '%', '^2', '*{1,2}']).repeat(times)}`,
  (random, times) => `${random.pick(['-', '+'])}`.repeat(times).concat('1'),
  (random, times) =>
    `SUM(${Array(times)
      .fill(random.pick(['1', 'A1:B2', 'A1', '""']))
      .join(',')})`,
  (_random, times) => `{${Array(times).fill('1').join(',')}}`,
  (_random, times) => `"${'x'.repeat(times)}"`,
];

/** The same formula for the same seed and number, without its equals sign. */
export function formulaOf(seed: number, number: number): string {
  const random = seeded(seed * 1_000_003 + number);
  if (random.between(1, 100) <= 5) return random.pick(LONG)(random, random.between(1, 9_000));
  return expression(random, random.between(1, 5));
}

const UNITS: EngineUnits = { lengthUnit: 'mm', temperatureUnit: 'C' };

/** What a formula comes to on its own. */
export function evaluateAlone(formula: string): string {
  const answer = evaluateFormula(`=${formula}`, UNITS);
  return 'message' in answer ? 'refused' : 'a value';
}

/** What a formula comes to in a small book. Throws where the rest of the book is not computed. */
export function evaluateInBook(formula: string): string {
  const model: WorkbookModel = modelOf({
    Notes: [
      [1, 2, 3],
      [4, 'five'],
      [undefined, null],
      [undefined, null],
    ],
    Journals: table({ Part: 'J1', Engine: 'E', Position: 1, Fit: 'main', 'A 0': 42.001 }),
  });
  const { rows } = model.sheets[0]!;
  rows[2]![1] = { content: undefined, formula };
  rows[3]![1] = { content: undefined, formula: 'A1+1' };
  const book = readBook(model);
  const [own, beside] = [2, 3].map((row) => cellAt(book.model.sheets[0]!, row, 1)!.content);
  if (beside?.value !== 2) throw new Error(`beside the formula, A1+1 is ${beside?.value}`);
  return own?.kind === 'error' ? own.value : 'a value';
}
