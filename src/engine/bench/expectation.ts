/** What a spot's reading will usually be, and what speaks against one that was typed, in words. */
import { type Grain, grainOfRatio, meanGrain, roundToWhole } from '../../maths/grain.js';
import {
  type Doubt,
  doubtsOf,
  type Expectation,
  type Range,
  rangeOfValues,
  repeatDoubt,
  type Slip,
  slipOf,
} from '../../maths/plausibility.js';
import type { LengthUnit } from '../../maths/units.js';
import { lengthRangeText, SLIP_WORDS } from '../assess/doubt-words.js';
import {
  alikeKey,
  kindOfReading,
  type SizesOfFit,
  type UsualSizes,
  UsualSizesOfBook,
} from '../assess/expectation.js';
import type { PartResult } from '../assess/part-result.js';
import { partsOf } from '../assess/placed-fit.js';
import { lengthText } from '../assess/words.js';
import type { PartRow } from '../book/book.js';
import { type FastenerRow, isOfLength } from '../book/fasteners.js';
import { scanNumber } from '../book/number-text.js';
import { isLength } from '../book/table.js';
import { isSheetOfPlaces } from '../input-sheets/index.js';
import { type BenchBook, type BenchSpot, sameSpot, spotName, type TypedReading } from './bench-book.js';
import { areAlike, type BenchRow, isFastener } from './bench-row.js';

export function expectationOf(book: BenchBook, spot: BenchSpot): Expectation {
  const row = book.partAt(spot.sheet, spot.row);
  const columns = alikeColumns(book, row, spot);
  const own = book.readings(spot.sheet, spot.row);
  const { limits, undersizes } = usualSizesOf(book, row, spot);
  return {
    kind: isFastener(row) ? 'bolt' : kindOfReading(row),
    limits,
    undersizes,
    sisters: [...own]
      .filter(([column]) => columns.has(column) && column !== spot.column.column)
      .map(([, value]) => value),
    peers: peersOf(book, row, columns),
  };
}

/** The columns whose readings are of the same size of the row. */
function alikeColumns(book: BenchBook, row: BenchRow, { sheet, column }: BenchSpot): Set<number> {
  const columns = book.table(sheet)!.readingColumns.filter((other) => areAlike(row, other, column));
  return new Set(columns.map((other) => other.column));
}

/** A bolt is nowhere a tenth off its limit. Workshop convention, no published source. */
const OFF_LIMIT = 0.1;

function usualSizesOfFastener({ lengthMax, neckMin }: FastenerRow, { column }: BenchSpot) {
  const [limit, header] = isOfLength(column) ? [lengthMax, 'Length max'] : [neckMin, 'Neck min'];
  const low = limit && roundToWhole(limit * (1 - OFF_LIMIT));
  const high = limit && roundToWhole(limit * (1 + OFF_LIMIT));
  return {
    limits: low === undefined || high === undefined ? undefined : { low, high },
    undersizes: [],
    source: `a tenth about its ${header}`,
  };
}

/** By the readings as they are in the cells now. */
function usualSizesOf(
  book: BenchBook,
  row: BenchRow,
  spot: BenchSpot,
): Omit<UsualSizes, 'source'> & { readonly source: string } {
  if (isFastener(row)) return usualSizesOfFastener(row, spot);
  const { context } = book.measured;
  if (isSheetOfPlaces(row.sheet)) {
    const { clearanceMin: min, clearanceMax: max } = context.limitsOf(row.engineType, row.fit) ?? {};
    const limits = rangeOfValues([min ?? [], max ?? []].flat());
    return { limits, undersizes: [], source: 'Limits' };
  }
  return new UsualSizesOfBook(context).of(row, () => sizesOfFit(book, row));
}

function sizesOfFit(book: BenchBook, part: PartRow): SizesOfFit | undefined {
  const own = book.measured.fits.filter((fit) =>
    partsOf(fit).some(({ row }) => row.sheet === part.sheet && row.row === part.row),
  );
  const [fit] = own;
  if (!fit || own.length > 1) return undefined;
  const sizeOf = (other: PartResult | undefined) => {
    const read = other ? [...book.readings(other.row.sheet, other.row.row).values()] : [];
    return read.length > 0 ? meanGrain(read) : undefined;
  };
  const [bore, journal] = [sizeOf(fit.parts.bore), sizeOf(fit.parts.journal)];
  return bore === undefined || journal === undefined ? undefined : { bore, journal, limits: fit.limits };
}

