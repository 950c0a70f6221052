/** What the drawn journals of one engine have in common: axes, ticks and stations, drawn once and lent to the others. */
import { type ScaleLinear, type ScalePoint, scaleLinear, scalePoint } from 'd3-scale';
import { inUnit, type LengthUnit, snapToGrain } from '../../maths/units.js';
import { type Element, s } from './elements.js';
import { at } from './fit-lane.js';

export const PROFILE = { width: 160, height: 116, left: 34, right: 152, top: 8, bottom: 96 } as const;

/** What the numbers beside the drawings are: µm, or ten-thousandths of an inch. */
export function deviationUnit(unit: LengthUnit): string {
  return unit === 'in' ? '0.0001 in' : 'µm';
}

export class ProfileFrames {
  readonly y: ScaleLinear<number, number>;
  private readonly drawn = new Map<string, string>();

  /**
   * @param id begins the ids of what is lent; one an engine
   * @param reach grains to either side of the size; one for all journals that are to be compared
   */
  constructor(
    private readonly id: string,
    private readonly reach: number,
    private readonly unit: LengthUnit,
  ) {
    this.y = scaleLinear([-reach, reach], [PROFILE.bottom, PROFILE.top]);
  }

  x(stations: readonly string[]): ScalePoint<string> {
    return scalePoint(stations, [PROFILE.left, PROFILE.right]).padding(0.5);
  }

  frame(stations: readonly string[]): Element {
    const key = stations.join('\u0000');
    const known = this.drawn.get(key);
    if (known !== undefined) return s('use', { href: `#${known}` });
    const id = `${this.id}-frame-${this.drawn.size + 1}`;
    this.drawn.set(key, id);
    const x = this.x(stations);
    return s('g', { id }, [
      s('path', { className: 'axis', d: `M${PROFILE.left - 4} ${this.y(0)}H${PROFILE.right + 6}` }),
      ...this.deviations(),
      ...stations.map((station) =>
        s('text', { className: 'mid tick', x: at(x(station)!), y: PROFILE.bottom + 15 }, station),
      ),
    ]);
  }

  private deviations(): Element[] {
    const step =
      this.unit === 'in' ? ({ unit: 'in', factor: 1e4 } as const) : ({ unit: 'µm', factor: 1 } as const);
    const most = inUnit(this.reach, step.unit) * step.factor;
    const ticks = scaleLinear([-most, most], [0, 1]).ticks(4);
    return ticks.flatMap((value) => {
      const top = at(this.y(snapToGrain(value / step.factor, step.unit)));
      const label = value > 0 ? `+${value}` : String(value).replace('-', '\u2212');
      return [
        s('path', { className: 'tick', d: `M${PROFILE.left - 3} ${top}h3` }),
        s('text', { className: 'end tick', x: PROFILE.left - 5, y: top + 4 }, label),
      ];
    });
  }
}
