/** The result columns of Journals, Rods, Cases and Shells. */
import type { LimitCheck } from '../../maths/conformity.js';
import type { PartResult } from '../assess/part.js';
import type { ClassOf } from '../book/book.js';
import type { EngineInputs } from './engine-inputs.js';
import type { Layout } from './layout.js';
import { type LiveSizes, liveSizes } from './live-spots.js';
import { beyond, clear, fitting, GRAINS, ifNumber } from './live-terms.js';
import type { ResultColumn } from './result-column.js';

/** Where each check of a part's limits has its value and its limit. */
const CHECKED: Readonly<Record<string, string>> = {
  smallest: 'Smallest',
  largest: 'Largest',
  'out of round': 'Out of round',
  taper: 'Taper',
};

/** What each result column says: one record for the columns and the documentation. */
export const PART_RESULT_HELP = {
  Size: 'The mean of the spots at 20 °C.',
  Wall: 'The mean of the spots at 20 °C.',
  Largest: 'The largest spot.',
  Smallest: 'The smallest spot.',
  Taper: 'The greatest difference between stations at one angle.',
  'Out of round':
    'The greatest difference between angles at one station; two-point readings miss three-lobed form.',
  Class: 'The size class of Classes that the size falls in.',
  'Size U': 'Twice the standard uncertainty of the size; blank without a gauge.',
  'Wall U': 'Twice the standard uncertainty of the wall; blank without a gauge.',
  Status: 'The verdict of the part.',
  Why: 'What the verdict rests on, and what is odd.',
} as const;

export function partColumns(inputs: EngineInputs, layout: Layout, of: ClassOf): ResultColumn<PartResult>[] {
  const { book } = layout.assessment;
  const unit = book.setup.lengthUnit;
  const cell = ({ row }: PartResult, header: string) => layout.ownCell(row.sheet, row.row, header);
  const sizeHeader = of === 'shell' ? 'Wall' : 'Size';
  const memo = new Map<PartResult, LiveSizes>();
  const live = (part: PartResult): LiveSizes => {
    const sizes = memo.get(part) ?? liveSizes(part, book.tables.get(part.row.sheet)!, unit);
    memo.set(part, sizes);
    return sizes;
  };
  const ofSpots = (name: string) => (part: PartResult) =>
    part.form ? `=${name}(${inputs.spotsOf(part)})` : undefined;
  const ofForm = (name: string) => (part: PartResult) =>
    part.form && `=${name}(${inputs.spotsOf(part)},${inputs.stationsOf(part)},${inputs.anglesOf(part)})`;

  const size: ResultColumn<PartResult> = {
    header: sizeHeader,
    format: 'length',
    help: PART_RESULT_HELP[sizeHeader],
    engine: ofSpots('PART_SIZE'),
    live: (part) => live(part).size,
  };
  const largest: ResultColumn<PartResult> = {
    header: 'Largest',
    format: 'length',
    help: PART_RESULT_HELP.Largest,
    engine: ofSpots('LARGEST_SPOT'),
    live: (part) => live(part).largest,
  };
  const smallest: ResultColumn<PartResult> = {
    header: 'Smallest',
    format: 'length',
    help: PART_RESULT_HELP.Smallest,
    engine: ofSpots('SMALLEST_SPOT'),
    live: (part) => live(part).smallest,
  };
  const taper: ResultColumn<PartResult> = {
    header: 'Taper',
    format: 'length',
    help: PART_RESULT_HELP.Taper,
    engine: ofForm('SPOT_TAPER'),
    live: (part) => live(part).taper,
  };
  const outOfRound: ResultColumn<PartResult> = {
    header: 'Out of round',
    format: 'length',
    help: PART_RESULT_HELP['Out of round'],
    engine: ofForm('SPOT_OUT_OF_ROUND'),
    live: (part) => live(part).outOfRound,
  };
  const sizeClass: ResultColumn<PartResult> = {
    header: 'Class',
    format: 'plain',
    help: PART_RESULT_HELP.Class,
    engine: (part) => {
      const classes = inputs.classesOf(part, of);
      return part.form && classes ? `=FIT_GRADE(${cell(part, sizeHeader)},${classes})` : undefined;
    },
  };
  const uncertainty: ResultColumn<PartResult> = {
    header: `${sizeHeader} U`,
    format: 'length',
    help: PART_RESULT_HELP[`${sizeHeader} U`],
    engine: (part) =>
      part.sizeU === undefined ? undefined : `=EXPANDED_UNCERTAINTY(${inputs.contributionsOf(part)})`,
  };
  const status: ResultColumn<PartResult> = {
    header: 'Status',
    format: 'plain',
    help: PART_RESULT_HELP.Status,
    engine: (part) => {
      // A refused limit is in no check: the checks alone would pass over it.
      if (of === 'shell' || !part.limitsAreRead) return part.status;
      if (part.status === 'bad reading' || part.status === 'not measured') return part.status;
      return statusFormula(part, inputs, (header) => cell(part, header));
    },
    live: (part) => liveStatus(part, live(part), layout, cell),
  };
  const why: ResultColumn<PartResult> = {
    header: 'Why',
    format: 'text',
    help: PART_RESULT_HELP.Why,
    engine: (part) => part.why.join('; ') || undefined,
  };
  return of === 'shell'
    ? [size, largest, smallest, sizeClass, uncertainty, status, why]
    : [size, largest, smallest, taper, outOfRound, sizeClass, uncertainty, status, why];
}

function statusFormula(part: PartResult, inputs: EngineInputs, own: (header: string) => string): string {
  const limit = (quantity: string) => {
    const check = part.checks.find((candidate) => candidate.quantity === quantity);
    return check ? inputs.number(check.limit) : '';
  };
  const limits = ['smallest', 'largest', 'out of round', 'taper'].map(limit);
  const values = ['Largest', 'Smallest', 'Out of round', 'Taper'].map(own);
  const guards = [part.guards.extremes, part.guards.form].map((guard) => inputs.number(guard));
  return `=PART_STATUS(${[...values, ...limits, ...guards].join(',')})`;
}

function liveStatus(
  part: PartResult,
  sizes: LiveSizes,
  layout: Layout,
  cell: (part: PartResult, header: string) => string,
): string | undefined {
  if (part.status === 'bad reading' || !part.limitsAreRead || sizes.size === undefined) return undefined;
  const isShell = part.row.sheet === 'Shells';
  const blank = `IF(${cell(part, isShell ? 'Wall' : 'Size')}="","not measured",`;
  // The guard of a part that was never read is not known: its verdict needs another run.
  if (part.status === 'not measured') return `${blank}"measured: run again")`;
  if (isShell || part.status === 'no limits') return `${blank}"${part.status}")`;
  const factor = GRAINS[layout.assessment.book.setup.lengthUnit];
  const condition = (check: LimitCheck, make: typeof beyond) => {
    const value = cell(part, CHECKED[check.quantity]!);
    return ifNumber(
      value,
      make(
        `ROUND(${value}*${factor},0)`,
        check.side,
        layout.limitTerm(part.limits!, check.limitName, check.limit),
        check.guard,
      ),
    );
  };
  const fails = part.checks.map((check) => condition(check, beyond));
  const passes = part.checks.map((check) => condition(check, clear));
  return fitting(
    `${blank}IF(OR(${fails.join(',')}),"beyond limits",IF(AND(${passes.join(',')}),"within limits","undecided")))`,
  );
}
