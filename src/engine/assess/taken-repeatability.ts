/** The repeatability of studied gauges as cells of Gauges: taken over only where the user asks for it. */
import { inUnit } from '../../maths/units.js';
import type { Book } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { isLength } from '../book/table.js';
import { cellAddress } from '../workbook-model.js';
import { gaugeStudies } from './gauge-study.js';
import { studyFigures } from './study-figures.js';
import { lengthText } from './words.js';

export interface TakenRepeatability {
  readonly fills: readonly { sheet: string; row: number; column: number; value: number }[];
  /** What was taken over, or why it was not. */
  readonly sentences: readonly string[];
}

export function takenRepeatability(book: Book): TakenRepeatability {
  const fills: TakenRepeatability['fills'][number][] = [];
  const sentences: string[] = [];
  const { file } = book.model;
  const table = book.tables.get('Gauges');
  const known = table?.columns.get('Repeatability');
  const studies = gaugeStudies(book);
  if (studies.length === 0)
    sentences.push(`${file}: found no sheet Gauge study with readings; no Repeatability was taken.`);
  for (const { gauge, byAnalysis, why } of studies) {
    const row = book.gauges.find((other) => nameKey(other.gauge) === nameKey(gauge));
    const refuse = (reason: string) =>
      sentences.push(`${file}: Repeatability of gauge ${gauge} was not taken: ${reason}.`);
    if (!byAnalysis) refuse(why.join('; '));
    else if (!row) refuse('Gauges does not name it');
    else if (!table || !known) refuse('Gauges has no column Repeatability; add it');
    else {
      const unit = isLength(known.unit) ? known.unit : book.setup.lengthUnit;
      const found = studyFigures(byAnalysis).repeatability;
      const before = table.sheet.rows[row.row]?.[known.column]?.content?.value;
      fills.push({ sheet: table.sheet.name, row: row.row, column: known.column, value: inUnit(found, unit) });
      sentences.push(
        `${file}: ${table.sheet.name}!${cellAddress(row.row, known.column)}: Repeatability of gauge ${gauge} is ${lengthText(found, unit)}, ` +
          `from Gauge study${before === undefined ? '' : `; it was ${before}`}.`,
      );
    }
  }
  return { fills, sentences };
}
