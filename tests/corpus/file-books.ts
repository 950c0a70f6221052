/** Books that other programs wrote, kept as files: `files/README.md` says how they were made. */
import { readFile } from 'node:fs/promises';
import type { CorpusBook } from './corpus-book.js';

/** The file without its ending, and what it holds. */
const FILES: Readonly<Record<string, string>> = {
  'xlsxwriter-totals': 'a table with a totals row',
  'xlsxwriter-calculated-column': 'a table with a calculated column',
  'xlsxwriter-sparklines': 'sparklines of two kinds',
  'xlsxwriter-dynamic-arrays': 'a dynamic array, an array of two cells, LET',
  'xlsxwriter-filter': 'a filter with its choices, frozen panes, an outlined column',
  'xlsxwriter-rules': 'data bars, icons, doubles marked, a list to choose from',
  'xlsxwriter-rich-text': 'rich text, a note, links',
  'xlsxwriter-drawings': 'a chart and a text box',
  'xlsxwriter-print': 'a print area, titles, breaks, a protected sheet, names',
  'xlsxwriter-1904': 'dates that count from 1904',
  'xlsxwriter-constant-memory': 'texts in their cells, written row by row',
  'openpyxl-totals': 'a table with a totals row and its formula without value',
  'openpyxl-styles': 'a style of its own, a note, rules, a name',
  'openpyxl-1904': 'a date and an hour that count from 1904',
  'openpyxl-charts': 'a chart, a chart sheet, a hidden sheet',
  'pandas-openpyxl': 'a frame and its statistics',
  'pandas-xlsxwriter': 'a frame and its statistics, by the other writer',
  'libreoffice-calculated-column': 'a table, saved again',
  'libreoffice-filter': 'a filter, saved again',
  'libreoffice-rules': 'rules, saved again',
  'libreoffice-rich-text': 'rich text, a note, links, saved again',
  'libreoffice-drawings': 'a chart and a text box, saved again',
  'libreoffice-print': 'print settings and names, saved again',
  'libreoffice-dates': 'a date, saved again',
  'gnumeric-calculated-column': 'a table, saved again',
  'gnumeric-filter': 'a filter, saved again',
  'gnumeric-rules': 'rules, saved again',
  'gnumeric-rich-text': 'rich text, a note, links, saved again',
  'gnumeric-drawings': 'a chart and a text box, saved again',
  'gnumeric-print': 'print settings and names, saved again',
  'gnumeric-dates': 'a date, saved again',
};

const PROGRAMS: Readonly<Record<string, string>> = {
  xlsxwriter: 'XlsxWriter',
  openpyxl: 'openpyxl',
  pandas: 'pandas',
  libreoffice: 'LibreOffice',
  gnumeric: 'Gnumeric',
};

/** Why the library that is asked too cannot read it. */
const UNREAD_BY_EXCELJS: Readonly<Record<string, string>> = {
  'openpyxl-totals': 'follows no target from the top',
  'openpyxl-styles': 'follows no target from the top',
  'openpyxl-charts': 'reads no chart sheet with a chart',
};

/** Rows that hold no part. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  'xlsxwriter-totals': 'row 5',
  'xlsxwriter-dynamic-arrays': 'rows 7, 9',
  'openpyxl-totals': 'row 5',
};

export const FILE_BOOKS: readonly CorpusBook[] = Object.entries(FILES).map(([name, holds]) => {
  const unreadByExcelJs = UNREAD_BY_EXCELJS[name];
  const leftOut = LEFT_OUT[name];
  return {
    holds: `${PROGRAMS[name.slice(0, name.indexOf('-'))]}: ${holds}`,
    ending: 'xlsx',
    make: () => readFile(`tests/corpus/files/${name}.xlsx`),
    ...(unreadByExcelJs !== undefined && { unreadByExcelJs }),
    ...(leftOut !== undefined && { leftOut }),
  };
});
