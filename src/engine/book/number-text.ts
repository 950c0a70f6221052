/**
 * A number written as text, with or without its unit: `42.003`, `42,003 mm`, `1.6536"`, `1 7/8 in`.
 *
 * A comma and a point can each be the decimal sign or a thousands mark. In millimetres and inches a
 * lone sign is decimal, since nothing here is a metre long. Elsewhere a lone sign before exactly three
 * digits has two readings, and only the other texts of its column can settle it.
 */
import { parseDecimal, type Ratio } from '../../maths/decimal.js';
import type { TextUnit } from '../input-sheets/quantities.js';

export type DecimalSign = '.' | ',';

const UNIT_WORDS: Readonly<Record<string, TextUnit>> = {
  mm: 'mm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  "''": 'in',
  // The compatibility form of µ is the Greek letter.
  μm: 'µm',
  um: 'µm',
  c: 'C',
  '°c': 'C',
  f: 'F',
  '°f': 'F',
  g: 'g',
  '%': '%',
  '1e-6perk': '1e-6/K',
  '1e-6/k': '1e-6/K',
  '10-6/k': '1e-6/K',
  '°': '°',
  deg: '°',
  degree: '°',
  degrees: '°',
};

/** Units of torque without the sign between their two words. */
const TORQUE_WORDS: Readonly<Record<string, TextUnit>> = {
  nm: 'N·m',
  lbft: 'lb·ft',
  lbsft: 'lb·ft',
  lbfft: 'lb·ft',
  ftlb: 'lb·ft',
  ftlbs: 'lb·ft',
  ftlbf: 'lb·ft',
  lbin: 'lb·in',
  lbsin: 'lb·in',
  lbfin: 'lb·in',
  inlb: 'lb·in',
  inlbs: 'lb·in',
  inlbf: 'lb·in',
  kgfm: 'kgf·m',
  kgm: 'kgf·m',
  mkg: 'kgf·m',
  mkgf: 'kgf·m',
};

/** The unit that a word such as `µm` or `"` names. */
export function unitOfWord(word: string): TextUnit | undefined {
  const plain = plainText(word).toLowerCase().replaceAll(' ', '');
  if (Object.hasOwn(UNIT_WORDS, plain)) return UNIT_WORDS[plain];
  const bare = plain.replaceAll(/[·⋅∙•.*-]/g, '');
  return Object.hasOwn(TORQUE_WORDS, bare) ? TORQUE_WORDS[bare] : undefined;
}

/** Full-width digits, typographic primes, minus signs and spaces in their plain form. */
export function plainText(text: string): string {
  return text
    .replaceAll(/[¼-¾⅐-⅞]/g, (fraction) => ` ${fraction}`)
    .normalize('NFKC')
    .replaceAll(/[‐‑‒–−]/g, '-')
    .replaceAll(/[“”″]/g, '"')
    .replaceAll('⁄', '/')
    .replaceAll(/[′’]/g, "'")
    .replaceAll(/\s+/g, ' ')
    .replaceAll('° ', '°')
    .trim();
}

/** The parts of a number text before it is decided what its signs mean. */
export interface ScannedNumber {
  readonly unit: TextUnit | undefined;
  readonly sign: '-' | '';
  /** A mixed number such as 1 7/8, which has no decimal sign. */
  readonly fraction: Ratio | undefined;
  /** Digits with their commas and points, e.g. `1,234.5`. */
  readonly body: string;
}

const NUMBER = /^([+-]?) ?((?:\d[\d.,]*|[.,]\d+)(?:e[+-]?\d{1,2})?)(?: ?(\D.*))?$/i;
const MIXED = /^([+-]?) ?(?:(\d+) )?(\d+)\/(\d+)(?: ?(\D.*))?$/;

