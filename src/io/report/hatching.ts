/** Hatchings of the page, drawn once and named by all its drawings. */
import { type Element, h, s } from './elements.js';

/** Outside the limits: closely hatched, as a drawing hatches what is solid. Service: dots, thinner than hatching. */
export const HATCH = { outside: 'hatch-outside', service: 'hatch-service', shaft: 'hatch-shaft' } as const;

const line = (d: string, width: number) =>
  s('path', { d, stroke: '#000', 'stroke-width': width, fill: 'none' });

/** Stands in the page where it takes no room; a picture that is not displayed would lend no patterns. */
export function hatchings(): Element {
  const pattern = (id: string, size: number, ...shapes: Element[]) =>
    s('pattern', { id, width: size, height: size, patternUnits: 'userSpaceOnUse' }, shapes);
  return h('div', { className: 'lent', ariaHidden: 'true' }, [
    s('svg', { width: 0, height: 0 }, [
      s('defs', [
        pattern(HATCH.outside, 4, line('M-1 1l2-2M0 4l4-4M3 5l2-2', 0.7)),
        pattern(HATCH.service, 5, s('circle', { cx: 2.5, cy: 2.5, r: 0.7 })),
        pattern(HATCH.shaft, 6, line('M-1.5 1.5l3-3M0 6l6-6M4.5 7.5l3-3', 0.35)),
      ]),
    ]),
  ]);
}
