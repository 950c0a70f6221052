/** The columns of Gauge study results: two rows a gauge, one a method. */
import type { GaugeStudy } from '../assess/gauge-study.js';
import { type StudyFigures, studyFigures } from '../assess/study-figures.js';
import type { ResultColumn } from './result-column.js';
import type { ResultTable } from './result-table.js';

/** What one method finds of a gauge. */
interface StudyLine {
  readonly study: GaugeStudy;
  readonly method: string;
  /** Undefined where the study is not whole. */
  readonly figures: StudyFigures | undefined;
}

type StudyColumn = ResultColumn<StudyLine>;

const count = (header: string, key: 'parts' | 'persons' | 'trials', help: string): StudyColumn => ({
  header,
  quantity: 'count',
  width: 10,
  help,
  value: ({ study }) => study[key],
});

const length = (
  header: string,
  key: 'repeatability' | 'reproducibility' | 'gauge' | 'parts',
  help: string,
): StudyColumn => ({
  header,
  quantity: 'length',
  width: 16,
  help,
  value: ({ figures }) => figures?.[key],
});

export const STUDY_RESULTS: ResultTable<StudyLine> = {
  name: 'Gauge study results',
  rowName: 'Gauge',
  rows: ({ studies }) => studies.flatMap(linesOf),
  columns: [
    { header: 'Gauge', quantity: 'name', width: 14, help: 'The gauge.', value: ({ study }) => study.gauge },
    {
      header: 'Method',
      quantity: 'word',
      width: 22,
      help: '`analysis of variance` or `average and range`.',
      value: ({ method }) => method,
    },
    count('Parts', 'parts', 'How many parts were measured.'),
    count('Persons', 'persons', 'How many persons measured them.'),
    count('Trials', 'trials', 'How often each person read each part.'),
    length('Repeatability', 'repeatability', 'Standard deviation of one reading.'),
    length('Reproducibility', 'reproducibility', 'Standard deviation between persons; blank with one.'),
    length('Gauge variation', 'gauge', 'Standard deviation of the gauge as a whole.'),
    length('Part variation', 'parts', 'Standard deviation between parts; blank with one.'),
    {
      header: 'Gauge share',
      quantity: 'chance',
      width: 12,
      help: 'The variation of the gauge in that of everything, 0 to 1.',
      value: ({ figures }) => figures?.gaugeShare,
    },
    {
      header: 'Distinct categories',
      quantity: 'count',
      width: 12,
      help: 'How many groups of parts the gauge tells apart.',
      value: ({ figures }) => figures?.categories,
    },
    {
      header: 'Why',
      quantity: 'sentence',
      width: 60,
      help: 'What is missing or odd.',
      value: ({ study }) => study.why.join('; '),
    },
  ],
};

function linesOf(study: GaugeStudy): StudyLine[] {
  const { byAnalysis, byRange } = study;
  return [
    { study, method: 'analysis of variance', figures: byAnalysis && studyFigures(byAnalysis) },
    { study, method: 'average and range', figures: byRange && studyFigures(byRange) },
  ];
}
