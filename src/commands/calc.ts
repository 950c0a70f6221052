/** `oilgap calc "=…"`: one formula, in a process of its own as a book has it. */
import type { FormulaAnswer } from '../engine/functions/one-formula.js';
import { withPool } from './job-pool-options.js';
import { JSON_VERSION, jsonText } from './json-document.js';
import { EXIT, printable, say } from './messages.js';

/** The formula itself ends long before; these end whatever nobody foresaw. In MB of heap, and seconds. */
const LIMITS = { memory: 400, timeout: 30 };

export interface CalcOptions {
  readonly unit: 'mm' | 'in';
  readonly temperature: 'C' | 'F';
  readonly json?: boolean;
}

export async function calc(formula: string, options: CalcOptions): Promise<number> {
  const units = { lengthUnit: options.unit, temperatureUnit: options.temperature };
  const { documents } = await withPool(
    LIMITS,
    1,
    (pool) => pool.run({ kind: 'calc', formula, units }).result,
  );
  const answer = documents[0] as FormulaAnswer;
  if ('message' in answer) {
    say(answer.message);
    return EXIT.notRun;
  }
  const { value } = answer;
  const text = Array.isArray(value)
    ? value.map((row) => row.map((cell) => printable(String(cell ?? ''))).join('\t')).join('\n')
    : printable(String(value));
  process.stdout.write(
    options.json ? `${jsonText({ version: JSON_VERSION, formula, value }, 0)}\n` : `${text}\n`,
  );
  return EXIT.good;
}
