/** Line drawings of where gaps and run-outs are measured. */
import { circle, label, line, note, type Point, type Shape } from './shapes.js';

const box = (corner: Point, width: number, height: number): Shape => ({
  kind: 'rectangle',
  corner,
  width,
  height,
});

/** Two arrowheads on either side of a gap along the axis. */
function gapMarks(from: number, to: number, y: number): Shape[] {
  const arrow = (x: number, way: 1 | -1) => [
    line({ x: x - 6 * way, y }, { x, y }),
    line({ x: x - 2 * way, y: y - 1.2 }, { x, y }),
    line({ x: x - 2 * way, y: y + 1.2 }, { x, y }),
  ];
  return [...arrow(from, 1), ...arrow(to, -1)];
}

/** A shaft with a collar beside its bearing, and a ring in its bore. */
export function endFloatAndRing(middle: number): Shape[] {
  const ring: Point = { x: 92, y: middle };
  return [
    box({ x: 8, y: middle - 4 }, 48, 8),
    box({ x: 20, y: middle - 12 }, 16, 7),
    box({ x: 20, y: middle + 5 }, 16, 7),
    box({ x: 38, y: middle - 10 }, 4, 20),
    line({ x: 4, y: middle }, { x: 60, y: middle }, true),
    ...gapMarks(36, 38, middle - 15),
    label(32, middle + 15, 'end float', 24),
    circle(ring, 15),
    { kind: 'half circle', centre: ring, radius: 13.5, half: 'lower' },
    { kind: 'half circle', centre: ring, radius: 11, half: 'lower' },
    // The ends of the ring, a little apart at the top.
    ...ringSide(ring, -1),
    ...ringSide(ring, 1),
    label(ring.x, middle - 22, 'ring gap', 24),
    note(
      118,
      'End float: shaft pushed hard one\nway, then the other, dial on its end.\nRing gap: ring square in its bore,\nfeelers between its ends.',
    ),
  ];
}

/** A quarter of the ring as a chain of short lines, from the side up to its end. */
function ringSide({ x, y }: Point, way: 1 | -1): Shape[] {
  const turns = [90, 72, 54, 36, 20, 6];
  const at = (radius: number, degrees: number): Point => ({
    x: x + way * radius * Math.sin((degrees * Math.PI) / 180),
    y: y - radius * Math.cos((degrees * Math.PI) / 180),
  });
  const chain = (radius: number) =>
    turns.slice(1).map((turn, place) => line(at(radius, turns[place]!), at(radius, turn)));
  return [...chain(13.5), ...chain(11), line(at(13.5, 6), at(11, 6))];
}

/** A shaft on two blocks, the dial on the journal between them. */
export function turnedShaft(middle: number): Shape[] {
  const dial: Point = { x: 47, y: middle - 15 };
  return [
    box({ x: 8, y: middle - 4 }, 78, 8),
    box({ x: 38, y: middle - 6 }, 18, 12),
    line({ x: 4, y: middle }, { x: 90, y: middle }, true),
    ...[18, 76].flatMap((x) => [
      line({ x: x - 5, y: middle + 12 }, { x, y: middle + 4 }),
      line({ x: x + 5, y: middle + 12 }, { x, y: middle + 4 }),
      line({ x: x - 5, y: middle + 12 }, { x: x + 5, y: middle + 12 }),
    ]),
    circle(dial, 4.5),
    line({ x: dial.x, y: dial.y + 4.5 }, { x: dial.x, y: middle - 6 }),
    line(dial, { x: dial.x + 2.5, y: dial.y - 2 }),
    label(dial.x + 12, dial.y - 2, 'dial', 12),
    note(
      104,
      'Turn the shaft by hand on its end\njournals and type what the dial shows\nat each angle, signed; or turn it once\nand type the total.',
    ),
  ];
}
