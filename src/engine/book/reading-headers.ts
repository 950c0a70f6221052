/** What the header of a column of readings says: its spot, its repeat, its unit. */
import type { ReadingKind } from '../input-sheets/input-sheet.js';
import type { TextUnit } from '../input-sheets/quantities.js';
import { unitOfWord } from './number-text.js';

const WALL = /^wall\s+(\d{1,3})(?:\s*#\s*(\d{1,3}))?$/i;
const DIAMETER = /^([a-z]|front|mid|middle|centre|rear)\s+(\d{1,3})\s*°?(?:\s*#\s*(\d{1,3}))?$/i;
const BRACKET = /^(.*?)\s*[([]\s*([^()[\]]*?)\s*[)\]]\s*$/;

/** `A 0 (in)` is the header `A 0` with the unit `in`. */
export function splitHeader(text: string): { name: string; unit: TextUnit | undefined } {
  const bracket = BRACKET.exec(text.normalize('NFKC'));
  const unit = bracket ? unitOfWord(bracket[2]!) : undefined;
  return bracket && unit ? { name: bracket[1]!, unit } : { name: text, unit: undefined };
}

/** The spot that a header names: null or undefined where it is no reading's. */
export function readingOf(name: string, kind: ReadingKind) {
  const plain = name.normalize('NFKC').replaceAll(/\s+/g, ' ').trim();
  if (kind === 'walls') {
    const wall = WALL.exec(plain);
    return wall && { station: `Wall ${Number(wall[1])}`, angle: undefined, repeat: Number(wall[2] ?? 1) };
  }
  const diameter = DIAMETER.exec(plain);
  if (!diameter || Number(diameter[2]) >= 360) return null;
  const word = diameter[1]!;
  const station = word[0]!.toUpperCase() + word.slice(1).toLowerCase();
  return {
    station: station === 'Middle' ? 'Mid' : station,
    angle: Number(diameter[2]),
    repeat: Number(diameter[3] ?? 1),
  };
}

const NEAR_WALL = /^walls? ?\d+/;
const NEAR_DIAMETER = /^([a-z]|front|mid|middle|cent(?:re|er)|rear|back) ?\d+/;

/** `A0`, `A-90`, `Center 10`, `B 0 mm`: not read, since nobody can tell `A-90` from a negative angle. */
export function looksLikeReading(name: string, kind: ReadingKind): boolean {
  const plain = name
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
  return (kind === 'walls' ? NEAR_WALL : NEAR_DIAMETER).test(plain);
}
