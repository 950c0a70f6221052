/** The sheets Gauges and Gauge study of a blank workbook. */
import { GAUGE_STUDY } from '../input-sheets/gauge-study.js';
import { GAUGES } from '../input-sheets/gauges.js';
import { type BlankSheet, blankColumns, blankSheet } from './blank-columns.js';
import { type BlankGauge, type EngineDescription, lengthCell } from './description.js';

/** Blank rows of tables that the description does not fill. */
export const SPARE_GAUGES = 4;
/** Ten parts, three persons, three trials are the usual study (MSA, 4th ed.). */
const STUDY = { parts: 10, persons: ['A', 'B', 'C'], trials: 3 } as const;
const WIDTH = 16;

/** The gauges that are described, each once. */
export function gaugeNames({ journalGauges, boreGauges, wallGauges }: EngineDescription): BlankGauge[] {
  const named = [...journalGauges, ...boreGauges, ...wallGauges];
  return [
    ...new Map([...named].reverse().map((gauge) => [gauge.name.toLowerCase(), gauge])).values(),
  ].reverse();
}

export function gaugesSheet(description: EngineDescription): BlankSheet {
  const columns = blankColumns(GAUGES).map((column) => ({ ...column, width: WIDTH }));
  const rows = gaugeNames(description).map(({ name, maxError }) => ({
    Gauge: name,
    'Max error': maxError === undefined ? undefined : lengthCell(maxError),
  }));
  return blankSheet(GAUGES.name, columns, [...rows, ...Array.from({ length: SPARE_GAUGES }, () => ({}))]);
}

export function studySheet(description: EngineDescription): BlankSheet {
  const gauge = gaugeNames(description)[0]?.name;
  const rows = Array.from({ length: STUDY.trials }, (_, trial) =>
    STUDY.persons.flatMap((person) =>
      Array.from({ length: STUDY.parts }, (__, part) => ({
        Gauge: gauge,
        Part: part + 1,
        Person: person,
        Trial: trial + 1,
      })),
    ),
  ).flat();
  return blankSheet(GAUGE_STUDY.name, blankColumns(GAUGE_STUDY), rows);
}
