/** What may be typed at the bench instead of a reading: one letter or its word, then Enter. */

export type BenchCommand =
  | 'undo'
  | 'skip'
  | 'jump'
  | 'second'
  | 'keep'
  | 'note'
  | 'temperature'
  | 'gauge'
  | 'zero'
  | 'write'
  | 'help'
  | 'quit';

export interface CommandRecord {
  readonly command: BenchCommand;
  readonly key: string;
  /** What follows the key; blank for nothing. */
  readonly argument: string;
  readonly help: string;
}

const record = (command: BenchCommand, key: string, argument: string, help: string): CommandRecord => ({
  command,
  key,
  argument,
  help,
});

/** Help and documentation go by this table. */
export const BENCH_COMMANDS: readonly CommandRecord[] = [
  record('undo', 'u', '', 'take the last reading back'),
  record('skip', 's', '', 'leave this spot for later'),
  record('jump', 'j', 'PART', 'go to a part, or to one spot of it: j P1 A 90'),
  record('second', 'r', '', 'a second reading of the spot that was just read'),
  record('keep', 'k', 'REASON', 'keep a reading that was doubted, and say why'),
  record('note', 'n', 'TEXT', 'add words to the Note of this part'),
  record('temperature', 't', 'VALUE', 'temperature of this part and of those that follow'),
  record('gauge', 'g', 'NAME', 'gauge of this part and of those that follow'),
  record('zero', 'z', 'SIZE', 'size that the gauge is set to: then +12 or -3 are steps; z off ends it'),
  record('write', 'w', '', 'write the workbook now'),
  record('help', '?', '', 'this list'),
  record('quit', 'q', '', 'write the workbook and end'),
];

/** @returns undefined for a text that is no command, such as a reading */
export function parseCommand(line: string): { command: BenchCommand; argument: string } | undefined {
  const [, word = '', argument = ''] = /^([a-z?]+)(?:\s+(.*))?$/i.exec(line.trim()) ?? [];
  const known = BENCH_COMMANDS.find(({ command, key }) => [command, key].includes(word.toLowerCase()));
  return known && { command: known.command, argument: argument.trim() };
}

export function commandHelp(): string[] {
  return BENCH_COMMANDS.map(({ command, key, argument, help }) => {
    const typed = argument === '' ? key : `${key} ${argument}`;
    return `${typed.padEnd(10)} ${help} (${command})`;
  });
}
