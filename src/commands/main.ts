#!/usr/bin/env node
/** The command line: arguments in, exit code out. */
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { commandHelp } from '../engine/bench/commands.js';
import { descriptionItems } from '../engine/blank/description-items.js';
import { shortened } from '../engine/book/problems.js';
import { CAUTION } from '../engine/caution.js';
import { UserError } from '../engine/user-error.js';
import { programName } from '../io/program-name.js';
import { EXIT, print, say } from './messages.js';
import { watchOutput } from './output-faults.js';
import { refusedArguments } from './refused-arguments.js';
import { tidyOnSignals } from './signals.js';

const EXIT_TEXT = `
Exit codes:
  0  every fit in range, every part within limits, every table consistent
  1  ran, and something is not
  2  a book could not be run; nothing was written for it
`;

const CAUTION_TEXT = `
Caution:
${CAUTION.map((sentence) => `  ${sentence}`.replaceAll(/(.{1,76})(?: |$)/g, '$1\n  ').trimEnd()).join('\n')}
`;

const EXAMPLES = `
Examples:
  oilgap check bench/engine.xlsx
  oilgap check *.xlsx --out checked
  oilgap match crank-shelf.xlsx shells.xlsx --out sets.xlsx
  oilgap match crank-shelf.xlsx shells.xlsx --explain "C6 big end 2"
  oilgap sheet --out engine.xlsx --cylinders 6 --unit in
  oilgap report bench/engine.xlsx --pdf
  oilgap bench engine.xlsx < readings.txt
  oilgap functions SHELL_CLEARANCE
  oilgap calc "=SHELL_CLEARANCE(45.0125,1.4875,1.4885,42.0015)"
`;

const BENCH_TEXT = `
At the bench, instead of a reading, then Enter:
${commandHelp()
  .map((line) => `  ${line}`)
  .join('\n')}

The bench ends with 0 where all that was asked for is measured, with 1 where
something is left, with 2 where the workbook could not be written: what was
read is then in the log beside it.
`;

function seconds(text: string): number {
  const value = Number(text);
  if (Number.isFinite(value) && value > 0) return value;
  throw new InvalidArgumentError('expected a number of seconds above 0.');
}

function count(text: string): number {
  if (/^[1-9]\d{0,8}$/.test(text)) return Number(text);
  throw new InvalidArgumentError('expected a whole number from 1.');
}

/** For commands that work in processes of their own. */
function addProcessOptions(command: Command, hasSeveral: boolean): Command {
  if (hasSeveral) {
    command.addOption(new Option('--jobs <n>', 'books at once (default: one a core)').argParser(count));
  }
  return command
    .addOption(new Option('--memory <mb>', 'memory that a book may take (default: 4096)').argParser(count))
    .addOption(new Option('--timeout <s>', 'seconds that a book may take (default: 600)').argParser(seconds));
}

function secondsOption(): Option {
  return new Option('--seconds <n>', 'time that matching may take').argParser(seconds).default(30);
}

