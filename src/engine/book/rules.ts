/** What each kind of number in a cell may be: its units and its range. */
import type { TextUnit } from './number-text.js';

export interface NumberRule {
  readonly expected: string;
  /** Units that a text may carry; the first is meant where neither cell nor header names one. */
  readonly units: readonly TextUnit[];
  readonly isAllowed: (value: number) => boolean;
  /** Of what is no length; blank is LARGEST. */
  readonly below?: number;
}

const LENGTH_UNITS = ['mm', 'in', 'µm'] as const;
const positive = (value: number) => value > 0;
const notNegative = (value: number) => value >= 0;

/** What each kind of number may be. */
export const RULES = {
  size: { expected: 'a length above 0 (mm, in or µm)', units: LENGTH_UNITS, isAllowed: positive },
  length: { expected: 'a length of 0 or more (mm, in or µm)', units: LENGTH_UNITS, isAllowed: notNegative },
  signedLength: { expected: 'a length (mm, in or µm)', units: LENGTH_UNITS, isAllowed: Number.isFinite },
  mass: { expected: 'a mass in g above 0', units: ['g'], isAllowed: positive },
  massSpread: { expected: 'a mass in g, 0 or more', units: ['g'], isAllowed: notNegative },
  temperature: { expected: 'a temperature (°C or °F)', units: ['C', 'F'], isAllowed: Number.isFinite },
  // Up to 1000 a part exists at every temperature above absolute zero.
  expansion: {
    expected: 'an expansion in 1e-6 per K from 0 to 1000',
    units: ['1e-6/K'],
    isAllowed: (value: number) => value >= 0 && value <= 1000,
  },
  // Up to there ten-thousandths are whole numbers that add exactly.
  price: { expected: 'a price of 0 or more', units: [], isAllowed: notNegative, below: 1e8 },
  quantity: {
    expected: 'a whole number from 1',
    units: [],
    isAllowed: (value: number) => Number.isInteger(value) && value >= 1,
  },
  share: {
    expected: 'middle or a number from 0 to 1',
    units: [],
    isAllowed: (v: number) => v >= 0 && v <= 1,
  },
} as const satisfies Record<string, NumberRule>;

/** No part is a kilometre long; what is computed of shorter lengths is exact. */
const KILOMETRE: Partial<Record<TextUnit, number>> = { mm: 1e6, in: 1e6 / 25.4, µm: 1e9 };
/** What anything else may be: no mass, price or temperature of a part is larger. */
const LARGEST = 1e9;

/** What was expected, where a number breaks its rule; undefined where it keeps it. */
export function breachOf(rule: NumberRule, value: number, unit: TextUnit | undefined): string | undefined {
  if (!Number.isFinite(value) || !rule.isAllowed(value)) return rule.expected;
  const longest = unit && KILOMETRE[unit];
  if (longest !== undefined)
    return Math.abs(value) < longest ? undefined : `${rule.expected}, less than a kilometre`;
  const { below = LARGEST } = rule;
  return Math.abs(value) < below ? undefined : `${rule.expected}, less than ${below}`;
}
