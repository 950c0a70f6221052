/**
 * What would a reading be at 20 °C?
 *
 *   x20 = x · (1 + αg·(T − 20)) / (1 + αp·(T − 20))
 *
 *   x    the reading, part and gauge both at T             mm or in
 *   T    temperature of part and gauge                     °C or °F
 *   αp   linear expansion of the part                      1e-6 per K
 *   αg   linear expansion of the gauge                     1e-6 per K
 *
 * Source: ISO 1:2022, standard reference temperature 20 °C; the quotient is the definition of linear
 * expansion applied to part and gauge.
 */
import { BUILT_IN_EXPANSION, sizeAt20C } from '../src/maths/expansion.js';
import { defineFunction } from './definition.js';

export const at20C = defineFunction({
  name: 'AT_20C',
  group: 'workshop',
  sentence: 'The size at 20 °C of a reading taken at another temperature.',
  arguments: [
    {
      name: 'reading',
      meaning: 'the reading as taken',
      quantity: 'reading',
      allowed: { above: 0 },
      blank: 'refused',
    },
    {
      name: 'temperature',
      meaning: 'the temperature of part and gauge',
      quantity: 'temperature',
      allowed: { from: -100, to: 400 },
      blank: 'refused',
    },
    {
      name: 'part_expansion',
      meaning: "the linear expansion of the part's material (steel 11.5, cast iron 10.5, aluminium 23)",
      quantity: 'expansion',
      allowed: { from: 0, to: 200 },
      blank: 'refused',
    },
    {
      name: 'gauge_expansion',
      meaning: "the linear expansion of the gauge's material",
      quantity: 'expansion',
      allowed: { from: 0, to: 200 },
      blank: 'allowed',
      blankMeans: 'a steel gauge, 11.5',
      optional: true,
      default: BUILT_IN_EXPANSION.steel!,
    },
  ],
  result: { meaning: 'the size at 20 °C, rounded once to 0.001 µm', quantity: 'length' },
  errors: [
    {
      code: 'VALUE',
      when: 'an argument is blank',
      message: 'AT_20C: temperature is blank; expected a temperature in °C from -100 to 400',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'an aluminium bore read at 30 °C with a steel gauge',
      formula: '=AT_20C(66.02, 30, 23)',
      expected: 66.012409,
    },
    {
      kind: 'edge',
      says: 'part and gauge of one material read alike at every temperature',
      formula: '=AT_20C(60.0012, 35, 11.5)',
      expected: 60.0012,
    },
    {
      kind: 'edge',
      says: 'a gauge that does not grow shows the growth of the part alone',
      formula: '=AT_20C(60, 30, 11.5, 0)',
      expected: 59.993101,
    },
    {
      kind: 'refused',
      says: 'a blank temperature is not 0',
      grid: [[66.02, null]],
      formula: '=AT_20C(A1, B1, 23)',
      expected: {
        error: 'VALUE',
        message: 'AT_20C: temperature is blank; expected a temperature in °C from -100 to 400',
      },
    },
  ],
  source: 'ISO 1:2022, Geometrical product specifications, standard reference temperature',
  since: '0.1.0',
  related: ['RUNNING_CLEARANCE', 'SPOT_MEAN'],
  body: (reading, temperature, partExpansion, gaugeExpansion) =>
    sizeAt20C(reading, temperature, partExpansion, gaugeExpansion),
});
