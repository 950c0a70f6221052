/** The fits of one engine as an aligned table for a terminal. */
import type { FitResult } from '../../engine/assess/fit.js';
import type { NeighbourResult } from '../../engine/assess/neighbours.js';
import { lengthText } from '../../engine/assess/words.js';
import type { LimitsRow } from '../../engine/book/book.js';
import { columnsOfKind } from '../../engine/columns/columns-of-kind.js';
import type { KindOfFit } from '../../engine/kinds/kind-of-fit.js';
import { FORMAT_DECIMALS } from '../../engine/workbook-model.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';
import { clearanceScale } from '../report/fit-chart.js';
import { type DrawnFit, limitsDrawn } from '../report/fit-lane.js';
import { BAR_KEY, fitBar } from './fit-bar.js';

const INDENT = '    ';
const GAP = '  ';
const BAR = 32;
/** A narrower column would break `Why` into too many lines; it then stands below its row. */
const LEAST_WHY = 30;

interface Row {
  readonly cells: readonly string[];
  readonly why: string;
}

/**
 * The fits of each group, lines below `heading` of it, and at the end what the bars mean.
 * @param width of the terminal in characters
 */
export function fitTables(
  groups: readonly NeighbourResult[],
  unit: LengthUnit,
  width: number,
  heading: (group: NeighbourResult) => string,
): string[] {
  const tables = groups.map((group) => ({ heading: heading(group), ...fitLines(group, unit, width) }));
  const lines = tables.flatMap((table) => [table.heading, ...table.lines]);
  return tables.some(({ hasBars }) => hasBars) ? [...lines, `  bars: ${BAR_KEY}`] : lines;
}

/** Position, clearance, range and verdict of each fit, its bar where there is room, and why. */
function fitLines({ fits }: NeighbourResult, unit: LengthUnit, width: number) {
  const { header } = columnsOfKind(fits[0]!.kind)[0]!;
  const headers = ['Position', `${header} ${unit}`, 'Range', 'Verdict'];
  const rows = fits.map((fit) => rowOf(fit, unit));
  const widths = headers.map((header, column) =>
    Math.max(header.length, ...rows.map(({ cells }) => cells[column]!.length)),
  );
  const taken = widths.reduce((sum, own) => sum + own + GAP.length, INDENT.length);
  const hasBars = fits.some(({ clearance }) => clearance) && taken + BAR <= width;
  const start = hasBars ? taken + BAR + GAP.length : taken;
  const drawn = fits.map((fit): DrawnFit => ({ ...fit, limits: limitsDrawn(fit.limits) }));
  const scale = clearanceScale(drawn).range([0, BAR]);
  const line = (cells: readonly string[], bar: string, rest: string) =>
    [
      INDENT + cells.map((cell, column) => aligned(cell, widths[column]!, column)).join(GAP),
      ...(hasBars ? [bar] : []),
      rest,
    ]
      .join(GAP)
      .trimEnd();
  const hasWhyColumn = width - start >= LEAST_WHY;
  const lines = [line(headers, 'Bar'.padEnd(BAR), hasWhyColumn ? 'Why' : '')];
  for (const [order, { cells, why }] of rows.entries()) {
    const bar = hasBars ? fitBar(drawn[order]!, scale) : '';
    const [first = '', ...others] = wrapped(why, hasWhyColumn ? width - start : width - INDENT.length - 4);
    lines.push(line(cells, bar, hasWhyColumn ? first : ''));
    const below = hasWhyColumn ? others : [first, ...others].filter((text) => text !== '');
    lines.push(...below.map((text) => (hasWhyColumn ? ' '.repeat(start) : `${INDENT}    `) + text));
  }
  return { lines, hasBars };
}

function rowOf(fit: FitResult, unit: LengthUnit): Row {
  const { clearance, limits, status, position, why } = fit;
  const bare = (grain: number) => lengthText(grain, unit).split(' ')[0]!;
  const shown = clearance
    ? inUnit(clearance.clearance, unit).toFixed(FORMAT_DECIMALS[unit === 'in' ? 'in' : 'mm'])
    : '';
  return {
    cells: [oneLine(position), shown, rangeText(fit.kind, limits, bare), status],
    why: oneLine(why.join('; ')),
  };
}

/** The limits of new parts; of a fit that needs one only, that. */
function rangeText(kind: KindOfFit, limits: LimitsRow | undefined, bare: (grain: number) => string): string {
  const { clearanceMin: min, clearanceMax: max } = limits ?? {};
  if (min !== undefined && max !== undefined) return `${bare(min)} to ${bare(max)}`;
  if (!kind.needsOneLimit) return '';
  if (min !== undefined) return `from ${bare(min)}`;
  return max === undefined ? '' : `up to ${bare(max)}`;
}

/** Clearances stand at the right of their column, so that their points are in line. */
function aligned(text: string, width: number, column: number): string {
  return column === 1 ? text.padStart(width) : text.padEnd(width);
}

function oneLine(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}

/** Words in lines of at most so many characters; a longer word has a line of its own. */
function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
