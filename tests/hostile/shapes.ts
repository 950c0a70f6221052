/** All hostile shapes. */
import { CSV_SHAPES } from './csv-shapes.js';
import { NAME_SHAPES } from './name-shapes.js';
import { PACKAGE_SHAPES } from './package-shapes.js';
import type { Shape } from './shape.js';
import { SHEET_SHAPES } from './sheet-shapes.js';
import { TEXT_SHAPES } from './text-shapes.js';

export const HOSTILE_SHAPES: readonly Shape[] = [
  ...PACKAGE_SHAPES,
  ...NAME_SHAPES,
  ...TEXT_SHAPES,
  ...SHEET_SHAPES,
  ...CSV_SHAPES,
];
