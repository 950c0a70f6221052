/** What is odd about the rows of Fasteners and changes no verdict. */
import { type MissingNumbers, orderFaults } from '../../maths/tightening-order.js';
import { areTorquesApart } from '../../maths/torque.js';
import type { FastenerRow } from '../book/fasteners.js';
import { nameKey } from '../book/names.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import { groupBy } from './context.js';
import { type Findings, Gathered } from './findings.js';
import { torqueText } from './torque-words.js';

/** How many missing or doubled numbers a sentence names. */
const NAMED = 5;

/** Fasteners that are tightened in one order: those of a group of one engine. */
export function fastenerGroups(rows: readonly FastenerRow[]): FastenerRow[][] {
  return [...groupBy(rows, ({ engine, group }) => `${nameKey(engine)}\u0000${nameKey(group)}`).values()];
}

export function numbersOf(rows: readonly FastenerRow[]): number[] {
  return rows.flatMap(({ number }) => number ?? []);
}

export function fastenerFindings(rows: readonly FastenerRow[]): Findings {
  const found = new Gathered();
  for (const group of fastenerGroups(rows)) {
    for (const sentence of orderFindings(group)) found.add(group[0]!, sentence);
  }
  for (const row of rows) for (const sentence of rowFindings(row)) found.add(row, sentence);
  return found;
}

/** Of the numbers of a group, where it has any. */
function orderFindings(group: readonly FastenerRow[]): string[] {
  const numbers = numbersOf(group);
  if (numbers.length === 0) return [];
  const { doubled, missing } = orderFaults(numbers);
  // A refused Number is named by its own row.
  const isRefused = ({ bad }: FastenerRow) =>
    bad.some(({ header }) => header === FASTENERS.columns.number.header);
  const blank = group.filter((row) => row.number === undefined && !isRefused(row)).length;
  const found = [
    ...(missing.length > 0 ? [`has no ${namedOf(missing.map(rangeText))}`] : []),
    ...(doubled.length > 0 ? [`has ${namedOf(doubled.map(String))} more than once`] : []),
    ...(blank > 0 ? [`is blank in ${blank} ${blank === 1 ? 'row' : 'rows'}`] : []),
  ];
  if (found.length === 0) return [];
  return [`Number of this Group ${found.join(', ')}: check the order of tightening against the manual`];
}

function rangeText([from, to]: MissingNumbers): string {
  return from === to ? String(from) : `${from} to ${to}`;
}

function namedOf(words: readonly string[]): string {
  const more = words.length - NAMED;
  return `${words.slice(0, NAMED).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function rowFindings(row: FastenerRow): string[] {
  const { torque, torqueAsPrinted, angle, renew, lengthMax, neckMin, bad } = row;
  const isBlank = (header: string, value: unknown) =>
    value === undefined && !bad.some((cell) => cell.header === header);
  const { columns } = FASTENERS;
  const found: string[] = [];
  if (torque && torqueAsPrinted && areTorquesApart(torque, torqueAsPrinted)) {
    found.push(
      `Torque is ${torqueText(torque)} and as printed ${torqueText(torqueAsPrinted)}, which differ by more than rounding: ` +
        'check them against the manual',
    );
  }
  const hasNoTorque =
    isBlank(columns.torque.header, torque) && isBlank(columns.torqueAsPrinted.header, torqueAsPrinted);
  if (angle !== undefined && hasNoTorque) {
    found.push(`Angle is ${angle}° without a Torque: type the torque that it starts from`);
  }
  if (renew === 'by length' && isBlank(columns.lengthMax.header, lengthMax))
    found.push("Renew is by length without a Length max: type the maker's");
  if (renew === 'by neck' && isBlank(columns.neckMin.header, neckMin))
    found.push("Renew is by neck without a Neck min: type the maker's");
  return found;
}
