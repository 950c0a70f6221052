/** What line drawings are made of: lengths in mm on paper, from the upper left corner. */
export type Shape =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point; readonly isDashed?: boolean }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number; readonly isDot?: boolean }
  /** The upper or lower half of a circle. */
  | {
      readonly kind: 'half circle';
      readonly centre: Point;
      readonly radius: number;
      readonly half: 'upper' | 'lower';
    }
  | { readonly kind: 'rectangle'; readonly corner: Point; readonly width: number; readonly height: number }
  | {
      readonly kind: 'text';
      readonly corner: Point;
      readonly width: number;
      readonly text: string;
      readonly align: 'left' | 'centre';
      readonly height: number;
    };

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What a screen reader says. */
  readonly description: string;
  readonly shapes: readonly Shape[];
}

/** Of a drawing. */
export const WIDTH = 195;
export const LINE_HEIGHT = 5;

export const line = (from: Point, to: Point, isDashed = false): Shape => ({
  kind: 'line',
  from,
  to,
  isDashed,
});
export const circle = (centre: Point, radius: number): Shape => ({ kind: 'circle', centre, radius });
export const label = (
  x: number,
  y: number,
  text: string,
  width = 14,
  align: 'left' | 'centre' = 'centre',
): Shape => ({
  kind: 'text',
  corner: { x: align === 'centre' ? x - width / 2 : x, y },
  width,
  height: LINE_HEIGHT,
  text,
  align,
});

export function note(x: number, text: string, y = 10): Shape {
  const lines = text.split('\n').length;
  return {
    kind: 'text',
    corner: { x, y },
    width: WIDTH - x,
    height: lines * LINE_HEIGHT,
    text,
    align: 'left',
  };
}
