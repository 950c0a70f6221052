/** What a set-up makes uncertain of a part of given sizes, by the program's own equations. In grains. */
import type { Sizes } from '../../src/maths/clearance.js';
import { BUILT_IN_EXPANSION, REFERENCE_CELSIUS } from '../../src/maths/expansion.js';
import { GRAINS_PER_MM } from '../../src/maths/grain.js';
import type { SystematicSource } from '../../src/maths/shared-gauges.js';
import {
  expansionContribution,
  type GaugeRandom,
  type MeasuredPart,
  readVariance,
  temperatureVariance,
} from '../../src/maths/uncertainty.js';
import type { GaugeSpec, SetUp, Slot } from './set-ups.js';

export const GRAINS_PER_MICROMETRE = GRAINS_PER_MM / 1000;

/** 1e-6 per K. */
export function expansionOf(setUp: SetUp, slot: Slot): number {
  return BUILT_IN_EXPANSION[slot === 'bore' ? setUp.boreMaterial : 'steel']!;
}

/** How far it may be off, 1e-6 per K. */
export function expansionErrorOf(setUp: SetUp, slot: Slot): number {
  return setUp.expansionError[slot === 'bore' ? setUp.boreMaterial : 'steel'];
}

const gaugeNamed = (gauges: readonly GaugeSpec[], name: string) => gauges.find((own) => own.name === name)!;

export function randomOf(setUp: SetUp, slot: Slot, gauges = setUp.gauges): GaugeRandom {
  const { resolution, repeatability } = gaugeNamed(gauges, setUp.uses[slot]);
  return {
    resolution: resolution * GRAINS_PER_MICROMETRE,
    repeatability: repeatability * GRAINS_PER_MICROMETRE,
  };
}

/** The gauges behind a part, itself and up its chain. */
export function chainOf(setUp: SetUp, slot: Slot, gauges = setUp.gauges): SystematicSource[] {
  const chain: SystematicSource[] = [];
  for (let name: string | undefined = setUp.uses[slot]; name !== undefined; ) {
    const { maxError, sameAtAllSizes, setFrom } = gaugeNamed(gauges, name);
    const isConstant = sameAtAllSizes === true;
    chain.push({ gauge: name, maxError: maxError * GRAINS_PER_MICROMETRE, isConstant });
    name = setFrom;
  }
  return chain;
}

/** @param gauges as they are stated */
export function measuredPart(
  setUp: SetUp,
  slot: Slot,
  sizes: Sizes & { readonly spots: number },
  gauges = setUp.gauges,
): MeasuredPart {
  const kelvin = setUp.celsius[slot] - REFERENCE_CELSIUS;
  const contribution = (error: number) => expansionContribution(error, sizes.size, kelvin);
  return {
    ...sizes,
    ownExpansion: contribution(expansionErrorOf(setUp, slot)),
    gaugeExpansion: { gauge: setUp.uses[slot], contribution: contribution(setUp.expansionError.steel) },
    systematic: chainOf(setUp, slot, gauges),
    readVariance: readVariance(randomOf(setUp, slot, gauges), setUp.repeats),
    temperatureVariance: temperatureVariance(expansionOf(setUp, slot), sizes.size),
  };
}
