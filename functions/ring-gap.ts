/**
 * How wide is a piston ring's gap in another bore than the one it was measured in?
 *
 *   gap in bore = gap + π·(B − B₀)
 *
 *   gap   the gap as measured                      mm or in
 *   B₀    the bore in which it was measured        mm or in
 *   B     the bore in which the ring will run      mm or in
 *
 * Source: geometry; TM 5-6115-593-34, p. 1-9 (.003 in more gap for each .001 in of wear).
 */
import { ringGapIn } from '../src/maths/ring-gap.js';
import { type ArgumentRecord, defineFunction } from './definition.js';

const bore = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'length',
    allowed: { above: 0 },
    blank: 'refused',
  }) as const satisfies ArgumentRecord;

export const ringGapInBore = defineFunction({
  name: 'RING_GAP_IN',
  group: 'workshop',
  sentence: 'The gap that a piston ring will have in another bore than the one it was measured in.',
  arguments: [
    {
      name: 'gap',
      meaning: 'the gap as it was measured',
      quantity: 'length',
      allowed: { from: 0 },
      blank: 'refused',
    },
    bore('bore_measured', 'the bore or ring gauge in which it was measured'),
    bore('bore', 'the bore in which the ring will run'),
  ],
  result: { meaning: 'the gap in that bore; negative where the ends would butt', quantity: 'length' },
  errors: [
    {
      code: 'VALUE',
      when: 'a bore is blank',
      message: 'RING_GAP_IN: bore is blank; expected a length in mm above 0',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'a bore worn by 0.05 mm opens the gap by π times as much',
      formula: '=RING_GAP_IN(0.3, 87, 87.05)',
      expected: 0.45708,
    },
    {
      kind: 'edge',
      says: 'in the bore in which it was measured nothing changes',
      formula: '=RING_GAP_IN(0.3, 87, 87)',
      expected: 0.3,
    },
    {
      kind: 'refused',
      says: 'a bore that was not measured is not 0',
      grid: [[0.3, 87, null]],
      formula: '=RING_GAP_IN(A1, B1, C1)',
      expected: { error: 'VALUE', message: 'RING_GAP_IN: bore is blank; expected a length in mm above 0' },
    },
  ],
  source: 'geometry; TM 5-6115-593-34, p. 1-9 (.003 in more gap for each .001 in of wear)',
  since: '0.2.0',
  related: ['PLAIN_CLEARANCE', 'RUN_OUT'],
  body: ringGapIn,
});
