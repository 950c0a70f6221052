/** Live formulas of a part's sizes and form, over its reading cells. */
import type { LengthUnit } from '../../maths/units.js';
import { groupBy } from '../assess/context.js';
import type { PartResult } from '../assess/part-result.js';
import { isLength, type ReadingColumn, type Table } from '../book/table.js';
import { MEASURED } from '../input-sheets/common-columns.js';
import { fitting, GRAINS, lengthOf } from './live-terms.js';

export interface LiveSizes {
  readonly size: string | undefined;
  readonly largest: string | undefined;
  readonly smallest: string | undefined;
  readonly taper: string | undefined;
  readonly outOfRound: string | undefined;
}

/** One spot as formulas: its value in grains (0 where blank), whether it was read. */
interface SpotTerms {
  readonly station: string;
  readonly angle: number | undefined;
  readonly value: string;
  /** 1 where it was read. */
  readonly isRead: string;
  /** Cells of the spot; with one each, extremes can be taken over the cells themselves. */
  readonly cells: readonly string[];
  readonly unit: LengthUnit;
}

const NONE: LiveSizes = {
  size: undefined,
  largest: undefined,
  smallest: undefined,
  taper: undefined,
  outOfRound: undefined,
};

/** A larger number of grains than any part has. */
const HUGE = '9E+15';

/** A reference to a cell of the row that the user fills, by its column. */
type CellOf = (column: number) => string;

/**
 * Undefined where a cell of the row is text, which no built-in formula reads as the program does.
 */
export function liveSizes(
  part: PartResult,
  table: Table,
  unit: LengthUnit,
  cellOf: CellOf,
  columns: readonly ReadingColumn[] = table.readingColumns,
): LiveSizes {
  const { setTo } = part.row;
  if (setTo && !setTo.isNumber) return NONE;
  if (!part.row.temperatureIsLive || part.row.readings.some(({ isNumber }) => !isNumber)) return NONE;
  if (part.status === 'bad reading' && !part.form) return NONE;
  const factor = correction(part, table, cellOf);
  const zero = settingTerm(table, cellOf);
  const spots = spotTerms(columns, zero, factor, cellOf);
  if (spots.length === 0) return NONE;
  const count = `(${spots.map(({ isRead }) => isRead).join('+')})`;
  const result = (term: string) => fitting(`IF(${count}=0,"",${lengthOf(term, unit)})`);
  const form = (groups: Iterable<readonly SpotTerms[]>) => {
    const ranges = [...groups]
      .filter((group) => group.length > 1)
      .map((group) => rangeOf(group, zero, factor));
    if (ranges.length === 0) return undefined;
    const greatest = ranges.length === 1 ? ranges[0]! : `MAX(${ranges.join(',')})`;
    return fitting(`IF(${greatest}<0,"",${lengthOf(greatest, unit)})`);
  };
  const angled = spots.filter(({ angle }) => angle !== undefined);
  return {
    size: result(`ROUND((${spots.map(({ value }) => value).join('+')})/${count},0)`),
    largest: result(greatestOf(spots, zero, factor)),
    smallest: result(leastOf(spots, zero, factor)),
    taper: form(groupBy(angled, ({ angle }) => String(angle)).values()),
    outOfRound: form(groupBy(angled, ({ station }) => station).values()),
  };
}

/** The extremes of some of the columns, uncorrected; undefined where there is no such column. */
export function liveExtremes(
  columns: readonly ReadingColumn[],
  unit: LengthUnit,
  cellOf: CellOf,
): Pick<LiveSizes, 'largest' | 'smallest'> {
  const spots = spotTerms(columns, '', '', cellOf);
  if (spots.length === 0) return NONE;
  const count = `(${spots.map(({ isRead }) => isRead).join('+')})`;
  const result = (term: string) => fitting(`IF(${count}=0,"",${lengthOf(term, unit)})`);
  return { largest: result(greatestOf(spots, '', '')), smallest: result(leastOf(spots, '', '')) };
}

