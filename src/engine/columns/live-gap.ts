/** Live formulas of a gap: over its readings, and where there are none over the blades of a feeler gauge. */
import type { LengthUnit } from '../../maths/units.js';
import type { FitResult } from '../assess/fit.js';
import type { PartResult } from '../assess/part-result.js';
import { isStandIn, STAND_INS } from '../book/reading-headers.js';
import type { ReadingColumn, Table } from '../book/table.js';
import type { Layout } from './layout.js';
import { liveSizes } from './live-spots.js';
import { fitting, grains, lengthOf, unlessMoved } from './live-terms.js';
import { limitTerms, verdictByFeelers, verdictByReadings } from './live-verdict.js';

type Key = 'clearance' | 'tightest' | 'loosest';
const SIZE = { clearance: 'size', tightest: 'smallest', loosest: 'largest' } as const;

/** The cells of a row. */
class GapCells {
  readonly part: PartResult;
  readonly table: Table;
  readonly unit: LengthUnit;
  readonly readings: readonly ReadingColumn[];
  readonly goes: string | undefined;
  readonly stops: string | undefined;

  constructor(
    fit: FitResult,
    readonly layout: Layout,
  ) {
    const { book } = layout.assessment;
    this.part = fit.parts[fit.kind.leader]!;
    this.table = book.tables.get(this.part.row.sheet)!;
    this.unit = book.setup.lengthUnit;
    this.readings = this.table.readingColumns.filter((column) => !isStandIn(column));
    this.goes = this.blade(STAND_INS.goes);
    this.stops = this.blade(STAND_INS.stops);
  }

  private blade(station: string): string | undefined {
    const column = this.table.readingColumns.find((own) => own.station === station);
    return column && grains(this.cellOf(column.column), column.unit);
  }

  readonly cellOf = (column: number): string => {
    const { sheet, row } = this.part.row;
    return this.layout.inputCell(sheet, row, column);
  };

  private countOf(columns: readonly ReadingColumn[]): string {
    return columns.length === 0
      ? '0'
      : `COUNT(${columns.map(({ column }) => this.cellOf(column)).join(',')})`;
  }

  /** How many readings there are. */
  get read(): string {
    return this.countOf(this.readings);
  }

  /** How many of these blades were tried. */
  tried(...stations: readonly string[]): string {
    return this.countOf(this.table.readingColumns.filter(({ station }) => stations.includes(station)));
  }

  get isLive(): boolean {
    const { status, row } = this.part;
    return status !== 'bad reading' && row.readings.every(({ isNumber }) => isNumber);
  }

  own(header: string): string {
    const { sheet, row } = this.part.row;
    return grains(this.layout.ownCell(sheet, row, header), this.unit);
  }
}

export function liveGap(fit: FitResult, key: Key, layout: Layout): string | undefined {
  const cells = new GapCells(fit, layout);
  if (!cells.isLive || fit.status === 'unclear') return undefined;
  const { part, table, unit, readings } = cells;
  const byReadings = liveSizes(part, table, unit, cells.cellOf, readings)[SIZE[key]];
  const byFeelers = feelerTerm(cells, key);
  if (byReadings === undefined || byFeelers === undefined) return byReadings ?? byFeelers;
  return fitting(`IF(${cells.read}=0,${byFeelers},${byReadings})`);
}

function feelerTerm(cells: GapCells, key: Key): string | undefined {
  const { goes, stops, unit } = cells;
  const ifTried = (count: string, least: number, term: string) =>
    `IF(${count}<${least},"",${lengthOf(term, unit)})`;
  if (key === 'tightest') return goes && ifTried(cells.tried(STAND_INS.goes), 1, goes);
  if (key === 'loosest') return stops && ifTried(cells.tried(STAND_INS.stops), 1, stops);
  const both = cells.tried(STAND_INS.goes, STAND_INS.stops);
  return goes && stops && ifTried(both, 2, `ROUND((${goes}+${stops})/2,0)`);
}

const AGAIN = '"measured: run again"';

export function liveGapStatus(fit: FitResult, layout: Layout): string | undefined {
  const cells = new GapCells(fit, layout);
  const { part } = cells;
  if (!cells.isLive || fit.status === 'unclear' || !fit.limitsAreRead) return undefined;
  const anything = `${cells.read}+${cells.tried(STAND_INS.goes, STAND_INS.stops)}`;
  const verdict = () => {
    if (fit.status === 'not measured') return AGAIN;
    if (fit.status === 'no limits') return '"no limits"';
    const limits = limitTerms(fit, layout);
    const extremes = { low: cells.own('Tightest'), high: cells.own('Loosest') };
    if (!fit.feelers)
      return `IF(${cells.read}=0,${AGAIN},${verdictByReadings(extremes, limits, fit.guards, 'loose')})`;
    const { goes, stops } = fit.feelers;
    const tried = {
      ...(goes !== undefined && { low: extremes.low }),
      ...(stops !== undefined && { high: extremes.high }),
    };
    const own = verdictByFeelers({ low: tried.low, high: tried.high }, limits, fit.guards);
    const count = (station: string, value: number | undefined) =>
      `${cells.tried(station)}=${value === undefined ? 0 : 1}`;
    const asTried = [count(STAND_INS.goes, goes), count(STAND_INS.stops, stops)].join(',');
    return `IF(AND(${cells.read}=0,${asTried}),${own},${AGAIN})`;
  };
  return unlessMoved(layout.isPlace(part), fitting(`IF(${anything}=0,"not measured",${verdict()})`));
}
