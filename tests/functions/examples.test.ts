/** Runs every example of every record on the engine, as a user's cell would. */
import { DetailedCellError, HyperFormula } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import type { Example } from '../../functions/definition.js';
import { functionRecords } from '../../functions/index.js';
import { oilgapFunctions } from '../../src/engine/functions/register.js';

function evaluate({ grid = [], formula, lengthUnit, temperatureUnit }: Example, precisionRounding?: number) {
  const engine = HyperFormula.buildFromSheets(
    { Example: grid.map((row) => [...row]), Formula: [[formula.replace(/([A-Z]+\d+)/g, 'Example!$1')]] },
    {
      licenseKey: 'gpl-v3',
      ...(precisionRounding === undefined ? {} : { precisionRounding }),
      ...oilgapFunctions({ lengthUnit, temperatureUnit }),
    },
  );
  const value = engine.getCellValue({ sheet: engine.getSheetId('Formula')!, row: 0, col: 0 });
  engine.destroy();
  return value instanceof DetailedCellError ? { error: value.type, message: value.message } : value;
}

const examples = functionRecords.flatMap((record) =>
  record.examples.map((example) => ({ name: record.name, ...example })),
);

describe.each([
  ['as by default', undefined],
  ['with doubles passed through', 17],
])('numbers %s', (_words, precisionRounding) => {
  test.each(examples)('$name: $says', ({ name: _name, ...example }) => {
    const found = evaluate(example, precisionRounding);
    if (typeof example.expected === 'number') {
      expect(found).toBeTypeOf('number');
      expect(Math.abs((found as number) - example.expected)).toBeLessThanOrEqual(example.tolerance ?? 0);
    } else {
      expect(found).toEqual(example.expected);
    }
  });
});
