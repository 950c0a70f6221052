/** The result columns of Fits. */
import type { Clearance } from '../../maths/clearance.js';
import { type FitResult, markOf } from '../assess/fit.js';
import type { PartResult } from '../assess/part-result.js';
import { FITS } from '../input-sheets/fits.js';
import { partSheet } from '../input-sheets/index.js';
import type { KindOfFit } from '../kinds/kind-of-fit.js';
import { cellAddress } from '../workbook-model.js';
import type { Layout } from './layout.js';
import { fitting, grains, lengthOf, signedSum, unlessMoved } from './live-terms.js';
import { sizeHeader } from './part-columns.js';
import type { ResultColumn } from './result-column.js';

type FitColumn = ResultColumn<FitResult>;

/** Which size of a part enters a clearance, by the sign of its term. */
const SIZES = {
  clearance: { plus: 'size', minus: 'size' },
  tightest: { plus: 'smallest', minus: 'largest' },
  loosest: { plus: 'largest', minus: 'smallest' },
} as const;

type SizeKey = 'size' | 'largest' | 'smallest';

const CLEARANCES = {
  clearance: {
    header: 'Clearance',
    width: 10,
    wrappedWidth: 11,
    help: 'Bore less both walls less journal, all as means; of a bore with its shells in without the walls.',
  },
  tightest: {
    header: 'Tightest',
    width: 10,
    help: 'From the smallest bore, the largest walls and journal.',
  },
  loosest: { header: 'Loosest', width: 10, help: 'From the largest bore, the smallest walls and journal.' },
} as const;

function clearanceColumn(kind: KindOfFit, key: keyof Clearance): FitColumn {
  const sizes = kind.terms.map(({ slot, sign }) => `[${slot} ${sizeKey(key, sign)}]`);
  const sum = `${kind.functions[key]}(${sizes.join(',')})`;
  return {
    ...CLEARANCES[key],
    quantity: 'length',
    json: key,
    page: 'measured',
    value: ({ clearance }) => clearance?.[key],
    engine: kind.standIn ? `=IF(ISNUMBER([strip]),[strip],${sum})` : `=${sum}`,
    isComputed: ({ clearance }) => clearance !== undefined,
    live: (fit, layout) => liveClearance(fit, key, layout),
  };
}

const sizeKey = (key: keyof Clearance, sign: 1 | -1): SizeKey => SIZES[key][sign > 0 ? 'plus' : 'minus'];

const CLEARANCE_U: FitColumn = {
  header: 'Clearance U',
  quantity: 'length',
  width: 13,
  wrappedWidth: 11,
  json: 'clearanceU',
  help: 'Twice the standard uncertainty of the clearance, gauges shared between parts allowed for.',
  page: 'measured',
  value: ({ clearanceU }) => clearanceU,
  engine: '=EXPANDED_UNCERTAINTY([u])',
  isComputed: ({ clearanceU }) => clearanceU !== undefined,
};

const CHANCE: FitColumn = {
  header: 'Chance in range',
  quantity: 'chance',
  width: 17,
  wrappedWidth: 11,
  json: 'chance',
  help: 'The probability, 0 to 1, that the whole fit lies in the clearance range.',
  page: 'measured',
  value: ({ chance }) => chance,
  engine: '=CHANCE_IN_RANGE([Tightest],[Loosest],[u],[min],[max])',
  isComputed: (fit) => fit.chance !== undefined && isOrdered(fit),
  live: (fit, layout) => (fit.chance === undefined ? undefined : liveChance(fit, layout)),
};

const SHELL_BY_MARKS: FitColumn = {
  header: 'Shell by marks',
  quantity: 'word',
  width: 16,
  wrappedWidth: 9,
  json: 'shellByMarks',
  help: "The shell that Selection names for the journal's and the bore's marks.",
  page: 'chosen',
  value: ({ shellByMarks }) => shellByMarks,
  engine: '=SELECTED_SHELL([journal mark],[bore mark],[selection])',
  isComputed: ({ kind, engineType, fit, parts }, { context }) =>
    kind.isSelected === true &&
    context.selectionOf(engineType, fit).length > 0 &&
    markOf(parts.journal) !== undefined &&
    markOf(parts.bore) !== undefined,
};

const SHELL_BY_SIZE: FitColumn = {
  header: 'Shell by size',
  quantity: 'word',
  width: 14,
  wrappedWidth: 9,
  json: 'shellBySize',
  help: 'The shell whose middle wall brings the clearance closest to the aim.',
  page: 'chosen',
  value: ({ shellBySize }) => shellBySize,
  engine: '=SHELL_GRADE([bore size],[journal size],[aim],[candidates])',
  isComputed: ({ shellBySize, candidates }) => shellBySize !== undefined && candidates.length > 0,
};

const STATUS: FitColumn = {
  header: 'Status',
  quantity: 'word',
  width: 19,
  json: 'status',
  help: 'The verdict of the fit.',
  page: 'measured',
  value: ({ status }) => status,
  engine: '=FIT_VERDICT([Tightest],[Loosest],[min],[max],[inside],[outside],[service limit])',
  isComputed: (fit) => fit.chance !== undefined && fit.limitsAreRead && !fit.isUncorrected && isOrdered(fit),
  live: (fit, layout) => unlessMoved(layout.isFit(fit), liveStatus(fit, layout)),
};

const WHY: FitColumn = {
  header: 'Why',
  quantity: 'sentences',
  width: 50,
  json: 'why',
  help: 'What the verdict rests on.',
  value: ({ why }) => why,
};

