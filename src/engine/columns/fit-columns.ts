/** The result columns of Fits. */
import type { LengthUnit } from '../../maths/units.js';
import { type FitResult, markOf } from '../assess/fit.js';
import { INPUT_SHEETS } from '../book/input-sheets.js';
import { cellAddress } from '../workbook-model.js';
import type { Layout } from './layout.js';
import { fitting, GRAINS, grains, lengthOf } from './live-terms.js';
import type { ResultColumn } from './result-column.js';

/** Which size of bore, shells and journal makes each clearance. */
const EXTREMES = {
  Clearance: { bore: 'Size', wall: 'Wall', journal: 'Size', function: 'SHELL_CLEARANCE' },
  Tightest: { bore: 'Smallest', wall: 'Largest', journal: 'Largest', function: 'TIGHTEST_CLEARANCE' },
  Loosest: { bore: 'Largest', wall: 'Smallest', journal: 'Smallest', function: 'LOOSEST_CLEARANCE' },
} as const;

/** What each result column says: one record for the columns and the documentation. */
export const FIT_RESULT_HELP = {
  Clearance: 'Bore less both walls less journal, all as means.',
  Tightest: 'From the smallest bore, the largest walls and journal.',
  Loosest: 'From the largest bore, the smallest walls and journal.',
  'Clearance U': 'Twice the standard uncertainty of the clearance, gauges shared between parts allowed for.',
  'Chance in range': 'The probability, 0 to 1, that the whole fit lies in the clearance range.',
  'Shell by marks': "The shell that Selection names for the journal's and the bore's marks.",
  'Shell by size': 'The shell whose middle wall brings the clearance closest to the aim.',
  Status: 'The verdict of the fit.',
  Why: 'What the verdict rests on.',
} as const;

export function fitColumns(layout: Layout): ResultColumn<FitResult>[] {
  const { book, context } = layout.assessment;
  const unit = book.setup.lengthUnit;
  const clearance = (header: keyof typeof EXTREMES): ResultColumn<FitResult> => {
    const { bore, wall, journal, function: name } = EXTREMES[header];
    const sizes = [`bore ${bore}`, `upper ${wall}`, `lower ${wall}`, `journal ${journal}`];
    const arguments_ = sizes.map((size) => `[${size.toLowerCase().replace('wall', 'size')}]`).join(',');
    return {
      header,
      format: 'length',
      help: FIT_RESULT_HELP[header],
      engine: `=IF(ISNUMBER([strip]),[strip],${name}(${arguments_}))`,
      isComputed: (fit) => fit.clearance !== undefined,
      live: (fit) => liveClearance(fit, header, layout, unit),
    };
  };
  return [
    clearance('Clearance'),
    clearance('Tightest'),
    clearance('Loosest'),
    {
      header: 'Clearance U',
      format: 'length',
      help: FIT_RESULT_HELP['Clearance U'],
      engine: '=EXPANDED_UNCERTAINTY([u])',
      isComputed: (fit) => fit.clearanceU !== undefined,
    },
    {
      header: 'Chance in range',
      format: 'chance',
      help: FIT_RESULT_HELP['Chance in range'],
      engine: '=CHANCE_IN_RANGE([Tightest],[Loosest],[u],[min],[max])',
      isComputed: (fit) => fit.chance !== undefined && isOrdered(fit),
      plain: (fit) => fit.chance,
      live: (fit) => (fit.chance === undefined ? undefined : liveChance(fit, layout, unit)),
    },
    {
      header: 'Shell by marks',
      format: 'plain',
      help: FIT_RESULT_HELP['Shell by marks'],
      engine: '=SELECTED_SHELL([journal mark],[bore mark],[selection])',
      isComputed: ({ engineType, fit, parts }) =>
        context.selectionOf(engineType, fit).length > 0 &&
        markOf(parts.journal) !== undefined &&
        markOf(parts.bore) !== undefined,
    },
    {
      header: 'Shell by size',
      format: 'plain',
      help: FIT_RESULT_HELP['Shell by size'],
      engine: '=SHELL_GRADE([bore size],[journal size],[aim],[candidates])',
      isComputed: ({ shellBySize, candidates }) => shellBySize !== undefined && candidates.length > 0,
    },
    {
      header: 'Status',
      format: 'plain',
      help: FIT_RESULT_HELP.Status,
      engine: '=FIT_STATUS([Tightest],[Loosest],[min],[max],[u],[service limit],[confidence])',
      isComputed: (fit) => fit.chance !== undefined && fit.limitsAreRead && isOrdered(fit),
      plain: ({ status }) => status,
      live: (fit) => liveStatus(fit, layout, unit),
    },
    {
      header: 'Why',
      format: 'text',
      help: FIT_RESULT_HELP.Why,
      plain: ({ why }) => why.join('; ') || undefined,
    },
  ];
}

