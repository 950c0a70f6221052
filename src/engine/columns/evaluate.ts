/** Evaluates every result column on the engine, and the user's own formulas over the results. */
import type { Assessment } from '../assess/assess.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import { FITS } from '../input-sheets/fits.js';
import { partSheets } from '../input-sheets/index.js';
import { recordsOfFits } from '../kinds/index.js';
import { isOnFits } from '../kinds/kind-of-fit.js';
import { evaluateTemplates } from './block-engine.js';
import { columnsOfKind } from './columns-of-kind.js';
import { fitInputs, partInputs, placeInputs } from './engine-inputs.js';
import { FASTENER_COLUMNS } from './fastener-columns.js';
import { fastenerInputs } from './fastener-inputs.js';
import type { Layout } from './layout.js';
import { partColumns } from './part-columns.js';
import { ResultCells } from './result-cells.js';
import { layoutOf } from './result-headers.js';
import type { Template } from './template.js';
import { type UserValue, userValues } from './user-values.js';

export interface Evaluated {
  readonly layout: Layout;
  /** Result cells by the sheet's name in the records. */
  readonly cells: ReadonlyMap<string, ResultCells>;
  /** New values of the user's formulas that use our functions. */
  readonly userValues: readonly UserValue[];
}

/** @param blockRows how many rows the engine holds at a time; the results do not depend on it */
export function evaluateColumns(assessment: Assessment, blockRows?: number): Evaluated {
  const { book } = assessment;
  const layout = layoutOf(assessment);
  const templates = new Map<string, Template<unknown>[]>();
  const add = <Row>(sheet: string, template: Template<Row>) => {
    const own = templates.get(sheet) ?? [];
    templates.set(sheet, [...own, template as unknown as Template<unknown>]);
  };
  for (const record of partSheets()) {
    const { name } = record;
    if (!book.tables.has(name) || record.isOfPlaces) continue;
    add(name, {
      ...{ name, sheet: layout.sheetName(name), assessment },
      rowOf: ({ row }) => row.row,
      ...partInputs(assessment, record),
      columns: partColumns(record),
    });
  }
  if (book.tables.has(FASTENERS.name)) {
    add(FASTENERS.name, {
      ...{ name: FASTENERS.name, sheet: layout.sheetName(FASTENERS.name), assessment },
      rowOf: ({ row }) => row.row,
      ...fastenerInputs(assessment),
      columns: FASTENER_COLUMNS,
    });
  }
  for (const kind of recordsOfFits()) {
    const { resultsOn: sheet = FITS.name } = kind;
    const inputs = isOnFits(kind) ? fitInputs(assessment, kind) : placeInputs(assessment, kind);
    if (inputs.rows.length === 0) continue;
    add(sheet, {
      ...{ name: `${sheet}, ${kind.name}`, sheet: layout.sheetName(sheet), assessment },
      rowOf: (fit) => layout.fitRow(fit),
      ...inputs,
      columns: columnsOfKind(kind),
    });
  }
  const all = [...templates.values()].flat();
  const values = new Map(evaluateTemplates(all, book.setup, blockRows).map((found, at) => [all[at]!, found]));
  const cells = new Map(
    [...templates].map(([sheet, own]) => [
      sheet,
      new ResultCells(
        own.map((template) => ({ ...template, values: values.get(template)! })),
        sheet,
        layout,
      ),
    ]),
  );
  return { layout, cells, userValues: userValues(assessment, layout, cells) };
}
