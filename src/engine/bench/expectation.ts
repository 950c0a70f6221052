/** What a spot's reading will usually be, and what speaks against one that was typed, in words. */
import { type Grain, grainOfRatio } from '../../maths/grain.js';
import {
  type Doubt,
  doubtsOf,
  type Expectation,
  type Range,
  rangeOfValues,
  repeatDoubt,
  slipOf,
} from '../../maths/plausibility.js';
import { kindKey } from '../assess/context.js';
import { roleOf } from '../assess/part-checks.js';
import { lengthText } from '../assess/words.js';
import type { PartRow } from '../book/book.js';
import { partSheet } from '../input-sheets/index.js';
import type { RoleCheck } from '../input-sheets/roles.js';
import { type BenchBook, type BenchSpot, sameSpot, spotName, type TypedReading } from './bench-book.js';

export function expectationOf(book: BenchBook, spot: BenchSpot): Expectation {
  const part = book.partAt(spot.sheet, spot.row);
  const own = book.readings(spot.sheet, spot.row);
  return {
    kind: partSheet(spot.sheet).readings === 'walls' ? 'wall' : 'diameter',
    limits: limitsOf(book, part),
    sisters: [...own].filter(([column]) => column !== spot.column.column).map(([, value]) => value),
    peers: peersOf(book, part),
  };
}

function limitsOf(book: BenchBook, part: PartRow): Range | undefined {
  const { context } = book.measured;
  const limits = context.limitsOf(part.engineType, part.fit);
  const firstOf = ({ limits: keys }: RoleCheck) =>
    keys.map((key) => limits?.[key]).find((limit) => typeof limit === 'number');
  const range = (low: Grain | undefined, high: Grain | undefined): Range | undefined =>
    low === undefined && high === undefined ? undefined : { low: low ?? high!, high: high ?? low! };
  if (partSheet(part.sheet).isOfPlaces) return range(limits?.clearanceMin, limits?.clearanceMax);
  const [least, greatest] = roleOf(part).checks;
  if (least && greatest) return range(firstOf(least), firstOf(greatest));
  const { classes } = context.classesOf(part.engineType, part.fit, 'shell');
  const kind = kindKey(part.engineType ?? '', part.fit);
  const sold = context.book.newShells.filter((row) => kindKey(row.engineType, row.fit) === kind);
  return rangeOfValues([...classes, ...sold].flatMap(({ from, to }) => [from ?? [], to ?? []].flat()));
}

/** Readings of the other parts of the sheet that are of the same engine type and fit. */
function peersOf(book: BenchBook, part: PartRow): Grain[] {
  const kind = kindKey(part.engineType ?? '', part.fit);
  return book
    .parts()
    .filter(
      (other) =>
        other.sheet === part.sheet &&
        other.row !== part.row &&
        kindKey(other.engineType ?? '', other.fit) === kind,
    )
    .flatMap((other) => [...book.readings(other.sheet, other.row).values()]);
}

/** `usual 41.985 to 42.005 mm (Limits); other spots 42.001 to 42.002 mm`; blank where nothing is known. */
export function usualText(book: BenchBook, spot: BenchSpot): string {
  const { limits, sisters, peers } = expectationOf(book, spot);
  const own = rangeOfValues(sisters);
  const others = rangeOfValues(peers);
  const text = (range: Range) => rangeText(book, range);
  return [
    ...(limits
      ? [`usual ${text(limits)} (${partSheet(spot.sheet).role === 'wall' ? 'its classes' : 'Limits'})`]
      : []),
    ...(own ? [`other spots ${text(own)}`] : []),
    ...(others && !limits && !own ? [`other parts ${text(others)}`] : []),
  ].join('; ');
}

function rangeText({ unit }: BenchBook, { low, high }: Range): string {
  const [from, to] = [lengthText(low, unit), lengthText(high, unit)];
  return from === to ? from : `${from.replace(/ \S+$/, '')} to ${to}`;
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
  const far = partSheet(spot.sheet).isOfPlaces ? [] : doubtsOf(value, expectation);
  const slip = far.length > 0 ? slipOf(value, expectation) : undefined;
  return [
    ...[...far, ...(differs ? [differs] : [])].map((doubt) => doubtText(book, spot, doubt)),
    ...(slip ? [SLIP_TEXT[slip]] : []),
  ];
}

const SLIP_TEXT = {
  inches: 'it looks like inches: type "in" behind it',
  millimetres: 'it looks like millimetres: type "mm" behind it',
  'decimal point': 'a decimal point may be missing or misplaced',
} as const;

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
      return `${text(doubt.beyond)} outside the usual ${rangeText(book, doubt.range)}`;
    case 'sisters':
      return `${text(doubt.beyond)} away from the other spots, ${rangeText(book, doubt.range)}`;
    case 'peers':
      return `${text(doubt.beyond)} away from the other parts, ${rangeText(book, doubt.range)}`;
    case 'repeat':
      return `readings of ${spotName({ ...spot.column, repeat: 1 })} differ by ${text(doubt.spread)}; the gauge's repeatability allows ${text(doubt.allowed)}`;
  }
}
