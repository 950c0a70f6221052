/** The sheet Fasteners of a blank workbook: one row a bolt, in the order of tightening. */
import { FASTENERS } from '../input-sheets/fasteners.js';
import { type BlankColumn, type BlankSheet, blankColumns, blankSheet } from './blank-columns.js';
import { gaugeNames, SPARE_GAUGES } from './blank-gauges.js';
import type { EngineDescription } from './description.js';

/** Readings stand before the column that is the last on every sheet that is measured. */
const LAST = FASTENERS.columns.note.header;

export function fastenersSheet(description: EngineDescription): BlankSheet {
  const { engines, types, bolts, unit } = description;
  const columns = blankColumns(FASTENERS, {
    'Engine type': types,
    Gauge: { sheet: 'Gauges', column: 0, rows: gaugeNames(description).length + SPARE_GAUGES },
  });
  const measured = (['Length', 'Neck'] as const).filter((of) =>
    bolts.some(({ renew }) => renew === `by ${of.toLowerCase()}`),
  );
  const readings = measured.map(
    (of): BlankColumn => ({
      header: `${of} 1`,
      width: 10,
      help: `${of} of the bolt, in ${unit}; another unit may be typed with it. Leave blank what was not measured.`,
      kind: 'size',
    }),
  );
  const rows = engines.flatMap(({ name, type }) =>
    bolts.flatMap(({ group, count, thread, renew }) =>
      Array.from({ length: count }, (_, place) => ({
        ...{ Engine: name, 'Engine type': type, Group: group, Number: place + 1, Thread: thread },
        Renew: renew,
      })),
    ),
  );
  return blankSheet(
    FASTENERS.name,
    [
      ...columns.filter(({ header }) => header !== LAST),
      ...readings,
      ...columns.filter(({ header }) => header === LAST),
    ],
    rows,
  );
}

/** How many rows of it are measured. */
export function boltsToMeasure({ engines, bolts }: EngineDescription): number {
  const measured = bolts.filter(({ renew }) => renew !== 'always');
  return engines.length * measured.reduce((sum, { count }) => sum + count, 0);
}
