/** What is left, and what a set is made of, in words. */
import type { LengthUnit } from '../../maths/units.js';
import type { LeftPart } from '../assess/left-over.js';
import { type MatchedSet, nounInSet } from '../assess/matched-sets.js';
import { lengthText } from '../assess/words.js';
import type { FitSlot } from '../input-sheets/fits.js';
import { partSheet } from '../input-sheets/index.js';
import { nounOfTerm } from '../kinds/sheets-of-term.js';
import { listed } from './listed.js';

/** What is left over: `rod`, `upper shell, 2 of 5`. */
export function leftWords({ part: { row }, count }: LeftPart): string {
  const noun = `${row.half ? `${row.half} ` : ''}${partSheet(row.sheet).noun}`;
  return row.quantity > 1 ? `${noun}, ${count} of ${row.quantity}` : noun;
}

/** What goes with the journal of a set, its clearance and its verdict. */
export function setWords(set: MatchedSet, unit: LengthUnit): string {
  const { kind, parts, names, clearance, status } = set;
  const others = kind.terms.filter(({ slot }) => slot !== kind.leader);
  const named = others.map((term) => {
    const part = parts[term.slot];
    return `${part ? nounInSet(term, part) : nounOfTerm(term, set.fit)} ${names[term.slot as FitSlot]}`;
  });
  return `${listed(named)}, clearance ${lengthText(clearance.clearance, unit)}, ${status}`;
}
