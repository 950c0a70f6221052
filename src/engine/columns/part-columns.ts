/** The result columns of the sheets of parts. */
import type { LimitCheck } from '../../maths/conformity.js';
import { roleOf } from '../assess/part-checks.js';
import type { PartResult } from '../assess/part-result.js';
import { partSheet } from '../input-sheets/index.js';
import type { PartReadings, PartSheet } from '../input-sheets/input-sheet.js';
import { ROLES } from '../input-sheets/roles.js';
import type { Layout } from './layout.js';
import { type LiveSizes, liveSizes } from './live-spots.js';
import { beyond, clear, fitting, GRAINS, ifNumber, unlessMoved } from './live-terms.js';
import type { ResultColumn } from './result-column.js';

type PartColumn = ResultColumn<PartResult>;

const hasForm = ({ form }: PartResult) => form !== undefined;

const LENGTH = { quantity: 'length', page: 'measured', isComputed: hasForm } as const;

const sizeOf = (header: 'Size' | 'Wall'): PartColumn => ({
  ...LENGTH,
  header,
  width: header === 'Size' ? 11 : 10,
  json: 'size',
  help: 'The mean of the spots at 20 °C.',
  value: ({ form }) => form?.size,
  engine: '=PART_SIZE([spots])',
  live: (part, layout) => sizesOf(part, layout).size,
});

const LARGEST: PartColumn = {
  ...LENGTH,
  header: 'Largest',
  width: 11,
  json: 'largest',
  help: 'The largest spot.',
  value: ({ form }) => form?.largest,
  engine: '=LARGEST_SPOT([spots])',
  live: (part, layout) => sizesOf(part, layout).largest,
};

const SMALLEST: PartColumn = {
  ...LENGTH,
  header: 'Smallest',
  width: 11,
  json: 'smallest',
  help: 'The smallest spot.',
  value: ({ form }) => form?.smallest,
  engine: '=SMALLEST_SPOT([spots])',
  live: (part, layout) => sizesOf(part, layout).smallest,
};

const TAPER: PartColumn = {
  ...LENGTH,
  header: 'Taper',
  width: 10,
  json: 'taper',
  help: 'The greatest difference between stations at one angle.',
  value: ({ form }) => form?.taper,
  engine: '=SPOT_TAPER([spots],[stations],[angles])',
  live: (part, layout) => sizesOf(part, layout).taper,
};

const OUT_OF_ROUND: PartColumn = {
  ...LENGTH,
  header: 'Out of round',
  width: 14,
  json: 'outOfRound',
  help: 'The greatest difference between angles at one station; two-point readings miss three-lobed form.',
  value: ({ form }) => form?.outOfRound,
  engine: '=SPOT_OUT_OF_ROUND([spots],[stations],[angles])',
  live: (part, layout) => sizesOf(part, layout).outOfRound,
};

const classOf = (sizeHeader: string): PartColumn => ({
  header: 'Class',
  quantity: 'word',
  width: 9,
  json: 'class',
  help: 'The size class of Classes that the size falls in.',
  page: 'measured',
  value: ({ classification }) => classification?.text || undefined,
  engine: `=FIT_GRADE([${sizeHeader}],[classes])`,
  isComputed: ({ classification }) => (classification?.text ?? '') !== '',
});

const uncertaintyOf = (sizeHeader: 'Size' | 'Wall'): PartColumn => ({
  header: `${sizeHeader} U`,
  quantity: 'length',
  width: 10,
  json: 'sizeU',
  help: `Twice the standard uncertainty of the ${sizeHeader.toLowerCase()}; blank without a gauge.`,
  page: 'measured',
  value: ({ sizeU }) => sizeU,
  engine: '=EXPANDED_UNCERTAINTY([contributions])',
  isComputed: ({ sizeU }) => sizeU !== undefined,
});

const STATUS: PartColumn = {
  header: 'Status',
  quantity: 'word',
  width: 14,
  json: 'status',
  help: 'The verdict of the part.',
  page: 'measured',
  value: ({ status }) => status,
  live: (part, layout) => unlessMoved([layout.isPart(part, true)], liveStatus(part, layout)),
};

