/** The sheet Run-outs: what a dial shows of a turned part. */
import { PLACE_OF_ROW } from './common-columns.js';
import type { PartSheet } from './input-sheet.js';

export const RUN_OUTS = {
  name: 'Run-outs',
  noun: 'run-out',
  counted: ['run-out', 'run-outs'],
  plural: 'Run-outs',
  readings: 'dial',
  role: 'run-out',
  material: undefined,
  matching: 'stays',
  isOfPlaces: true,
  measured: 'Dial',
  guide:
    'type what the dial shows at each angle, signed, from any zero; or the total that it shows in one turn (Total).',
  columns: PLACE_OF_ROW,
} as const satisfies PartSheet;
