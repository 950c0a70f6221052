/** Makes the description of an engine of the texts that options or answers give. */
import { listOf } from '../book/problems.js';
import { Table } from '../book/table.js';
import { kindsOfFit } from '../kinds/index.js';
import { UserError } from '../user-error.js';
import { type EngineDescription, readingHeaders } from './description.js';
import { type DescriptionTexts, nameOfPlaces } from './description-items.js';
import { readBolts } from './read-bolts.js';
import {
  readEngines,
  readGauges,
  readNames,
  readPositions,
  readWholeNumber,
  readWord,
  refuseText,
} from './read-description.js';

const MOST_CYLINDERS = 64;
const MOST_SPOTS = 60;
const MOST_WALLS = 20;
const MOST_REPEATS = 9;

/** @throws UserError naming the option whose text cannot be used. */
export function describeEngine(texts: DescriptionTexts): EngineDescription {
  const types = readNames(texts, 'types');
  const cylinders = readWholeNumber(texts, 'cylinders', MOST_CYLINDERS);
  const description: EngineDescription = {
    types,
    engines: readEngines(texts, types),
    places: kindsOfFit().flatMap((kind) =>
      kind.asked.map((asked) => ({
        kind,
        asked,
        positions: readPositions(texts, nameOfPlaces(asked), asked.standard(cylinders)),
      })),
    ),
    shellsIn: readWord(texts, 'bores', ['bare', 'shells in', 'with shells in']) !== 'bare',
    stations: readNames(texts, 'stations'),
    journalAngles: readNames(texts, 'journalAngles'),
    boreAngles: readNames(texts, 'boreAngles'),
    walls: readWholeNumber(texts, 'walls', MOST_WALLS),
    repeats: readWholeNumber(texts, 'repeats', MOST_REPEATS),
    journalGauges: readGauges(texts, 'journalGauge'),
    boreGauges: readGauges(texts, 'boreGauge'),
    wallGauges: readGauges(texts, 'wallGauge'),
    deviations: readWord(texts, 'deviations', ['yes', 'no']) === 'yes',
    strips: readWord(texts, 'strips', ['yes', 'no']) === 'yes',
    unit: readWord(texts, 'unit', ['mm', 'in']),
    temperature: readWord(texts, 'temperature', ['C', 'F']),
    paper: readWord(texts, 'paper', ['a4', 'letter']),
    gaugeStudy: readWord(texts, 'gaugeStudy', ['yes', 'no']) === 'yes',
    bolts: readBolts(texts, 'bolts'),
  };
  if (description.bolts.length === 0 && description.places.every(({ positions }) => positions.length === 0)) {
    const { places } = description;
    const isTyped = ({ asked }: (typeof places)[number]) => (texts[nameOfPlaces(asked)] ?? '') !== '';
    const last = (places.findLast(isTyped) ?? places.at(-1)!).asked;
    const fits = description.places.map(({ asked }) => asked.fit);
    refuseText(texts, nameOfPlaces(last), `a place to measure: a ${listOf(fits)}`, 'name positions');
  }
  checkSpots(description, texts);
  return description;
}

/** Why the texts cannot be used; undefined where they can. */
export function answerFault(texts: DescriptionTexts): string | undefined {
  try {
    describeEngine(texts);
    return undefined;
  } catch (error) {
    if (error instanceof UserError) return error.message;
    throw error;
  }
}

/** A sheet that is made needs neither units nor punctuation in its headers, though both would be read. */
const PLAIN_HEADER = /^[\p{L}\p{N}#° ]+$/u;

/**
 * Headers that the program would not read are refused here, before a sheet is printed with them.
 * @throws UserError that names the stations or the angles.
 */
function checkSpots(description: EngineDescription, texts: DescriptionTexts): void {
  const { stations } = description;
  for (const name of ['journalAngles', 'boreAngles'] as const) {
    const headers = readingHeaders(stations, description[name], description.repeats);
    const cells = headers.map((header) => ({ content: { kind: 'text', value: header } as const }));
    const units = { length: 'mm', temperature: 'C' } as const;
    const table = new Table({ name, columns: {}, readings: 'diameters' }, { name, rows: [cells] }, units);
    const isPlain = headers.every((header) => PLAIN_HEADER.test(header));
    if (table.readingColumns.length === headers.length && isPlain && headers.length <= MOST_SPOTS) continue;
    const isOfStation = stations.some((station) => !/^([a-z]|front|mid|middle|centre|rear)$/i.test(station));
    if (isOfStation)
      refuseText(texts, 'stations', 'single letters, Front, Mid, Centre or Rear', 'name stations so');
    refuseText(texts, name, 'different whole degrees from 0 to 359', 'type angles so, in a short list');
  }
}
