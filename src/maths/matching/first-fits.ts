/** The fits that the model starts with: for every gap the allowed shape nearest to the aim. */
import { type Column, distanceOf, fitColumn, type Model } from './model-columns.js';

export function firstFits(model: Model): Column[] {
  const { gaps, shapes } = model.problem;
  return gaps.map((gap, place) => {
    let nearest = gap.shapes[0]!;
    for (const shape of gap.shapes) {
      if (distanceOf(gap, shapes[shape]!.size) < distanceOf(gap, shapes[nearest]!.size)) nearest = shape;
    }
    return fitColumn(model, place, nearest);
  });
}
