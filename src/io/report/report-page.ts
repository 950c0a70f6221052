/** The page of a book: one HTML document that needs nothing else, to be read on a screen or printed. */
import { basename } from 'node:path';
import { toHtml } from 'hast-util-to-html';
import type { Assessment } from '../../engine/assess/assess.js';
import { overview, stockSection, type Trace, tablesSection } from './book-sections.js';
import { h, words } from './elements.js';
import { recordsOf } from './engine-records.js';
import { engineSection } from './engine-section.js';
import { fastenersSection } from './fasteners-section.js';
import { hatchings } from './hatching.js';
import { ListRows, type PageContext } from './page-pieces.js';
import { TableStyles } from './page-table.js';
import { pageStyle } from './style.js';
import { visibleText } from './visible-text.js';

/**
 * Nothing is computed here: every number is that of the assessment, as the workbook shows it.
 * @returns the document's text, without a script and without an address of anything outside it
 */
export function reportPage(assessment: Assessment, trace: Trace): string {
  const styles = new TableStyles();
  const page: PageContext = {
    assessment,
    unit: assessment.book.setup.lengthUnit,
    styles,
    lists: new ListRows(assessment),
  };
  const records = recordsOf(assessment);
  const name = basename(assessment.book.model.file);
  const body = [
    hatchings(),
    h('header', h('h1', ['Clearance record: ', words(name)])),
    h('main', [
      ...overview(page, records, trace),
      ...records.engines.map((record, order) => engineSection(page, record, `engine-${order + 1}`)),
      ...fastenersSection(page),
      ...stockSection(page, records),
      ...tablesSection(page),
    ]),
  ];
  const head = h('head', [
    h('meta', { charSet: 'utf-8' }),
    h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    h('title', `Clearance record: ${visibleText(name)}`),
    h('style', pageStyle(styles.columnRules(), styles.cardRules(), footer(trace))),
  ]);
  return `<!doctype html>\n${toHtml(h('html', { lang: 'en-GB' }, [head, h('body', body)]), LEAN)}\n`;
}

/** Without the end tags that HTML does without: a page of many engines is mostly cells. */
const LEAN = { closeEmptyElements: true, omitOptionalTags: true } as const;

/** What stands at the foot of every printed page; no word of the user's, since it becomes part of the style. */
function footer({ program, files }: Trace): string {
  const [only, ...others] = files;
  return only && others.length === 0 ? `${program} \u00b7 input SHA-256 ${only.sha256}` : program;
}
