/**
 * The sheet Setup: one item a row. A unit or a confidence that cannot be read stops the book, since all
 * rests on it; any other setting costs only what needs it.
 */
import { toNumber } from '../../maths/decimal.js';
import { GRAINS_PER_MM } from '../../maths/grain.js';
import type { LengthUnit } from '../../maths/units.js';
import {
  LENGTH,
  MASS_SPREAD,
  type NumberRule,
  SHARE,
  SIZE,
  type TextUnit,
} from '../input-sheets/quantities.js';
import { SETUP, SETUP_ITEMS, type SetupItem } from '../input-sheets/setup.js';
import { UserError } from '../user-error.js';
import type { SheetModel } from '../workbook-model.js';
import type { Setup } from './book.js';
import { dataRowsOf } from './data-rows.js';
import { headerKey } from './names.js';
import { readScanned, scanNumber, unitOfWord } from './number-text.js';
import { type BadCell, listOf, sentenceOf } from './problems.js';
import { splitHeader } from './reading-headers.js';
import { Row } from './row.js';
import { isLength, Table } from './table.js';

const LEAST_CONFIDENCE = 0.5;
const GREATEST_CONFIDENCE = 0.9999;
const DEFAULT_CONFIDENCE = 0.95;
/** The step between the widths that are printed on a strip's sleeve. Common practice, no published source. */
const DEFAULT_STRIP_STEP = 0.025 * GRAINS_PER_MM;

/**
 * @throws UserError naming the cell of a unit or a confidence that cannot be read.
 */
export function readSetup(sheet: SheetModel | undefined, file: string): Setup {
  const rows = new Map<string, Row>();
  const refused: BadCell[] = [];
  /** Units that items name. */
  const units = new Map<SetupItem, LengthUnit>();
  const tableIn = (length: LengthUnit) => sheet && new Table(SETUP, sheet, { length, temperature: 'C' });
  const table = tableIn('mm');
  for (const number of table ? dataRowsOf(table) : []) {
    const row = new Row(table!, number);
    // An item may name its unit as a header does: `Half difference (µm)`.
    const { name, unit } = splitHeader(row.name('Item') ?? '');
    const item = SETUP_ITEMS.find((known) => headerKey(known) === headerKey(name));
    if (item && row.cell('Value') && !rows.has(item)) {
      rows.set(item, row);
      if (unit && isLength(unit)) units.set(item, unit);
    }
  }

  const read = <Value>(item: SetupItem, get: (row: Row) => Value, otherwise: Value): Value => {
    const row = rows.get(item);
    if (!row) return otherwise;
    const value = get(row);
    const [bad] = row.bad;
    if (!bad) return value;
    if (VITAL.includes(item)) throw new UserError(sentenceOf(file, { ...bad, header: item }));
    refused.push({ ...bad, header: item });
    return otherwise;
  };
  const words = <Word extends string>(item: SetupItem, allowed: readonly [Word, ...Word[]]): Word =>
    read<Word>(item, (row) => row.word('Value', allowed) ?? allowed[0], allowed[0]);

  const unitOf = <Unit extends TextUnit>(
    item: 'Length unit' | 'Temperature unit',
    allowed: readonly [Unit, Unit],
  ) => read<Unit>(item, (row) => unitIn(row, allowed), allowed[0]);

  const lengthUnit = unitOf('Length unit', ['mm', 'in']);
  const lengthOf = (item: SetupItem, rule: NumberRule) => (row: Row) => {
    // Read again in its unit: the table above was opened before the unit was known.
    const again = new Row(tableIn(units.get(item) ?? lengthUnit)!, row.row);
    const length = again.length('Value', rule);
    row.bad.push(...again.bad);
    return length;
  };
  return {
    lengthUnit,
    temperatureUnit: unitOf('Temperature unit', ['C', 'F']),
    confidence: read('Confidence', confidenceOf, DEFAULT_CONFIDENCE),
    aimShare: read<number | undefined>('Aim', shareOf, rows.has('Aim') ? undefined : 0.5),
    allowUndecided: words('Undecided fits', ['refuse', 'allow']) === 'allow',
    allowWorn: words('Worn fits', ['refuse', 'allow']) === 'allow',
    buyNewShells: words('New shells', ['no', 'yes']) === 'yes',
    preferKeptPairs: words('Prefer', ['kept pairs', 'closest']) === 'kept pairs',
    rodsStay: words('Rods', ['may move', 'stay']) === 'stay',
    halvesStay: words('Halves', ['stay together', 'free']) === 'stay together',
    newWithUsed: words('New with used', ['no', 'yes']) === 'yes',
    massSpread: read('Mass spread', (row) => row.plainNumber('Value', MASS_SPREAD), undefined),
    halfDifference: read('Half difference', lengthOf('Half difference', LENGTH), undefined),
    stripStep: read('Strip step', lengthOf('Strip step', SIZE), undefined) ?? DEFAULT_STRIP_STEP,
    bad: refused,
  };
}

/** Settings without which nothing of the book can be read or judged. */
const VITAL: readonly SetupItem[] = ['Length unit', 'Temperature unit', 'Confidence'];

/** `°C` and `inch` are units as `C` and `in` are. */
function unitIn<Unit extends TextUnit>(row: Row, allowed: readonly [Unit, Unit]): Unit {
  const found = row.cell('Value')!;
  const { content } = found.cell;
  const named = content?.kind === 'text' ? unitOfWord(content.value) : undefined;
  const unit = allowed.find((candidate) => candidate === named);
  if (unit) return unit;
  row.refuse(found, listOf(allowed), 'type one of these words');
  return allowed[0];
}

/** 95 %, 0.95 and 95 are one. */
function confidenceOf(row: Row): number {
  const found = row.cell('Value')!;
  const { content } = found.cell;
  const scan = content?.kind === 'text' ? scanNumber(content.value) : undefined;
  const text =
    scan && (scan.unit === undefined || scan.unit === '%') ? readScanned(scan, true, undefined) : undefined;
  const typed =
    content?.kind === 'number'
      ? content.value
      : text && typeof text === 'object' && 'value' in text
        ? toNumber(text.value)
        : Number.NaN;
  // Moved by two places in decimal: 99.99 / 100 is not the double 0.9999.
  const share = typed > 1 || scan?.unit === '%' ? Number(`${typed}e-2`) : typed;
  if (share >= LEAST_CONFIDENCE && share <= GREATEST_CONFIDENCE) return share;
  row.refuse(found, 'a confidence from 50 to 99.99 %', 'type for example 95 %');
  return DEFAULT_CONFIDENCE;
}

function shareOf(row: Row): number {
  const { content } = row.cell('Value')!.cell;
  if (content?.kind === 'text' && content.value.trim().toLowerCase() === 'middle') return 0.5;
  return row.plainNumber('Value', SHARE) ?? 0.5;
}
