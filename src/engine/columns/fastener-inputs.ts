/** What the column formulas of Fasteners work on: readings, limits and guards of each row. */
import { inUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { FastenerResult } from '../assess/fastener.js';
import { BLANK, type InputCell, type Template } from './template.js';

export function fastenerInputs({
  book,
  fasteners,
}: Assessment): Pick<Template<FastenerResult>, 'rows' | 'constants' | 'inputs' | 'inputsOf'> {
  const length = (grains: number | undefined): InputCell =>
    grains === undefined ? BLANK : inUnit(grains, book.setup.lengthUnit);
  /** As many cells as the row has most; an array has one at least. */
  const most = (of: 'lengths' | 'necks') => Math.max(1, ...fasteners.map((own) => own[of].length));
  const [lengths, necks] = [most('lengths'), most('necks')];
  const cells = (spots: FastenerResult['lengths'], count: number) =>
    Array.from({ length: count }, (_, at) => length(spots[at]?.value));
  return {
    rows: fasteners,
    constants: {},
    inputs: [
      ...['lengths', 'necks', 'renew', 'length max', 'neck min'],
      ...['length inside', 'length outside', 'neck inside', 'neck outside'],
    ],
    inputsOf: (fastener) => {
      const { row, checks } = fastener;
      const of = (quantity: string) => checks.find((check) => check.quantity === quantity);
      return [
        cells(fastener.lengths, lengths),
        cells(fastener.necks, necks),
        [row.renew ?? BLANK],
        ...['longest', 'thinnest'].map((quantity) => [length(of(quantity)?.limit)]),
        ...['longest', 'thinnest'].flatMap((quantity) =>
          (['inside', 'outside'] as const).map((side) => [length(of(quantity)?.guards[side])]),
        ),
      ];
    },
  };
}
