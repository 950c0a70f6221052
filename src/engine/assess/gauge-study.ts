/** What the sheet Gauge study says of each gauge, or why it says nothing yet. */
import {
  analyseStudy,
  averageAndRange,
  type GaugeVariation,
  type StudyAnalysis,
} from '../../maths/gauge-study.js';
import type { Book, StudyRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { reasonOf } from '../book/problems.js';
import { groupBy } from './context.js';
import { countText } from './words.js';

export interface GaugeStudy {
  /** As the book names it. */
  readonly gauge: string;
  readonly parts: number;
  readonly persons: number;
  /** Readings of each part by each person. */
  readonly trials: number;
  /** In grains; undefined where the study is not whole. */
  readonly byAnalysis: StudyAnalysis | undefined;
  readonly byRange: GaugeVariation | undefined;
  /** What is missing or odd. */
  readonly why: readonly string[];
}

const MOST_NAMED = 3;

export function gaugeStudies({ studies, gauges }: Book): GaugeStudy[] {
  const known = new Map(gauges.map(({ gauge }) => [nameKey(gauge), gauge]));
  return [...groupBy(studies, ({ gauge }) => nameKey(gauge))].map(([key, rows]) => {
    const study = studyOf(rows);
    const gauge = known.get(key) ?? rows[0]!.gauge;
    const why = known.has(key) ? study.why : [...study.why, `gauge ${gauge} is not in Gauges`];
    return { ...study, gauge, why };
  });
}

function studyOf(rows: readonly StudyRow[]): Omit<GaugeStudy, 'gauge'> {
  const names = (of: (row: StudyRow) => string) => [...groupBy(rows, (row) => nameKey(of(row))).keys()];
  const persons = names(({ person }) => person);
  const parts = names(({ part }) => part);
  const cells = groupBy(rows, cellKey);
  const read = persons.map((person) =>
    parts.map((part) => (cells.get(`${person}\u0000${part}`) ?? []).flatMap(({ value }) => value ?? [])),
  );
  const trials = Math.max(...read.flat().map(({ length }) => length));
  const sizes = { parts: parts.length, persons: persons.length, trials };
  const faults = faultsOf(rows, read.flat(), sizes);
  if (faults.length > 0) return { ...sizes, byAnalysis: undefined, byRange: undefined, why: faults };
  const byAnalysis = analyseStudy(read);
  const why = [
    ...(persons.length === 1 ? ['one person: reproducibility is not seen'] : []),
    ...(parts.length === 1 ? ['one part: categories are not seen'] : []),
    ...(byAnalysis.isPooled
      ? []
      : ['persons and parts interact: the persons measure some parts differently']),
  ];
  return { ...sizes, byAnalysis, byRange: averageAndRange(read), why };
}

const cellKey = ({ person, part }: StudyRow) => `${nameKey(person)}\u0000${nameKey(part)}`;

function faultsOf(
  rows: readonly StudyRow[],
  read: readonly (readonly number[])[],
  { parts, persons, trials }: { parts: number; persons: number; trials: number },
): string[] {
  const bad = rows.flatMap((row) => row.bad.map(reasonOf));
  if (bad.length > 0) return bad;
  const unnamed = rows.filter((row) => [row.gauge, row.part, row.person].includes(''));
  if (unnamed.length > 0) return [`${countText(unnamed.length, 'row')} without a gauge, a part or a person`];
  const trialsOf = groupBy(rows, (row) => `${cellKey(row)}\u0000${nameKey(row.trial)}`);
  const twice = [...trialsOf.values()].filter((group) => group.length > 1).map(([first]) => rowText(first!));
  if (twice.length > 0) return [`named twice: ${listText(twice)}`];
  const blank = rows.filter(({ value }) => value === undefined);
  if (blank.length > 0) return [`not measured: ${listText(blank.map(rowText))}`];
  const wanted = parts * persons * trials;
  if (read.some(({ length }) => length !== trials)) {
    return [
      `${rows.length} of ${wanted} readings: every part by every person equally often, ${parts} × ${persons} × ${trials}`,
    ];
  }
  return trials < 2 ? ['one reading of each part by each person: repeatability needs two or more'] : [];
}

function rowText({ part, person, trial }: StudyRow): string {
  return `part ${part}, ${person}, trial ${trial}`;
}

function listText(texts: readonly string[]): string {
  const rest = texts.length - MOST_NAMED;
  return texts.slice(0, MOST_NAMED).join('; ') + (rest > 0 ? `; and ${rest} more` : '');
}
