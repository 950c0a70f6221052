/** The steps that journals may be ground to, and the new shells of each. */
import type { NewShellRow, UndersizeRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { type Context, groupBy, kindKey } from './context.js';

/** A row of New shells without a Step is for any: its walls decide. */
export function shellsOfStep(rows: readonly NewShellRow[], step: string): NewShellRow[] {
  return rows.filter((row) => row.step === undefined || nameKey(row.step) === nameKey(step));
}

export interface Step {
  readonly row: UndersizeRow;
  readonly step: string;
  readonly from: number;
  readonly to: number;
}

/** The steps of one kind that are whole; of two rows for one step the first. */
export function stepsOf({ book }: Context, engineType: string, fit: string): Step[] {
  const own = book.undersizes.filter((row) => kindKey(row.engineType, row.fit) === kindKey(engineType, fit));
  return [...groupBy(own, (row) => nameKey(row.step ?? '')).values()].flatMap(([row]): Step[] => {
    const { step, journalMin: from, journalMax: to, bad } = row!;
    if (bad.length > 0 || step === undefined || from === undefined || to === undefined || from > to)
      return [];
    return [{ row: row!, step, from, to }];
  });
}
