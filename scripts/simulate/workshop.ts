/**
 * A workshop that knows the truth: true parts, gauges with true errors, and readings made with them. All
 * lengths in micrometres, at 20 °C where they are true.
 */
import { BUILT_IN_EXPANSION } from '../../src/maths/expansion.js';
import { TEMPERATURE_DIFFERENCE_KELVIN } from '../../src/maths/uncertainty.js';
import type { Draws } from './draws.js';
import { type GaugeSpec, type SetUp, SLOTS, type Slot } from './set-ups.js';

export interface TruePart {
  readonly slot: Slot;
  /** True size of each spot, by the header of its column. */
  readonly spots: Readonly<Record<string, number>>;
  /** How much warmer than the gauge the part is, K: one value for all of its spots. */
  readonly warmer: number;
}

export interface TrueFit {
  readonly parts: Readonly<Record<Slot, TruePart>>;
  readonly tightest: number;
  readonly loosest: number;
}

/** Where the true fit is put: one of its extremes, in micrometres. */
export type Target = { readonly tightest: number } | { readonly loosest: number };

const NOMINAL: Readonly<Record<Slot, number>> = { journal: 50_000, bore: 53_040, upper: 1500, lower: 1500 };
/** Half the spread of true spots about the part's mean. */
const FORM: Readonly<Record<Slot, number>> = { journal: 2, bore: 2, upper: 1, lower: 1 };
const SPOTS: Readonly<Record<Slot, readonly string[]>> = {
  journal: ['A 0', 'A 90', 'B 0', 'B 90'],
  bore: ['A 0', 'A 60', 'A 120', 'B 0', 'B 60', 'B 120'],
  upper: ['Wall 1', 'Wall 2'],
  lower: ['Wall 1', 'Wall 2'],
};

/** A true fit whose form is drawn, its bore made to meet the target. */
export function drawFit(draws: Draws, setUp: SetUp, target: Target): TrueFit {
  const shapes = SLOTS.map((slot) => {
    const headers = setUp.oneSpot ? SPOTS[slot].slice(0, 1) : SPOTS[slot];
    const size = NOMINAL[slot] + draws.rectangular(20);
    const spots = headers.map((header) => [header, size + draws.rectangular(FORM[slot])] as const);
    return { slot, spots, warmer: draws.normal(TEMPERATURE_DIFFERENCE_KELVIN) };
  });
  const values = (slot: Slot) => shapes[SLOTS.indexOf(slot)]!.spots.map(([, value]) => value);
  const others: readonly Slot[] = ['journal', 'upper', 'lower'];
  const sum = (pick: (...values: number[]) => number) =>
    others.reduce((total, slot) => total + pick(...values(slot)), 0);
  const tightest = Math.min(...values('bore')) - sum(Math.max);
  const loosest = Math.max(...values('bore')) - sum(Math.min);
  const shift = 'tightest' in target ? target.tightest - tightest : target.loosest - loosest;
  const parts = shapes.map(({ slot, spots, warmer }): [Slot, TruePart] => [
    slot,
    {
      slot,
      spots: Object.fromEntries(
        spots.map(([header, value]) => [header, value + (slot === 'bore' ? shift : 0)]),
      ),
      warmer,
    },
  ]);
  return {
    parts: Object.fromEntries(parts) as Record<Slot, TruePart>,
    tightest: tightest + shift,
    loosest: loosest + shift,
  };
}

/** One error at all sizes, or one for each of journals, bores and walls. */
function errorKey({ name, sameAtAllSizes }: GaugeSpec, slot: Slot): string {
  if (sameAtAllSizes) return name;
  return `${name}, ${slot === 'journal' || slot === 'bore' ? slot : 'wall'}`;
}

/** One workshop: its gauges keep their errors, each reading has its own scatter. */
export class Workshop {
  /** By gauge, and by the size at which it errs so. */
  private readonly errors: ReadonlyMap<string, number>;
  /** True expansion over the stated one: of the outer part, of the steel parts in it, of each gauge. */
  private readonly expansions: ReadonlyMap<string, number>;

  constructor(
    readonly setUp: SetUp,
    private readonly draws: Draws,
  ) {
    this.errors = new Map(
      setUp.gauges.flatMap((gauge) =>
        [...new Set(SLOTS.map((slot) => errorKey(gauge, slot)))].map(
          (key) => [key, draws.rectangular(gauge.maxError)] as const,
        ),
      ),
    );
    this.expansions = new Map(
      ['bore', 'others', ...setUp.gauges.map(({ name }) => name)].map((key) => [
        key,
        1 + draws.rectangular(setUp.expansionError),
      ]),
    );
  }

  /** A reading of one spot as it is typed, mm. */
  read(part: TruePart, header: string, by: string = this.setUp.uses[part.slot]): number {
    const gauge = this.gauge(by);
    const { celsius, boreMaterial } = this.setUp;
    const kelvin = celsius[part.slot] - 20;
    const material = part.slot === 'bore' ? boreMaterial : 'steel';
    const own = this.expansions.get(part.slot === 'bore' ? 'bore' : 'others')!;
    const expansion = BUILT_IN_EXPANSION[material]! * 1e-6 * own;
    const steel = BUILT_IN_EXPANSION.steel! * 1e-6 * this.expansions.get(by)!;
    const shown =
      (part.spots[header]! * (1 + expansion * (kelvin + part.warmer))) / (1 + steel * kelvin) +
      this.systematicError(gauge, part.slot) +
      this.draws.normal(gauge.repeatability);
    const steps = Math.round(shown / gauge.resolution);
    return Number(((steps * gauge.resolution) / 1000).toFixed(5));
  }

  gauge(name: string): GaugeSpec {
    return this.setUp.gauges.find((gauge) => gauge.name === name)!;
  }

  /** Its own error and that of each gauge that set it. */
  private systematicError(gauge: GaugeSpec, slot: Slot): number {
    const own = this.errors.get(errorKey(gauge, slot))!;
    const { setFrom } = gauge;
    return setFrom === undefined ? own : own + this.systematicError(this.gauge(setFrom), slot);
  }
}
