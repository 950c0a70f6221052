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

/**
 * A true fit whose form is drawn, its bore made to meet the target.
 * @param beside a fit whose other parts it shares: only the bore is drawn
 */
export function drawFit(draws: Draws, setUp: SetUp, target: Target, beside?: TrueFit): TrueFit {
  const shapes = SLOTS.map((slot) => {
    const shared = slot === 'bore' ? undefined : beside?.parts[slot];
    if (shared) return { slot, spots: Object.entries(shared.spots), warmer: shared.warmer };
    const headers = setUp.oneSpot ? SPOTS[slot].slice(0, 1) : SPOTS[slot];
    const size = NOMINAL[slot] + draws.rectangular(20);
    const spots = headers.map(
      (header) => [header, size + (setUp.isRound ? 0 : draws.rectangular(FORM[slot]))] as const,
    );
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

/** One workshop: its gauges keep their constant errors, each reading has its own scatter. */
export class Workshop {
  /** By gauge and, where it has another error at each size, by nominal size. */
  private readonly errors = new Map<string, number>();
  /** True expansions of outer and inner parts and of each gauge, 1e-6 per K. */
  private readonly expansions = new Map<string, number>();

  constructor(
    readonly setUp: SetUp,
    private readonly draws: Draws,
  ) {
    for (const gauge of setUp.gauges) {
      for (const size of sizesOf(gauge))
        this.errors.set(errorKey(gauge, size), draws.rectangular(gauge.maxError));
      this.expansions.set(gauge.name, this.drawExpansion('steel'));
    }
    this.expansions.set('outer', this.drawExpansion(setUp.boreMaterial));
    this.expansions.set('inner', this.drawExpansion('steel'));
  }

  private drawExpansion(material: 'steel' | 'aluminium'): number {
    return BUILT_IN_EXPANSION[material]! + this.draws.rectangular(this.setUp.expansionError[material]);
  }

  /** A reading of one spot as it is typed, mm. */
  read(part: TruePart, header: string, by: string = this.setUp.uses[part.slot]): number {
    const gauge = this.gauge(by);
    const kelvin = this.setUp.celsius[part.slot] - 20;
    const expansion = 1e-6 * this.expansions.get(part.slot === 'bore' ? 'outer' : 'inner')!;
    const own = 1e-6 * this.expansions.get(gauge.name)!;
    const shown =
      (part.spots[header]! * (1 + expansion * (kelvin + part.warmer))) / (1 + own * kelvin) +
      this.constantError(gauge, NOMINAL[part.slot]) +
      this.draws.normal(gauge.repeatability);
    const steps = Math.round(shown / gauge.resolution);
    return Number(((steps * gauge.resolution) / 1000).toFixed(5));
  }

  gauge(name: string): GaugeSpec {
    return this.setUp.gauges.find((gauge) => gauge.name === name)!;
  }

  /** Its own error and that of each gauge that set it. */
  private constantError(gauge: GaugeSpec, size: number): number {
    const own = this.errors.get(errorKey(gauge, size))!;
    const { setFrom } = gauge;
    return setFrom === undefined ? own : own + this.constantError(this.gauge(setFrom), size);
  }
}

function sizesOf({ sameAtAllSizes }: GaugeSpec): readonly number[] {
  return sameAtAllSizes ? [0] : [...new Set(Object.values(NOMINAL))];
}

const errorKey = ({ name, sameAtAllSizes }: GaugeSpec, size: number) =>
  `${name} ${sameAtAllSizes ? 0 : size}`;
