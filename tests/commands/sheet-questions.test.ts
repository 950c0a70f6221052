/** The questionnaire on a terminal, with typed answers and with a user who cancels. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import input from '@inquirer/input';
import { beforeEach, expect, test, vi } from 'vitest';
import { sheet } from '../../src/commands/sheet.js';
import { askForEngine } from '../../src/commands/sheet-questions.js';
import { descriptionItems, standardTexts } from '../../src/engine/blank/description-items.js';
import { UserError } from '../../src/engine/user-error.js';

vi.mock('@inquirer/input');

type Config = Parameters<typeof input>[0];

beforeEach(() => {
  vi.mocked(input).mockReset();
});

/** The questions by their words, answered by those that are given and else by Enter. */
function answering(given: Readonly<Record<string, string>>) {
  const asked: Config[] = [];
  const answer = async (config: Config) => {
    asked.push(config);
    const [, typed] = Object.entries(given).find(([words]) => config.message.includes(words)) ?? [];
    return typed ?? config.default ?? '';
  };
  vi.mocked(input).mockImplementation(answer as unknown as typeof input);
  return asked;
}

test('cancelling says that nothing was written', async () => {
  vi.mocked(input).mockRejectedValue(Object.assign(new Error('closed'), { name: 'ExitPromptError' }));
  await expect(askForEngine(standardTexts())).rejects.toThrow(
    new UserError('Cancelled; nothing was written.'),
  );
});

test('the greatest error of a gauge that was named without it is asked for', async () => {
  const asked = answering({
    'for journals': 'M1, M2=0.003',
    'error of M1': '0,002',
    'for bores': 'D1',
  });
  const answers = await askForEngine(standardTexts());
  expect(asked.map(({ message }) => message).filter((message) => message.includes('error of'))).toEqual([
    'greatest error of M1, ±:',
    'greatest error of D1, ±:',
  ]);
  expect(answers).toMatchObject({ journalGauge: 'M1=0,002; M2=0.003', boreGauge: 'D1' });
});

test('? explains each question, and is no answer', async () => {
  const asked = answering({ 'for walls': 'W1' });
  await askForEngine(standardTexts());
  expect(asked).toHaveLength(descriptionItems().length + 1);
  for (const { message, validate } of asked) {
    const words = await validate!(' ? ');
    expect([message, words]).toEqual([message, expect.stringMatching(/^.+\. Enter alone/)]);
  }
  const error = asked.find(({ message }) => message.includes('error of W1'))!;
  expect(await error.validate!('wide')).toContain('found "wide"; expected a length of 0 or more');
  expect(await error.validate!('')).toBe(true);
});

test('a file that is already there is refused before the first question', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'oilgap-questions-'));
  const out = join(folder, 'engine.xlsx');
  writeFileSync(out, '');
  const asked = answering({});
  try {
    await expect(sheet({ out })).rejects.toThrow(`${out} is already there; choose another name.`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  expect(asked).toEqual([]);
});
