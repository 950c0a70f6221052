/** The questionnaire of `oilgap sheet` on a terminal: one question a line, each with its standard answer. */
import input from '@inquirer/input';
import { answerFault } from '../engine/blank/describe-engine.js';
import { type DescriptionTexts, descriptionItems } from '../engine/blank/description-items.js';
import { UserError } from '../engine/user-error.js';

/** Marks in words: a screen reader says them, and no colour carries a meaning. */
const THEME = { prefix: { idle: '?', done: '-' }, validationFailureMode: 'clear' } as const;

/**
 * @param standards what Enter alone answers
 * @throws UserError where the user cancels
 */
export async function askForEngine(standards: DescriptionTexts): Promise<DescriptionTexts> {
  const answers: Record<string, string> = { ...standards };
  try {
    for (const { name, help, standard, isPassedOver } of descriptionItems()) {
      if (isPassedOver?.(answers)) continue;
      answers[name] = await input(
        {
          message: help.endsWith('?') ? help : `${help}:`,
          ...(standard !== '' && { default: standard }),
          theme: THEME,
          validate: (answer) => answerFault({ ...answers, [name]: answer.trim() || standard }) ?? true,
        },
        { output: process.stderr },
      );
    }
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'ExitPromptError') throw error;
    throw new UserError('Cancelled; nothing was written.');
  }
  return answers;
}
