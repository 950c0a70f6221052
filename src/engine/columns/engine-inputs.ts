/**
 * What the column formulas work on. Each part brings its spots at 20 °C, the standard contributions to its
 * uncertainty, its limits and guards; each fit the sizes of its parts. They are read and corrected once,
 * exactly, and handed over as numbers in the book's unit.
 */
import type { SizeClass } from '../../maths/classes.js';
import type { SelectionRow } from '../../maths/tables.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import { groupBy } from '../assess/context.js';
import { type FitResult, markOf } from '../assess/fit.js';
import { classesOfPart } from '../assess/part-checks.js';
import type { PartResult } from '../assess/part-result.js';
import { isStandIn } from '../book/reading-headers.js';
import type { ReadingColumn } from '../book/table.js';
import type { PartSheet } from '../input-sheets/input-sheet.js';
import { ROLES } from '../input-sheets/roles.js';
import type { KindOfFit } from '../kinds/kind-of-fit.js';
import { BLANK, type InputCell, type Template } from './template.js';

type Inputs<Row> = Pick<Template<Row>, 'rows' | 'constants' | 'inputs' | 'inputsOf'>;
type Length = (grains: number | undefined) => InputCell;

const CHECKS = ['smallest', 'largest', 'out of round', 'taper'] as const;
const GUARDS = ['inside', 'outside'] as const;

export function partInputs(
  { book, parts, context }: Assessment,
  { name, role }: PartSheet,
): Inputs<PartResult> {
  const { checks: known } = ROLES[role];
  const isJudged = known.length > 0;
  const length = lengthsIn(book.setup.lengthUnit);
  const columns = book.tables.get(name)?.readingColumns ?? [];
  const spots = [...groupBy(columns, spotKey).values()].map(([first]) => first!);
  const places = new Map(spots.map((spot, place) => [spotKey(spot), place]));
  const tableOf = tables((classes: readonly SizeClass[]) => classCells(classes, length));
  const limits = CHECKS.map((quantity) => `${quantity} limit`);
  return {
    rows: parts.of(name),
    constants: {
      stations: filled(spots.map(({ station }) => station)),
      angles: filled(spots.map(({ angle }) => angle ?? BLANK)),
    },
    inputs: [
      'spots',
      'contributions',
      'classes',
      ...(isJudged
        ? [...limits, ...CHECKS.flatMap((quantity) => GUARDS.map((side) => `${quantity} ${side}`))]
        : []),
    ],
    inputsOf: (part) => {
      const { row, contributions } = part;
      const cells = filled(spots.map((): InputCell => BLANK));
      for (const spot of part.spots) cells[places.get(spotKey(spot))!] = length(spot.value);
      const own = [cells, filled(contributions.map(length)), tableOf(classesOfPart(row, context).classes)];
      if (!isJudged) return own;
      const { checks, guards } = part;
      const limitOf = (wanted: string) => checks.find(({ quantity }) => quantity === wanted)?.limit;
      return [
        ...own,
        ...CHECKS.map((quantity) => [length(limitOf(quantity))]),
        ...CHECKS.flatMap((quantity) => GUARDS.map((side) => [length(guards[quantity][side])])),
      ];
    },
  };
}

const SIZES = ['size', 'largest', 'smallest'] as const;

