/** A fit drawn with characters: the same picture as on the page, as wide as a terminal has room. */
import type { ScaleLinear } from 'd3-scale';
import type { DrawnFit } from '../report/fit-lane.js';

/** What the characters stand for. */
export const BAR_KEY =
  '[ ] range, | service limit, # fit, - guard that keeps a limit, ~ that breaks it, . outside';

/**
 * One line of characters, each for an equal share of the scale. A limit stays in sight under a bar.
 * @param scale from grains to places, 0 to the number of characters
 */
export function fitBar({ clearance, guards, limits }: DrawnFit, scale: ScaleLinear<number, number>): string {
  const length = scale.range()[1]!;
  const placeOf = (grain: number) => Math.min(Math.max(Math.floor(scale(grain)), 0), length - 1);
  const { min, max, serviceLimit } = limits;
  const roof = serviceLimit ?? max;
  const places = Array.from({ length }, (_, place): string => {
    const isOutside =
      (min !== undefined && place < placeOf(min)) || (roof !== undefined && place > placeOf(roof));
    return isOutside ? '.' : ' ';
  });
  const draw = (from: number, to: number, sign: string) => {
    for (let place = placeOf(from); place <= placeOf(to); place += 1) places[place] = sign;
  };
  if (clearance) {
    const { inside, outside } = guards;
    if (outside > inside) draw(clearance.tightest - outside, clearance.loosest + outside, '~');
    if (inside > 0) draw(clearance.tightest - inside, clearance.loosest + inside, '-');
    draw(clearance.tightest, clearance.loosest, '#');
  }
  for (const [limit, sign] of [
    [serviceLimit, '|'],
    [max, ']'],
    [min, '['],
  ] as const) {
    if (limit !== undefined) places[placeOf(limit)] = sign;
  }
  return places.join('');
}
