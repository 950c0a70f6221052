/** What goes to stderr. stdout carries the result alone. */

/** Terminal control characters of a user's text never reach the terminal. */
export function printable(text: string): string {
  return text.replaceAll(/[\p{Cc}\p{Cf}]/gu, (control) => (control === '\n' ? '\n' : ' '));
}

/** Characters in a line of stdout: of its terminal, else as COLUMNS says, else as of old. */
export function lineWidth(): number {
  const told = process.stdout.columns ?? Number(process.env.COLUMNS);
  return Number.isInteger(told) && told > 0 ? told : 80;
}

export function say(message: string): void {
  process.stderr.write(`${printable(message)}\n`);
}

/** Progress, on a terminal only: one line that the next replaces. */
export function progress(message: string): void {
  if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${printable(message)}`);
}

export function endProgress(): void {
  if (process.stderr.isTTY) process.stderr.write('\r\u001b[K');
}

export const EXIT = { good: 0, findings: 1, notRun: 2 } as const;
