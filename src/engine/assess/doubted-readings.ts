/**
 * Readings that look like a slip of the hand: a spot off the other spots of its part, or a part off its limits and the
 * parts that are alike. They ask to look again; no verdict and no value changes.
 */
import { agreeingGroups } from '../../maths/agreeing-groups.js';
import { type Grain, grainOfRatio, meanGrain } from '../../maths/grain.js';
import {
  beyondRange,
  doubtsOf,
  type Expectation,
  MARGINS,
  type Range,
  rangeOfValues,
  type Slip,
  slipOf,
} from '../../maths/plausibility.js';
import type { LengthUnit } from '../../maths/units.js';
import type { Reading } from '../book/book.js';
import { scanNumber } from '../book/number-text.js';
import { isLength } from '../book/table.js';
import { partSheet } from '../input-sheets/index.js';
import { AlikeParts } from './alike-parts.js';
import type { Context } from './context.js';
import { kindOfReading, type SizesOfFit, type UsualSizes, UsualSizesOfBook } from './expectation.js';
import type { FitResult } from './fit.js';
import { roleOf } from './part-checks.js';
import type { PartResult } from './part-result.js';
import { type PartsOfBook, partsOf } from './placed-fit.js';

export interface DoubtedReading {
  readonly part: PartResult;
  readonly reading: Reading;
  /** As read. */
  readonly found: Grain;
  /** The unit that it was typed in. */
  readonly unit: LengthUnit;
  /** Other readings of the part that agree with it. */
  readonly alike: readonly Reading[];
  /** What it is far from, the nearest first; without the slip it would agree with the first. */
  readonly farFrom: readonly Known[];
  /** Undefined where no slip explains the reading. */
  readonly slip: Slip | undefined;
}

/** Something that is known of a reading. */
export interface Known {
  readonly what: UsualSizes['source'] | 'the other spots' | 'the other parts';
  readonly range: Range;
}

export function doubtedReadings(
  parts: PartsOfBook,
  fits: readonly FitResult[],
  context: Context,
): DoubtedReading[] {
  const search = new Search(parts, fits, context);
  // A gap may lie anywhere, and a dial shows from any zero.
  return parts.all().flatMap((part) => (partSheet(part.row.sheet).isOfPlaces ? [] : search.of(part)));
}

class Search {
  private readonly usual: UsualSizesOfBook;
  private readonly alike: AlikeParts;
  private fitsOfParts: ReadonlyMap<PartResult, readonly FitResult[]> | undefined;
  private readonly doubted = new Set<PartResult>();

  constructor(
    parts: PartsOfBook,
    private readonly fits: readonly FitResult[],
    private readonly context: Context,
  ) {
    this.usual = new UsualSizesOfBook(context);
    this.alike = new AlikeParts(parts);
  }

  of(part: PartResult): DoubtedReading[] {
    const { measured, row } = part;
    if (!measured) return [];
    const kind = kindOfReading(row);
    const margin = MARGINS.sisters[kind];
    const values = row.readings.map(({ mm }) => grainOfRatio(mm));
    // Two stations of an oval and tapered part differ by design.
    const groups =
      hasForm(part) && spreadOf(values) > margin ? agreeingGroups(values, margin) : [[...values.keys()]];
    const usual = this.usual.of(row, () => this.sizesOfFit(part));
    const main = groups.length === 1 ? groups[0]! : this.mainGroup(part, groups, values, usual);
    const doubted = [
      ...groups.flatMap((group) => (group === main ? [] : this.spotOff(part, group, main, values, usual))),
      ...this.partOff(part, main, values, usual),
    ];
    if (doubted.length > 0) this.doubted.add(part);
    return doubted;
  }

  /** The group of readings that is right: the one that others or its limits bear out, else the largest, else the last. */
  private mainGroup(
    part: PartResult,
    groups: readonly number[][],
    values: readonly Grain[],
    usual: UsualSizes,
  ): number[] {
    const means = new Map(groups.map((group) => [group, meanOf(group, values)]));
    const most = this.alike.mostOf(part);
    const bornOut = [
      groups.filter((group) => most && beyondRange(most, means.get(group)!) <= MARGINS.peers),
      groups.filter((group) => usual.limits && isUsual(means.get(group)!, usual)),
    ].find((those) => those.length === 1);
    if (bornOut) return bornOut[0]!;
    return groups.reduce((best, group) => (group.length >= best.length ? group : best));
  }

  /** The first of a group of readings that disagree with those that are right. */
  private spotOff(
    part: PartResult,
    group: readonly number[],
    main: readonly number[],
    values: readonly Grain[],
    usual: UsualSizes,
  ): DoubtedReading[] {
    const at = group[0]!;
    const sisters = main.map((other) => values[other]!);
    const expectation = { ...NOTHING_KNOWN, kind: kindOfReading(part.row), sisters };
    const others: Known = { what: 'the other spots', range: rangeOfValues(sisters)! };
    const doubt = this.doubt(part, group, values, [others], expectation);
    if (doubt.slip) return [doubt];
    const most = this.alike.mostOf(part);
    const known = usual.limits
      ? { what: usual.source, range: usual.limits }
      : most && { what: 'the other parts' as const, range: most };
    const value = values[at]!;
    const isFar = usual.limits
      ? !isUsual(value, usual) && beyondRange(usual.limits, value) > this.wearOf(part, value, usual.limits)
      : !most || beyondRange(most, value) > MARGINS.peers;
    const least = known ? this.wearOf(part, value, others.range) : MARGINS.limits.greatest;
    if (!isFar || beyondRange(others.range, value) <= least) return [];
    return [{ ...doubt, farFrom: [others, ...(known ? [known] : [])] }];
  }

