/** The sheet Limits: what the maker allows, a row an engine type and fit. */
import { ruleFor } from './common-columns.js';
import { column } from './input-sheet.js';
import { LENGTH, MASS_SPREAD, MATERIAL_NAME, SIGNED_LENGTH, SIZE, TEXT } from './quantities.js';

export const LIMITS = {
  name: 'Limits',
  isPrintedTwice: true,
  columns: {
    ...ruleFor('limits are'),
    clearanceMin: column(
      'Clearance min',
      SIGNED_LENGTH,
      'Least diametral clearance; of gaps and run-outs one of min and max is enough.',
    ),
    clearanceMax: column('Clearance max', SIGNED_LENGTH, 'Greatest diametral clearance of new parts.'),
    serviceLimit: column('Service limit', SIGNED_LENGTH, 'Greatest clearance of worn parts.'),
    aim: column('Aim', SIGNED_LENGTH, 'The clearance wished for.', { isExtra: true }),
    journalMin: column('Journal min', SIZE, 'Least journal size.'),
    journalMax: column('Journal max', SIZE, 'Greatest journal size.'),
    wearLimit: column('Wear limit', SIZE, 'Least size of a worn journal, piston or shaft.'),
    boreMin: column('Bore min', SIZE, 'Least bore size.'),
    boreMax: column('Bore max', SIZE, 'Greatest bore size.'),
    boreWearLimit: column('Bore wear limit', SIZE, 'Greatest size of a worn bore.', { isExtra: true }),
    bearingMin: column('Bearing min', SIZE, 'Least size of a bore measured with its shells in.', {
      isExtra: true,
    }),
    bearingMax: column('Bearing max', SIZE, 'Greatest size of a bore measured with its shells in.', {
      isExtra: true,
    }),
    outOfRoundLimit: column('Out-of-round limit', LENGTH, 'Greatest out of round of journal and bore.'),
    taperLimit: column('Taper limit', LENGTH, 'Greatest taper of journal and bore.'),
    neighbourSpread: column(
      'Neighbour spread',
      LENGTH,
      'Greatest difference of clearance between neighbours.',
      { isExtra: true },
    ),
    massSpread: column(
      'Mass spread',
      MASS_SPREAD,
      'Greatest difference of mass among the rods of one crank, g.',
      { isExtra: true },
    ),
    journalMaterial: column('Journal material', MATERIAL_NAME, 'A material of Materials or a built-in one.'),
    boreMaterial: column('Bore material', MATERIAL_NAME, 'A material of Materials or a built-in one.'),
    source: column('Source', TEXT, 'Where the limits were read.', { width: 18 }),
  },
} as const;
