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
  /** What `?` says of the question, besides its help. */
  readonly more: string;
  /** Whether the questionnaire passes over it, by the answers so far. */
  readonly isPassedOver?: (answers: DescriptionTexts) => boolean;
}

const item = (option: string, value: string, help: string, standard = '', more = ''): DescriptionItem => ({
  name: nameOfOption(option),
  option,
  value,
  help,
  standard,
  more,
});

function nameOfOption(option: string): string {
  return option.replaceAll(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

/** The name of the item that asks for places. */
export function nameOfPlaces({ option }: AskedPlaces): string {
  return nameOfOption(option);
}

const GAUGES_HELP =
  'The greatest error stands in the certificate of the gauge or in the data of its maker: M1=0.002. ' +
  'Several gauges are separated by commas; which of them measured a part is then chosen in its row.';

const ENGINES: readonly DescriptionItem[] = [
  item(
    'types',
    'list',
    'engine types, separated by commas',
    'type 1',
    'A type has limits of its own in the manual: engines that share them are of one type.',
  ),
  item(
    'engines',
    'list',
    'engines, each NAME or NAME=TYPE',
    'E1',
    'Each engine gets rows of its own. Several are separated by commas.',
  ),
  item('cylinders', 'n', 'cylinders', '4', 'Of one engine. The places that follow are counted by it.'),
];

/** Walls are not measured where they are in the bore. */
const isPassedOver = ({ bores }: DescriptionTexts) => isWithShells(bores ?? '');

const MEASUREMENTS: readonly DescriptionItem[] = [
  item(
    'bores',
    'how',
    'measure bores bare or with shells in?',
    'bare',
    'bare: the housing alone, and the walls of the half-shells by themselves. with shells in: the bearing as it runs, caps torqued.',
  ),
  item(
    'stations',
    'list',
    'stations along a bearing',
    'A,B',
    'Where along a bearing it is measured, from the front: two show its taper.',
  ),
  item(
    'journal-angles',
    'list',
    'angles of journals, in degrees',
    '0,90',
    'Two show whether it is out of round. 0 of a crankpin is in line with its own throw, of a main with the throw of No. 1 crankpin.',
  ),
  item(
    'bore-angles',
    'list',
    'angles of bores; the parting line is at 90',
    '0,45,135',
    'Keep 20 degrees off the parting line, where the step between the halves is read.',
  ),
  {
    ...item(
      'walls',
      'n',
      'spots on the wall of each half-shell',
      '2',
      'At the crown, 90 degrees from the parting line, from the front.',
    ),
    isPassedOver,
  },
  item(
    'repeats',
    'n',
    'readings of each spot',
    '1',
    'More readings make a verdict surer where a gauge scatters. More can be taken later.',
  ),
  item('journal-gauge', 'gauge', 'gauge for journals, NAME or NAME=MAX ERROR', '', GAUGES_HELP),
  item('bore-gauge', 'gauge', 'gauge for bores, in the same way', '', GAUGES_HELP),
  { ...item('wall-gauge', 'gauge', 'gauge for walls, in the same way', '', GAUGES_HELP), isPassedOver },
  item(
    'deviations',
    'yes',
    'readings as deviations from the size that a gauge is set to, yes or no',
    'no',
    'yes adds the column Set to: type the size there for which the zero of the gauge stood, and +0.012 or -0.003 as readings.',
  ),
  item(
    'strips',
    'yes',
    'rows for gauge strips, yes or no',
    'no',
    'yes adds the sheet Fits, where the width of a plastic gauge strip goes in as the clearance of a bearing that is not measured.',
  ),
  item('unit', 'unit', 'unit of lengths, mm or in', 'mm', 'What a number means that names no unit.'),
  item(
    'temperature',
    'unit',
    'unit of temperatures, C or F',
    'C',
    'What a temperature means that names no unit.',
  ),
  item('paper', 'size', 'paper, a4 or letter', 'a4', 'What the sheets are printed on.'),
  item(
    'gauge-study',
    'yes',
    'a sheet for a gauge study, yes or no',
    'no',
    'Several persons read several parts several times: it shows how far readings of one gauge scatter.',
  ),
  item(
    'bolts',
    'list',
    'bolts to renew, GROUP=COUNT THREAD each, as in head=10 M10; by length or by neck behind',
    'none',
    'Each group gets a row a bolt, in the order of tightening: what they hold, how many, and their thread.',
  ),
];

/** Whether an answer says that bores are measured with their shells in. */
export function isWithShells(answer: string): boolean {
  return ['shells in', 'with shells in'].includes(nameKey(answer));
}

/** Options, questions and documentation go by these; an empty standard means what its help says. */
export function descriptionItems(): readonly DescriptionItem[] {
  const places = kindsOfFit().flatMap(({ asked }) =>
    asked.map(({ option, help }) =>
      item(
        option,
        'list',
        help,
        '',
        'Each place gets a row in each sheet of its parts. Type 1-4, or 1,2,5, or none.',
      ),
    ),
  );
  return [...ENGINES, ...places, ...MEASUREMENTS];
}

/** What is described where nothing is said. */
export function standardTexts(): DescriptionTexts {
  return Object.fromEntries(descriptionItems().map(({ name, standard }) => [name, standard]));
}
