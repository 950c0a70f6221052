/** What the page says of the book as a whole: its overview, the stock, the tables that everything rests on. */
import { doubtSentence } from '../../engine/assess/doubt-words.js';
import { sentenceOf } from '../../engine/book/problems.js';
import { CAUTION } from '../../engine/caution.js';
import { LEFT_OVER, TO_BUY } from '../../engine/columns/stock-columns.js';
import { REACHED, SUMMARY } from '../../engine/columns/summary-columns.js';
import { partSheets } from '../../engine/input-sheets/index.js';
import { matchingNotes } from '../../engine/words/matching-notes.js';
import type { InputFile } from '../input-digest.js';
import { type Element, h, words } from './elements.js';
import type { Records } from './engine-records.js';
import { keyFigure } from './key-figure.js';
import { listIn, type PageContext, partsTable, remarkList, tableIn } from './page-pieces.js';
import { remeasureIn } from './remeasure-table.js';
import { typedTable } from './typed-tables.js';
import { visibleText } from './visible-text.js';

export interface Trace {
  /** Name and version. */
  readonly program: string;
  readonly files: readonly InputFile[];
}

export function overview(page: PageContext, records: Records, trace: Trace): Element[] {
  const { book } = page.assessment;
  const { confidence, lengthUnit } = book.setup;
  return [
    ...traceOf(page, trace),
    h('aside', { className: 'caution', ariaLabel: 'Caution' }, [
      h('strong', 'Caution'),
      h(
        'ul',
        CAUTION.map((sentence) => h('li', sentence)),
      ),
    ]),
    h('p', [
      `Lengths are diametral, in ${lengthUnit}, at 20 °C; U is twice the standard uncertainty. Verdicts at ${Number((confidence * 100).toFixed(2))} % confidence.`,
    ]),
    // All together are too wide for paper.
    ...listIn(page, SUMMARY, { caption: 'Fits by engine', of: 'counted' }),
    ...listIn(page, SUMMARY, { caption: 'Clearances by engine', of: 'measured' }),
    ...listIn(page, REACHED),
    ...matchingNotes(page.assessment).map((note) => h('p', note)),
    ...problems(page),
    ...(page.assessment.fits.some(({ clearance }) => clearance) ? [keyFigure(confidence)] : []),
    ...contents(records),
  ];
}

/** Refused cells, slips of the hand and other messages of the run. */
function problems({ assessment: { book, doubts } }: PageContext): Element[] {
  const sentences = [
    ...book.bad.map((bad) => sentenceOf(book.model.file, bad)),
    ...doubts.map((doubt) => doubtSentence(doubt, book)),
    ...book.notices,
  ];
  if (sentences.length === 0) return [];
  return [
    h('h2', 'Cells and settings to look at'),
    h(
      'ul',
      { className: 'remarks' },
      sentences.map((sentence) => h('li', visibleText(sentence))),
    ),
  ];
}

function contents({ engines }: Records): Element[] {
  if (engines.length < 2) return [];
  const links = engines.map(({ name }, order) =>
    h('li', h('a', { href: `#engine-${order + 1}` }, words(name))),
  );
  return [
    h('nav', { ariaLabel: 'Engines' }, [h('h2', 'Engines'), h('ul', { className: 'contents' }, links)]),
  ];
}

/** Which readings the page is of: anybody can make the digest again. */
function traceOf(page: PageContext, { program, files }: Trace): Element[] {
  const [only, ...others] = files;
  if (only && others.length === 0) {
    return [
      h('p', { className: 'trace' }, [
        `Made by ${program} from `,
        words(only.name),
        `, SHA-256 ${only.sha256}`,
      ]),
    ];
  }
  return [
    h('p', { className: 'trace' }, `Made by ${program}.`),
    ...tableIn(page, {
      caption: 'Input, with the SHA-256 digest of the bytes',
      headers: ['File', 'SHA-256'],
      rows: files.map(({ name, sha256 }) => [
        { value: name, format: 'plain' },
        { value: sha256, format: 'plain' },
      ]),
      rowHeader: 0,
    }),
  ];
}

export function stockSection(page: PageContext, { loose, looseRemeasure }: Records): Element[] {
  const lists = [...listIn(page, TO_BUY), ...listIn(page, LEFT_OVER)];
  const elements = [
    ...partSheets()
      .filter(({ isOfPlaces }) => !isOfPlaces)
      .flatMap((sheet) => partsTable(page, sheet, loose.of(sheet.name), `${sheet.plural} of no engine here`)),
    ...remeasureIn(page, looseRemeasure),
    ...lists,
  ];
  if (elements.length === 0) return [];
  return [h('section', { ariaLabelledBy: 'stock' }, [h('h2', { id: 'stock' }, 'Stock'), ...elements])];
}

export function tablesSection(page: PageContext): Element[] {
  const sheets = ['Limits', 'Classes', 'Selection', 'Undersizes', 'Gauges', 'Materials'] as const;
  const elements = sheets.flatMap((sheet) => {
    const typed = typedTable(sheet, page.assessment);
    return typed
      ? [...typed.tables.flatMap((table) => tableIn(page, table)), ...remarkList(typed.remarks)]
      : [];
  });
  if (elements.length === 0) return [];
  const id = 'tables';
  return [h('section', { ariaLabelledBy: id }, [h('h2', { id }, 'Limits, classes and gauges'), ...elements])];
}
