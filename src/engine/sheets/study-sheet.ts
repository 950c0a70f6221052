/** The sheet Gauge study results: two rows a gauge, one a method. */
import type { GaugeVariation } from '../../maths/gauge-study.js';
import { roundToWhole } from '../../maths/grain.js';
import { inUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { GaugeStudy } from '../assess/gauge-study.js';
import type { OutputSheet } from '../workbook-model.js';
import { ownSheet, type SheetColumn } from './own-sheet.js';

interface StudyLine {
  readonly study: GaugeStudy;
  readonly method: string;
  readonly found: GaugeVariation | undefined;
  readonly why: string;
}

export function studySheets({ studies, book }: Assessment): OutputSheet[] {
  if (studies.length === 0) return [];
  const unit = book.setup.lengthUnit;
  const length = (
    header: string,
    value: (found: GaugeVariation) => number | undefined,
  ): SheetColumn<StudyLine> => ({
    header,
    width: 16,
    format: unit === 'in' ? 'in' : 'mm',
    value: ({ found }) => {
      const grains = found && value(found);
      return grains === undefined ? undefined : inUnit(roundToWhole(grains), unit);
    },
  });
  const count = (header: string, value: (study: GaugeStudy) => number): SheetColumn<StudyLine> => ({
    header,
    width: 10,
    format: 'whole',
    value: ({ study }) => value(study),
  });
  const columns: SheetColumn<StudyLine>[] = [
    { header: 'Gauge', width: 14, value: ({ study }) => study.gauge },
    { header: 'Method', width: 22, value: ({ method }) => method },
    count('Parts', ({ parts }) => parts),
    count('Persons', ({ persons }) => persons),
    count('Trials', ({ trials }) => trials),
    length('Repeatability', ({ repeatability }) => repeatability),
    length('Reproducibility', ({ reproducibility }) => reproducibility),
    length('Gauge variation', ({ gauge }) => gauge),
    length('Part variation', ({ parts }) => parts),
    {
      header: 'Gauge share',
      width: 12,
      format: 'chance',
      value: ({ found }) => (found && found.total > 0 ? found.gauge / found.total : undefined),
    },
    {
      header: 'Distinct categories',
      width: 12,
      format: 'whole',
      value: ({ found }) => found && categoriesOf(found),
    },
    { header: 'Why', width: 60, format: 'text', value: ({ why }) => why },
  ];
  return [ownSheet('Gauge study results', columns, studies.flatMap(linesOf))];
}

/** How many groups of parts the gauge tells apart: the whole number; undefined where it is endless or not seen. */
export function categoriesOf({ categories }: GaugeVariation): number | undefined {
  return categories === undefined || !Number.isFinite(categories) ? undefined : Math.trunc(categories);
}

function linesOf(study: GaugeStudy): StudyLine[] {
  const why = study.why.join('; ');
  return [
    { study, method: 'analysis of variance', found: study.byAnalysis, why },
    { study, method: 'average and range', found: study.byRange, why },
  ];
}
