/**
 * How far does a turned part run out, from the readings of a dial at one station?
 *
 *   run-out = largest − smallest reading      total indicator reading
 *
 *   readings   what the dial showed around the part, signed     mm or in
 *
 * Source: TM 10-3930-664-24, p. 3-41 (0, +.003, −.002 and +.003 in are a total of .005 in).
 */
import { rangeOfReadings } from '../src/maths/run-out.js';
import { ArgumentRefusal, defineFunction } from './definition.js';
import { messages } from './messages.js';

export const runOut = defineFunction({
  name: 'RUN_OUT',
  group: 'workshop',
  sentence: 'The total indicator reading: the largest less the smallest reading of a dial.',
  arguments: [
    {
      name: 'readings',
      meaning: 'what the dial showed around the part at one station, signed',
      quantity: 'lengths',
      blank: 'refused',
    },
  ],
  result: { meaning: 'the run-out, 0 or more', quantity: 'length' },
  errors: [
    {
      code: 'NUM',
      when: 'there is one reading only',
      message: 'RUN_OUT: readings has 1 cell; a run-out needs 2 readings or more',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'four readings of a dial, a quarter turn apart',
      grid: [[0, 0.003, -0.002, 0.003]],
      formula: '=RUN_OUT(A1:D1)',
      expected: 0.005,
      lengthUnit: 'in',
    },
    {
      kind: 'edge',
      says: 'it does not matter where the zero of the dial stood',
      grid: [[0.512, 0.498, 0.503]],
      formula: '=RUN_OUT(A1:C1)',
      expected: 0.014,
    },
    {
      kind: 'refused',
      says: 'one reading shows no difference',
      grid: [[0.02]],
      formula: '=RUN_OUT(A1)',
      expected: {
        error: 'NUM',
        message: 'RUN_OUT: readings has 1 cell; a run-out needs 2 readings or more',
      },
    },
  ],
  source: 'TM 10-3930-664-24, p. 3-41',
  since: '0.2.0',
  related: ['OUT_OF_ROUND', 'RING_GAP_IN'],
  body: (readings) => {
    if (readings.length < 2) throw new ArgumentRefusal('NUM', messages.oneReading);
    return rangeOfReadings(readings);
  },
});
