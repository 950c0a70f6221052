/** The questionnaire on a terminal, with the answers of a user who cancels. */
import input from '@inquirer/input';
import { expect, test, vi } from 'vitest';
import { askForEngine } from '../../src/commands/sheet-questions.js';
import { standardTexts } from '../../src/engine/blank/description-items.js';
import { UserError } from '../../src/engine/user-error.js';

vi.mock('@inquirer/input');

test('cancelling says that nothing was written', async () => {
  vi.mocked(input).mockRejectedValue(Object.assign(new Error('closed'), { name: 'ExitPromptError' }));
  await expect(askForEngine(standardTexts())).rejects.toThrow(
    new UserError('Cancelled; nothing was written.'),
  );
});
