/** The sheet Left over: rods and shells that no set takes. */
import type { Assessment } from '../assess/assess.js';
import type { PartResult } from '../assess/part-result.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';
import type { OutputSheet } from '../workbook-model.js';
import type { MatchedRow } from './matched-rows.js';
import { ownSheet, type SheetColumn } from './own-sheet.js';
import { type TypedName, typedName } from './typed-name.js';

export interface Left {
  readonly part: string;
  readonly kind: string;
  readonly bin: string;
}

interface LeftPart extends Left {
  readonly typed: TypedName;
}

const LEFT_OVER: SheetColumn<LeftPart>[] = [
  { header: 'Part', width: 14, value: ({ typed }) => typed },
  { header: 'Kind', width: 30, value: ({ kind }) => kind },
  { header: 'Bin', width: 12, value: ({ bin }) => bin },
];

export function leftOverSheet(assessment: Assessment, rows: readonly MatchedRow[]): OutputSheet {
  return ownSheet('Left over', LEFT_OVER, leftParts(rows, assessment));
}

/** Rods and shells that no set takes; of a row with a quantity, how many remain. */
export function leftOver(rows: readonly MatchedRow[], assessment: Assessment): Left[] {
  return leftParts(rows, assessment).map(({ part, kind, bin }) => ({ part, kind, bin }));
}

function leftParts(rows: readonly MatchedRow[], { parts, book }: Assessment): LeftPart[] {
  const taken = new Map<PartResult, number>();
  for (const { bore, shells } of rows) {
    for (const part of [bore, shells.upper, shells.lower]) {
      if (part) taken.set(part, (taken.get(part) ?? 0) + 1);
    }
  }
  return [...parts.of(RODS.name), ...parts.of(SHELLS.name)].flatMap((part): LeftPart[] => {
    const { row } = part;
    const left = row.quantity - (taken.get(part) ?? 0);
    if (left <= 0) return [];
    const shell = `${row.half ? `${row.half} ` : ''}shell${row.quantity > 1 ? `, ${left} of ${row.quantity}` : ''}`;
    return [
      {
        part: row.name,
        kind: row.sheet === RODS.name ? 'rod' : shell,
        bin: row.bin ?? '',
        typed: typedName(book, row, 'Part', row.name),
      },
    ];
  });
}