const statusBy = (form: string): PartColumn => ({
  ...STATUS,
  engine:
    `=PART_STATUS([Largest],[Smallest],${form},[smallest limit],[largest limit],` +
    '[out of round limit],[taper limit],[smallest inside],[taper inside],[smallest outside],' +
    '[out of round outside],[taper outside])',
  // A refused limit is in no check, and a part that is left uncorrected proves nothing: the checks alone do not tell.
  isComputed: ({ status, limitsAreRead, isUncorrected }) =>
    limitsAreRead && !isUncorrected && status !== 'bad reading' && status !== 'not measured',
});

const WHY: PartColumn = {
  header: 'Why',
  quantity: 'sentences',
  width: 50,
  json: 'why',
  help: 'What the verdict rests on, and what is odd.',
  value: ({ why }) => why,
};

const COLUMNS: Readonly<Record<PartReadings, readonly PartColumn[]>> = {
  diameters: [
    sizeOf('Size'),
    LARGEST,
    SMALLEST,
    TAPER,
    OUT_OF_ROUND,
    classOf('Size'),
    uncertaintyOf('Size'),
    statusBy('[Out of round],[Taper]'),
    WHY,
  ],
  // A wall has no form, and no limits of its own.
  walls: [sizeOf('Wall'), LARGEST, SMALLEST, classOf('Wall'), uncertaintyOf('Wall'), STATUS, WHY],
  // What is measured as a whole has the columns of its kind of fit.
  gaps: [],
  dial: [],
};

const SHAPED: readonly PartColumn[] = [
  sizeOf('Size'),
  LARGEST,
  SMALLEST,
  classOf('Size'),
  uncertaintyOf('Size'),
  statusBy(','),
  WHY,
];

/** The header of the mean of the spots. */
export function sizeHeader(readings: PartReadings): 'Size' | 'Wall' {
  return readings === 'walls' ? 'Wall' : 'Size';
}

/** The columns of a sheet of parts. */
export function partColumns({ readings, role }: Pick<PartSheet, 'readings' | 'role'>): readonly PartColumn[] {
  return ROLES[role].isShaped ? SHAPED : COLUMNS[readings];
}

/** The columns of a row are asked for one after the other. */
const lastSizes = new WeakMap<Layout, { readonly part: PartResult; readonly sizes: LiveSizes }>();

function sizesOf(part: PartResult, layout: Layout): LiveSizes {
  const last = lastSizes.get(layout);
  if (last?.part === part) return last.sizes;
  const { tables, setup } = layout.assessment.book;
  const { sheet, row } = part.row;
  const cellOf = (column: number) => layout.inputCell(sheet, row, column);
  const sizes = liveSizes(part, tables.get(sheet)!, setup.lengthUnit, cellOf);
  lastSizes.set(layout, { part, sizes });
  return sizes;
}

/** Where each check of a part's limits has its value. */
const CHECKED: Readonly<Record<string, string>> = {
  smallest: SMALLEST.header,
  largest: LARGEST.header,
  'out of round': OUT_OF_ROUND.header,
  taper: TAPER.header,
};

function liveStatus(part: PartResult, layout: Layout): string | undefined {
  const { row, status } = part;
  if (status === 'bad reading' || !part.limitsAreRead || sizesOf(part, layout).size === undefined) {
    return undefined;
  }
  const blank = `IF(${layout.ownCell(row.sheet, row.row, sizeHeader(partSheet(row.sheet).readings))}="","not measured",`;
  // The guard of a part that was never read is not known: its verdict needs another run.
  if (status === 'not measured') return `${blank}"measured: run again")`;
  if (roleOf(row).checks.length === 0 || status === 'no limits' || part.isUncorrected)
    return `${blank}"${status}")`;
  const factor = GRAINS[layout.assessment.book.setup.lengthUnit];
  const condition = (check: LimitCheck, side: 'inside' | 'outside', make: typeof beyond) => {
    const value = layout.ownCell(row.sheet, row.row, CHECKED[check.quantity]!);
    return ifNumber(
      value,
      make(
        `ROUND(${value}*${factor},0)`,
        check.side,
        layout.limitTerm(part.limits!, check.limitName, check.limit),
        check.guards[side],
      ),
    );
  };
  const { checks } = part;
  const fails = checks.map((check) => condition(check, 'outside', beyond));
  const passes = checks.map((check) => condition(check, 'inside', clear));
  return fitting(
    `${blank}IF(OR(${fails.join(',')}),"beyond limits",IF(AND(${passes.join(',')}),"within limits","undecided")))`,
  );
}
