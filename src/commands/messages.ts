/** What goes to stdout and stderr. stdout carries the result alone. */

export interface Outlet {
  /** A message for people. */
  say(text: string): void;
  /** A part of the result. */
  print(text: string): void;
  /** What is being done just now. */
  progress(text: string): void;
}

/** Terminal control characters of a user's text never reach the terminal. */
export function printable(text: string): string {
  return withWholeNames(text).replaceAll(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, (control) =>
    control === '\n' ? '\n' : ' ',
  );
}

/** Names from the command line, or parts of them, that hold line ends: in a message each is on one line. */
const BROKEN_NAMES = process.argv
  .slice(2)
  .flatMap((name) => name.split(/[/\\]|\.\w+$/))
  .filter((name) => name.includes('\n'));

function withWholeNames(text: string): string {
  return BROKEN_NAMES.reduce((found, name) => found.replaceAll(name, name.replaceAll('\n', ' ')), text);
}

/** Lines of one message. */
const MOST_LINES = 10;

function cut(message: string): string {
  const lines = message.split('\n');
  if (lines.length <= MOST_LINES) return message;
  return [...lines.slice(0, MOST_LINES - 1), `and ${lines.length - MOST_LINES + 1} lines more`].join('\n');
}

let isProgressShown = false;

/** Progress is one line that the next replaces, on a terminal only. */
export const TERMINAL: Outlet = {
  say(text) {
    endProgress();
    process.stderr.write(`${cut(printable(text))}\n`);
  },
  print(text) {
    endProgress();
    process.stdout.write(`${printable(text)}\n`);
  },
  progress(text) {
    if (!process.stderr.isTTY) return;
    process.stderr.write(`\r\u001b[K${printable(text)}`);
    isProgressShown = true;
  },
};

let outlet = TERMINAL;

/** Has everything said elsewhere: a process that works for another has no terminal. */
export function setOutlet(other: Outlet): void {
  outlet = other;
}

/** Characters in a line of stdout: of its terminal, else as COLUMNS says, else as of old. */
export function lineWidth(): number {
  const told = process.stdout.columns ?? Number(process.env.COLUMNS);
  return Number.isInteger(told) && told > 0 ? told : 80;
}

export function say(message: string): void {
  outlet.say(message);
}

export function print(text: string): void {
  outlet.print(text);
}

export function progress(message: string): void {
  outlet.progress(message);
}

export function endProgress(): void {
  // Where there is nothing to clear, a terminal gets no control sequence: a screen reader may say it.
  if (isProgressShown) process.stderr.write('\r\u001b[K');
  isProgressShown = false;
}

export const EXIT = { good: 0, findings: 1, notRun: 2 } as const;
