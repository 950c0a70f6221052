/**
 * Reads one cell by the quantity that it should hold: a length on the grain, an exact temperature, a mark. Whatever
 * is not of that quantity is refused by name.
 */
import type { AllowedRange, Quantity } from '../../../functions/definition.js';
import type { FunctionUnits } from '../../../functions/expected.js';
import { messages } from '../../../functions/messages.js';
import { exact, type Ratio, toNumber } from '../../maths/decimal.js';
import { type Grain, grainOfMm } from '../../maths/grain.js';
import { grainOf, toCelsius, toMm, unroundedGrains } from '../../maths/units.js';
import { type GivenPlace, isBlankScalar, isOutside, refuseGiven, type Scalar } from './given.js';

/** No part and no clearance is a kilometre long; sums of smaller lengths are exact. */
const LONGEST: Grain = grainOfMm(1e6);
/** No material expands so little, in 1e-6 per K; 0 switches the correction off. */
const LEAST_EXPANSION = 0.01;
const LEAST_CONFIDENCE = 0.5;
const GREATEST_CONFIDENCE = 0.9999;
const PERCENT_TEXT = /^(\d+(?:[.,]\d+)?)\s*(%?)$/;

/** @throws ArgumentRefusal where the cell, which is not blank, does not hold the quantity. */
export function readQuantity(
  quantity: Quantity,
  scalar: Scalar,
  place: GivenPlace,
  allowed: AllowedRange,
  units: FunctionUnits,
): unknown {
  switch (quantity) {
    case 'length':
      return readGrain(scalar, place, allowed, units);
    case 'reading':
      return readExactLength(scalar, place, allowed, units);
    case 'unrounded length':
      return readUnroundedGrains(scalar, place, allowed, units);
    case 'temperature':
      return readCelsius(scalar, place, allowed, units);
    case 'expansion':
      return readExpansion(scalar, place, allowed);
    case 'count':
      return readCount(scalar, place, allowed);
    case 'confidence':
      return readConfidence(scalar, place);
    case 'flag':
      return typeof scalar === 'boolean' ? scalar : refuseGiven('VALUE', place, scalar);
    case 'mark':
      return readMark(scalar, place);
    default:
      throw new TypeError(`no reader for ${quantity}`);
  }
}

/** @throws ArgumentRefusal where the cell holds no number. */
export function readNumber(scalar: Scalar, place: GivenPlace): number {
  return typeof scalar === 'number' ? scalar : refuseGiven('VALUE', place, scalar);
}

/**
 * A length, rounded to the grain.
 * @throws ArgumentRefusal where the cell holds no allowed length.
 */
export function readGrain(
  scalar: Scalar,
  place: GivenPlace,
  allowed: AllowedRange,
  { lengthUnit }: FunctionUnits,
): Grain {
  const value = readNumber(scalar, place);
  const grain = grainOf(value, lengthUnit);
  checkLength(value, grain, place, allowed);
  return grain;
}

/**
 * A small length in grains, not rounded.
 * @throws ArgumentRefusal where the cell holds no allowed length.
 */
export function readUnroundedGrains(
  scalar: Scalar,
  place: GivenPlace,
  allowed: AllowedRange,
  { lengthUnit }: FunctionUnits,
): number {
  const value = readNumber(scalar, place);
  const grains = unroundedGrains(value, lengthUnit);
  checkLength(value, grains, place, allowed);
  return grains;
}

/** A length as it was read: exact millimetres. */
function readExactLength(
  scalar: Scalar,
  place: GivenPlace,
  allowed: AllowedRange,
  units: FunctionUnits,
): Ratio {
  readGrain(scalar, place, allowed, units);
  return toMm(exact(readNumber(scalar, place)), units.lengthUnit);
}

function checkLength(value: number, grains: number, place: GivenPlace, allowed: AllowedRange): void {
  if (Math.abs(grains) > LONGEST) {
    refuseGiven('NUM', { where: place.where, expected: messages.tooLong(place.expected) }, value);
  }
  if (isOutside(grains, allowed)) refuseGiven('NUM', place, value);
}

function readCelsius(
  scalar: Scalar,
  place: GivenPlace,
  allowed: AllowedRange,
  { temperatureUnit }: FunctionUnits,
): Ratio {
  const celsius = toCelsius(exact(readNumber(scalar, place)), temperatureUnit);
  if (isOutside(toNumber(celsius), allowed)) refuseGiven('NUM', place, scalar);
  return celsius;
}

function readExpansion(scalar: Scalar, place: GivenPlace, allowed: AllowedRange): number {
  const value = readNumber(scalar, place);
  if (isOutside(value, allowed)) refuseGiven('NUM', place, value);
  if (value > 0 && value < LEAST_EXPANSION) {
    refuseGiven('NUM', { where: place.where, expected: messages.perKelvin(place.expected) }, value);
  }
  return value;
}

function readCount(scalar: Scalar, place: GivenPlace, allowed: AllowedRange): number {
  const value = readNumber(scalar, place);
  if (!Number.isInteger(value) || isOutside(value, allowed)) refuseGiven('NUM', place, value);
  return value;
}

function readConfidence(scalar: Scalar, place: GivenPlace): number {
  let level: number;
  if (typeof scalar === 'number') level = scalar <= 1 ? scalar : scalar / 100;
  else if (typeof scalar === 'object' && scalar.format === 'percent') level = scalar.value;
  else {
    const match = typeof scalar === 'string' ? PERCENT_TEXT.exec(scalar.trim()) : null;
    if (!match) return refuseGiven('VALUE', place, scalar);
    const value = Number(match[1]!.replace(',', '.'));
    level = match[2] === '%' || value > 1 ? value / 100 : value;
  }
  return level >= LEAST_CONFIDENCE && level <= GREATEST_CONFIDENCE
    ? level
    : refuseGiven('NUM', place, scalar);
}

/**
 * The mark of a size class; a number is taken as its text.
 * @throws ArgumentRefusal where the cell holds neither text nor number.
 */
export function readMark(scalar: Scalar, place: GivenPlace): string {
  if (typeof scalar === 'number') return String(scalar);
  return typeof scalar === 'string' && !isBlankScalar(scalar)
    ? scalar.trim()
    : refuseGiven('VALUE', place, scalar);
}
