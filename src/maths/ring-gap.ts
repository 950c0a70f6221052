/**
 * A piston ring's gap grows by the circumference: π times what the bore is larger.
 *
 *   gap in another bore = gap + π·(B − B₀)
 *
 *   B₀   the bore, or the ring gauge, in which the gap was measured
 *   B    the bore in which the ring will run
 *
 * Source: geometry; TM 5-6115-593-34, p. 1-9 (.003 in more gap for each .001 in of wear).
 */
import { type Grain, roundToWhole } from './grain.js';

export function ringGapIn(gap: Grain, boreMeasured: Grain, bore: Grain): Grain {
  return roundToWhole(gap + Math.PI * (bore - boreMeasured));
}
