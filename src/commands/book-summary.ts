/** The short account of a checked book for a terminal. */
import type { Assessment, NeighbourResult } from '../engine/assess/assess.js';
import type { GaugeStudy } from '../engine/assess/gauge-study.js';
import { countText, lengthText } from '../engine/assess/words.js';
import { isProved } from '../engine/sheets/proof-words.js';
import { categoriesOf } from '../engine/sheets/study-sheet.js';
import { countOf, waitingCount } from '../engine/sheets/summary.js';
import { fitTables } from '../io/terminal/fit-table.js';
import { roundToWhole } from '../maths/grain.js';
import type { LengthUnit } from '../maths/units.js';

/** @param width of the terminal: with it, every fit is told; without, they are only counted */
export function bookSummary(assessment: Assessment, written: string, width?: number): string {
  const { spreads, parts, tables, matching, stock, book, remeasure, missingBooks } = assessment;
  const lines = [`${book.model.file}`];
  lines.push(
    ...(width === undefined
      ? spreads.map(countLine)
      : fitTables(spreads, book.setup.lengthUnit, width, countLine)),
  );
  const beyond = parts.all().filter(({ status }) => status === 'beyond limits').length;
  if (beyond > 0) lines.push(`  ${countText(beyond, 'part')} beyond limits`);
  const rows = Object.values(tables).flat();
  const doubtful = rows.filter(({ status }) => status === 'check the source').length;
  if (doubtful > 0) lines.push(`  ${countText(doubtful, 'table row')} to check against the source`);
  if (book.bad.length > 0) lines.push(`  ${countText(book.bad.length, 'cell')} refused`);
  if (remeasure.length > 0)
    lines.push(`  ${countText(remeasure.length, 'reading')} to measure again: sheet Re-measure`);
  lines.push(...assessment.studies.map((study) => `  ${studyText(study, book.setup.lengthUnit)}`));
  if (matching) {
    const of = missingBooks.length > 0 ? ' of the books that were read' : '';
    const proof = isProved(assessment) ? `, proved best${of}` : ', not proved best';
    lines.push(
      `  matched sets: ${matching.completeEngines.length} of ${countText(stock.stock.engines.length, 'engine')} complete, ` +
        `${countText(matching.fits.length, 'journal')} filled${proof}`,
    );
  }
  lines.push(`  written: ${written}`);
  return lines.join('\n');
}

/** How many fits of an engine got which verdict. */
function countLine(group: NeighbourResult): string {
  const counts = [
    [countOf(group, 'in range'), 'in range'],
    [countOf(group, 'within service limit'), 'within service limit'],
    [countOf(group, 'tight'), 'tight'],
    [countOf(group, 'loose'), 'loose'],
    [countOf(group, 'undecided'), 'undecided'],
    [waitingCount(group), 'wanting data'],
  ] as const;
  const words = counts.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`);
  return `  engine ${group.engine}, ${group.fit}: ${countText(group.fits.length, 'fit')}: ${words.join(', ')}`;
}

/** What a study says of its gauge, by analysis of variance. */
function studyText({ gauge, byAnalysis, why }: GaugeStudy, unit: LengthUnit): string {
  if (!byAnalysis) return `gauge study of ${gauge}: ${why.join('; ')}`;
  const categories = categoriesOf(byAnalysis);
  const told = categories === undefined ? '' : `, ${categories} distinct categories`;
  return `gauge study of ${gauge}: repeatability ${lengthText(roundToWhole(byAnalysis.repeatability), unit)}${told}`;
}
