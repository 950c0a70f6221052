/** Draws from the distributions that uncertainty is made of, the same at every run. */
import { seeded } from '../demo/random.js';

export interface Draws {
  /** Evenly distributed from 0 (included) to 1 (excluded). */
  even(): number;
  /** Rectangular within ± half the width. */
  rectangular(halfWidth: number): number;
  /** Normal about 0. */
  normal(deviation: number): number;
}

export function drawsOf(seed: number): Draws {
  const random = seeded(seed);
  // Two draws of 26 bits, so that a million values do not repeat themselves.
  const even = () => (random.between(0, 2 ** 26 - 1) * 2 ** 26 + random.between(0, 2 ** 26 - 1)) / 2 ** 52;
  let spare: number | undefined;
  /** The polar form of Box and Muller's method (G. Marsaglia and T. A. Bray, SIAM Review 6, 1964): two at a time. */
  const standard = (): number => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    for (;;) {
      const [x, y] = [2 * even() - 1, 2 * even() - 1];
      const square = x * x + y * y;
      if (square === 0 || square >= 1) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * factor;
      return x * factor;
    }
  };
  return {
    even,
    rectangular: (halfWidth) => (2 * even() - 1) * halfWidth,
    normal: (deviation) => standard() * deviation,
  };
}
