/** The document of `--json`. */

/** The document's version: it changes where a key changes its meaning or goes. */
export const JSON_VERSION = 1;

export function printDocument(books: readonly unknown[]): void {
  process.stdout.write(`${jsonText({ version: JSON_VERSION, books })}\n`);
}

/** Control characters of a user's text are escaped: the text stays, and no terminal obeys it. */
export function jsonText(value: unknown, indent = 2): string {
  return JSON.stringify(value, null, indent).replaceAll(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, (control) =>
    control === '\n' ? control : [...Array(control.length).keys()].map((at) => escaped(control, at)).join(''),
  );
}

function escaped(text: string, at: number): string {
  return `\\u${text.charCodeAt(at).toString(16).padStart(4, '0')}`;
}
