/**
 * Two ways to every result: the columns' formulas on HyperFormula, and the core. On random books they
 * agree to the grain, and so do the live formulas of built-in functions that are written into the cells.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { seeded } from '../../../scripts/demo/random.js';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import { BLOCK_ROWS } from '../../../src/engine/columns/block-engine.js';
import { evaluateColumns } from '../../../src/engine/columns/evaluate.js';
import { fitColumns } from '../../../src/engine/columns/fit-columns.js';
import { partColumns } from '../../../src/engine/columns/part-columns.js';
import type { ResultColumn } from '../../../src/engine/columns/result-column.js';
import { JOURNALS } from '../../../src/engine/input-sheets/journals.js';
import { SHELLS } from '../../../src/engine/input-sheets/shells.js';
import { SHELL_BEARING } from '../../../src/engine/kinds/shell-bearing.js';
import { cellAddress } from '../../../src/engine/workbook-model.js';
import { stockList } from '../../bench/stock-list.js';
import { bookOf } from '../book-of.js';
import { randomBook } from '../random-book.js';
import { coreValues, isSameValue } from './core-values.js';
import { liveValues } from './live-values.js';

const SEEDS = Array.from({ length: 40 }, (_, place) => 10_000 + place);

const books: { readonly seed: number; readonly assessment: Assessment }[] = [];

beforeAll(async () => {
  for (const seed of SEEDS) {
    books.push({ seed, assessment: await assessBook(bookOf(randomBook(seed)), { seconds: 20 }) });
  }
}, 60_000);

describe('random books', () => {
  test('have every verdict of fits and parts, several times', () => {
    const found = new Map<string, number>();
    for (const { parts, fits } of books.map(({ assessment }) => assessment)) {
      for (const { status } of [...parts.all(), ...fits]) found.set(status, (found.get(status) ?? 0) + 1);
    }
    const verdicts = [
      ...['bad reading', 'unclear', 'not measured', 'no limits'],
      ...['tight', 'loose', 'in range', 'within service limit', 'undecided'],
      ...['beyond limits', 'within limits', 'measured'],
    ];
    expect(verdicts.filter((verdict) => (found.get(verdict) ?? 0) < 3)).toEqual([]);
  });

  test('have bores that were measured with their shells in, and fits of them', () => {
    const fits = books.flatMap(({ assessment }) => assessment.fits);
    const ofThem = fits.filter(({ parts, clearance }) => parts.bore?.row.hasShells && clearance);
    expect(ofThem.length).toBeGreaterThan(5);
  });
});

describe('each column on HyperFormula', () => {
  /** How many values of each column were held against the core, the blank ones aside. */
  const compared = new Map<string, number>();

  function differencesOf(assessment: Assessment): string[] {
    const found = new Map(
      [...evaluateColumns(assessment).cells].flatMap(([sheet, cells]) =>
        Array.from(cells, ({ row, column, cell }) => [`${sheet} ${row} ${column}`, cell.value] as const),
      ),
    );
    return coreValues(assessment).flatMap(({ sheet, row, column, header, value }) => {
      const engine = found.get(`${sheet} ${row} ${column}`);
      if (value !== undefined) compared.set(header, (compared.get(header) ?? 0) + 1);
      if (isSameValue(header, engine, value)) return [];
      return [`${sheet}!${cellAddress(row, column)} (${header}): engine ${engine}, core ${value}`];
    });
  }

  test('has the value of the core', () => {
    const differences = books.flatMap(({ seed, assessment }) =>
      differencesOf(assessment).map((difference) => `${seed} ${difference}`),
    );
    expect(differences).toEqual([]);
  });

  test('was compared often enough to mean something', () => {
    expect(compared.size).toBe(18);
    expect([...compared].filter(([, count]) => count < 100)).toEqual([]);
  });

  test('comes from a formula wherever it is a number', () => {
    const found = books.flatMap(({ assessment }) => {
      const plain = <Row>(columns: readonly ResultColumn<Row>[], rows: readonly Row[]) =>
        columns
          .filter(({ quantity }) => quantity === 'length')
          .flatMap(({ header, isComputed, value }) =>
            rows
              .filter((row) => !isComputed?.(row, assessment) && value(row, assessment) !== undefined)
              .map(() => header),
          );
      const { parts, fits } = assessment;
      return [
        ...plain(partColumns(JOURNALS), parts.ofAll(['Journals', 'Rods', 'Cases'])),
        ...plain(partColumns(SHELLS), parts.of('Shells')),
        ...plain(fitColumns(SHELL_BEARING), fits),
      ];
    });
    expect(found).toEqual([]);
  });

  const cellsOf = (assessment: Assessment, rows?: number) =>
    [...evaluateColumns(assessment, rows).cells].map(([sheet, cells]) => [sheet, [...cells]]);

  test.each([1, 2, 7])('is the same with %i rows on the engine at a time', (blockRows) => {
    for (const { assessment } of books.slice(0, 12)) {
      expect(cellsOf(assessment, blockRows)).toEqual(cellsOf(assessment));
    }
  });

  test('is the same whatever row is asked for first, and asked for again', () => {
    for (const { seed, assessment } of books.slice(0, 12)) {
      const random = seeded(seed);
      const { cells } = evaluateColumns(assessment, 3);
      for (const [sheet, own] of cells) {
        const ordered = evaluateColumns(assessment).cells.get(sheet)!;
        const rows = Array.from({ length: ordered.rowCount }, (_, at) => ordered.ofRow(at));
        const asked = rows.map(() => random.between(0, rows.length - 1));
        expect(asked.map((at) => own.ofRow(at))).toEqual(asked.map((at) => rows[at]));
      }
    }
  });

  test('has the value of the core in a list of several blocks', async () => {
    const list = stockList({ rows: 5 * BLOCK_ROWS, seed: 21 });
    const sheets = list.map(({ name, headers, rows }) => [name, [headers, ...rows]] as const);
    const assessment = await assessBook(bookOf(Object.fromEntries(sheets)), { seconds: 20 });
    const lengths = [...assessment.parts.sheets()].map((sheet) => assessment.parts.of(sheet).length);
    expect(Math.max(...lengths)).toBeGreaterThan(2 * BLOCK_ROWS);
    expect(differencesOf(assessment)).toEqual([]);
  });
});

describe('each live formula', () => {
  test('has the value that is stored with it', () => {
    let compared = 0;
    const differences = books.flatMap(({ seed, assessment }) =>
      liveValues(assessment).flatMap(({ sheet, cell, formula, stored, found }) => {
        compared += 1;
        return isSameValue('', found, stored)
          ? []
          : [`${seed} ${sheet}!${cell}: =${formula}: stored ${stored}, the formula gives ${found}`];
      }),
    );
    expect(differences).toEqual([]);
    expect(compared).toBeGreaterThan(4000);
  });
});
