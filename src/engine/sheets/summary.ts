/** The sheet Summary. */
import { renewText } from '../assess/fastener-words.js';
import { CAUTION } from '../caution.js';
import type { Layout } from '../columns/layout.js';
import { readingsUnchanged } from '../columns/readings-checksum.js';
import { REACHED, SUMMARY } from '../columns/summary-columns.js';
import { matchingNotes } from '../words/matching-notes.js';
import type { OutputCell, OutputSheet } from '../workbook-model.js';
import { cellRows, headerRow, MADE_BY_WIDTH, text, titlesOf, widthsOf } from './own-sheet.js';

export function summarySheet(layout: Layout): OutputSheet {
  const { assessment } = layout;
  const reached = cellRows(REACHED, layout);
  const renewed = renewText(assessment.fasteners);
  const rows: (OutputCell | undefined)[][] = [
    headerRow(titlesOf(SUMMARY)),
    ...cellRows(SUMMARY, layout),
    [],
    ...(reached.length > 0 ? [titlesOf(REACHED).map((header) => text(header, 'header')), ...reached] : []),
    ...matchingNotes(assessment).map((note) => [text(note)]),
    ...(renewed === undefined ? [] : [[text(`${renewed}: sheet To buy`)]]),
    [],
    [text('Readings since this run', 'title'), readingsUnchanged(assessment)],
    [],
    [text('Caution', 'title')],
    ...CAUTION.map((sentence) => [text(sentence)]),
  ];
  const below = widthsOf(REACHED, layout);
  return {
    name: SUMMARY.name,
    rows,
    widths: [
      ...widthsOf(SUMMARY, layout).map((width, place) => Math.max(width, below[place] ?? 0)),
      MADE_BY_WIDTH,
    ],
    headerRows: 1,
    landscape: true,
  };
}
