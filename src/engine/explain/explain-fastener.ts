/** Whether a fastener is used again, and how it is tightened, by what was typed of it. */

import { looseningPlace } from '../../maths/tightening-order.js';
import type { FastenerResult } from '../assess/fastener.js';
import { numbersOf } from '../assess/fastener-checks.js';
import { torqueOf } from '../assess/torque-words.js';
import type { FastenerRow } from '../book/fasteners.js';
import { nameKey } from '../book/names.js';
import type { Explanation } from './explain.js';

/** The fasteners of that name; where there is none, those of that group, of one engine or of all. */
export function fastenersMeant<Row extends FastenerRow>(query: string, rows: readonly Row[]): Row[] {
  const key = nameKey(query);
  if (key === '') return [];
  const named = rows.filter(({ name }) => nameKey(name) === key);
  if (named.length > 0) return named;
  return rows.filter(({ engine, group }) =>
    [`${engine} ${group}`, group].some((name) => nameKey(name) === key),
  );
}

const NOW: Readonly<Record<FastenerResult['status'], string>> = {
  'bad reading': 'has a cell that cannot be read',
  renew: 'is to be renewed',
  'not measured': 'is not measured',
  undecided: 'is undecided: neither that it may be used again nor that it may not is proved',
  'within limits': 'is within the limits that were typed',
  'no limits': 'has no limit typed, so that nothing is said of its use',
};

/** @param group every fastener of its engine and group */
export function explainFastener(
  { row, status, why }: FastenerResult,
  group: readonly FastenerRow[],
): Explanation {
  const { sheet, name } = row;
  const reasons = why.length > 0 ? `: ${why.join('; ')}` : '';
  const now = [`${NOW[status]}${reasons}`, ...torqueWords(row), ...orderWords(row, numbersOf(group))].join(
    '. ',
  );
  return { sheet, part: name, now, lists: [], asksForMass: false };
}

function torqueWords(row: FastenerRow): string[] {
  const [metric, imperial] = [torqueOf(row, 'N·m'), torqueOf(row, 'lb·ft')];
  const angle = row.angle === undefined ? '' : `, then turned on by ${row.angle}°`;
  if (metric === undefined) return ['No torque is typed, and oilgap gives none of its own'];
  return [`Its torque, as typed from the manual: ${metric} N·m (${imperial} lb·ft)${angle}`];
}

function orderWords({ number }: FastenerRow, numbers: readonly number[]): string[] {
  if (number === undefined) return [];
  const loosening = looseningPlace(number, numbers);
  if (loosening === undefined) return [`Number ${number} in the order of tightening, which is not whole`];
  return [
    `Number ${number} of ${numbers.length} in the order of tightening, ${loosening} in that of loosening`,
  ];
}