/** Functions refuse a range upside down; the verdict of such a fit is written as it is. */
function isOrdered({ limits, clearance }: FitResult): boolean {
  return limits!.clearanceMin! <= limits!.clearanceMax! && clearance!.tightest <= clearance!.loosest;
}

function liveClearance(
  fit: FitResult,
  header: keyof typeof EXTREMES,
  layout: Layout,
  unit: LengthUnit,
): string | undefined {
  if (fit.isStrip) return liveStrip(fit, layout, unit);
  const { bore, upper, lower, journal } = fit.parts;
  if (!bore || !upper || !lower || !journal) return undefined;
  if (fit.status === 'unclear' || fit.status === 'bad reading') return undefined;
  const { bore: boreHeader, wall, journal: journalHeader } = EXTREMES[header];
  const cells = [
    layout.partCell(bore, boreHeader),
    layout.partCell(upper, wall),
    layout.partCell(lower, wall),
    layout.partCell(journal, journalHeader),
  ];
  const term = `ROUND((${cells.join('-')})*${GRAINS[unit]},0)`;
  return `IF(COUNT(${cells.join(',')})<4,"",${lengthOf(term, unit)})`;
}

function liveStrip(fit: FitResult, layout: Layout, unit: LengthUnit): string | undefined {
  if (layout.makesFits) {
    const column = INPUT_SHEETS.Fits.columns.findIndex(({ header }) => header === 'Strip reading');
    return lengthOf(grains(cellAddress(layout.fitRow(fit), column), unit), unit);
  }
  const table = layout.assessment.book.tables.get('Fits')!;
  const column = table.columns.get('Strip reading')!;
  const content = table.sheet.rows[fit.source!.row]?.[column.column]?.content;
  if (content?.kind !== 'number' || column.unit) return undefined;
  return lengthOf(grains(cellAddress(fit.source!.row, column.column), unit), unit);
}

function terms(fit: FitResult, layout: Layout, unit: LengthUnit) {
  const own = (header: string) => layout.ownCell('Fits', layout.fitRow(fit), header);
  return {
    clearance: own('Clearance'),
    tightest: grains(own('Tightest'), unit),
    loosest: grains(own('Loosest'), unit),
  };
}

function liveChance(fit: FitResult, layout: Layout, unit: LengthUnit): string {
  const { clearance, tightest, loosest } = terms(fit, layout, unit);
  const min = layout.limitTerm(fit.limits!, 'Clearance min', fit.limits!.clearanceMin!);
  const max = layout.limitTerm(fit.limits!, 'Clearance max', fit.limits!.clearanceMax!);
  const u = Math.sqrt(fit.variance);
  const chance =
    u === 0
      ? `IF(AND(${tightest}>=${min},${loosest}<=${max}),1,0)`
      : `MAX(0,NORMSDIST((${max}-${loosest})/${u})-NORMSDIST((${min}-${tightest})/${u}))`;
  return `IF(COUNT(${clearance})=0,"",${chance})`;
}

function liveStatus(fit: FitResult, layout: Layout, unit: LengthUnit): string | undefined {
  if (!fit.limitsAreRead || liveClearance(fit, 'Clearance', layout, unit) === undefined) return undefined;
  const { clearance, tightest, loosest } = terms(fit, layout, unit);
  const blank = `IF(COUNT(${clearance})=0,"not measured",`;
  // The guard of a fit that was never measured is not known: its verdict needs another run.
  if (fit.status === 'not measured') return `${blank}"measured: run again")`;
  if (fit.chance === undefined) return `${blank}"${fit.status}")`;
  const { clearanceMin, clearanceMax, serviceLimit } = fit.limits!;
  const min = layout.limitTerm(fit.limits!, 'Clearance min', clearanceMin!);
  const max = layout.limitTerm(fit.limits!, 'Clearance max', clearanceMax!);
  const service =
    serviceLimit === undefined ? undefined : layout.limitTerm(fit.limits!, 'Service limit', serviceLimit);
  const { guard } = fit;
  const within = service
    ? `IF(AND(${tightest}-${guard}>=${min},${loosest}-${guard}>${max},${loosest}+${guard}<=${service}),"within service limit","undecided")`
    : '"undecided"';
  return fitting(
    `${blank}IF(${tightest}+${guard}<${min},"tight",IF(${loosest}-${guard}>${service ?? max},"loose",` +
      `IF(AND(${tightest}-${guard}>=${min},${loosest}+${guard}<=${max}),"in range",${within}))))`,
  );
}
