/** The questionnaire of `oilgap sheet` on a terminal: one question a line, each with its standard answer. */
import input from '@inquirer/input';
import { answerFault } from '../engine/blank/describe-engine.js';
import { lengthCell } from '../engine/blank/description.js';
import {
  type DescriptionItem,
  type DescriptionTexts,
  descriptionItems,
} from '../engine/blank/description-items.js';
import { gaugesText, readGauges } from '../engine/blank/read-description.js';
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
    for (const item of descriptionItems()) {
      const { name, help, standard, isPassedOver } = item;
      if (isPassedOver?.(answers)) continue;
      answers[name] = await ask(help, standard, explanation(item), (answer) =>
        answerFault({ ...answers, [name]: answer || standard }),
      );
      if (item.value === 'gauge') answers[name] = await withErrors(answers, name);
    }
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'ExitPromptError') throw error;
    throw new UserError('Cancelled; nothing was written.');
  }
  return answers;
}

/** @param faultOf why an answer cannot be used */
function ask(
  question: string,
  standard: string,
  help: string,
  faultOf: (answer: string) => string | undefined,
): Promise<string> {
  return input(
    {
      message: question.endsWith('?') ? question : `${question}:`,
      ...(standard !== '' && { default: standard }),
      theme: THEME,
      validate: (answer) => (answer.trim() === '?' ? help : (faultOf(answer.trim()) ?? true)),
    },
    { output: process.stderr },
  );
}

function explanation({ more, standard, help }: DescriptionItem): string {
  const enter =
    standard === ''
      ? 'Enter alone leaves it out, or takes what the question says.'
      : `Enter alone: ${standard}.`;
  return [more || `${help}.`, enter].join(' ');
}

const ERROR_HELP =
  'It stands in the certificate of the gauge or in the data of its maker, such as 0.002. ' +
  'Enter alone leaves it open: the gauge then stands in no row until Gauges has it.';

/** Asks for the greatest error of gauges that were named without it: no verdict can rest on them before. */
async function withErrors(answers: DescriptionTexts, name: string): Promise<string> {
  const gauges = [];
  for (const gauge of readGauges(answers, name)) {
    if (gauge.maxError !== undefined) {
      gauges.push(gauge);
      continue;
    }
    const answer = await ask(`greatest error of ${gauge.name}, ±`, '', ERROR_HELP, (typed) =>
      typed === '' || lengthCell(typed) !== undefined
        ? undefined
        : `found "${typed}"; expected a length of 0 or more, such as 0.002; type it so, or Enter alone.`,
    );
    gauges.push({ name: gauge.name, maxError: answer.trim() || undefined });
  }
  return gaugesText(gauges);
}
