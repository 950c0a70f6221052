/**
 * The line drawings of a blank workbook: where stations, angles and walls lie. Lengths in mm on paper, from the
 * upper left corner; angles of 0° point up and turn clockwise.
 */
import type { Figure } from './blank-columns.js';
import type { EngineDescription } from './description.js';
import { endFloatAndRing, turnedShaft } from './gap-figures.js';
import {
  circle,
  type Drawing,
  LINE_HEIGHT,
  label,
  line,
  note,
  type Point,
  type Shape,
  WIDTH,
} from './shapes.js';

const FIGURE_HEIGHT = 47;
const CAUTION_HEIGHT = 14;
const RADIUS = 14;
const CENTRE_Y = 24;

/** The drawing of a sheet, with the caution below it; the caution alone where there is nothing to draw. */
export function drawingOf(
  figure: Figure | undefined,
  description: EngineDescription,
  caution: readonly string[],
): Drawing {
  const top = figure ? FIGURE_HEIGHT : 0;
  const shapes = figure ? FIGURES[figure](description) : [];
  return {
    width: WIDTH,
    height: top + CAUTION_HEIGHT,
    description: [...(figure ? [wordsOf(figure, description)] : []), ...caution].join(' '),
    shapes: [
      ...shapes,
      {
        kind: 'text',
        corner: { x: 0, y: top },
        width: WIDTH,
        height: CAUTION_HEIGHT,
        text: caution.join('\n'),
        align: 'left',
      },
    ],
  };
}

function wordsOf(figure: Figure, { stations, journalAngles, boreAngles, walls }: EngineDescription): string {
  const along = `stations ${stations.join(', ')} from the front`;
  switch (figure) {
    case 'journal':
      return `Line drawing of a journal: ${along}; angles ${journalAngles.join(', ')}, 0 in line with a crankpin's own throw, of a main with the throw of No. 1.`;
    case 'bore':
      return `Line drawing of a bore: ${along}; angles ${boreAngles.join(', ')}, 0 square to the parting line, which is at 90.`;
    case 'shell':
      return `Line drawing of a pair of half-shells: ${walls} spots on the wall at the crown, from the front.`;
    case 'plain':
      return `Line drawing of a plain part: ${along}, of a cylinder from the top; angles ${journalAngles.join(', ')}, 0 of a cylinder along the crank.`;
    case 'piston':
      return `Line drawing of a piston: stations ${stations.join(', ')} from the crown; angles ${journalAngles.join(', ')}, 0 along its pin.`;
    case 'gap':
      return 'Line drawing of two gaps: end float, along the axis between a collar and its bearing; ring gap, between the ends of a ring pushed square into its bore.';
    case 'run-out':
      return 'Line drawing of a shaft turned on two blocks, with a dial on the journal between them.';
  }
}

const FIGURES: Readonly<Record<Figure, (description: EngineDescription) => Shape[]>> = {
  journal: ({ stations, journalAngles }) => [
    ...sideView(stations),
    ...endView(journalAngles),
    note(
      118,
      'Seen from the front end.\n0° of a crankpin is in line with\nits own throw, of a main with\nthe throw of No. 1 crankpin.\nAngles turn the same way.',
    ),
  ],
  bore: ({ stations, boreAngles, shellsIn }) => [
    ...sideView(stations),
    ...endView(boreAngles, RADIUS + 9),
    circle(EYE, RADIUS + 4),
    line({ x: EYE.x - RADIUS - 9, y: CENTRE_Y }, { x: EYE.x + RADIUS + 9, y: CENTRE_Y }, true),
    label(EYE.x + RADIUS + 11, CENTRE_Y - LINE_HEIGHT / 2, 'parting line', 24, 'left'),
    note(
      144,
      `Seen from the front end.\n0° is square to the parting\nline, which is at 90°.\nCaps torqued, ${shellsIn ? 'shells in' : 'no shells in'}.`,
    ),
  ],
  shell: ({ walls }) => [
    ...shellPair(),
    ...wallSpots(walls),
    note(
      118,
      'Walls at the crown, 90° from\nthe parting line, spots from\nthe front. A ball anvil fits\nthe hollow side.',
    ),
  ],
  plain: ({ stations, journalAngles }) => [
    ...sideView(stations),
    ...endView(journalAngles),
    note(
      118,
      'Seen from the front end; of a\ncylinder from above, its first\nstation at the top and 0° along\nthe crank. Angles turn the same\nway for all parts.',
    ),
  ],
  piston: ({ stations, journalAngles }) => [
    ...sideView(stations, 'crown'),
    circle({ x: (SIDE.left + SIDE.right) / 2, y: CENTRE_Y }, RADIUS / 3),
    ...endView(journalAngles),
    note(
      118,
      "Skirt, at the heights and angles\nof the maker's manual, mostly\nsquare to the pin: 0° is along\nthe pin. A piston is oval and\ntapered by design.",
    ),
  ],
  gap: () => endFloatAndRing(CENTRE_Y),
  'run-out': () => turnedShaft(CENTRE_Y),
};

