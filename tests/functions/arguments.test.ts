/**
 * What every argument of every function does with a blank, text, a boolean, an error value, a range, a
 * date, a number outside its range, and when it is left out. The calls come from the records: the first
 * example of each, one argument replaced by a cell.
 */
import type { RawCellContent } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import type { ArgumentRecord, FunctionRecord } from '../../functions/definition.js';
import { functionRecords } from '../../functions/index.js';
import { evaluate } from './sheet.js';

/** The arguments of a call such as `=F(A1:B2, "x", TRUE())`. */
function argumentsOf(formula: string): string[] {
  const inside = formula.slice(formula.indexOf('(') + 1, formula.lastIndexOf(')'));
  const parts: string[] = [''];
  let depth = 0;
  for (const character of inside) {
    if (character === '(') depth++;
    if (character === ')') depth--;
    if (character === ',' && depth === 0) parts.push('');
    else parts[parts.length - 1] += character;
  }
  return parts.map((part) => part.trim());
}

const NEEDED = { flag: 'TRUE()', confidence: '0.95' } as const;

/** The call of the first example with one argument replaced; arguments before it are given a value. */
function callWith(record: FunctionRecord, place: number, replacement: string): string {
  const example = record.examples[0]!;
  const given = argumentsOf(example.formula).map((one) =>
    one.replace(/([A-Z]+\d+(?::[A-Z]+\d+)?)/g, 'Cells!$1'),
  );
  for (let before = given.length; before < place; before++) {
    const { quantity } = record.arguments[before]!;
    given.push(quantity in NEEDED ? NEEDED[quantity as keyof typeof NEEDED] : '');
  }
  given[place] = replacement;
  return `=${record.name}(${given.join(', ')})`;
}

/** The first example's cells, with further ones in rows 11 and 12, out of its way. */
function cellsWith(record: FunctionRecord, rows: readonly (readonly RawCellContent[])[]): RawCellContent[][] {
  const cells: RawCellContent[][] = (record.examples[0]!.grid ?? []).map((row) => [...row]);
  while (cells.length < 10) cells.push([]);
  return [...cells, ...rows.map((row) => [...row])];
}

function call(record: FunctionRecord, place: number, ...row: RawCellContent[]) {
  const last = String.fromCharCode(64 + Math.max(1, row.length));
  const reference = row.length > 1 ? `Cells!A11:${last}11` : 'Cells!A11';
  return evaluate(callWith(record, place, reference), cellsWith(record, [row]), {
    lengthUnit: record.examples[0]!.lengthUnit,
  });
}

const RANGES: readonly string[] = ['lengths', 'spots', 'unrounded lengths', 'names', 'angles'];
const TABLES: readonly string[] = ['classes', 'selection'];
const TEXTS: readonly string[] = ['mark', 'names'];

/** Whether an argument takes a few words only, and refuses others. */
const takesWords = ({ name }: ArgumentRecord) => name === 'renew';

const cases = functionRecords.flatMap((record) =>
  record.arguments.map((argument, place) => ({ name: record.name, argument: argument.name, record, place })),
);

function refusal(record: FunctionRecord, argument: ArgumentRecord, error: string, found: string) {
  return {
    error,
    message: expect.stringMatching(
      new RegExp(`^${record.name}: ${argument.name}( \\([^)]*\\))? is ${found}; expected .+`),
    ),
  };
}

