/**
 * Is a fastener to be renewed?
 *
 *   longest − length_max > G, or neck_min − thinnest > G    → renew
 *   longest − length_max ≤ −g and neck_min − thinnest ≤ −g   → within limits
 *
 *   longest, thinnest      extremes of the readings of length and neck       mm or in
 *   length_max, neck_min   the maker's limits                                mm or in
 *   g, G                   guards inside and outside a limit                 mm or in
 *
 * What the maker has renewed always is `renew` whatever it measures. Without a limit nothing is said of its use.
 *
 * Source: ISO 14253-1:2017, decision rules for verifying conformity or nonconformity; the limits are the maker's.
 */
import type { LimitCheck } from '../src/maths/conformity.js';
import { fastenerVerdict, type Renewal } from '../src/maths/fastener-verdict.js';
import type { Grain } from '../src/maths/grain.js';
import { type ArgumentRecord, ArgumentRefusal, defineFunction } from './definition.js';
import { optionalGuard } from './guard-argument.js';

const length = <const Name extends string>(name: Name, meaning: string, blankMeans: string) =>
  ({
    name,
    meaning,
    quantity: 'length',
    allowed: { above: 0 },
    blank: 'allowed',
    blankMeans,
    optional: true,
  }) as const satisfies ArgumentRecord;

const RENEWALS: readonly Renewal[] = ['always', 'by length', 'by neck'];

/** @throws ArgumentRefusal where the word is none of those of Renew. */
function renewalOf(word: string | undefined): Renewal | undefined {
  if (word === undefined) return undefined;
  const found = RENEWALS.find((known) => known === word.trim().toLowerCase());
  if (!found) throw new ArgumentRefusal('VALUE', otherWord(word));
  return found;
}

const otherWord = (word: string) => `renew is "${word}"; expected always, by length, by neck or a blank`;
const refusal = (word: string) => `FASTENER_STATUS: ${otherWord(word)}`;

function check(
  side: LimitCheck['side'],
  value: Grain | undefined,
  limit: Grain | undefined,
  inside: Grain,
  outside: Grain,
): LimitCheck[] {
  if (limit === undefined) return [];
  const quantity = side === 'at most' ? 'longest' : 'thinnest';
  return [{ quantity, side, value, limitName: 'limit', limit, guards: { inside, outside } }];
}

export const fastenerStatus = defineFunction({
  name: 'FASTENER_STATUS',
  group: 'columns',
  sentence: 'Whether a fastener is to be renewed, by the limits of its maker.',
  arguments: [
    {
      name: 'renew',
      meaning: 'when the maker has it renewed: always, by length or by neck',
      quantity: 'mark',
      blank: 'allowed',
      blankMeans: 'not said',
    },
    length('longest', 'the longest reading of its length', 'not measured'),
    length('thinnest', 'the thinnest reading of its neck', 'not measured'),
    length('length_max', 'the greatest length that may be used again', 'no such limit'),
    length('neck_min', 'the least neck that may be used again', 'no such limit'),
    optionalGuard('length_inside', 'the guard inside the limit of length'),
    optionalGuard('length_outside', 'the guard outside it'),
    optionalGuard('neck_inside', 'the guard inside the limit of the neck'),
    optionalGuard('neck_outside', 'the guard outside it'),
  ],
  result: {
    meaning: '`renew`, `not measured`, `undecided`, `within limits` or `no limits`',
    quantity: 'text',
  },
  errors: [{ code: 'VALUE', when: 'renew is another word', message: refusal('often') }],
  examples: [
    {
      kind: 'ordinary',
      says: 'longer than its maker allows',
      formula: '=FASTENER_STATUS("by length", 48.3, , 48)',
      expected: 'renew',
    },
    {
      kind: 'ordinary',
      says: 'both limits kept',
      formula: '=FASTENER_STATUS("by neck", 47.5, 7.2, 48, 7.1, 0.02, 0.02, 0.02, 0.02)',
      expected: 'within limits',
    },
    {
      kind: 'edge',
      says: 'nearer to its limit than the guard',
      formula: '=FASTENER_STATUS("by length", 48.01, , 48, , 0.02, 0.02)',
      expected: 'undecided',
    },
    {
      kind: 'edge',
      says: 'renewed always, whatever it measures',
      formula: '=FASTENER_STATUS("always", 47, , 48)',
      expected: 'renew',
    },
    {
      kind: 'edge',
      says: 'renewed by length, and not measured yet',
      formula: '=FASTENER_STATUS("by length", , , 48)',
      expected: 'not measured',
    },
    {
      kind: 'edge',
      says: 'without a limit nothing is said of its use',
      formula: '=FASTENER_STATUS("", 47)',
      expected: 'no limits',
    },
    {
      kind: 'refused',
      says: 'a word that Renew does not have',
      formula: '=FASTENER_STATUS("often", 47, , 48)',
      expected: { error: 'VALUE', message: refusal('often') },
    },
  ],
  source:
    'ISO 14253-1:2017, decision rules for verifying conformity or nonconformity with specifications; the limits are those that are given',
  since: '0.2.0',
  related: ['PART_STATUS', 'LARGEST_SPOT', 'SMALLEST_SPOT'],
  body: (
    renew,
    longest,
    thinnest,
    lengthMax,
    neckMin,
    lengthInside,
    lengthOutside,
    neckInside,
    neckOutside,
  ) =>
    fastenerVerdict(renewalOf(renew), { longest, thinnest }, [
      ...check('at most', longest, lengthMax, lengthInside, lengthOutside),
      ...check('at least', thinnest, neckMin, neckInside, neckOutside),
    ]),
});
