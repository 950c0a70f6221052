/** What every record owes its readers, whatever function it describes. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { HyperFormula } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import type { FunctionRecord } from '../../functions/definition.js';
import { functionRecords } from '../../functions/index.js';

const FOLDER = new URL('../../functions/', import.meta.url);
const HELPERS = [
  'definition.ts',
  'expected.ts',
  'guard-argument.ts',
  'index.ts',
  'messages.ts',
  'part-sizes.ts',
];
const families = readdirSync(FOLDER).filter((file) => file.endsWith('.ts') && !HELPERS.includes(file));

const contractNames = [
  'SHELL_CLEARANCE',
  'TIGHTEST_CLEARANCE',
  'LOOSEST_CLEARANCE',
  'PLAIN_CLEARANCE',
  'JOURNAL_TAPER',
  'OUT_OF_ROUND',
  'AT_20C',
  'FIT_GRADE',
  'SHELL_GRADE',
  'CLEARANCE_UNCERTAINTY',
  'FIT_STATUS',
  'CHANCE_IN_RANGE',
  'RUNNING_CLEARANCE',
  'RING_GAP_IN',
  'RUN_OUT',
];

test('the functions promised to users are all there', () => {
  const workshop = functionRecords.filter(({ group }) => group === 'workshop').map(({ name }) => name);
  expect(workshop).toEqual(contractNames);
});

describe.each(families)('%s', (file) => {
  test('is listed in the index, every record of it once', async () => {
    const exported = Object.values((await import(new URL(file, FOLDER).href)) as object);
    expect(exported.length).toBeGreaterThan(0);
    for (const record of exported) {
      expect(functionRecords.filter((known) => known === record)).toHaveLength(1);
    }
  });

  test('opens with its question, equation, units and source', () => {
    const header = /^\/\*\*[\s\S]*?\*\//.exec(readFileSync(new URL(file, FOLDER), 'utf8'))?.[0] ?? '';
    expect(header).toContain('?');
    expect(header).toMatch(/[=→]/);
    expect(header).toMatch(/mm or in|no unit/);
    expect(header).toContain('Source:');
  });

  test('has a test file of its own', () => {
    expect(existsSync(new URL(file.replace('.ts', '.test.ts'), import.meta.url))).toBe(true);
  });

  test('does not know the engine', () => {
    expect(readFileSync(new URL(file, FOLDER), 'utf8')).not.toMatch(/from 'hyperformula/);
  });
});

const byName = new Map(functionRecords.map((record) => [record.name, record]));

/** What is wrong with a record, in words; an empty list is a good record. */
function faults(record: FunctionRecord): string[] {
  const { name, sentence, arguments: known, errors, examples, related, source, since, ordered = [] } = record;
  const found: string[] = [];
  const say = (isWrong: boolean, words: string) => isWrong && found.push(words);
  say(!/^[A-Z][A-Z0-9_]*$/.test(name), 'the name is not in capitals');
  say(
    !/^[A-Z].*\.$/.test(sentence) || sentence.slice(0, -1).includes('. '),
    'the sentence is not one sentence',
  );
  say(examples.length < 2, 'fewer than two examples');
  for (const kind of ['ordinary', 'edge', 'refused'] as const) {
    say(!examples.some((example) => example.kind === kind), `no ${kind} example`);
  }
  say(source === '', 'no source');
  say(!/^\d+\.\d+\.\d+$/.test(since), 'since is no version');
  say(related.length === 0, 'nothing related');
  for (const other of related) say(!byName.has(other) || other === name, `related names ${other}`);
  say(errors.length === 0, 'no errors');
  for (const { code, message } of errors) {
    const shown = examples.some(
      ({ expected }) =>
        typeof expected === 'object' && expected.error === code && expected.message === message,
    );
    say(!shown, `no example shows "${message}"`);
  }
  for (const { kind, expected, formula } of examples) {
    say((kind === 'refused') !== (typeof expected === 'object'), `${formula} is ${kind}`);
    say(!formula.includes(`${name}(`), `${formula} does not call ${name}`);
  }
  for (const argument of known) {
    say(argument.blank === 'allowed' && !argument.blankMeans, `${argument.name}: what does a blank mean?`);
    say(
      argument.optional === true && argument.blank === 'refused',
      `${argument.name}: left out but not blank`,
    );
  }
  const firstOptional = known.findIndex(({ optional }) => optional);
  if (firstOptional >= 0) {
    say(
      known.slice(firstOptional).some(({ optional }) => !optional),
      'an argument follows an optional one',
    );
  }
  for (const one of ordered.flat())
    say(!known.some((argument) => argument.name === one), `ordered names ${one}`);
  return found;
}

test.each(functionRecords.map((record) => ({ name: record.name, record })))(
  '$name is complete',
  ({ record }) => {
    expect(faults(record)).toEqual([]);
  },
);

test('names are unique and none is a function that the engine already has', () => {
  const names = functionRecords.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  const builtIn = new Set(HyperFormula.getRegisteredFunctionNames('enGB'));
  expect(names.filter((name) => builtIn.has(name))).toEqual([]);
});
