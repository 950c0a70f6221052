/** All outside values that touch the program, and why the others do not. */
import type { ReferenceCheck } from './check.js';
import { CLEARANCE_CHECKS } from './clearances.js';
import { CONFORMITY_CHECKS } from './conformity.js';
import { GAUGE_STUDY_CHECKS } from './gauge-studies.js';
import { TORQUE_CHECKS } from './torques.js';
import { UNCERTAINTY_CHECKS } from './uncertainty.js';

export const REFERENCE_CHECKS: readonly ReferenceCheck[] = [
  ...CLEARANCE_CHECKS,
  ...UNCERTAINTY_CHECKS,
  ...CONFORMITY_CHECKS,
  ...GAUGE_STUDY_CHECKS,
  ...TORQUE_CHECKS,
];

const TIGHTENING = 'the program computes no torque or preload of bolts';
const FILM = 'the program computes no oil film';
const STUDENT = 'the program takes normal quantiles and has no degrees of freedom';

/** Items of the collection that nothing in the program computes. */
export const NOT_TOUCHED: Readonly<Record<string, string>> = {
  'gum-h1-2nd': 'the program has no second-order terms; docs/method.md says what the linear model costs',
  'gum-g2': STUDENT,
  'ws-2term': STUDENT,
  'guard-tur': 'other rules for guards than that of ISO 14253-1',
  '286-it': 'the program has no table of tolerances: limits are typed in',
  '286-formula': 'the program has no table of tolerances: limits are typed in',
  '286-132.5': 'the program has no table of tolerances: limits are typed in',
  'tm-spread-crush': 'where to measure: docs/method.md says so in words',
  'rule-001': 'the program proposes no clearance: the aim is typed in',
  'as-coarse': TIGHTENING,
  '898-proof': TIGHTENING,
  'bolt-tkdf-m10': TIGHTENING,
  'bolt-tkdf-75': TIGHTENING,
  'bolt-vdi': TIGHTENING,
  'bolt-angle': TIGHTENING,
  'jb-mott': FILM,
  'jb-shigley': FILM,
  'assign-small': 'matching is of whole sets; tests/maths/matching holds it against every possible set',
  'assign-orlib': 'matching is of whole sets; tests/maths/matching holds it against every possible set',
};
