/** What the header of a column of readings says: its spot, its repeat, its unit. */
import type { ReadingKind } from '../input-sheets/input-sheet.js';
import type { TextUnit } from '../input-sheets/quantities.js';
import { headerKey } from './names.js';
import { unitOfWord } from './number-text.js';

/** Punctuation around a header says nothing. A number sign counts repeats; inch marks and % could be meant as units. */
const BEFORE = String.raw`^[^\p{L}\p{N}#]*`;
const BEHIND = String.raw`[^\p{L}\p{N}#%"'\u2018-\u201f\u2032\u2033]*$`;
const REPEAT = String.raw`(?:\s*#\s*(\d{1,3}))?`;
/** Spots that are counted: the words before their numbers. */
const COUNTED = {
  walls: ['Wall'],
  bolts: ['Length', 'Neck'],
  gaps: ['Gap'],
} as const satisfies Partial<Record<ReadingKind, readonly string[]>>;
const single = (words: string) => new RegExp(`${BEFORE}(${words})${BEHIND}`, 'iu');
const countedSpot = (kind: keyof typeof COUNTED) =>
  new RegExp(String.raw`${BEFORE}(${COUNTED[kind].join('|')})\s+(\d{1,3})${REPEAT}${BEHIND}`, 'iu');
const COUNTED_SPOT = {
  walls: countedSpot('walls'),
  bolts: countedSpot('bolts'),
  gaps: countedSpot('gaps'),
};
/** What stands in for readings: the blades of a feeler gauge, the total that a dial shows by itself. */
const STAND_IN: Partial<Record<ReadingKind, RegExp>> = {
  gaps: single('goes|stops'),
  dial: single('total'),
};
const DIAMETER = new RegExp(
  String.raw`${BEFORE}([a-z]|front|mid|middle|centre|rear)\s+(\d{1,3})\s*°?${REPEAT}${BEHIND}`,
  'iu',
);

/** `A 0 (in)` and `A 0 (in):` are the header `A 0` with the unit `in`. */
export function splitHeader(text: string): { name: string; unit: TextUnit | undefined } {
  const plain = text.normalize('NFKC');
  const open = Math.max(plain.lastIndexOf('('), plain.lastIndexOf('['));
  const close = open + 1 + plain.slice(open + 1).search(/[)\]]/);
  const unit = open >= 0 && close > open ? unitOfWord(plain.slice(open + 1, close)) : undefined;
  const isLast = headerKey(plain.slice(close + 1)) === '';
  return unit && isLast ? { name: plain.slice(0, open).trimEnd(), unit } : { name: text, unit: undefined };
}

const capitalised = (word: string) => word[0]!.toUpperCase() + word.slice(1).toLowerCase();

function countedSpotOf(found: RegExpExecArray | null) {
  if (!found) return null;
  const [, word = '', number, repeat = 1] = found;
  return { station: `${capitalised(word)} ${Number(number)}`, angle: undefined, repeat: Number(repeat) };
}

function standIn(found: RegExpExecArray | null | undefined) {
  return found && { station: capitalised(found[1]!), angle: undefined, repeat: 1 };
}

/** The stations of what stands in for readings. */
export const STAND_INS = { goes: 'Goes', stops: 'Stops', total: 'Total' } as const;

export function isStandIn({ station }: { readonly station: string }): boolean {
  return Object.values<string>(STAND_INS).includes(station);
}

/**
 * The names that a header is split into by `/` or a line break, each with its unit: `Part / Teil`, `Wall 1 (in)
 * Wand 1`. Within brackets nothing splits.
 */
export function partsOfHeader(text: string): { name: string; unit: TextUnit | undefined }[] {
  const parts = [''];
  let depth = 0;
  for (const letter of text.normalize('NFKC')) {
    if ('(['.includes(letter)) depth += 1;
    else if (')]'.includes(letter)) depth = Math.max(0, depth - 1);
    if (depth === 0 && '/\n\r'.includes(letter)) parts.push('');
    else parts[parts.length - 1] += letter;
  }
  return parts.map((part) => splitHeader(part.trim()));
}

/** The spot that a header names; null where it names none. */
export function readingOf(name: string, kind: ReadingKind) {
  const plain = name.normalize('NFKC').replaceAll(/\s+/g, ' ').trim();
  const typedInstead = standIn(STAND_IN[kind]?.exec(plain));
  if (typedInstead) return typedInstead;
  if (kind in COUNTED_SPOT) return countedSpotOf(COUNTED_SPOT[kind as keyof typeof COUNTED].exec(plain));
  const diameter = DIAMETER.exec(plain);
  if (!diameter || Number(diameter[2]) >= 360) return null;
  const station = capitalised(diameter[1]!);
  return {
    station: station === 'Middle' ? 'Mid' : station,
    angle: Number(diameter[2]),
    repeat: Number(diameter[3] ?? 1),
  };
}

const NEAR_DIAMETER = /^([a-z]|front|mid|middle|cent(?:re|er)|rear|back) ?\d+/;

const NEAR: Readonly<Record<ReadingKind, RegExp>> = {
  diameters: NEAR_DIAMETER,
  walls: /^walls? ?\d+/,
  bolts: /^(lengths?|necks?) ?\d+/,
  gaps: /^gaps? ?\d+/,
  dial: NEAR_DIAMETER,
};

/** Readings as a user heads them, for messages. */
export const READING_EXAMPLES: Readonly<Record<ReadingKind, string>> = {
  diameters: '"A 0", "A 90" or "Front 45"',
  walls: '"Wall 1"',
  bolts: '"Length 1" or "Neck 1"',
  gaps: '"Gap 1"',
  dial: '"A 0", "A 90" or "Front 45"',
};

/** `A0`, `A-90`, `Center 10`, `B 0 mm`: not read, since nobody can tell `A-90` from a negative angle. */
export function looksLikeReading(name: string, kind: ReadingKind): boolean {
  const plain = name
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
  return NEAR[kind].test(plain);
}
