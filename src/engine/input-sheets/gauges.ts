/** The sheet Gauges: what measured, and how well. */
import { column, needed } from './input-sheet.js';
import { GAUGE_NAME, LENGTH, MATERIAL_NAME, SIZE, YES_OR_NO } from './quantities.js';

export const GAUGES = {
  name: 'Gauges',
  columns: {
    gauge: needed('Gauge', GAUGE_NAME, "The gauge's name."),
    maxError: needed('Max error', LENGTH, '±, from its maker or certificate.'),
    resolution: column('Resolution', LENGTH, 'Its smallest step.'),
    repeatability: column('Repeatability', LENGTH, 'Standard deviation of one reading.'),
    material: column('Material', MATERIAL_NAME, 'What it is made of; blank is steel.'),
    setFrom: column('Set from', GAUGE_NAME, 'The gauge that set its zero.'),
    sameAtAllSizes: column(
      'Same at all sizes',
      YES_OR_NO,
      '`yes`: its error is one constant; blank is `no`: it may differ from size to size.',
    ),
    from: column('From', SIZE, 'The least size that it can measure.'),
    to: column('To', SIZE, 'The greatest size that it can measure.'),
  },
} as const;
