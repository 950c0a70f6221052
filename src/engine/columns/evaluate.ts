/** Evaluates every result column on the engine, and the user's own formulas over the results. */
import type { Assessment } from '../assess/assess.js';
import type { PartSheet } from '../book/book.js';
import type { SheetName } from '../book/input-sheets.js';
import { evaluateTemplates, type TemplateValues } from './block-engine.js';
import { fitInputs, partInputs } from './engine-inputs.js';
import { fitColumns } from './fit-columns.js';
import { Layout } from './layout.js';
import { partColumns } from './part-columns.js';
import { ResultCells } from './result-cells.js';
import type { Template } from './template.js';
import { type UserValue, userValues } from './user-values.js';

export interface Evaluated {
  readonly layout: Layout;
  /** Result cells by sheet. */
  readonly cells: ReadonlyMap<SheetName, ResultCells>;
  /** New values of the user's formulas that use our functions. */
  readonly userValues: readonly UserValue[];
}

const OF = { Journals: 'journal', Rods: 'bore', Cases: 'bore', Shells: 'shell' } as const;

/** @param blockRows how many rows the engine holds at a time; the results do not depend on it */
export function evaluateColumns(assessment: Assessment, blockRows?: number): Evaluated {
  const { book } = assessment;
  const layout = new Layout(assessment);
  const templates: Template<never>[] = [];
  const results: { sheet: SheetName; cellsOf: (values: TemplateValues) => ResultCells }[] = [];
  const add = <Row>(sheet: SheetName, template: Template<Row>, rowOf: (row: Row) => number) => {
    templates.push(template as unknown as Template<never>);
    const { rows, columns } = template;
    const first = layout.first(sheet);
    results.push({
      sheet,
      cellsOf: (values) =>
        new ResultCells<Row>({ rows, rowOf, first, columns, values }, book.setup.lengthUnit) as ResultCells,
    });
  };
  for (const sheet of Object.keys(OF) as PartSheet[]) {
    if (!book.tables.has(sheet)) continue;
    const columns = partColumns(layout, OF[sheet]);
    add(sheet, { name: sheet, ...partInputs(assessment, sheet, OF[sheet]), columns }, ({ row }) => row.row);
  }
  const columns = fitColumns(layout);
  add('Fits', { name: 'Fits', ...fitInputs(assessment), columns }, (fit) => layout.fitRow(fit));

  const values = evaluateTemplates(templates, book.setup, blockRows);
  const cells = new Map(results.map(({ sheet, cellsOf }, at) => [sheet, cellsOf(values[at]!)]));
  return { layout, cells, userValues: userValues(assessment, layout, cells) };
}
