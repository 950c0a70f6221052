/** Reads an argument that is a table of three columns: size classes, or the manual's selection of shells. */
import type { ArgumentRecord } from '../../../functions/definition.js';
import { expectedOf, type FunctionUnits } from '../../../functions/expected.js';
import { messages } from '../../../functions/messages.js';
import type { SizeClass } from '../../maths/classes.js';
import type { SelectionRow } from '../../maths/tables.js';
import { type Given, type GivenPlace, isBlankScalar, isRange, refuseGiven, type Scalar } from './given.js';
import { readGrain, readMark } from './read-quantity.js';

const COLUMNS = 3;

/** The rows of a table, blank ones left out. */
function* tableRows(given: Given, place: GivenPlace): Generator<{ row: number; cells: readonly Scalar[] }> {
  if (!isRange(given)) return refuseGiven('VALUE', place, given);
  if (given.some((cells) => cells.length !== COLUMNS)) refuseGiven('VALUE', place, given);
  if (given.every((cells) => cells.every(isBlankScalar))) refuseGiven('VALUE', place, undefined);
  for (const [index, cells] of given.entries()) {
    if (!cells.every(isBlankScalar)) yield { row: index + 1, cells };
  }
}

/**
 * Rows of Mark, From, To.
 * @throws ArgumentRefusal that names the table, or the cell of it, which cannot be used.
 */
export function readClasses(
  argument: ArgumentRecord,
  given: Given,
  place: GivenPlace,
  units: FunctionUnits,
): SizeClass[] {
  const allowed = argument.allowed ?? {};
  const length = expectedOf({ ...argument, quantity: 'length' }, units);
  const mark = expectedOf({ ...argument, quantity: 'mark' }, units);
  return Array.from(tableRows(given, place), ({ row, cells }) => {
    const at = (column: string) => messages.cellAt(argument.name, row, column);
    const isHeader = row === 1 && cells.every((cell) => typeof cell === 'string');
    const expected = isHeader ? messages.withoutHeader(length) : length;
    return {
      mark: readMark(cells[0], { where: at('Mark'), expected: mark }),
      from: readGrain(cells[1], { where: at('From'), expected }, allowed, units),
      to: readGrain(cells[2], { where: at('To'), expected }, allowed, units),
    };
  });
}

/**
 * Rows of Journal mark, Bore mark, Shell mark.
 * @throws ArgumentRefusal that names the table, or the cell of it, which cannot be used.
 */
export function readSelection(
  argument: ArgumentRecord,
  given: Given,
  place: GivenPlace,
  units: FunctionUnits,
): SelectionRow[] {
  const expected = expectedOf({ ...argument, quantity: 'mark' }, units);
  return Array.from(tableRows(given, place), ({ row, cells }) => {
    const mark = (cell: Scalar, column: string) =>
      readMark(cell, { where: messages.cellAt(argument.name, row, column), expected });
    return {
      journalMark: mark(cells[0], 'Journal mark'),
      boreMark: mark(cells[1], 'Bore mark'),
      shellMark: mark(cells[2], 'Shell mark'),
    };
  });
}
