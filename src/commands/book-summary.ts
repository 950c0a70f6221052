/** The short account of a checked book for a terminal. */
import type { Assessment } from '../engine/assess/assess.js';
import { renewText } from '../engine/assess/fastener-words.js';
import type { GaugeStudy } from '../engine/assess/gauge-study.js';
import type { NeighbourResult } from '../engine/assess/neighbours.js';
import { isProved } from '../engine/assess/proof.js';
import { NOT_MEASURED } from '../engine/assess/remeasure-words.js';
import { studyFigures } from '../engine/assess/study-figures.js';
import { countText, lengthText } from '../engine/assess/words.js';
import { isOnFits } from '../engine/kinds/kind-of-fit.js';
import { movedSentence } from '../engine/words/moved-words.js';
import { fitTables } from '../io/terminal/fit-table.js';
import type { LengthUnit } from '../maths/units.js';

/** @param width of the terminal: with it, every fit is told; without, they are only counted */
export function bookSummary(assessment: Assessment, written: string, width?: number): string {
  const { spreads, parts, fasteners, tables, matching, stock, book, remeasure, missingBooks } = assessment;
  const lines = [`${book.model.file}`];
  lines.push(
    ...(width === undefined
      ? spreads.map(countLine)
      : fitTables(spreads, book.setup.lengthUnit, width, countLine)),
  );
  const beyond = parts.all().filter(({ status }) => status === 'beyond limits').length;
  if (beyond > 0) lines.push(`  ${countText(beyond, 'part')} beyond limits`);
  const renewed = renewText(fasteners);
  if (renewed !== undefined) lines.push(`  ${renewed}: sheet To buy`);
  const rows = Object.values(tables).flat();
  const doubtful = rows.filter(({ status }) => status === 'check the source').length;
  if (doubtful > 0) lines.push(`  ${countText(doubtful, 'table row')} to check against the source`);
  if (book.bad.length > 0) lines.push(`  ${countText(book.bad.length, 'cell')} refused`);
  lines.push(...measureLines(remeasure));
  lines.push(...assessment.studies.map((study) => `  ${studyText(study, book.setup.lengthUnit)}`));
  if (matching) {
    const of = missingBooks.length > 0 ? ' of the books that were read' : '';
    const proof = isProved(assessment) ? `, proved best${of}` : ', not proved best';
    lines.push(
      `  matched sets: ${matching.completeEngines.length} of ${countText(stock.stock.engines.length, 'engine')} complete, ` +
        `${countText(matching.fits.length, 'journal')} filled${proof}`,
    );
    const moved = movedSentence(assessment);
    if (moved) lines.push(`  ${moved}`);
  }
  lines.push(`  written: ${written}`);
  return lines.join('\n');
}

/** What was never measured is no reading to take again. */
function measureLines(remeasure: Assessment['remeasure']): string[] {
  const first = remeasure.filter(({ why }) => why === NOT_MEASURED).length;
  const again = remeasure.length - first;
  return [
    ...(first > 0 ? [`  ${countText(first, 'part')} still to measure: sheet Re-measure`] : []),
    ...(again > 0 ? [`  ${countText(again, 'reading')} to take or take again: sheet Re-measure`] : []),
  ];
}

/** How many fits of an engine got which verdict. */
function countLine({ engine, fit, fits, counts, waiting }: NeighbourResult): string {
  const verdicts = ['in range', 'within service limit', 'tight', 'loose', 'undecided'] as const;
  const told = [
    ...verdicts.map((status) => [counts[status], status] as const),
    [waiting, 'without enough data'],
  ];
  const words = told.filter(([count]) => count !== 0).map(([count, word]) => `${count} ${word}`);
  const { kind } = fits[0]!;
  const noun = isOnFits(kind) ? 'fit' : kind.name;
  return `  engine ${engine}, ${fit}: ${countText(fits.length, noun)}: ${words.join(', ')}`;
}

/** What a study says of its gauge, by analysis of variance. */
function studyText({ gauge, byAnalysis, why }: GaugeStudy, unit: LengthUnit): string {
  if (!byAnalysis) return `gauge study of ${gauge}: ${why.join('; ')}`;
  const { repeatability, categories } = studyFigures(byAnalysis);
  const told = categories === undefined ? '' : `, ${categories} distinct categories`;
  return `gauge study of ${gauge}: repeatability ${lengthText(repeatability, unit)}${told}`;
}
