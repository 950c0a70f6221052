/** The sheet Gauge study: the same parts measured again and again, by several persons. */
import { needed } from './input-sheet.js';
import { COUNTED_NAME, GAUGE_NAME, NAME, SIGNED_LENGTH } from './quantities.js';

export const GAUGE_STUDY = {
  name: 'Gauge study',
  columns: {
    gauge: needed('Gauge', GAUGE_NAME, 'The gauge that is studied, as Gauges names it.'),
    part: needed('Part', NAME, 'One of several parts that differ as the measured ones do.'),
    person: needed('Person', NAME, 'Who measured.'),
    trial: needed(
      'Trial',
      COUNTED_NAME,
      'First, second, third reading of the part by that person, the others unseen.',
    ),
    // Studies are often of differences from a nominal size, which may be negative.
    value: needed('Value', SIGNED_LENGTH, 'The reading.'),
  },
} as const;
