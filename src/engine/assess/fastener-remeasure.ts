/** What to measure of fasteners: readings that were not taken, and those that lie too near a limit. */
import { outcomeOf } from '../../maths/conformity.js';
import { type FastenerRow, isOfLength } from '../book/fasteners.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import type { Context } from './context.js';
import type { FastenerResult } from './fastener.js';
import { checkReasons } from './part-checks.js';
import type { Wanted } from './wanted.js';

type Asked = 'Length' | 'Neck';

/** Which readings decide whether a fastener is to be renewed; none where it is renewed in any case. */
export function readingsAsked({ renew, lengthMax, neckMin }: FastenerRow): Asked[] {
  if (renew === 'always') return [];
  return [
    ...(renew === 'by length' || lengthMax !== undefined ? (['Length'] as const) : []),
    ...(renew === 'by neck' || neckMin !== undefined ? (['Neck'] as const) : []),
  ];
}

export function fastenersWanted(fasteners: readonly FastenerResult[], context: Context): Wanted[] {
  const columns = context.book.tables.get(FASTENERS.name)?.readingColumns ?? [];
  /** The spots of the sheet, and where it has none the first that it could have. */
  const spotsOf = (asked: Asked) => {
    const own = columns.filter((column) => isOfLength(column) === (asked === 'Length'));
    const names = own.map(({ station }) => station);
    return names.length > 0 ? [...new Set(names)].join(', ') : `${asked} 1`;
  };
  return fasteners.flatMap(({ row, status, lengths, necks, checks }): Wanted[] => {
    const entry = (spot: string, why: string, rank: number, worth: number): Wanted => ({
      ...{ sheet: row.sheet, parts: [row.name], spot, why },
      ...{ rank, worth },
    });
    if (status === 'bad reading') {
      return row.bad.map(({ header, cell, found }) => entry(header, `${cell}: found ${found}`, 0, 1));
    }
    if (status !== 'not measured' && status !== 'undecided') return [];
    const unread = readingsAsked(row).filter((asked) => (asked === 'Length' ? lengths : necks).length === 0);
    const open = checks.filter((check) => check.value !== undefined && outcomeOf(check) === 'undecided');
    const { lengthUnit } = context.book.setup;
    return [
      ...unread.map((asked) => entry(spotsOf(asked), 'not measured', 1, 1)),
      ...open.map((check) =>
        entry(
          spotsOf(check.quantity === 'longest' ? 'Length' : 'Neck'),
          checkReasons([check], 'undecided', lengthUnit).join('; '),
          3,
          0,
        ),
      ),
    ];
  });
}
