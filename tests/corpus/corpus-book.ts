/** A book of the corpus: a measured engine in a package that holds one thing more, which has to stay. */
import { type HandMade, type HandMadeSheet, handMadePackage, STYLES } from '../io/xlsx/hand-made.js';

export interface CorpusBook {
  /** What it holds, as the table in the documentation says it. */
  readonly holds: string;
  readonly ending: 'xlsx' | 'xlsm';
  readonly make: () => Promise<Uint8Array>;
  /** Why the library that is asked too cannot read it; undefined where it can. */
  readonly unreadByExcelJs?: string;
  /** Sheets whose results stand on a sheet of the program's own, since something of the user's is in the way. */
  readonly apart?: readonly string[];
  /** The rows of Journals that are said to hold no part. */
  readonly leftOut?: string;
}

const OFFICE = 'application/vnd.openxmlformats-officedocument';
export const TYPES = {
  drawing: `${OFFICE}.drawing+xml`,
  chart: `${OFFICE}.drawingml.chart+xml`,
  comments: `${OFFICE}.spreadsheetml.comments+xml`,
  table: `${OFFICE}.spreadsheetml.table+xml`,
  externalLink: `${OFFICE}.spreadsheetml.externalLink+xml`,
  pivotTable: `${OFFICE}.spreadsheetml.pivotTable+xml`,
  pivotCache: `${OFFICE}.spreadsheetml.pivotCacheDefinition+xml`,
  pivotRecords: `${OFFICE}.spreadsheetml.pivotCacheRecords+xml`,
  metadata: `${OFFICE}.spreadsheetml.sheetMetadata+xml`,
  printerSettings: `${OFFICE}.spreadsheetml.printerSettings`,
  customProperties: `${OFFICE}.custom-properties+xml`,
  threaded: 'application/vnd.ms-excel.threadedcomments+xml',
  persons: 'application/vnd.ms-excel.person+xml',
  macros: 'application/vnd.ms-office.vbaProject',
  macroBook: 'application/vnd.ms-excel.sheet.macroEnabled.main+xml',
  png: 'image/png',
} as const;

/** A cell with a text in it. */
export const textCell = (address: string, text: string) =>
  `<c r="${address}" t="inlineStr"><is><t>${text}</t></is></c>`;

const HEADER = ['Part', 'Engine', 'Fit', 'Position', 'A 0', 'Note'];
/** Sizes at or near 42.0015 mm, in a column whose format shows them in mm. */
const SIZES = [42.0015, 42.002, 42.001];

/** Rows 1 to 4 of the sheet Journals; more cells may follow in each, from G on. */
export function journalRows(more: Readonly<Record<number, string>> = {}): string {
  const header = HEADER.map((text, i) => textCell(`${'ABCDEF'[i]}1`, text)).join('');
  const rows = SIZES.map((size, i) => {
    const r = i + 2;
    return `<row r="${r}" ht="18" customHeight="1">${textCell(`A${r}`, `J${i + 1}`)}${textCell(`B${r}`, 'E1')}${textCell(`C${r}`, 'big end')}<c r="D${r}"><v>${i + 1}</v></c><c r="E${r}" s="1"><v>${size}</v></c>${more[r] ?? ''}</row>`;
  });
  return `<row r="1" spans="1:6">${header}${more[1] ?? ''}</row>${rows.join('')}`;
}

export interface Extras {
  /** Of the sheet Journals. */
  readonly cells?: Readonly<Record<number, string>>;
  readonly rows?: string;
  readonly before?: string;
  readonly behind?: string;
  readonly relationships?: HandMadeSheet['relationships'];
  readonly part?: string;
  readonly sheets?: readonly HandMadeSheet[];
}

/** The book with these things in it. */
export function engineBook(extras: Extras, book: Partial<HandMade> = {}): () => Promise<Uint8Array> {
  const { cells, rows = '', before = '', behind = '', relationships, part, sheets = [] } = extras;
  return () =>
    handMadePackage({
      sheets: [
        {
          name: 'Journals',
          xml: `${before}<sheetData>${journalRows(cells)}${rows}</sheetData>${behind}`,
          ...(relationships && { relationships }),
          ...(part !== undefined && { part }),
        },
        ...sheets,
      ],
      styles: STYLES,
      ...book,
    });
}
