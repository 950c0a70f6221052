/** `oilgap calc "=…"`: one formula. */
import { evaluateFormula } from '../engine/functions/one-formula.js';
import type { EngineUnits } from '../engine/spreadsheet.js';
import { JSON_VERSION } from './json-document.js';
import { EXIT, say } from './messages.js';

export function calc(
  formula: string,
  options: { unit: 'mm' | 'in'; temperature: 'C' | 'F'; json?: boolean },
): number {
  const units: EngineUnits = { lengthUnit: options.unit, temperatureUnit: options.temperature };
  const answer = evaluateFormula(formula, units);
  if ('message' in answer) {
    say(answer.message);
    return EXIT.notRun;
  }
  const { value } = answer;
  const text = Array.isArray(value) ? value.map((row) => row.join('\t')).join('\n') : String(value);
  process.stdout.write(
    options.json ? `${JSON.stringify({ version: JSON_VERSION, formula, value })}\n` : `${text}\n`,
  );
  return EXIT.good;
}
