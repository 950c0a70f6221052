/** What `oilgap sheet` asks of an engine: one item for each option of its command line and question of its questionnaire. */

/** The texts of the description by name, as options or answers give them. */
export type DescriptionTexts = Readonly<Record<DescriptionName, string>>;

export type DescriptionName =
  | 'types'
  | 'engines'
  | 'cylinders'
  | 'bigEnds'
  | 'mains'
  | 'stations'
  | 'journalAngles'
  | 'boreAngles'
  | 'walls'
  | 'repeats'
  | 'journalGauge'
  | 'boreGauge'
  | 'wallGauge'
  | 'unit'
  | 'temperature'
  | 'paper'
  | 'gaugeStudy';

export interface DescriptionItem {
  readonly name: DescriptionName;
  /** The option of the command line. */
  readonly option: string;
  readonly value: string;
  /** The question of the questionnaire, and what the option holds. */
  readonly help: string;
  readonly standard: string;
}

const item = (
  name: DescriptionName,
  option: string,
  value: string,
  help: string,
  standard = '',
): DescriptionItem => ({ name, option, value, help, standard });

/** Options, questions and documentation go by this table; an empty standard means what its help says. */
export const DESCRIPTION_ITEMS: readonly DescriptionItem[] = [
  item('types', 'types', 'list', 'engine types, separated by commas', 'type 1'),
  item('engines', 'engines', 'list', 'engines, each NAME or NAME=TYPE', 'E1'),
  item('cylinders', 'cylinders', 'n', 'cylinders', '4'),
  item('bigEnds', 'big-ends', 'list', 'big-end positions, such as 1-4, or none; blank: one a cylinder'),
  item('mains', 'mains', 'list', 'main positions, or none; blank: one more than cylinders'),
  item('stations', 'stations', 'list', 'stations along a bearing', 'A,B'),
  item('journalAngles', 'journal-angles', 'list', 'angles of journals, in degrees', '0,90'),
  item('boreAngles', 'bore-angles', 'list', 'angles of bores; the parting line is at 90', '0,45,135'),
  item('walls', 'walls', 'n', 'spots on the wall of each half-shell', '2'),
  item('repeats', 'repeats', 'n', 'readings of each spot', '1'),
  item('journalGauge', 'journal-gauge', 'gauge', 'gauge for journals, NAME or NAME=MAX ERROR'),
  item('boreGauge', 'bore-gauge', 'gauge', 'gauge for bores, in the same way'),
  item('wallGauge', 'wall-gauge', 'gauge', 'gauge for walls, in the same way'),
  item('unit', 'unit', 'unit', 'unit of lengths, mm or in', 'mm'),
  item('temperature', 'temperature', 'unit', 'unit of temperatures, C or F', 'C'),
  item('paper', 'paper', 'size', 'paper, a4 or letter', 'a4'),
  item('gaugeStudy', 'gauge-study', 'yes', 'a sheet for a gauge study, yes or no', 'no'),
];

/** What is described where nothing is said. */
export const STANDARD_TEXTS = Object.fromEntries(
  DESCRIPTION_ITEMS.map(({ name, standard }) => [name, standard]),
) as DescriptionTexts;
