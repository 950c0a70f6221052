/**
 * Sizes at the reference temperature, and clearances away from it.
 *
 * Source: ISO 1:2022, the standard reference temperature for geometrical product specification is 20 °C.
 * The gauge reads true at 20 °C and grows with the temperature just as the part does:
 *
 *   x20 = x · (1 + αg·(T − 20)) / (1 + αp·(T − 20))
 *
 *   x    reading at the temperature T, mm
 *   αg   linear expansion coefficient of the gauge, 1e-6 per K
 *   αp   linear expansion coefficient of the part, 1e-6 per K
 */
import { add, divide, exact, multiply, ONE, type Ratio, roundHalfAway, toNumber } from './decimal.js';
import { GRAINS_PER_MM, type Grain, grainOfRatio, nearWhole } from './grain.js';

export const REFERENCE_CELSIUS = 20;

/** Expansion of the common materials, 1e-6 per K: rounded handbook values (published tables differ by some 10 %). */
export const BUILT_IN_EXPANSION: Readonly<Record<string, number>> = {
  steel: 11.5,
  'cast iron': 10.5,
  aluminium: 23,
  magnesium: 26,
};

const MILLIONTH: Ratio = { numerator: 1n, denominator: 1_000_000n };

function aboveReference(celsius: Ratio): Ratio {
  return add(celsius, { numerator: BigInt(-REFERENCE_CELSIUS), denominator: 1n });
}

/** As growth, in floating point; above 0.1 it errs by less than 1e-14 of itself. */
function plainGrowth(expansion: number, kelvin: Ratio): number {
  return 1 + expansion * 1e-6 * toNumber(kelvin);
}

function growth(expansion: number, kelvin: Ratio): Ratio {
  return add(ONE, multiply(multiply(exact(expansion), MILLIONTH), kelvin));
}

/**
 * The size at 20 °C of one reading, rounded once to the grain.
 * @param millimetres the reading, exact mm
 * @param celsius the temperature of part and gauge, exact °C
 * @param partExpansion 1e-6 per K
 * @param gaugeExpansion 1e-6 per K
 * @throws RangeError when the part would have shrunk to nothing (a temperature in the wrong unit).
 */
export function sizeAt20C(
  millimetres: Ratio,
  celsius: Ratio,
  partExpansion: number,
  gaugeExpansion: number,
): Grain {
  const kelvin = aboveReference(celsius);
  if (kelvin.numerator === 0n || partExpansion === gaugeExpansion) return grainOfRatio(millimetres);
  const plainPart = plainGrowth(partExpansion, kelvin);
  const product = (toNumber(millimetres) * GRAINS_PER_MM * plainGrowth(gaugeExpansion, kelvin)) / plainPart;
  const near = plainPart > 0.1 ? nearWhole(product) : undefined;
  if (near !== undefined) return near;
  const part = growth(partExpansion, kelvin);
  if (part.numerator <= 0n) throw new RangeError('the temperature is below any at which the part exists');
  return grainOfRatio(divide(multiply(millimetres, growth(gaugeExpansion, kelvin)), part));
}

/**
 * The diametral clearance with bore and journal at their own temperatures.
 *
 *   running = clearance + journal · (αb·(Tb − 20) − αj·(Tj − 20))
 *
 * To first order in the expansion; the bore and the journal are taken as of one diameter.
 */
export function runningClearance(
  clearance: Grain,
  journal: Grain,
  bore: { celsius: Ratio; expansion: number },
  shaft: { celsius: Ratio; expansion: number },
): Grain {
  const whole = (grain: Grain): Ratio => ({ numerator: BigInt(grain), denominator: 1n });
  const growths = ({ celsius, expansion }: { celsius: Ratio; expansion: number }) =>
    multiply(multiply(exact(expansion), MILLIONTH), aboveReference(celsius));
  const difference = add(growths(bore), multiply(whole(-1), growths(shaft)));
  // In ratios, so that a change of half a grain is a half.
  return roundHalfAway(add(whole(clearance), multiply(whole(journal), difference)));
}
