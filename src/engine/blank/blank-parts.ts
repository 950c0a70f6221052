/** The sheets of parts in a blank workbook: one row a part of every place that is measured. */
import { STAND_INS } from '../book/reading-headers.js';
import { MEASURED, shellsIn } from '../input-sheets/common-columns.js';
import { partSheets } from '../input-sheets/index.js';
import type { PartRole, PartSheet } from '../input-sheets/input-sheet.js';
import { type FitTerm, fitsAsked, kindWithBore } from '../kinds/kind-of-fit.js';
import { homeOfTerm } from '../kinds/sheets-of-term.js';
import {
  type BlankColumn,
  type BlankSheet,
  blankColumns,
  blankSheet,
  type Figure,
  type Values,
} from './blank-columns.js';
import { gaugeNames, SPARE_GAUGES } from './blank-gauges.js';
import {
  type BlankGauge,
  type DescribedPlaces,
  type EngineDescription,
  gapHeaders,
  readingHeaders,
  wallHeaders,
} from './description.js';

/** One place of one engine. */
interface Place extends Pick<DescribedPlaces, 'kind' | 'asked'> {
  readonly engine: string;
  readonly type: string;
  readonly position: string;
}

/** What of the description is for the parts of each role. */
const ROLE: Readonly<
  Record<
    PartRole,
    {
      readonly figure: Figure;
      readonly gauges: (description: EngineDescription) => readonly BlankGauge[];
      readonly angles: (description: EngineDescription) => readonly string[];
    }
  >
> = {
  inner: {
    figure: 'journal',
    gauges: ({ journalGauges }) => journalGauges,
    angles: ({ journalAngles }) => journalAngles,
  },
  'shaped inner': {
    figure: 'piston',
    gauges: ({ journalGauges }) => journalGauges,
    angles: ({ journalAngles }) => journalAngles,
  },
  outer: { figure: 'bore', gauges: ({ boreGauges }) => boreGauges, angles: ({ boreAngles }) => boreAngles },
  wall: { figure: 'shell', gauges: ({ wallGauges }) => wallGauges, angles: () => [] },
  // Of gaps some are tried with feelers, others read on a dial: their rows name their gauge themselves.
  gap: { figure: 'gap', gauges: () => [], angles: () => [] },
  'run-out': { figure: 'run-out', gauges: () => [], angles: () => DIAL_ANGLES },
};

/** A quarter turn apart. */
const DIAL_ANGLES = ['0', '90', '180', '270'];

/** Columns that stand behind the readings. */
const BEHIND: readonly string[] = ['Usable', 'Note'];

/** One sheet for each kind of part that the described places have. */
export function blankPartSheets(description: EngineDescription): BlankSheet[] {
  const { engines, places } = description;
  const each = engines.flatMap(({ name, type }) =>
    places.flatMap(({ kind, asked, positions }) =>
      fitsAsked(asked).flatMap((fit) =>
        positions.map(
          (position): Place => ({ engine: name, type, kind, asked: { ...asked, fit }, position }),
        ),
      ),
    ),
  );
  return partSheets().flatMap((sheet) => {
    const rows = each.flatMap((place) => rowsOfPlace(place, sheet, description));
    return rows.length > 0 ? [partSheetOf(sheet, rows, description)] : [];
  });
}

function partSheetOf(sheet: PartSheet, rows: readonly Values[], description: EngineDescription): BlankSheet {
  const isWanted: Readonly<Record<string, boolean>> = {
    [shellsIn.header]: description.shellsIn,
    [MEASURED.setTo.header]: description.deviations,
  };
  const choices = {
    'Engine type': description.types,
    Fit: fitsOf(description),
    Gauge: { sheet: 'Gauges', column: 0, rows: gaugeNames(description).length + SPARE_GAUGES },
  };
  const columns = blankColumns(sheet, choices, (header) => isWanted[header]);
  const isBehind = ({ header }: BlankColumn) => BEHIND.includes(header);
  return blankSheet(
    sheet.name,
    [
      ...columns.filter((column) => !isBehind(column)),
      ...readingColumns(sheet, description),
      ...columns.filter(isBehind),
    ],
    rows,
    sheet.isPlain ? 'plain' : ROLE[sheet.role].figure,
  );
}

/** The words of Fit that are measured. */
export function fitsOf({ places }: EngineDescription): string[] {
  return places.filter(({ positions }) => positions.length > 0).flatMap(({ asked }) => fitsAsked(asked));
}

function readingColumns(
  { readings, role, measured: bare, withShells, isOfPlaces, isPlain }: PartSheet,
  description: EngineDescription,
): BlankColumn[] {
  const measured = (description.shellsIn && withShells?.measured) || bare;
  const { stations, repeats, walls, unit } = description;
  // A gauge is set to a size: what is measured as a whole has none.
  const deviations = description.deviations && !isOfPlaces;
  // A plain bore has no parting line to keep off: it is read as a journal is, across and along.
  const angles = isPlain ? description.journalAngles : ROLE[role].angles(description);
  const headers = {
    walls: () => wallHeaders(walls, repeats),
    diameters: () => readingHeaders(stations, angles, repeats),
    gaps: () => [...gapHeaders(repeats), STAND_INS.goes, STAND_INS.stops],
    // Its position says where the dial stands.
    dial: () => [...readingHeaders(stations.slice(0, 1), angles, repeats), STAND_INS.total],
  }[readings]();
  return headers.map((header) => ({
    header,
    width: 10,
    help:
      `${measured} at ${header}${deviations ? ', as the deviation from Set to' : ''}, in ${unit}; ` +
      'another unit may be typed with it. Leave blank what was not measured.',
    kind: deviations || isOfPlaces ? 'number' : 'size',
  }));
}

/** The rows that a place has in a sheet: one a term, which for half-shells are two. */
function rowsOfPlace(place: Place, sheet: PartSheet, description: EngineDescription): Values[] {
  return kindWithBore(place.kind, { hasShells: description.shellsIn })
    .terms.filter((term) => homeOfTerm(term, place.asked.fit) === sheet.name)
    .map((term) => rowOfTerm(term, place, sheet, description));
}

function rowOfTerm(
  { slot }: FitTerm,
  { engine, type, kind, asked, position }: Place,
  { letter = asked.letter, role }: PartSheet,
  description: EngineDescription,
): Values {
  const half = kind.strategy === 'half-shells' && (slot === 'upper' || slot === 'lower') ? slot : undefined;
  const prefix = description.engines.length > 1 ? `${engine} ` : '';
  // Of several gauges nobody knows yet which one a part is measured with.
  const [gauge, another] = ROLE[role].gauges(description);
  return {
    Part: `${prefix}${beginningOf(letter, description)}${position}${half ? half[0]!.toUpperCase() : ''}`,
    'Engine type': type,
    Engine: engine,
    Fit: asked.fit,
    Position: /^\d+$/.test(position) ? Number(position) : position,
    Half: half,
    [shellsIn.header]: description.shellsIn ? 'yes' : undefined,
    // A gauge stands in a row only once its greatest error is known: without it the row counts as bad.
    Gauge: another || gauge?.maxError === undefined ? undefined : gauge.name,
  };
}

/** A name is read as no station: `A1` could be station A, so the letter of a station is doubled, as in `AA1`. */
function beginningOf(letter: string, { stations }: EngineDescription): string {
  const isStation = stations.some((station) => station.toLowerCase() === letter.toLowerCase());
  return isStation ? letter.repeat(2) : letter;
}
