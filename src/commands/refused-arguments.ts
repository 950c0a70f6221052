/** What is said of a command line that cannot be understood. */
import type { Command, CommanderError } from 'commander';
import { closest } from 'fastest-levenshtein';
import { listOf, quoted } from '../engine/book/problems.js';

/** Two lines where a command or an option is unknown, one otherwise. */
export function refusedArguments(error: CommanderError, oilgap: Command, args: readonly string[]): string {
  const command = oilgap.commands.find((each) => args.includes(each.name())) ?? oilgap;
  // The library puts what it found between the first and the last of these marks.
  const found = /'(.*)'/s.exec(error.message)?.[1] ?? '';
  switch (error.code) {
    case 'commander.unknownCommand':
      return unknownCommand(found, oilgap);
    case 'commander.unknownOption':
      return unknownOption(found, command);
    default:
      return error.message.replaceAll('\n', ' ');
  }
}

function unknownCommand(found: string, oilgap: Command): string {
  const names = oilgap.commands.map((command) => command.name());
  // A book without a command is meant to be checked.
  const nearest = /[./\\]/.test(found) ? 'check' : closest(found, names);
  return (
    `oilgap: found the command ${quoted(found)}; expected ${listOf(names)}.\n` +
    `The nearest is ${nearest}: oilgap ${nearest} --help tells what it takes.`
  );
}

function unknownOption(found: string, command: Command): string {
  const name = command.parent ? `oilgap ${command.name()}` : 'oilgap';
  const flag = found.replace(/=.*$/s, '');
  const known = [...command.options.map(({ long }) => long!), '--help'];
  return (
    `${name}: found the option ${quoted(flag)}; expected one that it has.\n` +
    `The nearest is ${closest(flag, known)}: ${name} --help lists all.`
  );
}
