/** Reads the texts in which an engine is described: each by the name of its option. */
import { headerKey, nameKey } from '../book/names.js';
import { UserError } from '../user-error.js';
import { type BlankGauge, lengthCell } from './description.js';
import { type DescriptionTexts, descriptionItems } from './description-items.js';

const MOST_POSITIONS = 200;
const MOST_ENGINES = 100;
export const LONGEST_NAME = 40;

export function textOf(texts: DescriptionTexts, name: string): string {
  return texts[name] ?? '';
}

/** @throws UserError that names the option, its text and what was expected of it. */
export function refuseText(texts: DescriptionTexts, name: string, expected: string, remedy: string): never {
  const { option } = descriptionItems().find((known) => known.name === name)!;
  throw new UserError(`--${option}: found "${textOf(texts, name)}"; expected ${expected}; ${remedy}.`);
}

/**
 * Names separated by commas.
 * @throws UserError where one is blank, too long or named twice.
 */
export function readNames(texts: DescriptionTexts, name: string): string[] {
  const list = textOf(texts, name)
    .split(',')
    .map((part) => part.trim());
  const isTwice = new Set(list.map(nameKey)).size < list.length;
  if (list.some((part) => part === '' || part.length > LONGEST_NAME) || isTwice) {
    refuseText(texts, name, 'names separated by commas, each once', 'name each by itself');
  }
  return list;
}

/**
 * Engines, each `NAME` or `NAME=TYPE`; the first type is that of an engine that names none.
 * @throws UserError where a name or type cannot be used, or an engine is named twice.
 */
export function readEngines(texts: DescriptionTexts, types: readonly string[]) {
  const engines = readNames(texts, 'engines').map((part) => {
    const [name = '', type = types[0]!] = part.split('=').map((side) => side.trim());
    const known = types.find((candidate) => nameKey(candidate) === nameKey(type));
    if (name === '' || known === undefined) {
      refuseText(texts, 'engines', 'NAME or NAME=TYPE with a type of --types', 'name the type there too');
    }
    return { name, type: known };
  });
  if (
    engines.length > MOST_ENGINES ||
    new Set(engines.map(({ name }) => nameKey(name))).size < engines.length
  ) {
    refuseText(texts, 'engines', `up to ${MOST_ENGINES} engines, each once`, 'name each by itself');
  }
  return engines;
}

/**
 * Positions such as `1-4, 6`; blank is 1 to the standard count, `none` is none.
 * @throws UserError where one is blank, too long or named twice.
 */
export function readPositions(texts: DescriptionTexts, name: string, standard: number): string[] {
  const text = textOf(texts, name).trim();
  if (text.toLowerCase() === 'none' || (text === '' && standard === 0)) return [];
  const list = (text === '' ? `1-${standard}` : text).split(',').flatMap((part) => {
    const range = /^\s*(\d{1,3})\s*-\s*(\d{1,3})\s*$/.exec(part);
    if (!range) return [part.trim()];
    const [from, to] = [Number(range[1]), Number(range[2])];
    return Array.from({ length: Math.max(0, to - from + 1) }, (_, place) => String(from + place));
  });
  const isTwice = new Set(list.map(nameKey)).size < list.length;
  const isWrong = list.some((part) => part === '' || part.length > LONGEST_NAME);
  if (list.length === 0 || list.length > MOST_POSITIONS || isTwice || isWrong) {
    refuseText(texts, name, 'positions such as 1-4 or 1,2,5, each once, or none', 'name them so');
  }
  return list;
}

/**
 * A whole number from 1.
 * @throws UserError where the text is none, or is above the most.
 */
export function readWholeNumber(texts: DescriptionTexts, name: string, most: number): number {
  const value = /^\s*\d{1,3}\s*$/.test(textOf(texts, name)) ? Number(textOf(texts, name)) : 0;
  if (value < 1 || value > most) {
    refuseText(texts, name, `a whole number from 1 to ${most}`, 'type it in figures');
  }
  return value;
}

/**
 * One of a few words.
 * @throws UserError where the text is none of them.
 */
export function readWord<Word extends string>(
  texts: DescriptionTexts,
  name: string,
  words: readonly Word[],
): Word {
  const found = words.find((known) => headerKey(known) === headerKey(textOf(texts, name)));
  if (found === undefined) refuseText(texts, name, words.join(' or '), 'type one of these words');
  return found;
}

/** A comma between two figures is a decimal sign, as in `M1=0,002`; any other parts two gauges. */
const BETWEEN_GAUGES = /;|,(?!\d)|(?<!\d),/;

/**
 * Gauges, each `NAME` or `NAME=MAX ERROR`; none for a blank.
 * @throws UserError where a name is too long or stands twice, or an error is no length.
 */
export function readGauges(texts: DescriptionTexts, name: string): BlankGauge[] {
  const text = textOf(texts, name).trim();
  if (text === '') return [];
  const gauges = text.split(BETWEEN_GAUGES).map((part) => {
    const [gauge = '', maxError] = part.split('=').map((side) => side.trim());
    return { name: gauge, maxError };
  });
  const isWrong = gauges.some(
    ({ name: gauge, maxError }) =>
      gauge === '' ||
      gauge.length > LONGEST_NAME ||
      (maxError !== undefined && lengthCell(maxError) === undefined),
  );
  if (isWrong || new Set(gauges.map(({ name: gauge }) => nameKey(gauge))).size < gauges.length) {
    refuseText(
      texts,
      name,
      'NAME or NAME=MAX ERROR, as in M1=0.002, several separated by commas',
      'name each gauge so',
    );
  }
  return gauges;
}

/** How gauges are typed. */
export function gaugesText(gauges: readonly BlankGauge[]): string {
  return gauges
    .map(({ name, maxError }) => (maxError === undefined ? name : `${name}=${maxError}`))
    .join('; ');
}
