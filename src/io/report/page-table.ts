/** A table of the page, from cells as they stand in the workbook. */
import { FORMAT_DECIMALS, type OutputCell } from '../../engine/workbook-model.js';
import { type Element, h } from './elements.js';
import { visibleText } from './visible-text.js';

export interface PageTable {
  readonly caption: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly (OutputCell | undefined)[])[];
  /** The column that names the row. */
  readonly rowHeader: number;
}

/** A cell's value as a spreadsheet program shows it: with all decimals of its format. */
export function shownText({ value, format }: OutputCell): string {
  const decimals = FORMAT_DECIMALS[format];
  return typeof value === 'number' && decimals !== undefined ? value.toFixed(decimals) : String(value);
}

/** The same table without columns in which no row has anything. */
export function withoutEmptyColumns(table: PageTable): PageTable {
  const { headers, rows, rowHeader } = table;
  const isEmpty = (column: number) => rows.every((row) => (row[column]?.value ?? '') === '');
  const kept = [...headers.keys()].filter((column) => column === rowHeader || !isEmpty(column));
  return {
    ...table,
    headers: kept.map((column) => headers[column]!),
    rows: rows.map((row) => kept.map((column) => row[column])),
    rowHeader: kept.indexOf(rowHeader),
  };
}

/** Rows as columns, for a table of few rows that is too wide for a page; its first column becomes the header. */
export function turned({ caption, headers, rows }: PageTable): PageTable {
  const [corner = '', ...names] = headers;
  return {
    caption,
    headers: [corner, ...rows.map(([first]) => (first ? shownText(first) : ''))],
    rows: names.map((name, column) => [
      { value: name, format: 'plain' },
      ...rows.map((row) => row[column + 1]),
    ]),
    rowHeader: 0,
  };
}

/**
 * The looks of the columns of tables. On a narrow screen every row becomes a card, in which each value has its header
 * before it. Tables of the same columns share a class: a class and a header in every cell would double the page.
 */
export class TableStyles {
  private readonly known = new Map<string, readonly ColumnLooks[]>();

  classOf(columns: readonly ColumnLooks[]): string {
    const key = JSON.stringify(columns);
    if (!this.known.has(key)) this.known.set(key, columns);
    return `t${[...this.known.keys()].indexOf(key)}`;
  }

  /** Rules where rows are rows: numbers stand at the right, away from the words that follow. */
  columnRules(): string {
    return this.rules((cell, { isNumeric }, before) => [
      ...(isNumeric
        ? [`:is(th,td)${cell}{text-align:right}`, `tbody :is(th,td)${cell}{white-space:nowrap}`]
        : []),
      ...(!isNumeric && before?.isNumeric ? [`:is(th,td)${cell}{padding-left:4mm}`] : []),
    ]);
  }

  /** Rules where rows are cards. */
  cardRules(): string {
    return this.rules((cell, { header }) => [`td${cell}::before{content:${cssString(header)}}`]);
  }

  private rules(
    make: (cell: string, column: ColumnLooks, before: ColumnLooks | undefined) => string[],
  ): string {
    return [...this.known.values()]
      .flatMap((columns, table) =>
        columns.flatMap((column, place) =>
          make(`:nth-child(${place + 1})`, column, columns[place - 1]).map((rule) => `.t${table} ${rule}`),
        ),
      )
      .join('\n');
  }
}

export interface ColumnLooks {
  readonly header: string;
  readonly isNumeric: boolean;
}

/** CSS Syntax Level 3, 4.3.7: any character but a plain one as its code point. */
function cssString(text: string): string {
  const escaped = text.replaceAll(/[^A-Za-z0-9 ]/gu, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `);
  return `"${escaped}"`;
}

/** A word that is broken rather than let stick out of the page. */
const LONG_WORD = /\S{18}/;

/** Columns of names in what the user typed: a name that is a number is a name all the same. */
const NAMES: ReadonlySet<string> = new Set([
  'Engine type',
  'Fit',
  'Mark',
  'Journal mark',
  'Bore mark',
  'Shell mark',
  'Gauge',
  'Set from',
  'Material',
  'Source',
]);

const isNumber = (cell: OutputCell | undefined) => typeof cell?.value === 'number' && cell.format !== 'name';

export function tableElement({ caption, headers, rows, rowHeader }: PageTable, styles: TableStyles): Element {
  const columns = headers.map((header, column) => ({
    header: visibleText(header),
    isNumeric: !NAMES.has(header) && rows.some((row) => isNumber(row[column])),
  }));
  const heads = columns.map(({ header }) => h('th', { scope: 'col' }, header));
  const body = rows.map((row) =>
    h(
      'tr',
      headers.map((_, column) => {
        const cell = row[column];
        const text = cell ? visibleText(shownText(cell)) : '';
        const looks = LONG_WORD.test(text) ? { className: 'w' } : {};
        return column === rowHeader ? h('th', { scope: 'row', ...looks }, text) : h('td', looks, text);
      }),
    ),
  );
  return h('table', { className: styles.classOf(columns) }, [
    h('caption', visibleText(caption)),
    h('thead', h('tr', heads)),
    h('tbody', body),
  ]);
}
