/**
 * What the column formulas work on. Each part brings its spots at 20 °C, the standard contributions to its
 * uncertainty, its limits and guards; each fit the sizes of its parts. They are read and corrected once,
 * exactly, and handed over as numbers in the book's unit.
 */
import type { RawCellContent } from 'hyperformula';
import type { SizeClass } from '../../maths/classes.js';
import { inUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import { groupBy, kindKey } from '../assess/context.js';
import { type FitResult, markOf } from '../assess/fit.js';
import type { PartResult } from '../assess/part.js';
import type { ClassOf, PartSheet } from '../book/book.js';
import type { ReadingColumn } from '../book/table.js';
import type { Template } from './template.js';

type Inputs<Row> = Omit<Template<Row>, 'columns' | 'name'>;

const CHECKS = ['smallest', 'largest', 'out of round', 'taper'] as const;

export function partInputs(
  { book, parts, context }: Assessment,
  sheet: PartSheet,
  of: ClassOf,
): Inputs<PartResult> {
  const unit = book.setup.lengthUnit;
  const rows = partsOf(parts, sheet);
  const spotKey = ({ station, angle }: Pick<ReadingColumn, 'station' | 'angle'>) => `${station} ${angle}`;
  const columns = book.tables.get(sheet)?.readingColumns ?? [];
  const spots = [...groupBy(columns, spotKey).values()].map(([first]) => first!);
  const places = new Map(spots.map((spot, place) => [spotKey(spot), place]));
  const length = (grains: number | undefined) => (grains === undefined ? null : inUnit(grains, unit));
  return {
    rows,
    kindOf: ({ row }) => kindKey(row.engineType ?? '', row.fit),
    constants: {
      // A book without a reading column has a place for one all the same: no range is without cells.
      stations: spots.length > 0 ? spots.map(({ station }) => `'${station}`) : [null],
      angles: spots.length > 0 ? spots.map(({ angle }) => angle ?? null) : [null],
    },
    inputs: [
      {
        name: 'spots',
        width: Math.max(1, spots.length),
        values: (part) => {
          const cells: RawCellContent[] = spots.map(() => null);
          for (const spot of part.spots) cells[places.get(spotKey(spot))!] = length(spot.value);
          return cells;
        },
      },
      {
        name: 'contributions',
        width: rows.reduce((most, { contributions }) => Math.max(most, contributions.length), 1),
        values: ({ contributions }) => contributions.map(length),
      },
      ...(of === 'shell'
        ? []
        : [
            ...CHECKS.map((quantity) => ({
              name: `${quantity} limit`,
              width: 1,
              values: ({ checks }: PartResult) => [
                length(checks.find((check) => check.quantity === quantity)?.limit),
              ],
            })),
            {
              name: 'extremes guard',
              width: 1,
              values: ({ guards }: PartResult) => [length(guards.extremes)],
            },
            { name: 'form guard', width: 1, values: ({ guards }: PartResult) => [length(guards.form)] },
          ]),
    ],
    tables: [
      {
        name: 'classes',
        rows: ({ row }) => classTable(context.classesOf(row.engineType, row.fit, of).classes, length),
      },
    ],
  };
}

export function fitInputs({ book, fits, context }: Assessment): Inputs<FitResult> {
  const { lengthUnit, confidence } = book.setup;
  const length = (grains: number | undefined) => (grains === undefined ? null : inUnit(grains, lengthUnit));
  const one = (name: string, value: (fit: FitResult) => RawCellContent) => ({
    name,
    width: 1,
    values: (fit: FitResult) => [value(fit)],
  });
  const slots = ['journal', 'bore', 'upper', 'lower'] as const;
  const sizes = ['size', 'largest', 'smallest'] as const;
  const mark = (text: string | undefined) => (text === undefined ? null : `'${text}`);
  return {
    rows: fits,
    kindOf: ({ engineType, fit }) => kindKey(engineType ?? '', fit),
    constants: { confidence: [confidence] },
    inputs: [
      ...slots.flatMap((slot) =>
        sizes.map((size) => one(`${slot} ${size}`, ({ parts }) => length(parts[slot]?.form?.[size]))),
      ),
      one('strip', ({ isStrip, clearance }) => (isStrip ? length(clearance!.clearance) : null)),
      one('u', ({ variance }) => length(Math.sqrt(variance))),
      one('min', ({ limits }) => length(limits?.clearanceMin)),
      one('max', ({ limits }) => length(limits?.clearanceMax)),
      one('service limit', ({ limits }) => length(limits?.serviceLimit)),
      one('aim', ({ aim }) => length(aim)),
      one('journal mark', ({ parts }) => mark(markOf(parts.journal))),
      one('bore mark', ({ parts }) => mark(markOf(parts.bore))),
    ],
    tables: [
      { name: 'candidates', rows: ({ candidates }) => classTable(candidates, length) },
      {
        name: 'selection',
        rows: ({ engineType, fit }) =>
          context
            .selectionOf(engineType, fit)
            .map(({ journalMark, boreMark, shellMark }) => [
              `'${journalMark}`,
              `'${boreMark}`,
              `'${shellMark}`,
            ]),
      },
    ],
  };
}

function classTable(classes: readonly SizeClass[], length: (grains: number) => RawCellContent) {
  return classes.map(({ mark, from, to }) => [`'${mark}`, length(from), length(to)]);
}

function partsOf(parts: Assessment['parts'], sheet: PartSheet): readonly PartResult[] {
  const of = { Journals: parts.journals, Rods: parts.rods, Cases: parts.cases, Shells: parts.shells };
  return of[sheet];
}