/** Readings of the other rows of the sheet that are of the same engine type and fit, or the same bolts. */
function peersOf(book: BenchBook, row: BenchRow, columns: ReadonlySet<number>): Grain[] {
  const kindOf = (other: BenchRow) =>
    isFastener(other)
      ? [other.sheet, other.engineType, other.group, other.thread, other.length].join('\u0000').toLowerCase()
      : alikeKey(other);
  const kind = kindOf(row);
  return book
    .parts()
    .filter((other) => other.row !== row.row && kindOf(other) === kind)
    .flatMap((other) =>
      [...book.readings(other.sheet, other.row)].flatMap(([column, value]) =>
        columns.has(column) ? [value] : [],
      ),
    );
}

/** `usual 41.985 to 42.005 mm (Limits); other spots 42.001 to 42.002 mm`; blank where nothing is known. */
export function usualText(book: BenchBook, spot: BenchSpot): string {
  const { limits, sisters, peers } = expectationOf(book, spot);
  const { source } = usualSizesOf(book, book.partAt(spot.sheet, spot.row), spot);
  const own = rangeOfValues(sisters);
  const others = rangeOfValues(peers);
  const text = (range: Range) => lengthRangeText(range, book.unit);
  return [
    ...(limits ? [`usual ${text(limits)} (${source})`] : []),
    ...(own ? [`other spots ${text(own)}`] : []),
    ...(others && !limits && !own ? [`other parts ${text(others)}`] : []),
  ].join('; ');
}

/** What speaks against a reading, in words; empty where nothing does. */
export function doubtTexts(book: BenchBook, spot: BenchSpot, reading: TypedReading): string[] {
  const value = grainOfRatio(reading.mm);
  const expectation = expectationOf(book, spot);
  const repeats = repeatsOf(book, spot);
  const gauge = book.measured.context.gaugeOf(book.partAt(spot.sheet, spot.row).gauge);
  const use = 'gauge' in gauge ? gauge.gauge : undefined;
  const differs =
    use &&
    repeatDoubt([...repeats, value], {
      repeatability: use.random.repeatability,
      maxError: use.rows[0]!.maxError!,
      resolution: use.random.resolution,
    });
  // A gap may lie anywhere: only repeats of it speak against each other.
  const far = isSheetOfPlaces(spot.sheet) ? [] : doubtsOf(value, expectation);
  const units = { typed: unitTyped(spot, reading), book: book.unit };
  const slip = far.length > 0 ? slipOf(value, expectation, units) : undefined;
  return [
    ...[...far, ...(differs ? [differs] : [])].map((doubt) => doubtText(book, spot, doubt)),
    ...(slip ? [slipText(slip, units.typed)] : []),
  ];
}

function unitTyped({ column }: BenchSpot, { value }: TypedReading): LengthUnit {
  const unit = typeof value === 'string' ? scanNumber(value)?.unit : undefined;
  return isLength(unit) ? unit : column.unit;
}

function slipText({ cause, value }: Slip, unit: LengthUnit): string {
  switch (cause) {
    case 'inches':
      return 'it looks like inches: type "in" behind it';
    case 'millimetres':
      return 'it looks like millimetres: type "mm" behind it';
    case 'decimal point':
      return 'a decimal point may be missing or misplaced';
    case 'half a turn':
    case 'a turn':
    case 'digits exchanged':
      return `${lengthText(value, unit)} would agree (${SLIP_WORDS[cause]})`;
  }
}

function repeatsOf(book: BenchBook, { sheet, row, column }: BenchSpot): Grain[] {
  const readings = book.readings(sheet, row);
  return book
    .table(sheet)!
    .readingColumns.filter((other) => sameSpot(other, column) && other.column !== column.column)
    .flatMap((other) => readings.get(other.column) ?? []);
}

function doubtText(book: BenchBook, spot: BenchSpot, doubt: Doubt): string {
  const text = (length: Grain) => lengthText(length, book.unit);
  switch (doubt.kind) {
    case 'limits':
      return `${text(doubt.beyond)} outside the usual ${lengthRangeText(doubt.range, book.unit)}`;
    case 'sisters':
      return `${text(doubt.beyond)} away from the other spots, ${lengthRangeText(doubt.range, book.unit)}`;
    case 'peers':
      return `${text(doubt.beyond)} away from the other parts, ${lengthRangeText(doubt.range, book.unit)}`;
    case 'repeat':
      return `readings of ${spotName({ ...spot.column, repeat: 1 })} differ by ${text(doubt.spread)}; the gauge's repeatability allows ${text(doubt.allowed)}`;
  }
}
