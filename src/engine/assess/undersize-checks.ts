/** What is wrong with the steps of Undersizes as typed, row by row. */
import type { UndersizeRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { type Context, groupBy, kindKey } from './context.js';
import { type Findings, Gathered } from './findings.js';
import { shellsOfStep } from './undersizes.js';
import { lengthText } from './words.js';

export function undersizeFindings(context: Context): Findings {
  const { undersizes, newShells, setup } = context.book;
  const found = new Gathered();
  const stepKey = (row: UndersizeRow) =>
    `${kindKey(row.engineType, row.fit)}\u0000${nameKey(row.step ?? '')}`;
  for (const group of groupBy(undersizes, stepKey).values()) {
    for (const row of group) {
      const { step, journalMin, journalMax, bad } = row;
      const blank = [
        ...(step === undefined ? ['Step'] : []),
        ...(journalMin === undefined ? ['Journal min'] : []),
        ...(journalMax === undefined ? ['Journal max'] : []),
      ];
      if (blank.length > 0 && bad.length === 0) found.add(row, `${blank.join(', ')} left blank`);
      if (journalMin !== undefined && journalMax !== undefined && journalMin > journalMax) {
        const [min, max] = [journalMin, journalMax].map((length) => lengthText(length, setup.lengthUnit));
        found.add(row, `Journal min and max: ${min} is above ${max}`);
      }
      if (step === undefined) continue;
      if (group.length > 1) found.add(row, `step ${step} is named ${group.length} times: the first rules`);
      const offered = newShells.filter(
        (shell) => kindKey(shell.engineType, shell.fit) === kindKey(row.engineType, row.fit),
      );
      if (offered.length > 0 && shellsOfStep(offered, step).length === 0) {
        found.add(row, `no row of New shells is for step ${step}`);
      }
    }
  }
  return found;
}
