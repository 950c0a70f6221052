/** The result columns of Journals, Rods, Cases and Shells. */
import type { LimitCheck } from '../../maths/conformity.js';
import type { PartResult } from '../assess/part.js';
import type { ClassOf } from '../book/book.js';
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

export function partColumns(layout: Layout, of: ClassOf): ResultColumn<PartResult>[] {
  const { book, context } = layout.assessment;
  const unit = book.setup.lengthUnit;
  const cell = ({ row }: PartResult, header: string) => layout.ownCell(row.sheet, row.row, header);
  const sizeHeader = of === 'shell' ? 'Wall' : 'Size';
  // The columns of a row are asked for one after the other.
  let last: { readonly part: PartResult; readonly sizes: LiveSizes } | undefined;
  const live = (part: PartResult): LiveSizes => {
    if (last?.part !== part) last = { part, sizes: liveSizes(part, book.tables.get(part.row.sheet)!, unit) };
    return last.sizes;
  };
  const hasForm = ({ form }: PartResult) => form !== undefined;
  const length = (
    header: keyof typeof PART_RESULT_HELP,
    engine: string,
    formula: keyof LiveSizes,
  ): ResultColumn<PartResult> => ({
    header,
    format: 'length',
    help: PART_RESULT_HELP[header],
    engine,
    isComputed: hasForm,
    live: (part) => live(part)[formula],
  });
  const columns: ResultColumn<PartResult>[] = [
    length(sizeHeader, '=PART_SIZE([spots])', 'size'),
    length('Largest', '=LARGEST_SPOT([spots])', 'largest'),
    length('Smallest', '=SMALLEST_SPOT([spots])', 'smallest'),
    length('Taper', '=SPOT_TAPER([spots],[stations],[angles])', 'taper'),
    length('Out of round', '=SPOT_OUT_OF_ROUND([spots],[stations],[angles])', 'outOfRound'),
    {
      header: 'Class',
      format: 'plain',
      help: PART_RESULT_HELP.Class,
      engine: `=FIT_GRADE([${sizeHeader}],[classes])`,
      isComputed: ({ form, row }) =>
        form !== undefined && context.classesOf(row.engineType, row.fit, of).classes.length > 0,
    },
    {
      header: `${sizeHeader} U`,
      format: 'length',
      help: PART_RESULT_HELP[`${sizeHeader} U`],
      engine: '=EXPANDED_UNCERTAINTY([contributions])',
      isComputed: ({ sizeU }) => sizeU !== undefined,
    },
    {
      header: 'Status',
      format: 'plain',
      help: PART_RESULT_HELP.Status,
      ...(of !== 'shell' && {
        engine:
          '=PART_STATUS([Largest],[Smallest],[Out of round],[Taper],[smallest limit],[largest limit],' +
          '[out of round limit],[taper limit],[extremes guard],[form guard])',
      }),
      // A refused limit is in no check: the checks alone would pass over it.
      isComputed: ({ status, limitsAreRead }) =>
        limitsAreRead && status !== 'bad reading' && status !== 'not measured',
      plain: ({ status }) => status,
      live: (part) => liveStatus(part, live(part), layout, cell),
    },
    {
      header: 'Why',
      format: 'text',
      help: PART_RESULT_HELP.Why,
      plain: ({ why }) => why.join('; ') || undefined,
    },
  ];
  // A wall has no form.
  return of === 'shell'
    ? columns.filter(({ header }) => header !== 'Taper' && header !== 'Out of round')
    : columns;
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
