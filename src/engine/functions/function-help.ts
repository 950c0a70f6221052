/** The help of the functions and their table in the README, made from the records. */
import type { ArgumentRecord, Example, ExampleCell, FunctionRecord } from '../../../functions/definition.js';
import { expectedOf, type FunctionUnits } from '../../../functions/expected.js';
import { functionRecords } from '../../../functions/index.js';
import { columnLetters } from '../workbook-model.js';

const WIDTH = 80;
const IN_MM: FunctionUnits = { lengthUnit: 'mm', temperatureUnit: 'C' };

const CELL_ERRORS = { VALUE: '#VALUE!', NUM: '#NUM!', NA: '#N/A' } as const;

/** `FIT_STATUS(tightest, loosest, min, max, [u])`. */
export function signatureOf({ name, arguments: known }: FunctionRecord): string {
  const names = known.map((argument) => (argument.optional ? `[${argument.name}]` : argument.name));
  return `${name}(${names.join(', ')})`;
}

/** Words broken into lines of at most 80 characters; lines after the first stand further in. */
function wrap(text: string, indent: string, hanging = indent): string {
  const lines: string[] = [];
  let line = indent;
  let isEmpty = true;
  for (const word of text.split(' ')) {
    if (!isEmpty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = hanging;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line].join('\n');
}

function argumentHelp(argument: ArgumentRecord): string {
  const blank =
    argument.blank === 'refused'
      ? ''
      : ` ${argument.optional ? 'Blank or left out' : 'Blank'}: ${argument.blankMeans}.`;
  return wrap(
    `${argument.name}: ${argument.meaning}; ${expectedOf(argument, IN_MM)}.${blank}`,
    '  ',
    '      ',
  );
}

function cellText(cell: ExampleCell): string {
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return cell === null ? '(blank)' : String(cell);
}

/** A small grid with its row numbers and column letters. */
function gridHelp(grid: readonly (readonly ExampleCell[])[]): string[] {
  const columns = Math.max(...grid.map((row) => row.length));
  const texts = [
    ['', ...Array.from({ length: columns }, (_, column) => columnLetters(column))],
    ...grid.map((row, index) => [String(index + 1), ...row.map(cellText)]),
  ];
  const widths = Array.from({ length: columns + 1 }, (_, column) =>
    Math.max(...texts.map((row) => row[column]?.length ?? 0)),
  );
  return texts.map((row) =>
    `      ${row.map((text, column) => text.padEnd(widths[column]!)).join('  ')}`.trimEnd(),
  );
}

function exampleHelp(example: Example): string {
  const { says, grid = [], formula, expected, lengthUnit = 'mm' } = example;
  const unit = lengthUnit === 'mm' ? '' : ` (a book in ${lengthUnit})`;
  const result =
    typeof expected === 'object'
      ? `${CELL_ERRORS[expected.error]} ${expected.message}`
      : expected === ''
        ? '(empty text)'
        : String(expected);
  return [
    wrap(`${says}${unit}`, '  ', '  '),
    ...(grid.length > 0 ? gridHelp(grid) : []),
    wrap(formula, '    ', '        '),
    wrap(`→ ${result}`, '    ', '      '),
  ].join('\n');
}

function resultHelp({ meaning, quantity, emptyWhen }: FunctionRecord['result']): string {
  const unit = quantity.endsWith('length') ? "; in the book's unit of length" : '';
  const empty = emptyWhen === undefined ? '' : ` The empty text where ${emptyWhen}.`;
  return wrap(`${meaning}${unit}.${empty}`, '  ');
}

/**
 * Plain text of at most 80 columns. Names match without regard to case.
 * @throws RangeError for a name that no function has.
 */
export function functionHelp(name: string): string {
  const wanted = name.trim().toUpperCase();
  const record = functionRecords.find((known) => known.name === wanted);
  if (!record) throw new RangeError(`no function is named ${name}; \`oilgap functions\` lists them all`);
  return [
    wrap(signatureOf(record), '', '    '),
    '',
    wrap(record.sentence, ''),
    '',
    'Arguments',
    ...record.arguments.map(argumentHelp),
    '',
    'Result',
    resultHelp(record.result),
    '',
    'Errors',
    wrap(
      '#VALUE! where an argument, or a cell of its range, is blank or of another kind and that is not allowed above',
      '  ',
      '      ',
    ),
    wrap('#NUM! where a number lies outside its range', '  ', '      '),
    wrap('#N/A where an argument is missing, or there are too many', '  ', '      '),
    ...record.errors.map(({ code, when, message }) =>
      wrap(`${CELL_ERRORS[code]} where ${when}: "${message}"`, '  ', '      '),
    ),
    wrap('An error value in an argument is handed on as it is.', '  '),
    '',
    'Examples (lengths in mm unless said otherwise)',
    record.examples.map(exampleHelp).join('\n\n'),
    '',
    wrap(`Source: ${record.source}.`, '', '    '),
    wrap(`Since ${record.since}. See also ${record.related.join(', ')}.`, '', '    '),
    '',
  ].join('\n');
}

const GROUPS = {
  workshop: 'For the cells of a measurement sheet',
  columns: 'For the columns that the program writes',
} as const;

const GROUP_ORDER = ['workshop', 'columns'] as const;

/** Every function with its sentence, as plain text of at most 80 columns. */
export function functionList(): string {
  return GROUP_ORDER.map((group) => {
    const records = functionRecords.filter((record) => record.group === group);
    const lines = records.map((record) => [
      wrap(signatureOf(record), '  ', '      '),
      wrap(record.sentence, '    '),
    ]);
    return [`${GROUPS[group]}:`, ...lines.flat(), ''].join('\n');
  }).join('\n');
}

/** The Markdown table of the README. */
export function functionTable(): string {
  const inCell = (text: string) => text.replaceAll('|', '\\|');
  const rows = functionRecords.map((record) => {
    const { meaning, emptyWhen } = record.result;
    const result = emptyWhen === undefined ? meaning : `${meaning}; empty where ${emptyWhen}`;
    return `| \`${signatureOf(record)}\` | ${inCell(record.sentence)} | ${inCell(result)} |`;
  });
  return ['| Function | What it gives | Result |', '| --- | --- | --- |', ...rows, ''].join('\n');
}
