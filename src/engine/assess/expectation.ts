/** What the readings of a part will usually be, by the tables of its book: the bench and `check` go by the same. */
import { type Grain, roundToWhole } from '../../maths/grain.js';
import { type Expectation, type Range, rangeOfValues } from '../../maths/plausibility.js';
import type { LimitsRow, PartRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { partSheet } from '../input-sheets/index.js';
import type { RoleCheck } from '../input-sheets/roles.js';
import { type Context, kindKey } from './context.js';
import { classesOfPart, roleOf } from './part-checks.js';
import { stepsOf } from './undersizes.js';

/** The sizes that a part may have, and which table says so. */
export interface UsualSizes {
  readonly limits: Range | undefined;
  /** Of the steps that it may be ground to. */
  readonly undersizes: readonly Range[];
  /** In a sentence behind `agree with`. */
  readonly source: 'Limits' | 'its classes' | 'bore, journal and clearance';
}

/** What a first wall may be where no class of shells is typed: the sizes that its fit has by now. */
export interface SizesOfFit {
  readonly bore: Grain;
  readonly journal: Grain;
  readonly limits: LimitsRow | undefined;
}

export function kindOfReading({ sheet }: PartRow): Expectation['kind'] {
  return partSheet(sheet).readings === 'walls' ? 'wall' : 'diameter';
}

/** The usual sizes of the parts of a book, looked up once for each sheet, engine type and Fit. */
export class UsualSizesOfBook {
  private readonly known = new Map<string, UsualSizes>();

  constructor(private readonly context: Context) {}

  /** @param fitOf the fit of a wall, asked for where no class of shells is typed */
  of(row: PartRow, fitOf: () => SizesOfFit | undefined): UsualSizes {
    const key = alikeKey(row);
    const typed = this.known.get(key) ?? this.typedSizes(row);
    this.known.set(key, typed);
    if (typed.limits || partSheet(row.sheet).role !== 'wall') return typed;
    const fit = fitOf();
    const limits = fit && wallsThatFit(fit);
    return limits ? { ...typed, limits, source: 'bore, journal and clearance' } : typed;
  }

  private typedSizes(row: PartRow): UsualSizes {
    const limits = this.context.limitsOf(row.engineType, row.fit);
    const firstOf = ({ limits: keys }: RoleCheck) =>
      keys.map((key) => limits?.[key]).find((limit) => typeof limit === 'number');
    const { checks, classOf } = roleOf(row);
    const [least, greatest] = checks;
    if (least && greatest) {
      const undersizes = classOf === 'journal' ? stepsOf(this.context, row.engineType ?? '', row.fit) : [];
      return {
        limits: rangeBetween(firstOf(least), firstOf(greatest)),
        undersizes: undersizes.map(({ from, to }) => ({ low: from, high: to })),
        source: 'Limits',
      };
    }
    const { classes } = classesOfPart(row, this.context);
    const kind = kindKey(row.engineType ?? '', row.fit);
    const sold = this.context.book.newShells.filter(
      ({ engineType, fit }) => kindKey(engineType, fit) === kind,
    );
    const ends = [...classes, ...sold].flatMap(({ from, to }) => [from ?? [], to ?? []].flat());
    return { limits: rangeOfValues(ends), undersizes: [], source: 'its classes' };
  }
}

function rangeBetween(low: Grain | undefined, high: Grain | undefined): Range | undefined {
  return low === undefined && high === undefined ? undefined : { low: low ?? high!, high: high ?? low! };
}

/** Half of what bore and journal leave for both walls, over the range of the clearance. */
function wallsThatFit({ bore, journal, limits }: SizesOfFit): Range | undefined {
  if (limits?.clearanceMin === undefined || limits.clearanceMax === undefined) return undefined;
  const room = bore - journal;
  const low = roundToWhole((room - limits.clearanceMax) / 2);
  const high = roundToWhole((room - limits.clearanceMin) / 2);
  return low > 0 && low <= high ? { low, high } : undefined;
}

/** Parts that are alike: of one sheet, engine type and Fit, measured alike, and of one engine where one is given. */
export function alikeKey({ sheet, engineType, fit, hasShells }: PartRow, engine?: string): string {
  const kind = `${sheet}${hasShells ? ', shells in' : ''}\u0000${kindKey(engineType ?? '', fit)}`;
  return engine === undefined ? kind : `${kind}\u0000${nameKey(engine)}`;
}