describe.each(cases)('$name, $argument', ({ record, place }) => {
  const argument = record.arguments[place]!;
  const { quantity } = argument;

  test('blank', () => {
    const found = call(record, place, null);
    if (argument.blank === 'refused') {
      expect(found).toEqual(refusal(record, argument, 'VALUE', 'blank'));
    } else {
      // The ranges that must be of one length are refused for it; everything else is not.
      expect(found).not.toEqual(refusal(record, argument, 'VALUE', 'blank'));
    }
  });

  test('the empty text of a formula is a blank', () => {
    expect(call(record, place, '=""')).toEqual(call(record, place, null));
  });

  test('text', () => {
    const found = call(record, place, "'worn out");
    if (takesWords(argument)) expect(found).toEqual(refusal(record, argument, 'VALUE', '"worn out"'));
    else if (TEXTS.includes(quantity)) {
      expect(found).not.toEqual(refusal(record, argument, 'VALUE', '.*'));
    } else {
      expect(found).toEqual(refusal(record, argument, 'VALUE', 'the text "worn out"'));
    }
  });

  test('text that looks like a number', () => {
    const found = call(record, place, "'42.003");
    if (takesWords(argument)) expect(found).toEqual(refusal(record, argument, 'VALUE', '"42.003"'));
    else if (TEXTS.includes(quantity)) expect(found).not.toEqual(refusal(record, argument, 'VALUE', '.*'));
    // 42.003 % is a confidence, only too small a one.
    else if (quantity === 'confidence') expect(found).toEqual(refusal(record, argument, 'NUM', '.*'));
    else expect(found).toEqual(refusal(record, argument, 'VALUE', 'the text "42.003"'));
  });

  test('boolean', () => {
    const found = call(record, place, true);
    if (quantity === 'flag') expect(found).toBeTypeOf('number');
    else expect(found).toEqual(refusal(record, argument, 'VALUE', 'TRUE'));
  });

  test('date', () => {
    expect(call(record, place, '12/05/2024')).toEqual(refusal(record, argument, 'VALUE', 'a date'));
  });

  test('error value', () => {
    expect(call(record, place, '=1/0')).toMatchObject({ error: 'DIV_BY_ZERO' });
  });

  test('left out', () => {
    const example = record.examples[0]!;
    const given = argumentsOf(example.formula).slice(0, place);
    if (given.length < place) return expect(argument.optional).toBe(true);
    const formula = `=${record.name}(${given.join(', ').replaceAll(/([A-Z]+\d+(?::[A-Z]+\d+)?)/g, 'Cells!$1')})`;
    const found = evaluate(formula, cellsWith(record, []), { lengthUnit: example.lengthUnit });
    if (argument.optional) {
      expect(found).not.toBeTypeOf('object');
    } else {
      const message = expect.stringMatching(`^${record.name}: ${argument.name} is missing; expected .+`);
      expect(found).toEqual({ error: 'NA', message });
    }
    return undefined;
  });

  if (RANGES.includes(quantity)) {
    test('a boolean within a range', () => {
      expect(call(record, place, false, false)).toEqual(refusal(record, argument, 'VALUE', 'FALSE'));
    });
    test('an error value within a range', () => {
      expect(call(record, place, 1, '=1/0')).toMatchObject({ error: 'DIV_BY_ZERO' });
    });
    if (!TEXTS.includes(quantity)) {
      test('text within a range', () => {
        expect(call(record, place, 1, "'worn")).toEqual(
          refusal(record, argument, 'VALUE', 'the text "worn"'),
        );
      });
    }
    if (quantity === 'lengths') {
      test('a blank within a range', () => {
        expect(call(record, place, 1, null, 1)).toEqual({
          error: 'VALUE',
          message: expect.stringContaining(`: ${argument.name} (cell 2 of 3) is blank; expected `),
        });
      });
    }
  } else if (TABLES.includes(quantity)) {
    test('a table of two columns', () => {
      const found = refusal(record, argument, 'VALUE', 'a range of 1 × 2 cells');
      expect(call(record, place, 'A', 42)).toEqual(found);
    });
    test('a table of blanks', () => {
      const found = evaluate(callWith(record, place, 'Cells!A11:C12'), cellsWith(record, [[], []]));
      expect(found).toEqual(refusal(record, argument, 'VALUE', 'blank'));
    });
    test('an error value in the table', () => {
      expect(call(record, place, 'A', '=1/0', 42)).toMatchObject({ error: 'DIV_BY_ZERO' });
    });
  } else {
    test('a range where one value is meant', () => {
      expect(call(record, place, 1, 2)).toEqual(refusal(record, argument, 'VALUE', 'a range of 1 × 2 cells'));
    });
    test('a range of one cell is that cell', () => {
      const cells = cellsWith(record, [[null]]);
      const options = { lengthUnit: record.examples[0]!.lengthUnit };
      expect(evaluate(callWith(record, place, 'Cells!A11:A11'), cells, options)).toEqual(
        evaluate(callWith(record, place, 'Cells!A11'), cells, options),
      );
    });
  }

  const { above, from, to } = argument.allowed ?? {};
  if (!TABLES.includes(quantity)) {
    if (above !== undefined) {
      test('its lower end is excluded', () => {
        expect(call(record, place, above)).toEqual(refusal(record, argument, 'NUM', String(above)));
      });
    }
    if (from !== undefined) {
      test('its lower end is included', () => {
        expect(call(record, place, from)).not.toEqual(refusal(record, argument, 'NUM', '.*'));
        expect(call(record, place, from - 1)).toEqual(refusal(record, argument, 'NUM', String(from - 1)));
      });
    }
    if (to !== undefined) {
      test('its upper end is included', () => {
        expect(call(record, place, to)).not.toEqual(refusal(record, argument, 'NUM', '.*'));
        expect(call(record, place, to + 1)).toEqual(refusal(record, argument, 'NUM', String(to + 1)));
      });
    }
  }
});

test.each(functionRecords.map((record) => ({ name: record.name, record })))(
  '$name refuses one argument too many, and says which there are',
  ({ record }) => {
    const many = Array.from({ length: record.arguments.length + 1 }, () => '1').join(', ');
    const names = record.arguments.map(({ name }) => name).join(', ');
    expect(evaluate(`=${record.name}(${many})`)).toEqual({
      error: 'NA',
      message: `${record.name}: takes at most ${record.arguments.length} arguments (${names}); found ${record.arguments.length + 1}`,
    });
  },
);
