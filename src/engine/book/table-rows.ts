/** The rows of the maker's tables, gauges, materials and studies, from their cells. */
import { CLASSES } from '../input-sheets/classes.js';
import { GAUGE_STUDY } from '../input-sheets/gauge-study.js';
import { GAUGES } from '../input-sheets/gauges.js';
import { LIMITS } from '../input-sheets/limits.js';
import { MATERIALS } from '../input-sheets/materials.js';
import { NEW_SHELLS } from '../input-sheets/new-shells.js';
import { SELECTION } from '../input-sheets/selection.js';
import { UNDERSIZES } from '../input-sheets/undersizes.js';
import type {
  ClassRow,
  GaugeRow,
  LimitsRow,
  MaterialRow,
  NewShellRow,
  SelectionTableRow,
  StudyRow,
  UndersizeRow,
} from './book.js';
import { expansionOf, knownMaterial, type MaterialLookup, STEEL } from './materials.js';
import { badOf, readValues } from './read-row.js';
import type { Row } from './row.js';

/** @param onlyType the engine type of rows that name none; undefined where each must name its own */
type ReadTyped<Read> = (row: Row, onlyType: string | undefined) => Read;

export function limitsRow(row: Row, knows: MaterialLookup): LimitsRow {
  const values = readValues(row, LIMITS.columns);
  const { journalMaterial, boreMaterial } = LIMITS.columns;
  return {
    ...values,
    row: row.row,
    engineType: values.engineType ?? '',
    fit: values.fit ?? '',
    journalMaterial: knownMaterial(row, journalMaterial.header, values.journalMaterial, knows),
    boreMaterial: knownMaterial(row, boreMaterial.header, values.boreMaterial, knows),
    bad: badOf(row),
    differing: row.differing,
  };
}

/** What every row that is for one engine type and fit has. */
function ruleOf(
  row: Row,
  { engineType, fit }: { readonly engineType: string | undefined; readonly fit: string | undefined },
  onlyType: string | undefined,
) {
  return {
    row: row.row,
    engineType: engineType ?? onlyType ?? '',
    fit: fit ?? '',
    bad: badOf(row),
    differing: row.differing,
  };
}

const CLASS_OF = {
  journal: 'journal',
  piston: 'journal',
  shaft: 'journal',
  bore: 'bore',
  cylinder: 'bore',
  shell: 'shell',
} as const;

export const classRow: ReadTyped<ClassRow> = (row, onlyType) => {
  const values = readValues(row, CLASSES.columns);
  return { ...values, of: values.of && CLASS_OF[values.of], ...ruleOf(row, values, onlyType) };
};

export const selectionRow: ReadTyped<SelectionTableRow> = (row, onlyType) => {
  const values = readValues(row, SELECTION.columns);
  return { ...values, ...ruleOf(row, values, onlyType) };
};

export const undersizeRow: ReadTyped<UndersizeRow> = (row, onlyType) => {
  const values = readValues(row, UNDERSIZES.columns);
  return { ...values, ...ruleOf(row, values, onlyType) };
};

export const newShellRow: ReadTyped<NewShellRow> = (row, onlyType) => {
  const values = readValues(row, NEW_SHELLS.columns);
  return { ...values, ...ruleOf(row, values, onlyType), price: values.price ?? 1 };
};

export function gaugeRow(row: Row, knows: MaterialLookup): GaugeRow {
  const values = readValues(row, GAUGES.columns);
  const { gauge, maxError, resolution, repeatability, material, setFrom, from, to } = values;
  const made = knownMaterial(row, GAUGES.columns.material.header, material, knows) ?? STEEL;
  return {
    row: row.row,
    gauge: gauge ?? '',
    maxError,
    resolution: resolution ?? 0,
    repeatability: repeatability ?? 0,
    material: made,
    expansion: knows(made),
    setFrom,
    isConstant: values.sameAtAllSizes === 'yes',
    from,
    to,
    bad: badOf(row),
  };
}

export function materialRow(row: Row): MaterialRow {
  const { material, expansion, expansionError } = readValues(row, MATERIALS.columns);
  return {
    row: row.row,
    material: material ?? '',
    expansion: expansion === undefined ? undefined : expansionOf(expansion, expansionError),
    bad: badOf(row),
  };
}

export function studyRow(row: Row): StudyRow {
  const { gauge, part, person, trial, value } = readValues(row, GAUGE_STUDY.columns);
  return {
    row: row.row,
    gauge: gauge ?? '',
    part: part ?? '',
    person: person ?? '',
    trial: trial ?? '',
    value,
    bad: badOf(row),
  };
}
