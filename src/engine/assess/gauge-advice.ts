/** What is said of fits that more readings do not decide: once for all whose answer is the same gauge. */
import type { NeededGauge } from './better-gauge.js';
import type { Context } from './context.js';
import type { FitResult } from './fit.js';
import type { PartResult } from './part-result.js';
import type { Remeasure } from './remeasure-words.js';
import { fitWords, repeatsAtMost, spotNames } from './remeasure-words.js';
import { lengthText } from './words.js';

/** A fit that stays open however often it is read. */
export interface OpenFit {
  readonly fit: FitResult;
  /** The part whose gauge counts most. */
  readonly part: PartResult;
  /** Undefined where no gauge behind the fit errs. */
  readonly needed: NeededGauge | undefined;
  /** The chance that repeats decide it. */
  readonly chance: number;
}

/** One entry a sheet and an answer, in the order of the fits. */
export function gaugeAdvice(open: readonly OpenFit[], context: Context): Remeasure[] {
  const groups = new Map<string, OpenFit[]>();
  for (const entry of open) {
    const { part, needed } = entry;
    const key = JSON.stringify([part.row.sheet, needed && answerOf(needed), needed?.gauge]);
    groups.set(key, [...(groups.get(key) ?? []), entry]);
  }
  return [...groups.values()].map((group) => adviceOf(group, context));
}

function adviceOf(group: readonly OpenFit[], context: Context): Remeasure {
  const parts = [...new Set(group.map(({ part }) => part))];
  const spots = new Set(parts.map((part) => spotNames(part, part.spots)));
  const [{ fit, chance }] = group as [OpenFit];
  const why =
    group.length === 1
      ? [fitWords(fit), repeatsAtMost(chance), ...answerWords(group, context)]
      : [
          `${group.map(({ fit: { engine, fit: word, position } }) => `${engine} ${word} ${position}`).join(', ')}: undecided`,
          'more readings would not decide them',
          ...answerWords(group, context),
        ];
  return {
    sheet: parts[0]!.row.sheet,
    parts: parts.map(({ row }) => row.name),
    spot: spots.size === 1 ? [...spots][0]! : 'all',
    why: why.join('; '),
  };
}

type Answer = 'one gauge' | 'several gauges' | 'no gauge';

function answerOf({ maxError, severalDo }: NeededGauge): Answer {
  if (maxError !== undefined) return 'one gauge';
  return severalDo ? 'several gauges' : 'no gauge';
}

/** Which gauge a fit needs where repeats do not decide it; of several fits the gauge that decides all. */
export function answerWords(
  group: readonly { readonly needed: NeededGauge | undefined }[],
  { book }: Context,
): string[] {
  const all = group.flatMap(({ needed }) => needed ?? []);
  const [first] = all;
  if (!first) return [];
  switch (answerOf(first)) {
    case 'one gauge': {
      const maxError = Math.floor(Math.min(...all.map((needed) => needed.maxError!)));
      const result =
        all.length === 1 ? 'it is decided if it reads the same' : 'each is decided if it reads the same';
      const text = lengthText(maxError, book.setup.lengthUnit);
      return [`with a gauge of max error ${text} or less in place of ${first.gauge} ${result}`];
    }
    case 'several gauges':
      return [
        `a better gauge in place of ${first.gauge} alone would not: it takes better gauges on several parts`,
      ];
    case 'no gauge':
      return ["not decidable with a workshop's gauges: judge by the strip or have it measured"];
  }
}
