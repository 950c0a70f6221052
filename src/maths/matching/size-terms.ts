/** The terms of a variance that follow the sizes of parts: temperature and expansion. */
import type { MeasuredPart } from '../uncertainty.js';

/** The terms of a variance that follow the sizes of two parts. */
export interface SizeTerms {
  /** Of temperature, and of the outer part's expansion, grains². */
  readonly own: number;
  /** The standard contributions of the inner parts' expansion, which add with their signs. */
  readonly inner: number;
  /** Those of the expansion of gauges, by gauge. */
  readonly gauges: readonly { readonly gauge: string; readonly contribution: number }[];
}

/** @param signs of the two parts in the clearance */
export function sizeTerms(
  parts: readonly { readonly sign: 1 | -1; readonly part: MeasuredPart }[],
): SizeTerms {
  let [own, inner] = [0, 0];
  const gauges: { gauge: string; contribution: number }[] = [];
  for (const { sign, part } of parts) {
    own += part.temperatureVariance + (sign > 0 ? part.ownExpansion ** 2 : 0);
    if (sign < 0) inner += part.ownExpansion;
    if (part.gaugeExpansion) {
      const { gauge, contribution } = part.gaugeExpansion;
      gauges.push({ gauge, contribution: sign * contribution });
    }
  }
  return { own, inner, gauges };
}

/** Terms of several pairs: the least and the greatest of each. */
export interface TermsRange {
  readonly least: SizeTerms;
  readonly greatest: SizeTerms;
}

/** @returns the range with one pair more; pairs of a range have the same gauges in the same order */
export function widened(range: TermsRange | undefined, terms: SizeTerms): TermsRange {
  if (!range) return { least: terms, greatest: terms };
  const pick = (of: SizeTerms, choose: (a: number, b: number) => number): SizeTerms => ({
    own: choose(of.own, terms.own),
    inner: choose(of.inner, terms.inner),
    gauges: of.gauges.map(({ gauge, contribution }, at) => ({
      gauge,
      contribution: choose(contribution, terms.gauges[at]!.contribution),
    })),
  });
  return { least: pick(range.least, Math.min), greatest: pick(range.greatest, Math.max) };
}
