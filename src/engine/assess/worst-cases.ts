/** Whether the sizes, shells and clearances of a fit can all be true where no Selection pairs them. */
import {
  checkWithoutSelection,
  type Extent,
  leavesNoWall,
  type WorstCaseFinding,
} from '../../maths/worst-case.js';
import type { LimitsRow, NewShellRow } from '../book/book.js';
import type { Text } from './class-rows.js';
import { type Context, kindKey } from './context.js';
import { wordsOfBook } from './words-of-fits.js';

export function worstCaseFindings(limits: LimitsRow, context: Context, text: Text): string[] {
  const bore = rangeOf(limits.boreMin, limits.boreMax);
  const journal = rangeOf(limits.journalMin, limits.journalMax);
  const clearance = rangeOf(limits.clearanceMin, limits.clearanceMax);
  if (!bore || !journal || !clearance) return [];
  const space = { min: bore.min - journal.max, max: bore.max - journal.min };
  const kind = wordsOfBook(context.book).claimantOf(limits.fit);
  if (kind && kind.strategy !== 'half-shells') {
    return hasClasses(limits, context) ? [] : plainFindings(space, clearance, text);
  }
  if (kind && leavesNoWall(space, clearance))
    return ['Bore min and Bore max look like sizes with the shells in'];
  if (context.selectionOf(limits.engineType, limits.fit).length > 0) return [];
  const walls = wallsOf(limits, context);
  if (walls.length === 0) return [];
  return checkWithoutSelection(space, walls, clearance).map((finding) => sentence(finding, clearance, text));
}

/** Parts of a class are paired with parts of a class: their limits alone do not tell. */
function hasClasses({ engineType, fit }: LimitsRow, context: Context): boolean {
  return (['journal', 'bore'] as const).some(
    (of) => context.classesOf(engineType, fit, of).classes.length > 0,
  );
}

function plainFindings(space: Extent, clearance: Extent, text: Text): string[] {
  if (space.min >= clearance.min && space.max <= clearance.max) return [];
  return [
    `worst case ${text(space.min)} to ${text(space.max)} leaves the clearance range ${text(clearance.min)} to ${text(clearance.max)}`,
  ];
}

function rangeOf(min: number | undefined, max: number | undefined): Extent | undefined {
  return min === undefined || max === undefined || min > max ? undefined : { min, max };
}

/** Both walls of each choice of shells: the classes, else the new ones for journals that are not ground. */
function wallsOf({ engineType, fit }: LimitsRow, context: Context): Extent[] {
  const { classes } = context.classesOf(engineType, fit, 'shell');
  if (classes.length > 0) return classes.map(({ from, to }) => ({ min: 2 * from, max: 2 * to }));
  const offered = context.book.newShells.filter(
    (row) =>
      kindKey(row.engineType, row.fit) === kindKey(engineType, fit) &&
      row.bad.length === 0 &&
      row.step === undefined,
  );
  const halves = (half: NewShellRow['half']) =>
    offered
      .filter((row) => row.half === half || row.half === 'either' || row.half === undefined)
      .flatMap(({ from, to }) => rangeOf(from, to) ?? []);
  const pairs = halves('upper').flatMap((upper) =>
    halves('lower').map((lower) => ({ min: upper.min + lower.min, max: upper.max + lower.max })),
  );
  return [...new Map(pairs.map((pair) => [`${pair.min} ${pair.max}`, pair])).values()];
}

function sentence(finding: WorstCaseFinding, clearance: Extent, text: Text): string {
  const range = `the clearance range ${text(clearance.min)} to ${text(clearance.max)}`;
  if (finding.kind === 'one shell leaves') {
    const { min, max } = finding.worst;
    return `worst case of the only shell ${text(min)} to ${text(max)} leaves ${range}`;
  }
  return `no shell brings the ${finding.which} space between bore and journal, ${text(finding.space)}, into ${range}`;
}
