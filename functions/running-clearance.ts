/**
 * What clearance is left when bore and journal are at their running temperatures?
 *
 *   running = c + J · (αb·(Tb − 20) − αj·(Tj − 20))
 *
 *   c    diametral clearance at 20 °C                      mm or in
 *   J    journal                                           mm or in
 *   αb   linear expansion of the bore's material           1e-6 per K
 *   αj   linear expansion of the journal's material        1e-6 per K
 *   Tb   temperature of the bore                           °C or °F
 *   Tj   temperature of the journal                        °C or °F
 *
 * To first order; bore and journal are taken as of one diameter, and the thin shells to follow the bore.
 *
 * Source: linear thermal expansion from the reference temperature of ISO 1:2022; no published source
 * for its use on shells.
 */
import { runningClearance as running } from '../src/maths/expansion.js';
import { type ArgumentRecord, defineFunction } from './definition.js';

const temperature = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'temperature',
    allowed: { from: -100, to: 400 },
    blank: 'refused',
  }) as const satisfies ArgumentRecord;

const expansion = <const Name extends string>(name: Name, meaning: string) =>
  ({
    name,
    meaning,
    quantity: 'expansion',
    allowed: { from: 0, to: 200 },
    blank: 'refused',
  }) as const satisfies ArgumentRecord;

export const runningClearance = defineFunction({
  name: 'RUNNING_CLEARANCE',
  group: 'workshop',
  sentence: 'The clearance with bore and journal at their own temperatures.',
  arguments: [
    { name: 'clearance', meaning: 'the diametral clearance at 20 °C', quantity: 'length', blank: 'refused' },
    { name: 'journal', meaning: 'the journal', quantity: 'length', allowed: { above: 0 }, blank: 'refused' },
    temperature('bore_temperature', 'the temperature of the bore'),
    expansion('bore_expansion', "the linear expansion of the bore's material"),
    temperature('journal_temperature', 'the temperature of the journal'),
    expansion('journal_expansion', "the linear expansion of the journal's material"),
  ],
  result: { meaning: 'the clearance at these temperatures', quantity: 'length' },
  errors: [
    {
      code: 'NUM',
      when: 'an expansion is typed per K instead of in 1e-6 per K',
      message:
        'RUNNING_CLEARANCE: bore_expansion is 0.000023; expected an expansion from 0 to 200 in 1e-6 per K: 0.0000115 per K is written 11.5',
    },
  ],
  examples: [
    {
      kind: 'ordinary',
      says: 'an aluminium bore at 80 °C opens a 60 mm fit by 0.0414 mm around a steel journal that is as warm',
      formula: '=RUNNING_CLEARANCE(0.05, 60, 80, 23, 80, 11.5)',
      expected: 0.0914,
    },
    {
      kind: 'edge',
      says: 'at 20 °C nothing changes',
      formula: '=RUNNING_CLEARANCE(0.05, 60, 20, 23, 20, 11.5)',
      expected: 0.05,
    },
    {
      kind: 'edge',
      says: 'a cold start at -30 °C closes the same fit',
      formula: '=RUNNING_CLEARANCE(0.05, 60, -30, 23, -30, 11.5)',
      expected: 0.0155,
    },
    {
      kind: 'refused',
      says: 'expansions are written in 1e-6 per K',
      formula: '=RUNNING_CLEARANCE(0.05, 60, 80, 0.000023, 80, 11.5)',
      expected: {
        error: 'NUM',
        message:
          'RUNNING_CLEARANCE: bore_expansion is 0.000023; expected an expansion from 0 to 200 in 1e-6 per K: 0.0000115 per K is written 11.5',
      },
    },
  ],
  source: 'ISO 1:2022 (reference temperature); its use on shells: common practice, no published source',
  since: '0.1.0',
  related: ['SHELL_CLEARANCE', 'AT_20C'],
  body: (clearance, journal, boreTemperature, boreExpansion, journalTemperature, journalExpansion) =>
    running(
      clearance,
      journal,
      { celsius: boreTemperature, expansion: boreExpansion },
      { celsius: journalTemperature, expansion: journalExpansion },
    ),
});