function program(finish: (code: number) => void): Command {
  const oilgap = new Command('oilgap')
    .description('Oil clearances, classes and matched sets of measured engine parts.')
    .version(programName())
    .exitOverride()
    .showSuggestionAfterError(false)
    // What the library finds is said at the end, with all other refusals.
    .configureOutput({ outputError: () => undefined })
    .configureHelp({ helpWidth: 80 })
    .addHelpText('after', EXAMPLES + EXIT_TEXT + CAUTION_TEXT);

  oilgap
    .command('check')
    .description('judge each workbook by itself and write its results beside it')
    .argument('<book...>', '.xlsx files, or folders of .csv files')
    .option('--out <dir>', 'folder for the checked books')
    .addOption(new Option('--in-place', 'write into the books themselves').conflicts('out'))
    .option('--values', 'plain values in place of live formulas')
    .option('--take-repeatability', 'put what Gauge study found into Gauges, and compute with it')
    .option('--quiet', 'nothing on stdout: the exit code and the messages tell')
    .option('--json', 'one JSON document on stdout, lengths in mm')
    .addOption(secondsOption())
    .action(async (books: string[], options) => {
      const { check } = await import('./check.js');
      finish(await check(books, options));
    });

  oilgap
    .command('match')
    .description('take all workbooks as one stock and write the best matched sets')
    .argument('<book...>', '.xlsx files, or folders of .csv files')
    .option('--out <file>', 'the .xlsx file to write; may be left out with --explain')
    .option('--explain <part>', 'tell which fits were open to a part or a place, and what took them')
    .option('--values', 'plain values in place of live formulas')
    .option('--json', 'one JSON document on stdout, lengths in mm')
    .addOption(secondsOption())
    .action(async (books: string[], options) => {
      const { match } = await import('./match.js');
      finish(await match(books, options));
    });

  const sheetCommand = oilgap
    .command('sheet')
    .description('make a blank measurement workbook; on a terminal without options, ask for the engine')
    .option('--out <file>', 'the .xlsx file to make', 'measurements.xlsx');
  for (const { option, value, help, standard } of descriptionItems()) {
    const text = standard === '' ? help : `${help} (default: "${standard}")`;
    sheetCommand.option(`--${option} <${value}>`, text);
  }
  sheetCommand.action(async (options) => {
    const { sheet } = await import('./sheet.js');
    finish(await sheet(options));
  });

  oilgap
    .command('report')
    .description('write a page of each workbook, to look at or to print')
    .argument('<book...>', '.xlsx files, or folders of .csv files')
    .option('--out <dir>', 'folder for the pages')
    .option('--pdf', 'print each page to PDF too, with an installed Chromium')
    .addOption(new Option('--paper <size>', 'paper of the PDF').choices(['a4', 'letter']).default('a4'))
    .addOption(secondsOption())
    .action(async (books: string[], options) => {
      const { report } = await import('./report.js');
      finish(await report(books, options));
    });

  oilgap
    .command('bench')
    .description('enter readings one by one, from a keyboard, a gauge that types, or a file')
    .argument('<book>', 'an .xlsx workbook, such as oilgap sheet makes')
    .option('--again', 'ask for the readings to measure again, the one that decides most first')
    .option('--from <file>', 'a list of readings: part, spot, value; or values alone, in order')
    .option('--yes', 'with --from: write without being asked')
    .option('--plain', 'no large letters, as for a screen reader')
    .addHelpText('after', BENCH_TEXT)
    .action(async (book: string, options) => {
      const { bench } = await import('./bench.js');
      finish(await bench(book, options));
    });

  oilgap
    .command('functions')
    .description('list the custom functions, or explain one')
    .argument('[name]', 'a function, e.g. SHELL_CLEARANCE')
    .action(async (name: string | undefined) => {
      const { functionHelp, functionList } = await import('../engine/functions/function-help.js');
      try {
        print(name === undefined ? functionList() : functionHelp(name.toUpperCase()));
        finish(EXIT.good);
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        throw new UserError(
          `functions: found the name ${shortened(name ?? '')}; expected one of those that oilgap functions lists.`,
        );
      }
    });

  oilgap
    .command('calc')
    .description('evaluate one formula')
    .argument('<formula>', 'in quotes, e.g. "=AT_20C(66.02,30,23)"')
    .addOption(new Option('--unit <unit>', 'unit of lengths').choices(['mm', 'in']).default('mm'))
    .addOption(new Option('--temperature <unit>', 'unit of temperatures').choices(['C', 'F']).default('C'))
    .option('--json', 'one JSON document on stdout')
    .action(async (formula: string, options) => {
      const { calc } = await import('./calc.js');
      finish(await calc(formula, options));
    });

  for (const command of oilgap.commands) {
    const name = command.name();
    const judges = ['check', 'match', 'report'].includes(name);
    if (judges) addProcessOptions(command, name !== 'match');
    command
      .exitOverride()
      .configureHelp({ helpWidth: 80 })
      .addHelpText('after', judges ? EXIT_TEXT + CAUTION_TEXT : CAUTION_TEXT);
  }
  return oilgap;
}

async function main(): Promise<number> {
  let code: number = EXIT.good;
  const oilgap = program((result) => {
    code = result;
  });
  try {
    await oilgap.parseAsync();
  } catch (error) {
    if (error instanceof CommanderError) {
      // Help and the version are no refusals, nor is the help that stands for a missing command.
      if (error.exitCode === 0) return EXIT.good;
      if (error.code !== 'commander.help') say(refusedArguments(error, oilgap, process.argv.slice(2)));
      return EXIT.notRun;
    }
    if (!(error instanceof UserError)) throw error;
    say(error.message);
    return EXIT.notRun;
  }
  return code;
}

tidyOnSignals();
watchOutput();
main().then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    say(
      `oilgap failed; this is a fault of the program, not of the book.\n${error instanceof Error ? error.stack : error}`,
    );
    process.exitCode = EXIT.notRun;
  },
);