/** The factor of the correction to 20 °C, or nothing where there is none. */
function correction({ expansion, gaugeExpansion }: PartResult, table: Table, cellOf: CellOf): string {
  const temperature = table.columns.get('Temperature');
  if (expansion === undefined || !temperature || expansion.value === gaugeExpansion.value) return '';
  const cell = cellOf(temperature.column);
  const isFahrenheit = (temperature.unit ?? table.units.temperature) === 'F';
  const kelvin = `IF(ISNUMBER(${cell}),${isFahrenheit ? `(${cell}-32)/1.8` : cell}-20,0)`;
  return `*(1+${gaugeExpansion.value}/1000000*${kelvin})/(1+${expansion.value}/1000000*${kelvin})`;
}

/** The greatest range of a station as a term in grains, −1 where none was read at two places; undefined without columns. */
export function liveGreatestRange(columns: readonly ReadingColumn[], cellOf: CellOf): string | undefined {
  const stations = groupBy(spotTerms(columns, '', '', cellOf), ({ station }) => station);
  const ranges = [...stations.values()]
    .filter((group) => group.length > 1)
    .map((group) => rangeOf(group, '', ''));
  if (ranges.length < 2) return ranges[0];
  return `MAX(${ranges.join(',')})`;
}

/** The size that the gauge was set to, in grains, or nothing where the sheet has no such column. */
function settingTerm(table: Table, cellOf: CellOf): string {
  const setTo = table.columns.get(MEASURED.setTo.header);
  if (!setTo) return '';
  const unit = isLength(setTo.unit) ? setTo.unit : table.units.length;
  return `${cellOf(setTo.column)}*${GRAINS[unit]}`;
}

/** Grains of cells that hold sizes, or deviations from the size that the gauge was set to. */
function sumOf(term: string, zero: string): string {
  return zero === '' ? term : `(${term}+${zero})`;
}

function spotTerms(
  columns: readonly ReadingColumn[],
  zero: string,
  factor: string,
  cellOf: CellOf,
): SpotTerms[] {
  const groups = groupBy(columns, ({ station, angle }) => `${station} ${angle}`);
  return [...groups.values()].map((columns) => {
    const { station, angle } = columns[0]!;
    const cells = columns.map(({ column }) => cellOf(column));
    // A blank cell is 0, whatever the gauge was set to.
    const values = columns.map(({ unit }, place) => {
      const ownZero = zero && `COUNT(${cells[place]})*${zero}`;
      return `ROUND(${sumOf(`${cells[place]}*${GRAINS[unit]}`, ownZero)}${factor},0)`;
    });
    const count = `COUNT(${cells.join(',')})`;
    const one = columns.length === 1;
    return {
      station,
      angle,
      cells,
      unit: columns[0]!.unit,
      value: one ? values[0]! : `ROUND((${values.join('+')})/MAX(1,${count}),0)`,
      isRead: one ? count : `MIN(1,${count})`,
    };
  });
}

/** Rounding keeps order, so the extreme of the cells gives the extreme of the spots. */
function cellsOf(spots: readonly SpotTerms[]): { cells: string; grains: number } | undefined {
  const alike = spots.every(({ cells, unit }) => cells.length === 1 && unit === spots[0]!.unit);
  return alike
    ? { cells: spots.map(({ cells }) => cells[0]).join(','), grains: GRAINS[spots[0]!.unit] }
    : undefined;
}

function greatestOf(spots: readonly SpotTerms[], zero: string, factor: string): string {
  const plain = cellsOf(spots);
  if (plain) return `ROUND(${sumOf(`MAX(${plain.cells})*${plain.grains}`, zero)}${factor},0)`;
  return `MAX(${spots.map(({ value, isRead }) => `IF(${isRead}=0,-${HUGE},${value})`).join(',')})`;
}

function leastOf(spots: readonly SpotTerms[], zero: string, factor: string): string {
  const plain = cellsOf(spots);
  if (plain) return `ROUND(${sumOf(`MIN(${plain.cells})*${plain.grains}`, zero)}${factor},0)`;
  return `MIN(${spots.map(({ value, isRead }) => `IF(${isRead}=0,${HUGE},${value})`).join(',')})`;
}

/** Greatest less least of a group, −1 where fewer than two were read. */
function rangeOf(group: readonly SpotTerms[], zero: string, factor: string): string {
  const count = group.map(({ isRead }) => isRead).join('+');
  return `IF(${count}<2,-1,${greatestOf(group, zero, factor)}-${leastOf(group, zero, factor)})`;
}
