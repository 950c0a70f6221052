/** Whether the parts that are alike vouch for a size. Sizes of a kind are gathered once, so that a long list stays fast. */
import { groupAt, largestGroup, type SizeGroup, sizeGroups } from '../../maths/agreeing-groups.js';
import type { Grain } from '../../maths/grain.js';
import { MARGINS, type Range } from '../../maths/plausibility.js';
import { alikeKey } from './expectation.js';
import type { PartResult } from './part-result.js';
import type { PartsOfBook } from './placed-fit.js';

/** What the other parts say of a part's size. */
export interface WordOfOthers {
  readonly says: 'agrees' | 'off' | 'nothing';
  /** The sizes of most of them; undefined where they differ among themselves. */
  readonly most: Range | undefined;
  /** They are of one engine, which is ground as a whole. */
  readonly isOfEngine: boolean;
}

const NOTHING: WordOfOthers = { says: 'nothing', most: undefined, isOfEngine: false };

/** Sizes of parts that are alike. */
interface Alike {
  readonly groups: readonly SizeGroup[];
  readonly count: number;
  readonly most: SizeGroup | undefined;
}

const NONE: Alike = { groups: [], count: 0, most: undefined };

export class AlikeParts {
  private readonly alike = new Map<string, Alike>();

  constructor(parts: PartsOfBook) {
    const sizes = new Map<string, Grain[]>();
    const add = (key: string, size: Grain) => {
      const own = sizes.get(key);
      if (own) own.push(size);
      else sizes.set(key, [size]);
    };
    for (const sheet of parts.sheets()) {
      for (const part of parts.of(sheet)) {
        if (!part.measured || !hasOneSize(part)) continue;
        add(alikeKey(part.row), part.measured.size);
        if (part.row.engine !== '') add(alikeKey(part.row, part.row.engine), part.measured.size);
      }
    }
    for (const [key, own] of sizes) {
      const groups = sizeGroups(own, MARGINS.peers);
      this.alike.set(key, { groups, count: own.length, most: largestGroup(groups) });
    }
  }

  /**
   * Parts of the same engine are asked first, since an engine is ground as a whole: there the larger group of sizes
   * counts. Among all parts any other one vouches for a size.
   * @param size of the part, by those of its readings that agree
   * @param isBeyondLimits limits speak against the size, which decides between groups of one count
   */
  wordOn(part: PartResult, size: Grain, isBeyondLimits: boolean): WordOfOthers {
    const itself = hasOneSize(part) ? 1 : 0;
    const engine = this.ofEngine(part);
    if (engine.count > itself) {
      const own = groupAt(engine.groups, size, MARGINS.peers);
      const ownCount = (own?.count ?? 0) + 1 - itself;
      const isOff = engine.groups.some(
        (group) => group !== own && (isBeyondLimits ? group.count >= ownCount : group.count > ownCount),
      );
      return { says: isOff ? 'off' : 'agrees', most: severalOf(engine), isOfEngine: true };
    }
    const all = this.ofAll(part);
    if (all.count <= itself) return NOTHING;
    const own = groupAt(all.groups, size, MARGINS.peers);
    const says = (own?.count ?? 0) > itself ? 'agrees' : 'off';
    return { says, most: severalOf(all), isOfEngine: false };
  }

  /** The sizes of most parts of the engine, else of most parts. */
  mostOf(part: PartResult): Range | undefined {
    return this.ofEngine(part).most ?? this.ofAll(part).most;
  }

  private ofEngine({ row }: PartResult): Alike {
    return (row.engine === '' ? undefined : this.alike.get(alikeKey(row, row.engine))) ?? NONE;
  }

  private ofAll({ row }: PartResult): Alike {
    return this.alike.get(alikeKey(row)) ?? NONE;
  }
}

/** The mean of readings that are farther apart than wear makes them is the size of nothing. */
function hasOneSize({ measured }: PartResult): boolean {
  return measured !== undefined && measured.largest - measured.smallest <= MARGINS.limits.greatest;
}

/** One part alone is no measure for another. */
function severalOf({ most }: Alike): Range | undefined {
  return most && most.count > 1 ? most : undefined;
}
