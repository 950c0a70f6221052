/**
 * The two functions that make an array formula of a column: INPUT gives what the rows at hand bring, EACH_ROW applies
 * one of our functions to each of them. Known only to the engine that evaluates the columns.
 *
 *   =EACH_ROW("FIT_GRADE", A2:A513, INPUT("Journals classes", $A$1))
 *
 * An array of rows gives each call its own row: one cell as that cell, more as a range; an array of one row is the same
 * for all. $A$1 is the number of the rows at hand: where it changes, INPUT gives others.
 */
import {
  ArraySize,
  CellError,
  ErrorType,
  FunctionArgumentType,
  FunctionPlugin,
  type FunctionPluginDefinition,
  SimpleRangeValue,
} from 'hyperformula';
import type { FunctionRecord } from '../../../functions/definition.js';
import type { FunctionUnits } from '../../../functions/expected.js';
import { functionRecords } from '../../../functions/index.js';
import { callRecord, givenOf, scalarOf } from '../functions/call-record.js';
import type { Given, Scalar } from '../functions/given.js';
import { ArgumentReader } from '../functions/read-arguments.js';
import type { InputCell } from './template.js';

export const EACH_ROW = 'EACH_ROW';
export const INPUT = 'INPUT';

/** The rows of one input. */
export type InputRows = readonly (readonly InputCell[])[];

export interface InputSource {
  /** How many rows its formulas are made for. */
  readonly size: number;
  rows(): InputRows;
}

type EngineRows = Parameters<typeof SimpleRangeValue.onlyValues>[0];
type Run = FunctionPlugin['runFunction'];
type State = Parameters<Run>[1];
interface Call {
  readonly args: Parameters<Run>[0];
}

const RECORDS = new Map(functionRecords.map((record) => [record.name, record]));
const TABLE_WIDTH = 3;
const STRING = { argumentType: FunctionArgumentType.STRING };
const ANY = { argumentType: FunctionArgumentType.ANY, passSubtype: true };

/** @param sources by the names that INPUT is given */
export function rowFunctions(
  sources: ReadonlyMap<string, InputSource>,
  units: FunctionUnits,
): FunctionPluginDefinition {
  const reader = new ArgumentReader(units);
  return class RowFunctions extends FunctionPlugin {
    static override implementedFunctions = {
      [INPUT]: {
        method: 'input',
        sizeOfResultArrayMethod: 'inputSize',
        parameters: [STRING, { argumentType: FunctionArgumentType.NUMBER, defaultValue: 0 }],
      },
      [EACH_ROW]: {
        method: 'eachRow',
        sizeOfResultArrayMethod: 'eachRowSize',
        parameters: [STRING, ANY],
        repeatLastArgs: 1,
      },
    };

    input({ args }: Call, state: State): ReturnType<Run> {
      return this.runFunction(args, state, this.metadata(INPUT), (name: string) =>
        SimpleRangeValue.onlyValues(sources.get(name)!.rows() as EngineRows),
      );
    }

    inputSize({ args: [name] }: Call): ArraySize {
      const source = name && 'value' in name ? sources.get(String(name.value)) : undefined;
      return new ArraySize(1, source?.size ?? 1);
    }

    eachRow({ args }: Call, state: State): ReturnType<Run> {
      return this.runFunction(args, state, this.metadata(EACH_ROW), (name: string, ...arrays: unknown[]) => {
        const record = RECORDS.get(name);
        return record
          ? eachRowOf(record, arrays, reader, units)
          : new CellError(ErrorType.NAME, `${EACH_ROW} names ${name}`);
      });
    }

    eachRowSize({ args }: Call, state: State): ArraySize {
      const heights = args.slice(1).map((ast) => this.arraySizeForAst(ast, state).height);
      return new ArraySize(1, Math.max(1, ...heights));
    }
  };
}

function eachRowOf(
  record: FunctionRecord,
  arrays: readonly unknown[],
  reader: ArgumentReader,
  units: FunctionUnits,
) {
  const data = arrays.map((array) => (array instanceof SimpleRangeValue ? array.data : [[array]]));
  const heights = data.map(({ length }) => length).filter((height) => height > 1);
  // The last rows of a list may be fewer than the formulas are made for.
  const height = heights.length > 0 ? Math.min(...heights) : 1;
  const argumentsOf = data.map((rows, place) => givenRows(rows, record.arguments[place]?.quantity));
  return SimpleRangeValue.onlyValues(
    Array.from({ length: height }, (_, row) => [
      callRecord(record, () => argumentsOf.map((given) => given(row)), reader, units),
    ]),
  );
}

/** What the rows of an array give a call. Rows that are one and the same are one and the same table. */
function givenRows(
  rows: readonly (readonly unknown[])[],
  quantity: string | undefined,
): (row: number) => Given {
  const isTable = quantity === 'classes' || quantity === 'selection';
  let last: { readonly cells: readonly unknown[]; readonly given: Given } | undefined;
  return (row) => {
    const cells = rows.length === 1 ? rows[0]! : rows[row]!;
    if (cells === last?.cells) return last.given;
    const given = isTable ? inThrees(cells) : cells.length === 1 ? givenOf(cells[0]) : [cells.map(scalarOf)];
    last = { cells, given };
    return given;
  };
}

/** Three cells after three are the rows of a table. */
function inThrees(cells: readonly unknown[]): Scalar[][] {
  const rows: Scalar[][] = [];
  for (let at = 0; at < cells.length; at += TABLE_WIDTH) {
    rows.push(cells.slice(at, at + TABLE_WIDTH).map(scalarOf));
  }
  return rows;
}
