/** One fastener: its readings, what they prove about its limits, whether it is to be renewed. */
import type { LimitCheck } from '../../maths/conformity.js';
import { fastenerVerdict, type ProvenFastenerVerdict } from '../../maths/fastener-verdict.js';
import { type Grain, grainOfRatio } from '../../maths/grain.js';
import { extremesGuards, type Guards, NO_GUARDS } from '../../maths/guards.js';
import { CERTAIN, readVariance } from '../../maths/uncertainty.js';
import type { Book } from '../book/book.js';
import { type FastenerRow, isOfLength } from '../book/fasteners.js';
import { reasonOf } from '../book/problems.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import type { Context, GaugeUse } from './context.js';
import { fastenerFindings } from './fastener-checks.js';
import { checkReasons } from './part-checks.js';
import { type ReadSpot, readSpots } from './part-result.js';

export type FastenerStatus = 'bad reading' | ProvenFastenerVerdict;

export interface FastenerResult {
  readonly row: FastenerRow;
  readonly status: FastenerStatus;
  readonly why: readonly string[];
  readonly lengths: readonly ReadSpot[];
  readonly necks: readonly ReadSpot[];
  readonly longest: Grain | undefined;
  readonly thinnest: Grain | undefined;
  /** One for each limit that is typed. */
  readonly checks: readonly LimitCheck[];
}

export function assessFasteners({ fasteners }: Book, context: Context): FastenerResult[] {
  const findings = fastenerFindings(fasteners);
  return fasteners.map((row) => {
    const found = assessFastener(row, context);
    return { ...found, why: [...found.why, ...(findings.get(row) ?? [])] };
  });
}

function assessFastener(row: FastenerRow, context: Context): FastenerResult {
  const lookup = context.gaugeOf(row.gauge);
  const isBad = 'bad' in lookup;
  const faults = [...row.bad.map(reasonOf), ...(isBad ? lookup.bad : [])];
  const remarks = isBad ? [] : lookup.why;
  if (faults.length > 0) {
    const nothing = { lengths: [], necks: [], longest: undefined, thinnest: undefined, checks: [] };
    return { row, status: 'bad reading', why: [...faults, ...remarks], ...nothing };
  }
  const gauge = isBad ? undefined : lookup.gauge;
  const spots = readSpots(
    row.readings,
    row.readings.map(({ mm }) => grainOfRatio(mm)),
  );
  const lengths = spots.filter(isOfLength);
  const necks = spots.filter((spot) => !isOfLength(spot));
  const values = (own: readonly ReadSpot[]) => own.map(({ value }) => value);
  const longest = lengths.length > 0 ? Math.max(...values(lengths)) : undefined;
  const thinnest = necks.length > 0 ? Math.min(...values(necks)) : undefined;
  const { confidence } = context.book.setup;
  const checks = limitsOf(row, { longest, thinnest }, (of) =>
    guardsOf(of === 'longest' ? lengths : necks, gauge, confidence),
  );
  const status = fastenerVerdict(row.renew, { longest, thinnest }, checks);
  const isUncertain = spots.length > 0 && row.gauge === undefined;
  const why = [
    ...statusReasons(row, status, checks, context),
    ...remarks,
    ...(isUncertain ? ['uncertainty not given: no gauge'] : []),
  ];
  return { row, status, why, lengths, necks, longest, thinnest, checks };
}

type Extreme = 'longest' | 'thinnest';

const LIMITS = [
  { of: 'longest', side: 'at most', key: 'lengthMax', reading: 'Length 1' },
  { of: 'thinnest', side: 'at least', key: 'neckMin', reading: 'Neck 1' },
] as const;

function limitsOf(
  row: FastenerRow,
  sizes: Readonly<Record<Extreme, Grain | undefined>>,
  guardsFor: (of: Extreme) => Guards,
): LimitCheck[] {
  return LIMITS.flatMap(({ of, side, key }): LimitCheck[] => {
    const limit = row[key];
    if (limit === undefined) return [];
    const { header } = FASTENERS.columns[key];
    return [{ quantity: of, value: sizes[of], side, limitName: header, limit, guards: guardsFor(of) }];
  });
}

/** Of the extreme of these spots; temperature and expansion have no term in it. */
function guardsOf(spots: readonly ReadSpot[], gauge: GaugeUse | undefined, confidence: number): Guards {
  if (!gauge || spots.length === 0) return NO_GUARDS;
  const repeats = Math.min(...spots.map(({ readings }) => readings.length));
  return extremesGuards(confidence, {
    ...CERTAIN,
    spots: spots.length,
    readVariance: readVariance(gauge.random, repeats),
    systematic: gauge.systematic,
  });
}

function statusReasons(
  { renew }: FastenerRow,
  status: FastenerStatus,
  checks: readonly LimitCheck[],
  context: Context,
): string[] {
  const unit = context.book.setup.lengthUnit;
  const read = checks.filter(({ value }) => value !== undefined);
  const unread = LIMITS.filter(({ of }) =>
    checks.some(({ quantity, value }) => quantity === of && value === undefined),
  );
  switch (status) {
    case 'renew': {
      const beyond = checkReasons(read, 'beyond limits', unit);
      return renew === 'always' ? ['Renew is always', ...beyond] : beyond;
    }
    case 'not measured': {
      const { reading } = LIMITS[renew === 'by length' ? 0 : 1];
      return [`Renew is ${renew}: measure it, in a column ${reading}`];
    }
    case 'undecided':
      return [
        ...checkReasons(read, 'undecided', unit),
        ...unread.map(
          ({ key, reading }) =>
            `${FASTENERS.columns[key].header} is typed: measure it, in a column ${reading}`,
        ),
      ];
    default:
      return [];
  }
}