/** Splits a text into number and unit; undefined where it is not one number with a known unit. */
export function scanNumber(text: string): ScannedNumber | undefined {
  const plain = plainText(text);
  const mixed = MIXED.exec(plain);
  if (mixed) {
    const [, sign, whole = '0', numerator, denominator, word] = mixed;
    const unit = word === undefined ? undefined : unitOfWord(word);
    const below = BigInt(denominator!);
    if (below === 0n || (word !== undefined && !unit)) return undefined;
    const fraction = { numerator: BigInt(whole) * below + BigInt(numerator!), denominator: below };
    return { unit, sign: sign === '-' ? '-' : '', fraction, body: '' };
  }
  const match = NUMBER.exec(plain);
  if (!match) return undefined;
  const [, sign, body, word] = match;
  const unit = word === undefined ? undefined : unitOfWord(word);
  if (word !== undefined && !unit) return undefined;
  return { unit, sign: sign === '-' ? '-' : '', fraction: undefined, body: body! };
}

const GROUPED = { ',': /^\d{1,3}(,\d{3})+$/, '.': /^\d{1,3}(\.\d{3})+$/ } as const;

function otherSign(sign: DecimalSign): DecimalSign {
  return sign === '.' ? ',' : '.';
}

/** A lone sign followed by exactly three digits: `1,234`. */
function isTwoFaced(body: string): boolean {
  return /^\d{1,3}[.,]\d{3}$/.test(body) && !body.startsWith('0');
}

/** Which sign a text shows to be decimal, where it leaves no doubt. */
export function decimalSignShown(scan: ScannedNumber, loneSignIsDecimal: boolean): DecimalSign | undefined {
  const { body } = scan;
  const signs = [...body].filter((letter) => letter === '.' || letter === ',') as DecimalSign[];
  const last = signs.at(-1);
  if (!last) return undefined;
  if (signs.includes(otherSign(last))) return last;
  if (signs.length > 1) return otherSign(last);
  return loneSignIsDecimal || !isTwoFaced(body) ? last : undefined;
}

export type NumberReading =
  | { readonly value: Ratio }
  /** The text has two readings and nothing settles which is meant. */
  | { readonly either: readonly [string, string] }
  | 'not a number';

/**
 * The exact value of a scanned number.
 * @param loneSignIsDecimal true for lengths in mm and in
 * @param settled the decimal sign that the other texts of the column show, if they agree
 */
export function readScanned(
  scan: ScannedNumber,
  loneSignIsDecimal: boolean,
  settled: DecimalSign | undefined,
): NumberReading {
  if (scan.fraction) return { value: signed(scan.fraction, scan.sign) };
  const decimal = decimalSignShown(scan, loneSignIsDecimal) ?? settled;
  if (!decimal && /[.,]/.test(scan.body)) {
    return { either: [scan.body.replace(/[.,]/, '.'), scan.body.replace(/[.,]/, '')] };
  }
  const [mantissa = '', exponent] = scan.body.split(/e/i);
  // 1,234,567 mm would be longer than a kilometre: a slip, not a length.
  if (loneSignIsDecimal && /([.,])\d*\1/.test(mantissa) && !mantissa.includes(decimal!))
    return 'not a number';
  const at = decimal ? mantissa.indexOf(decimal) : -1;
  const whole = at < 0 ? mantissa : mantissa.slice(0, at);
  const fraction = at < 0 ? '' : mantissa.slice(at + 1);
  const thousands = decimal ? otherSign(decimal) : ',';
  if (/[.,]/.test(fraction)) return 'not a number';
  if (/[.,]/.test(whole) && !GROUPED[thousands].test(whole)) return 'not a number';
  const digits = whole.replaceAll(thousands, '');
  const value = parseDecimal(`${digits}.${fraction}${exponent ? `e${exponent}` : ''}`);
  return value ? { value: signed(value, scan.sign) } : 'not a number';
}

function signed(value: Ratio, sign: '-' | ''): Ratio {
  return sign === '-' ? { ...value, numerator: -value.numerator } : value;
}
