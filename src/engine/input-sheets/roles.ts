/** What the place of a part in its fit makes of it: the limits that it keeps, its classes, its material. */
import type { PartRole } from './input-sheet.js';
import { LIMITS } from './limits.js';

export type LimitsKey = keyof typeof LIMITS.columns;

/** One comparison of a part with a limit. */
export interface RoleCheck {
  readonly quantity: 'smallest' | 'largest' | 'out of round' | 'taper';
  readonly side: 'at least' | 'at most';
  /** Columns of Limits: the first that is typed counts. */
  readonly limits: readonly LimitsKey[];
}

export interface RoleRecord {
  /** In a sentence about its limits. */
  readonly noun: string;
  /** The word of Classes; undefined where its size falls in no class. */
  readonly classOf: 'journal' | 'bore' | 'shell' | undefined;
  /** The column of Limits that names its material. */
  readonly material: 'journalMaterial' | 'boreMaterial' | undefined;
  /** None: the part is measured, and not judged by itself. */
  readonly checks: readonly RoleCheck[];
  /** Its form is its design: it has no taper and is not out of round. */
  readonly isShaped?: true;
}

const INNER: readonly RoleCheck[] = [
  { quantity: 'smallest', side: 'at least', limits: ['wearLimit', 'journalMin'] },
  { quantity: 'largest', side: 'at most', limits: ['journalMax'] },
];

const FORM: readonly RoleCheck[] = [
  { quantity: 'out of round', side: 'at most', limits: ['outOfRoundLimit'] },
  { quantity: 'taper', side: 'at most', limits: ['taperLimit'] },
];

export const ROLES: Readonly<Record<PartRole, RoleRecord>> = {
  inner: {
    noun: 'journal',
    classOf: 'journal',
    material: 'journalMaterial',
    checks: [...INNER, ...FORM],
  },
  'shaped inner': {
    noun: 'piston',
    classOf: 'journal',
    material: 'journalMaterial',
    checks: [...INNER],
    isShaped: true,
  },
  outer: {
    noun: 'bore',
    classOf: 'bore',
    material: 'boreMaterial',
    checks: [
      { quantity: 'smallest', side: 'at least', limits: ['boreMin'] },
      { quantity: 'largest', side: 'at most', limits: ['boreWearLimit', 'boreMax'] },
      ...FORM,
    ],
  },
  wall: { noun: 'shell', classOf: 'shell', material: undefined, checks: [] },
  // What is measured on the assembly is judged as a fit.
  gap: { noun: 'gap', classOf: undefined, material: undefined, checks: [] },
  'run-out': { noun: 'run-out', classOf: undefined, material: undefined, checks: [] },
};

/** A bore that was measured with its shells in: its size is that of the bearing, which has limits of its own. */
export const BORE_WITH_SHELLS: RoleRecord = {
  noun: 'bore with its shells in',
  classOf: undefined,
  material: ROLES.outer.material,
  checks: [
    { quantity: 'smallest', side: 'at least', limits: ['bearingMin'] },
    { quantity: 'largest', side: 'at most', limits: ['bearingMax'] },
    ...FORM,
  ],
};

/** The header that a limit stands under. */
export function limitHeader(key: LimitsKey): string {
  return LIMITS.columns[key].header;
}