/** The fits of one kind, by the slots of its terms. */
export function fitInputs({ book, fits, context }: Assessment, kind: KindOfFit): Inputs<FitResult> {
  const slots = kind.terms.map(({ slot }) => slot);
  const { lengthUnit } = book.setup;
  const length = lengthsIn(lengthUnit);
  const candidatesOf = tables((candidates: readonly SizeClass[]) => classCells(candidates, length));
  const selectionOf = tables(selectionCells);
  return {
    rows: fits.filter((fit) => fit.kind === kind),
    constants: {},
    inputs: [
      ...slots.flatMap((slot) => SIZES.map((size) => `${slot} ${size}`)),
      'strip',
      'u',
      ...GUARDS,
      'min',
      'max',
      'service limit',
      'aim',
      'journal mark',
      'bore mark',
      'candidates',
      'selection',
    ],
    inputsOf: ({ parts, isStrip, clearance, variance, guards, limits, aim, candidates, engineType, fit }) => [
      ...slots.flatMap((slot) => SIZES.map((size) => [length(parts[slot]?.form?.[size])])),
      [length(isStrip ? clearance!.clearance : undefined)],
      [length(Math.sqrt(variance))],
      ...GUARDS.map((side) => [length(guards[side])]),
      [length(limits?.clearanceMin)],
      [length(limits?.clearanceMax)],
      [length(limits?.serviceLimit)],
      [length(aim)],
      [markOf(parts.journal) ?? BLANK],
      [markOf(parts.bore) ?? BLANK],
      candidatesOf(candidates),
      selectionOf(context.selectionOf(engineType, fit)),
    ],
  };
}

/** What was measured as a whole, by the rows of its own sheet. */
export function placeInputs({ book, fits }: Assessment, kind: KindOfFit): Inputs<FitResult> {
  const length = lengthsIn(book.setup.lengthUnit);
  const columns = book.tables.get(kind.resultsOn!)?.readingColumns ?? [];
  const dial = columns.filter((column) => !isStandIn(column));
  const spots = [...groupBy(dial, spotKey).values()].map(([first]) => first!);
  const places = new Map(spots.map((spot, place) => [spotKey(spot), place]));
  return {
    rows: fits.filter((fit) => fit.kind === kind),
    constants: { stations: filled(spots.map(({ station }) => station)) },
    inputs: ['spots', 'goes', 'stops', 'total', 'u', ...GUARDS, 'min', 'max', 'service limit', 'by feelers'],
    inputsOf: ({ parts, feelers, variance, guards, limits }) => {
      const part = parts[kind.leader]!;
      const cells = filled(spots.map((): InputCell => BLANK));
      for (const spot of part.spots) cells[places.get(spotKey(spot))!] = length(spot.value);
      const isByTotal = part.dialShape !== undefined && part.spots.length === 0;
      return [
        cells,
        [length(feelers?.goes)],
        [length(feelers?.stops)],
        [length(isByTotal ? part.form?.size : undefined)],
        [length(Math.sqrt(variance))],
        ...GUARDS.map((side) => [length(guards[side])]),
        [length(limits?.clearanceMin)],
        [length(limits?.clearanceMax)],
        [length(limits?.serviceLimit)],
        [feelers ? 1 : 0],
      ];
    },
  };
}

const spotKey = ({ station, angle }: Pick<ReadingColumn, 'station' | 'angle'>) => `${station} ${angle}`;

function lengthsIn(unit: LengthUnit): Length {
  return (grains) => (grains === undefined ? BLANK : inUnit(grains, unit));
}

/** The engine takes no array without a cell. */
function filled(cells: InputCell[]): InputCell[] {
  return cells.length > 0 ? cells : [BLANK];
}

/** Rows that share a table share its cells. */
function tables<Table extends object>(
  cellsOf: (table: Table) => InputCell[],
): (table: Table) => readonly InputCell[] {
  const known = new WeakMap<Table, readonly InputCell[]>();
  return (table) => {
    const cells = known.get(table) ?? tableOf(cellsOf(table));
    known.set(table, cells);
    return cells;
  };
}

/** An empty table has one blank row. */
function tableOf(cells: InputCell[]): InputCell[] {
  return cells.length > 0 ? cells : [BLANK, BLANK, BLANK];
}

function classCells(classes: readonly SizeClass[], length: Length): InputCell[] {
  return classes.flatMap(({ mark, from, to }) => [mark, length(from), length(to)]);
}

function selectionCells(rows: readonly SelectionRow[]): InputCell[] {
  return rows.flatMap(({ journalMark, boreMark, shellMark }) => [journalMark, boreMark, shellMark]);
}
