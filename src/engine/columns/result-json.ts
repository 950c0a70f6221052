/** Results as the JSON document has them: by the keys of their columns, lengths in mm, null where nothing is known. */
import { toNumber } from '../../maths/decimal.js';
import { mmOfGrain } from '../../maths/grain.js';
import type { Assessment } from '../assess/assess.js';
import type { FitResult } from '../assess/fit.js';
import type { PartResult } from '../assess/part-result.js';
import { partSheet, partSheets } from '../input-sheets/index.js';
import type { KindOfFit } from '../kinds/kind-of-fit.js';
import { columnsOfKind } from './columns-of-kind.js';
import { partColumns } from './part-columns.js';
import type { ResultColumn, ResultQuantity, ResultValue } from './result-column.js';

export type JsonValue = string | number | boolean | null | readonly string[];

/** What a row has under those of the columns that stand in the JSON document. */
export function jsonOf<Row>(
  columns: readonly ResultColumn<Row>[],
  row: Row,
  assessment: Assessment,
): Record<string, JsonValue> {
  return Object.fromEntries(
    columns.flatMap((column) => {
      const { json, quantity, quantityOf, value } = column;
      if (json === undefined) return [];
      return [[json, jsonValue(quantityOf?.(row) ?? quantity, value(row, assessment))]];
    }),
  );
}

function jsonValue(quantity: ResultQuantity, value: ResultValue): JsonValue {
  if (value === undefined) return null;
  if (typeof value !== 'number') return value;
  if (quantity === 'length') return mmOfGrain(value);
  // A name is the same whether its cell holds it as a number or as a text.
  return quantity === 'name' ? String(value) : value;
}

/** What was measured as a whole, under the keys of the columns of its kind. */
export function placesJson(
  fits: readonly FitResult[],
  kind: KindOfFit,
  assessment: Assessment,
): Record<string, JsonValue>[] {
  const own = fits.filter((fit) => fit.kind === kind);
  return own.map((fit) => {
    const { engine, fit: word, position } = fit;
    const { row } = fit.parts[kind.leader]!.row;
    return { row: row + 1, engine, fit: word, position, ...jsonOf(columnsOfKind(kind), fit, assessment) };
  });
}

/** Parts have the keys of the columns of all sheets of parts, whichever of them their own sheet has. */
export function partsJson(parts: readonly PartResult[], assessment: Assessment): Record<string, JsonValue>[] {
  const columns = partSheets().flatMap(partColumns);
  const keys = columns.flatMap(({ json }) => json ?? []);
  const blank = Object.fromEntries(keys.map((key) => [key, null]));
  const named = parts.filter((part) => !partSheet(part.row.sheet).isOfPlaces);
  return named.map((part) => {
    const { sheet, row, name, hasShells } = part.row;
    const results = jsonOf(partColumns(partSheet(sheet)), part, assessment);
    const setTo = part.row.setTo ? toNumber(part.row.setTo.mm) : null;
    return { sheet, row: row + 1, part: name, setTo, shellsIn: hasShells, ...blank, ...results };
  });
}
