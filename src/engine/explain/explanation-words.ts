/** An explanation in plain sentences, one a line. */
import { FASTENERS } from '../input-sheets/fasteners.js';
import { partSheet } from '../input-sheets/index.js';
import type { Explanation, OpenList, OpenTo } from './explain.js';

/** How many fits or parts a sentence names. */
const NAMED = 20;

const AIMS =
  'Sets are chosen for the most complete engines, then the most filled journals, then price, distance from the aim ' +
  'and kept pairs: a part that is open to several goes where it serves these best.';

export function explanationLines({ sheet, part, now, lists, asksForMass }: Explanation): string[] {
  const isTaken = lists.some(({ open }) => open.length > 0);
  return [
    `${capitalised(sheet === FASTENERS.name ? 'fastener' : partSheet(sheet).noun)} ${part} ${now}.`,
    ...lists.map(listSentence),
    ...(asksForMass
      ? ['Mass spread, which limits the rods of one crank too, is not counted in these lists.']
      : []),
    ...(isTaken ? [AIMS] : []),
  ];
}

function listSentence({ what, as, of, open }: OpenList): string {
  const half = as === undefined ? '' : ` as ${as} shell`;
  if (of === 0) return `The stock has no ${what} that may be used.`;
  if (open.length === 0) {
    return `None of the ${of} ${what} that may be used makes an allowed fit with it${half}, whatever else of the stock goes with them.`;
  }
  const named = open.slice(0, NAMED).map(openText);
  const more = open.length - named.length;
  return `Open to it${half}: ${open.length} of the ${of} ${what} that may be used: ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`;
}

function openText({ name, now }: OpenTo): string {
  return `${name} (${now})`;
}

function capitalised(word: string): string {
  return word[0]!.toUpperCase() + word.slice(1);
}
