/** The result columns of Gaps. */
import type { FitResult } from '../assess/fit.js';
import { PROVEN } from '../assess/fit-verdicts.js';
import type { Layout } from './layout.js';
import { liveGap, liveGapStatus } from './live-gap.js';
import { fitting, grains } from './live-terms.js';
import { limitTerms } from './live-verdict.js';
import type { ResultColumn } from './result-column.js';

type GapColumn = ResultColumn<FitResult>;

const LENGTH = { quantity: 'length', width: 10, page: 'measured' } as const;
const MEASURED = '[spots],[goes],[stops]';
const LIMITS = '[min],[max],[inside],[outside],[service limit]';

const tightestOf = ({ clearance, feelers }: FitResult) => clearance?.tightest ?? feelers?.goes;
const loosestOf = ({ clearance, feelers }: FitResult) => clearance?.loosest ?? feelers?.stops;

/** Functions refuse a range upside down; the verdict of such a row is written as it is. */
export function isInOrder({ limits, clearance }: FitResult): boolean {
  const { clearanceMin = -Infinity, clearanceMax = Infinity } = limits ?? {};
  return clearanceMin <= clearanceMax && (!clearance || clearance.tightest <= clearance.loosest);
}

export function isProven({ status, limitsAreRead }: FitResult): boolean {
  return limitsAreRead && PROVEN.has(status);
}

export const GAP_COLUMNS: readonly GapColumn[] = [
  {
    ...LENGTH,
    header: 'Gap',
    json: 'gap',
    help: 'The mean of the readings, or the middle between the feelers.',
    value: ({ clearance }) => clearance?.clearance,
    engine: `=GAP_MEAN(${MEASURED})`,
    isComputed: ({ clearance }) => clearance !== undefined,
    live: (fit, layout) => liveGap(fit, 'clearance', layout),
  },
  {
    ...LENGTH,
    header: 'Tightest',
    json: 'tightest',
    help: 'The smallest reading, or the thickest feeler that goes in.',
    value: tightestOf,
    engine: `=GAP_TIGHTEST(${MEASURED})`,
    isComputed: (fit) => tightestOf(fit) !== undefined,
    live: (fit, layout) => liveGap(fit, 'tightest', layout),
  },
  {
    ...LENGTH,
    header: 'Loosest',
    json: 'loosest',
    help: 'The largest reading, or the thinnest feeler that does not go in.',
    value: loosestOf,
    engine: `=GAP_LOOSEST(${MEASURED})`,
    isComputed: (fit) => loosestOf(fit) !== undefined,
    live: (fit, layout) => liveGap(fit, 'loosest', layout),
  },
  {
    ...LENGTH,
    header: 'Gap U',
    json: 'gapU',
    help: 'Twice the standard uncertainty of the gap; blank without a gauge.',
    value: ({ clearanceU }) => clearanceU,
    engine: '=EXPANDED_UNCERTAINTY([u])',
    isComputed: ({ clearanceU }) => clearanceU !== undefined,
  },
  {
    header: 'Chance in range',
    quantity: 'chance',
    width: 17,
    wrappedWidth: 11,
    json: 'chance',
    help: 'The probability, 0 to 1, that the whole gap lies within its limits.',
    page: 'measured',
    value: ({ chance }) => chance,
    engine: '=GAP_CHANCE([Tightest],[Loosest],[u],[min],[max])',
    isComputed: (fit) => fit.chance !== undefined && isInOrder(fit),
    live: (fit, layout) => (fit.chance === undefined ? undefined : liveChance(fit, layout)),
  },
  {
    header: 'Status',
    quantity: 'word',
    width: 19,
    json: 'status',
    help: 'The verdict of the gap.',
    page: 'measured',
    value: ({ status }) => status,
    engine: `=IF([by feelers]=1,FEELER_VERDICT([Tightest],[Loosest],${LIMITS}),GAP_VERDICT([Tightest],[Loosest],${LIMITS}))`,
    isComputed: (fit) => isProven(fit) && isInOrder(fit),
    live: liveGapStatus,
  },
  {
    header: 'Why',
    quantity: 'sentences',
    width: 50,
    json: 'why',
    help: 'What the verdict rests on.',
    value: ({ why }) => why,
  },
];

function liveChance(fit: FitResult, layout: Layout): string | undefined {
  const { sheet, row } = fit.parts[fit.kind.leader]!.row;
  const unit = layout.assessment.book.setup.lengthUnit;
  const [gap, low, high] = ['Gap', 'Tightest', 'Loosest'].map((header) => layout.ownCell(sheet, row, header));
  const [tightest, loosest] = [grains(low!, unit), grains(high!, unit)];
  const { min, max } = limitTerms(fit, layout);
  const u = Math.sqrt(fit.variance);
  const kept = [
    ...(min === undefined ? [] : [`${tightest}>=${min}`]),
    ...(max === undefined ? [] : [`${loosest}<=${max}`]),
  ];
  const below = max === undefined ? '1' : `NORMSDIST((${max}-${loosest})/${u})`;
  const under = min === undefined ? '0' : `NORMSDIST((${min}-${tightest})/${u})`;
  const chance = u === 0 ? `IF(AND(${kept.join(',')}),1,0)` : `MAX(0,${below}-${under})`;
  return fitting(`IF(COUNT(${gap})=0,"",${chance})`);
}