const SIDE = { left: 12, right: 52 } as const;
const EYE: Point = { x: 92, y: CENTRE_Y };

/** The bearing from the side, its stations as dashed lines. */
function sideView(stations: readonly string[], firstEnd = 'front'): Shape[] {
  const width = SIDE.right - SIDE.left;
  const inset = stations.length === 1 ? width / 2 : width / 6;
  const step = stations.length === 1 ? 0 : (width - 2 * inset) / (stations.length - 1);
  return [
    { kind: 'rectangle', corner: { x: SIDE.left, y: CENTRE_Y - RADIUS }, width, height: 2 * RADIUS },
    line({ x: SIDE.left - 6, y: CENTRE_Y }, { x: SIDE.right + 6, y: CENTRE_Y }, true),
    label(SIDE.left - 6, CENTRE_Y + RADIUS - LINE_HEIGHT, firstEnd, 12),
    ...stations.flatMap((station, place) => {
      const x = SIDE.left + inset + step * place;
      return [
        line({ x, y: CENTRE_Y - RADIUS - 2 }, { x, y: CENTRE_Y + RADIUS + 2 }, true),
        label(x, CENTRE_Y + RADIUS + 3, station, 16),
      ];
    }),
  ];
}

/** The bearing from the front, each angle a diameter. */
function endView(angles: readonly string[], reach = RADIUS + 6): Shape[] {
  return [
    circle(EYE, RADIUS),
    ...angles.flatMap((angle) => {
      const turn = (Number(angle) * Math.PI) / 180;
      const at = (distance: number): Point => ({
        x: EYE.x + distance * Math.sin(turn),
        y: EYE.y - distance * Math.cos(turn),
      });
      const end = at(reach);
      return [line(at(-RADIUS), at(RADIUS)), label(end.x, end.y - LINE_HEIGHT / 2, `${angle}°`, 12)];
    }),
  ];
}

function shellPair(): Shape[] {
  const wall = 3;
  return (['upper', 'lower'] as const).flatMap((half): Shape[] => {
    const side = half === 'upper' ? -1 : 1;
    const centre = { x: EYE.x, y: CENTRE_Y + side * 1.5 };
    const crown = centre.y + side * RADIUS;
    return [
      { kind: 'half circle', centre, radius: RADIUS, half },
      { kind: 'half circle', centre, radius: RADIUS - wall, half },
      ...[-1, 1].map((end) =>
        line(
          { x: centre.x + end * (RADIUS - wall), y: centre.y },
          { x: centre.x + end * RADIUS, y: centre.y },
        ),
      ),
      line({ x: centre.x, y: crown + side * 4 }, { x: centre.x, y: crown - side * 6 }),
      label(centre.x + 14, crown + side * 2 - LINE_HEIGHT / 2, half, 20),
    ];
  });
}

/** A half-shell from above, its spots along the crown. */
function wallSpots(walls: number): Shape[] {
  const width = SIDE.right - SIDE.left;
  const step = width / (walls + 1);
  return [
    { kind: 'rectangle', corner: { x: SIDE.left, y: CENTRE_Y - RADIUS }, width, height: 2 * RADIUS },
    line({ x: SIDE.left - 6, y: CENTRE_Y }, { x: SIDE.right + 6, y: CENTRE_Y }, true),
    label(SIDE.left - 6, CENTRE_Y + RADIUS - LINE_HEIGHT, 'front', 12),
    label(SIDE.right + 6, CENTRE_Y - LINE_HEIGHT, 'crown', 14, 'left'),
    ...Array.from({ length: walls }, (_, place) => {
      const x = SIDE.left + step * (place + 1);
      const dot: Shape = { kind: 'circle', centre: { x, y: CENTRE_Y }, radius: 0.8, isDot: true };
      return [dot, label(x, CENTRE_Y - 7, String(place + 1), 8)];
    }).flat(),
  ];
}
