/** The sheet Setup: one setting a row. */
import { needed } from './input-sheet.js';
import { NAME, TEXT } from './quantities.js';

export const SETUP = {
  name: 'Setup',
  columns: {
    item: needed('Item', NAME, 'The name of a setting.'),
    // Each setting reads its own value.
    value: needed('Value', TEXT, 'Its value.'),
  },
} as const;

/** One setting: its item, what the blank sheet says of it, the words that it may be. */
interface Setting<Item extends string = string> {
  readonly item: Item;
  readonly help: string;
  readonly words?: readonly string[];
}

const setting = <const Item extends string>(
  item: Item,
  help: string,
  words?: readonly string[],
): Setting<Item> => ({ item, help, ...(words && { words }) });

/** The settings of the sheet Setup. */
export const SETTINGS = [
  setting('Length unit', 'Unit of all lengths that name none: mm or in.', ['mm', 'in']),
  setting('Temperature unit', 'Unit of temperatures that name none: C or F.', ['C', 'F']),
  setting('Confidence', 'How sure a verdict has to be, 50 to 99.99 %. Blank is 95 %.'),
  setting('Aim', 'The clearance wished for: middle, or 0 to 1 of the range. Blank is middle.'),
  setting('Undecided fits', 'Whether matching may make undecided fits. Blank is refuse.', [
    'refuse',
    'allow',
  ]),
  setting('Worn fits', 'Whether matching may make fits within service limit. Blank is refuse.', [
    'refuse',
    'allow',
  ]),
  setting('New shells', 'Whether matching may buy from the sheet New shells. Blank is no.', ['no', 'yes']),
  setting('Prefer', 'What matching prefers. Blank is kept pairs.', ['kept pairs', 'closest']),
  setting('Rods', 'Whether a rod that ran on a journal serves there only. Blank is may move.', [
    'may move',
    'stay',
  ]),
  setting('Halves', 'Whether half-shells that ran as a pair serve only so. Blank is stay together.', [
    'stay together',
    'free',
  ]),
  setting('New with used', 'Whether a new half may stand with a used one. Blank is no.', ['no', 'yes']),
  setting('Mass spread', 'Greatest difference of mass among the rods of one crank, in grams.'),
  setting('Half difference', 'Greatest difference of wall between the halves of a pair.'),
  setting('Strip step', "The step of the gauge strip's scale. Blank is 0.025 mm."),
] as const;

export type SetupItem = (typeof SETTINGS)[number]['item'];

export const SETUP_ITEMS: readonly SetupItem[] = SETTINGS.map(({ item }) => item);