  /** How far a worn part may be off without a word: wear takes material away, and never adds any. */
  private wearOf({ row }: PartResult, value: Grain, { low, high }: Range): Grain {
    const isOuter = partSheet(row.sheet).role === 'outer';
    const isWorn = isOuter ? value > high : value < low;
    return isWorn ? MARGINS.limits.greatest : 0;
  }

  /** The first of the readings of a part that is off as a whole. */
  private partOff(
    part: PartResult,
    main: readonly number[],
    values: readonly Grain[],
    usual: UsualSizes,
  ): DoubtedReading[] {
    const size = meanOf(main, values);
    const { limits, undersizes, source } = usual;
    if (limits && isUsual(size, usual)) return [];
    const { says, most, isOfEngine } = this.alike.wordOn(part, size, limits !== undefined);
    if (says === 'agrees' || this.isBorneOut(part)) return [];
    const kind = kindOfReading(part.row);
    if (limits) {
      const known: Known[] = [
        { what: source, range: limits },
        ...(most && says === 'off' ? [{ what: 'the other parts', range: most } as const] : []),
      ];
      const doubt = this.doubt(part, main, values, known, { ...NOTHING_KNOWN, kind, limits, undersizes });
      const isFar = [limits, ...undersizes].every((range) => beyondRange(range, size) > MARGINS.peers);
      return doubt.slip || isFar ? [doubt] : [];
    }
    // Without limits two sizes do not tell which of them is right, and engines of no known type need not be alike.
    if (says !== 'off' || !most || beyondRange(most, size) <= MARGINS.peers) return [];
    if (!isOfEngine && !part.row.engineType) return [];
    const known: Known[] = [{ what: 'the other parts', range: most }];
    return [
      this.doubt(part, main, values, known, { ...NOTHING_KNOWN, kind, sisters: [most.low, most.high] }),
    ];
  }

  private doubt(
    part: PartResult,
    group: readonly number[],
    values: readonly Grain[],
    farFrom: readonly Known[],
    expectation: Expectation,
  ): DoubtedReading {
    const [reading, ...alike] = group.map((at) => part.row.readings[at]!);
    const found = values[group[0]!]!;
    const unit = this.unitOf(part, reading!);
    const slip = slipOf(found, expectation, { typed: unit, book: this.context.book.setup.lengthUnit });
    return { part, reading: reading!, found, unit, alike, farFrom, slip };
  }

  /** A text names its own unit. */
  private unitOf({ row }: PartResult, { column }: Reading): LengthUnit {
    const cell = this.context.book.tables.get(row.sheet)?.sheet.rows[row.row]?.[column.column];
    const unit = cell?.content?.kind === 'text' ? scanNumber(cell.content.value)?.unit : undefined;
    return isLength(unit) ? unit : column.unit;
  }

  /** Whether a fit comes out right with the part as it was read: a reground journal in its shells. */
  private isBorneOut(part: PartResult): boolean {
    const right = new Set(['in range', 'within service limit', 'undecided']);
    return this.fitsOf(part).some(
      ({ status, isStrip, isUncorrected }) => right.has(status) && !isStrip && !isUncorrected,
    );
  }

  private sizesOfFit(part: PartResult): SizesOfFit | undefined {
    const [fit, ...more] = this.fitsOf(part);
    const { bore, journal } = fit?.parts ?? {};
    if (!fit || more.length > 0 || !bore?.measured || !journal?.measured) return undefined;
    if (this.doubted.has(bore) || this.doubted.has(journal)) return undefined;
    return { bore: bore.measured.size, journal: journal.measured.size, limits: fit.limits };
  }

  private fitsOf(part: PartResult): readonly FitResult[] {
    this.fitsOfParts ??= fitsByPart(this.fits);
    return this.fitsOfParts.get(part) ?? [];
  }
}

const NOTHING_KNOWN = { limits: undefined, sisters: [], peers: [] } as const;

function hasForm(part: PartResult): boolean {
  const { readings } = partSheet(part.row.sheet);
  return readings === 'walls' || roleOf(part.row).checks.some(({ quantity }) => quantity === 'taper');
}

function isUsual(value: Grain, { limits, undersizes }: UsualSizes): boolean {
  return doubtsOf(value, { ...NOTHING_KNOWN, kind: 'diameter', limits, undersizes }).length === 0;
}

function spreadOf(values: readonly Grain[]): Grain {
  const range = rangeOfValues(values);
  return range ? range.high - range.low : 0;
}

function meanOf(group: readonly number[], values: readonly Grain[]): Grain {
  return meanGrain(group.map((at) => values[at]!));
}

function fitsByPart(fits: readonly FitResult[]): Map<PartResult, FitResult[]> {
  const found = new Map<PartResult, FitResult[]>();
  for (const fit of fits) {
    for (const part of new Set(partsOf(fit))) {
      const own = found.get(part);
      if (own) own.push(fit);
      else found.set(part, [fit]);
    }
  }
  return found;
}
