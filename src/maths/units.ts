/** Units of length and temperature, and the only place where they are converted. */
import { add, divide, exact, multiply, type Ratio, toNumber } from './decimal.js';
import { GRAINS_PER_MM, type Grain, grainOfRatio, nearWhole } from './grain.js';

export type LengthUnit = 'mm' | 'in' | 'µm';
export type TemperatureUnit = 'C' | 'F';

export function isLengthUnit(text: string): text is LengthUnit {
  return text === 'mm' || text === 'in' || text === 'µm';
}

export function isTemperatureUnit(text: string): text is TemperatureUnit {
  return text === 'C' || text === 'F';
}

/** Exact millimetres in one unit; 1 in = 25.4 mm exactly (ISO 31-1, international inch of 1959). */
const MM_PER_UNIT: Record<LengthUnit, Ratio> = {
  mm: { numerator: 1n, denominator: 1n },
  in: { numerator: 127n, denominator: 5n },
  µm: { numerator: 1n, denominator: 1000n },
};

const GRAINS_PER_UNIT: Record<LengthUnit, number> = {
  mm: GRAINS_PER_MM,
  in: 25.4 * GRAINS_PER_MM,
  µm: GRAINS_PER_MM / 1000,
};

export function toMm(value: Ratio, unit: LengthUnit): Ratio {
  return multiply(value, MM_PER_UNIT[unit]);
}

/** Exact millimetres, expressed in a unit. */
export function fromMm(mm: Ratio, unit: LengthUnit): Ratio {
  return divide(mm, MM_PER_UNIT[unit]);
}

/** A length typed in a unit, rounded once to the grain. */
export function grainOf(value: Ratio | number, unit: LengthUnit): Grain {
  if (typeof value !== 'number') return grainOfRatio(toMm(value, unit));
  return nearWhole(value * GRAINS_PER_UNIT[unit]) ?? grainOfRatio(toMm(exact(value), unit));
}

/** A length on the grain, expressed in a unit. */
export function inUnit(grain: Grain, unit: LengthUnit): number {
  return grain / GRAINS_PER_UNIT[unit];
}

/** A small length such as a standard uncertainty in grains, not rounded. */
export function unroundedGrains(value: number, unit: LengthUnit): number {
  return value * GRAINS_PER_UNIT[unit];
}

/** Whole grains from a length that was computed on the grain and then expressed in a unit. */
export function snapToGrain(value: number, unit: LengthUnit): Grain {
  return Math.round(value * GRAINS_PER_UNIT[unit]);
}

/** Exact degrees Celsius of a temperature. */
export function toCelsius(value: Ratio, unit: TemperatureUnit): Ratio {
  if (unit === 'C') return value;
  return divide(add(value, { numerator: -32n, denominator: 1n }), { numerator: 9n, denominator: 5n });
}

/** Exact degrees Celsius, expressed in a unit. */
export function fromCelsius(celsius: Ratio, unit: TemperatureUnit): Ratio {
  if (unit === 'C') return celsius;
  return add(multiply(celsius, { numerator: 9n, denominator: 5n }), { numerator: 32n, denominator: 1n });
}

/** Degrees Celsius, expressed in a unit. */
export function temperatureInUnit(celsius: number, unit: TemperatureUnit): number {
  // Computed in ratios, so that -273.15 °C reads -459.67 °F.
  return unit === 'C' ? celsius : toNumber(fromCelsius(exact(celsius), unit));
}
