/** What matching reached, how far it is proved, and of which books, in words. */
import type { StageResult } from '../../maths/matching/stock.js';
import type { Assessment } from '../assess/assess.js';
import { gapOf, isProved } from '../assess/proof.js';
import { countText, lengthText } from '../assess/words.js';

export const AIM_WORDS: Readonly<Record<StageResult['aim'], string>> = {
  'complete engines': 'Complete engines',
  'filled journals of engines that could be completed': 'Journals filled of engines that could be completed',
  'filled journals beyond them': 'Other journals filled',
  'price of bought shells': 'Price of bought shells',
  'distance from the aim': 'Total distance from the aim',
  'fits in range': 'Fits in range',
  'pairs kept together': 'Fits kept as they ran',
  'rods that stay': 'Rods that stay where they ran',
};

/**
 * How far the sets got where they are not proved the best, and why: the time ended the search, or it ended by itself
 * short of the proof. Undefined where every aim is proved.
 */
export function stopSentence(assessment: Assessment): string | undefined {
  const { matching, seconds, book } = assessment;
  if (!matching || isProved(assessment)) return undefined;
  const unit = book.setup.lengthUnit;
  const show = (stage: StageResult, value: number) =>
    stage.aim === 'distance from the aim' ? lengthText(value, unit) : String(value);
  const open = matching.stages.filter((stage) => gapOf(stage) > 0);
  const inWords = (stages: readonly StageResult[]) =>
    stages
      .map((stage) => {
        const words = AIM_WORDS[stage.aim].toLowerCase();
        return `${words} ${show(stage, stage.reached)}, proven best ${show(stage, stage.bound)}`;
      })
      .join('; ');
  const bySearch = open.filter(({ gapStays }) => gapStays === 'search');
  const byTime = open.filter((stage) => !bySearch.includes(stage));
  const sentences = [
    byTime.length > 0 &&
      `Matching was stopped by its time of ${countText(seconds, 'second')}, before its sets were proved the best: ` +
        `${inWords(byTime)}. Give it more with --seconds.`,
    bySearch.length > 0 &&
      `The search ended short of the proof with time left: ${inWords(bySearch)}. ` +
        'The sets keep every rule, and are no farther than that from the best.',
  ];
  return sentences.filter((sentence) => sentence !== false).join(' ');
}

/** Which books the sets are not of; undefined where all were read. */
export function missingSentence({ missingBooks }: Assessment): string | undefined {
  if (missingBooks.length === 0) return undefined;
  return `Not read: ${missingBooks.join(', ')}. The matched sets are of the other books only.`;
}