/** The columns of the fits of one kind; headers and looks are the same for all. */
export function fitColumns(kind: KindOfFit): readonly FitColumn[] {
  return [
    clearanceColumn(kind, 'clearance'),
    clearanceColumn(kind, 'tightest'),
    clearanceColumn(kind, 'loosest'),
    CLEARANCE_U,
    CHANCE,
    SHELL_BY_MARKS,
    SHELL_BY_SIZE,
    STATUS,
    WHY,
  ];
}

/** Functions refuse a range upside down; the verdict of such a fit is written as it is. */
function isOrdered({ limits, clearance }: FitResult): boolean {
  return limits!.clearanceMin! <= limits!.clearanceMax! && clearance!.tightest <= clearance!.loosest;
}

/** The header that a size of a part stands under. */
function headerOf({ row }: PartResult, key: SizeKey): string {
  if (key === 'size') return sizeHeader(partSheet(row.sheet).readings);
  return key === 'largest' ? 'Largest' : 'Smallest';
}

/**
 * The clearance of parts as a built-in formula over their results.
 * @returns undefined where one of the parts has no row
 */
export function liveSum(
  { terms }: KindOfFit,
  parts: Partial<Record<string, PartResult>>,
  key: keyof Clearance,
  layout: Layout,
): string | undefined {
  const cells: { sign: 1 | -1; cell: string }[] = [];
  for (const { slot, sign } of terms) {
    const part = parts[slot];
    if (!part) return undefined;
    cells.push({ sign, cell: layout.partCell(part, headerOf(part, sizeKey(key, sign))) });
  }
  return signedSum(cells, layout.assessment.book.setup.lengthUnit);
}

function liveClearance(fit: FitResult, key: keyof Clearance, layout: Layout): string | undefined {
  if (fit.isStrip) return liveStrip(fit, layout);
  if (fit.status === 'unclear' || fit.status === 'bad reading') return undefined;
  return liveSum(fit.kind, fit.parts, key, layout);
}

function liveStrip(fit: FitResult, layout: Layout): string | undefined {
  const unit = layout.assessment.book.setup.lengthUnit;
  const { header } = FITS.columns.strip;
  if (layout.makesFits) {
    const column = Object.values(FITS.columns).findIndex((known) => known.header === header);
    return lengthOf(grains(cellAddress(layout.fitRow(fit), column), unit), unit);
  }
  const table = layout.assessment.book.tables.get(FITS.name)!;
  const column = table.columns.get(header)!;
  const content = table.sheet.rows[fit.source!.row]?.[column.column]?.content;
  if (content?.kind !== 'number' || column.unit) return undefined;
  return lengthOf(grains(layout.inputCell(FITS.name, fit.source!.row, column.column), unit), unit);
}

function terms(fit: FitResult, layout: Layout) {
  const unit = layout.assessment.book.setup.lengthUnit;
  const own = (header: string) => layout.ownCell(FITS.name, layout.fitRow(fit), header);
  return {
    clearance: own('Clearance'),
    tightest: grains(own('Tightest'), unit),
    loosest: grains(own('Loosest'), unit),
  };
}

function liveChance(fit: FitResult, layout: Layout): string {
  const { clearance, tightest, loosest } = terms(fit, layout);
  const min = layout.limitTerm(fit.limits!, 'Clearance min', fit.limits!.clearanceMin!);
  const max = layout.limitTerm(fit.limits!, 'Clearance max', fit.limits!.clearanceMax!);
  const u = Math.sqrt(fit.variance);
  const chance =
    u === 0
      ? `IF(AND(${tightest}>=${min},${loosest}<=${max}),1,0)`
      : `MAX(0,NORMSDIST((${max}-${loosest})/${u})-NORMSDIST((${min}-${tightest})/${u}))`;
  return `IF(COUNT(${clearance})=0,"",${chance})`;
}

function liveStatus(fit: FitResult, layout: Layout): string | undefined {
  if (!fit.limitsAreRead || liveClearance(fit, 'clearance', layout) === undefined) return undefined;
  const { clearance, tightest, loosest } = terms(fit, layout);
  const blank = `IF(COUNT(${clearance})=0,"not measured",`;
  // The guard of a fit that was never measured is not known: its verdict needs another run.
  if (fit.status === 'not measured') return `${blank}"measured: run again")`;
  if (fit.chance === undefined || fit.isUncorrected) return `${blank}"${fit.status}")`;
  const { clearanceMin, clearanceMax, serviceLimit } = fit.limits!;
  const min = layout.limitTerm(fit.limits!, 'Clearance min', clearanceMin!);
  const max = layout.limitTerm(fit.limits!, 'Clearance max', clearanceMax!);
  const service =
    serviceLimit === undefined ? undefined : layout.limitTerm(fit.limits!, 'Service limit', serviceLimit);
  const { inside, outside } = fit.guards;
  const within = service
    ? `IF(AND(${tightest}-${inside}>=${min},${loosest}-${outside}>${max},${loosest}+${inside}<=${service}),"within service limit","undecided")`
    : '"undecided"';
  return fitting(
    `${blank}IF(${tightest}+${outside}<${min},"tight",IF(${loosest}-${outside}>${service ?? max},"loose",` +
      `IF(AND(${tightest}-${inside}>=${min},${loosest}+${inside}<=${max}),"in range",${within}))))`,
  );
}
