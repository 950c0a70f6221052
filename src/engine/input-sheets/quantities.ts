/**
 * What a column that a user fills may hold: how a cell is read, which units it may carry, what is said of one that
 * breaks the rule. Reading, merging, the blank sheet and the documentation go by these records.
 */
import type { Ratio } from '../../maths/decimal.js';
import type { Grain } from '../../maths/grain.js';
import type { Half } from '../../maths/matching/stock.js';
import { TORQUE_UNITS, type TorqueRange, type TorqueUnit } from '../../maths/torque.js';

/** Units that a text or a header may carry. */
export type TextUnit = 'mm' | 'in' | 'µm' | 'C' | 'F' | 'g' | '%' | '1e-6/K' | '°' | TorqueUnit;

/** What each kind of number in a cell may be: its units and its range. */
export interface NumberRule {
  readonly expected: string;
  /** Units that a text may carry; the first is meant where neither cell nor header names one. */
  readonly units: readonly TextUnit[];
  readonly isAllowed: (value: number) => boolean;
  /** Of what is no length; blank is LARGEST. */
  readonly below?: number;
}

/** A length on the grain. */
export interface LengthQuantity extends NumberRule {
  readonly kind: 'length';
}

/** A length that others are added to before they are rounded to the grain. */
export interface ExactLengthQuantity extends NumberRule {
  readonly kind: 'exact length';
}

/** A number that is no length: grams, prices, counts. */
export interface NumberQuantity extends NumberRule {
  readonly kind: 'number';
  /** Decimals that the value is rounded to. */
  readonly decimals?: number;
}

export interface TemperatureQuantity extends NumberRule {
  readonly kind: 'temperature';
}

/** A number or a range of them. */
export interface TorqueQuantity extends NumberRule {
  readonly kind: 'torque';
}

/** A name; of what, where the name stands for a row of some sheet. */
export interface NameQuantity {
  readonly kind: 'name';
  readonly of?: 'part' | 'engine' | 'gauge' | 'material';
  /** Names that are counted: 1, 2, 3. */
  readonly isCounted?: true;
}

/** One of a few words. */
export interface WordQuantity<Word extends string = string> {
  readonly kind: 'word';
  readonly words: readonly Word[];
}

/** The user's own words, which the program does not read. */
export interface TextQuantity {
  readonly kind: 'text';
}

export type InputQuantity =
  | LengthQuantity
  | ExactLengthQuantity
  | NumberQuantity
  | TemperatureQuantity
  | TorqueQuantity
  | NameQuantity
  | WordQuantity
  | TextQuantity;

/** Exact °C of a temperature cell. */
export interface ReadTemperature {
  readonly celsius: Ratio;
  /** Whether the cell holds a plain number, over which a live formula can work. */
  readonly isNumber: boolean;
}

/** Exact millimetres of a length cell. */
export interface ReadExactLength {
  readonly mm: Ratio;
  /** Whether the cell holds a plain number, over which a live formula can work. */
  readonly isNumber: boolean;
}

/** What a cell of a quantity is read as. */
export type ValueOf<Of extends InputQuantity> = Of extends LengthQuantity
  ? Grain
  : Of extends ExactLengthQuantity
    ? ReadExactLength
    : Of extends NumberQuantity
      ? number
      : Of extends TemperatureQuantity
        ? ReadTemperature
        : Of extends TorqueQuantity
          ? TorqueRange
          : Of extends NameQuantity
            ? string
            : Of extends WordQuantity<infer Word>
              ? Word
              : undefined;

const LENGTH_UNITS = ['mm', 'in', 'µm'] as const;
const positive = (value: number) => value > 0;
const notNegative = (value: number) => value >= 0;

const length = (expected: string, isAllowed: NumberRule['isAllowed']): LengthQuantity => ({
  kind: 'length',
  expected,
  units: LENGTH_UNITS,
  isAllowed,
});

/** The size of a part, a wall, one reading. */
export const SIZE = length('a length above 0 (mm, in or µm)', positive);
/** A limit, an error, a difference. */
export const LENGTH = length('a length of 0 or more (mm, in or µm)', notNegative);
/** The size to which a gauge's zero was set. */
export const SETTING: ExactLengthQuantity = { ...SIZE, kind: 'exact length' };
export const SIGNED_LENGTH = length('a length (mm, in or µm)', Number.isFinite);

const number = (
  expected: string,
  units: readonly TextUnit[],
  isAllowed: NumberRule['isAllowed'],
  more: Pick<NumberQuantity, 'below' | 'decimals'> = {},
): NumberQuantity => ({ kind: 'number', expected, units, isAllowed, ...more });

export const MASS = number('a mass in g above 0', ['g'], positive);
export const MASS_SPREAD = number('a mass in g, 0 or more', ['g'], notNegative);
// Up to 1000 a part exists at every temperature above absolute zero.
export const EXPANSION = number(
  'an expansion in 1e-6 per K from 0 to 1000',
  ['1e-6/K'],
  (value) => value >= 0 && value <= 1000,
);
// No money is finer than ten-thousandths, but a cell that divides one sum by another may be; up to the greatest,
// ten-thousandths are whole numbers that add exactly.
export const PRICE = number('a price of 0 or more', [], notNegative, { below: 1e8, decimals: 4 });
export const COUNT = number('a whole number from 1', [], (value) => Number.isInteger(value) && value >= 1);
export const SHARE = number('middle or a number from 0 to 1', [], (value) => value >= 0 && value <= 1);

export const ANGLE = number('an angle in degrees above 0', ['°'], positive, { below: 3600 });

export const TORQUE: TorqueQuantity = {
  kind: 'torque',
  expected: 'a torque above 0 in N·m, lb·ft, lb·in or kgf·m, or a range such as 10–11',
  units: TORQUE_UNITS,
  isAllowed: positive,
};

export const TEMPERATURE: TemperatureQuantity = {
  kind: 'temperature',
  expected: 'a temperature (°C or °F)',
  units: ['C', 'F'],
  isAllowed: Number.isFinite,
};

/** What no workshop exceeds. */
export const WORKSHOP_TEMPERATURE = 'a temperature from −100 to 400 °C';

export function isWorkshopTemperature(celsius: number): boolean {
  return celsius >= -100 && celsius <= 400;
}

export const NAME: NameQuantity = { kind: 'name' };
export const PART_NAME: NameQuantity = { kind: 'name', of: 'part' };
export const ENGINE_NAME: NameQuantity = { kind: 'name', of: 'engine' };
export const GAUGE_NAME: NameQuantity = { kind: 'name', of: 'gauge' };
export const MATERIAL_NAME: NameQuantity = { kind: 'name', of: 'material' };
export const COUNTED_NAME: NameQuantity = { kind: 'name', isCounted: true };
export const TEXT: TextQuantity = { kind: 'text' };

/** One of these words. */
export function oneOf<const Word extends string>(...words: readonly Word[]): WordQuantity<Word> {
  return { kind: 'word', words };
}

export const YES_OR_NO = oneOf('yes', 'no');
export const HALF: WordQuantity<Half> = oneOf('upper', 'lower', 'either');

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
