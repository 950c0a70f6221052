/** What `oilgap sheet` asks of an engine: one item for each option of its command line and question of its questionnaire. */
import { nameKey } from '../book/names.js';
import { kindsOfFit } from '../kinds/index.js';
import type { AskedPlaces } from '../kinds/kind-of-fit.js';

/** The texts of the description by the names of their items, as options or answers give them. */
export type DescriptionTexts = Readonly<Record<string, string>>;

export interface DescriptionItem {
  /** Its option in camel case. */
  readonly name: string;
  /** The option of the command line. */
  readonly option: string;
  readonly value: string;
  /** The question of the questionnaire, and what the option holds. */
  readonly help: string;
  readonly standard: string;
  /** Whether the questionnaire passes over it, by the answers so far. */
  readonly isPassedOver?: (answers: DescriptionTexts) => boolean;
}

const item = (option: string, value: string, help: string, standard = ''): DescriptionItem => ({
  name: nameOfOption(option),
  option,
  value,
  help,
  standard,
});

function nameOfOption(option: string): string {
  return option.replaceAll(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

/** The name of the item that asks for places. */
export function nameOfPlaces({ option }: AskedPlaces): string {
  return nameOfOption(option);
}

const ENGINES: readonly DescriptionItem[] = [
  item('types', 'list', 'engine types, separated by commas', 'type 1'),
  item('engines', 'list', 'engines, each NAME or NAME=TYPE', 'E1'),
  item('cylinders', 'n', 'cylinders', '4'),
];

/** Walls are not measured where they are in the bore. */
const isPassedOver = ({ bores }: DescriptionTexts) => isWithShells(bores ?? '');

const MEASUREMENTS: readonly DescriptionItem[] = [
  item('bores', 'how', 'measure bores bare or with shells in?', 'bare'),
  item('stations', 'list', 'stations along a bearing', 'A,B'),
  item('journal-angles', 'list', 'angles of journals, in degrees', '0,90'),
  item('bore-angles', 'list', 'angles of bores; the parting line is at 90', '0,45,135'),
  { ...item('walls', 'n', 'spots on the wall of each half-shell', '2'), isPassedOver },
  item('repeats', 'n', 'readings of each spot', '1'),
  item('journal-gauge', 'gauge', 'gauge for journals, NAME or NAME=MAX ERROR'),
  item('bore-gauge', 'gauge', 'gauge for bores, in the same way'),
  { ...item('wall-gauge', 'gauge', 'gauge for walls, in the same way'), isPassedOver },
  item('unit', 'unit', 'unit of lengths, mm or in', 'mm'),
  item('temperature', 'unit', 'unit of temperatures, C or F', 'C'),
  item('paper', 'size', 'paper, a4 or letter', 'a4'),
  item('gauge-study', 'yes', 'a sheet for a gauge study, yes or no', 'no'),
];

/** Whether an answer says that bores are measured with their shells in. */
export function isWithShells(answer: string): boolean {
  return ['shells in', 'with shells in'].includes(nameKey(answer));
}

/** Options, questions and documentation go by these; an empty standard means what its help says. */
export function descriptionItems(): readonly DescriptionItem[] {
  const places = kindsOfFit().flatMap(({ asked }) =>
    asked.map(({ option, help }) => item(option, 'list', help)),
  );
  return [...ENGINES, ...places, ...MEASUREMENTS];
}

/** What is described where nothing is said. */
export function standardTexts(): DescriptionTexts {
  return Object.fromEntries(descriptionItems().map(({ name, standard }) => [name, standard]));
}
