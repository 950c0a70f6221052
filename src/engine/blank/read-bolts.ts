/** Reads which bolts of an engine are renewed: `cylinder head=10 M10x1.25, main caps=10 M12 by neck`. */
import type { Renewal } from '../../maths/fastener-verdict.js';
import { nameKey } from '../book/names.js';
import type { DescribedBolts } from './description.js';
import type { DescriptionTexts } from './description-items.js';
import { LONGEST_NAME, refuseText, textOf } from './read-description.js';

const MOST_GROUPS = 20;
const MOST_BOLTS = 100;

/** Group, count, then thread and when they are renewed, each where it is said. */
const BOLTS =
  /^([^=]+)=\s*(\d{1,3})(?:\s+(?!by |always)(\S(?:.*?\S)??))?(?:\s+(always|by length|by neck))?$/i;

/** @throws UserError where the text is neither `none` nor such a list. */
export function readBolts(texts: DescriptionTexts, name: string): DescribedBolts[] {
  const text = textOf(texts, name).trim();
  if (text === '' || text.toLowerCase() === 'none') return [];
  const groups = text.split(',').flatMap((part): DescribedBolts[] => {
    const [, group = '', count = '', thread, renew = 'always'] = BOLTS.exec(part.trim()) ?? [];
    const isLong = group.length > LONGEST_NAME || (thread?.length ?? 0) > LONGEST_NAME;
    if (group.trim() === '' || Number(count) < 1 || Number(count) > MOST_BOLTS || isLong) return [];
    return [{ group: group.trim(), count: Number(count), thread, renew: renew.toLowerCase() as Renewal }];
  });
  const isTwice = new Set(groups.map(({ group }) => nameKey(group))).size < groups.length;
  if (groups.length < text.split(',').length || groups.length > MOST_GROUPS || isTwice) {
    const expected = `GROUP=COUNT THREAD of each group, with up to ${MOST_BOLTS} bolts, each group once, or none`;
    refuseText(texts, name, expected, 'name them so, as in cylinder head=10 M10x1.25 by length');
  }
  return groups;
}
