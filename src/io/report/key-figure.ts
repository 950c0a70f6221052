/** How a drawn fit is read: one lane with words in place of figures. */
import { scaleLinear } from 'd3-scale';
import { type Element, h, s } from './elements.js';
import { at, drawFit, LANE, Lanes } from './fit-lane.js';

const WIDTH = 340;

/** Shares of the width: an invented fit that shows every part of a drawing. */
const LIMITS = { min: 80, max: 200, serviceLimit: 270 };
const SAMPLE = { clearance: 148, tightest: 120, loosest: 176 };
const GUARDS = { inside: 20, outside: 38 };

export function keyFigure(confidence: number): Element {
  const scale = scaleLinear([0, WIDTH], [4, WIDTH - 4]);
  const top = 40;
  const below = top + LANE.height;
  const note = (x: number, y: number, className: string, ...lines: string[]) =>
    lines.map((line, order) => s('text', { className, x: at(scale(x)), y: y + order * 13 }, line));
  const pointer = (x: number, from: number, to: number) =>
    s('path', { className: 'tick', d: `M${at(scale(x))} ${from}V${to}` });
  const lanes = new Lanes();
  drawFit(
    lanes,
    { position: '', status: '', clearance: SAMPLE, isStrip: false, guards: GUARDS, limits: LIMITS },
    scale,
    top,
  );
  return h('figure', { className: 'key' }, [
    h('figcaption', 'How to read a drawn fit'),
    s(
      'svg',
      {
        role: 'img',
        viewBox: `0 0 ${WIDTH} 106`,
        ariaLabel:
          'Key: the range from min to max is clear, up to the service limit dotted, outside hatched. The black bar runs ' +
          'from tightest to loosest, its white dot is the clearance, the thin lines beside it are the guard inside a limit, the dashes the guard outside it.',
      },
      [
        ...note(40, 30, 'mid', 'too tight'),
        ...note(140, 30, 'mid', 'in range'),
        ...note(235, 17, 'mid', 'within', 'service limit'),
        ...note(305, 30, 'mid', 'loose'),
        ...lanes.elements(),
        pointer(LIMITS.min, below + 3, below + 8),
        ...note(LIMITS.min, below + 19, 'mid', 'min'),
        pointer(SAMPLE.tightest, below + 1, below + 20),
        pointer(SAMPLE.loosest, below + 1, below + 20),
        ...note(148, below + 32, 'mid', 'tightest to loosest'),
        ...note(
          148,
          below + 45,
          'mid',
          `guards at ${Number((confidence * 100).toFixed(2))} %: thin line keeps, dashes break a limit`,
        ),
        ...note(LIMITS.max, below + 19, 'mid', 'max'),
        ...note(LIMITS.serviceLimit, below + 19, 'mid', 'service'),
      ],
    ),
    h(
      'p',
      'A limit is kept where the thin line clears it, and broken where the dashes are wholly beyond it. The white dot is the clearance of the mean sizes. ' +
        'An arrowhead at the edge says that a bar goes on outside the drawing; a diamond is a strip reading.',
    ),
  ]);
}
