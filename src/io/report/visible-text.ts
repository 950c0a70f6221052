/**
 * A user's text as a page shows it: characters that no page can hold, and those that would turn the words around
 * them, are named instead (Unicode Standard Annex 9, 2 lists the marks of writing direction).
 */

/** Controls but tab and line end, marks of direction, invisible signs, and code points that are no characters. */
const HIDDEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\uffff\p{Cs}\p{Co}]/gu;

export function visibleText(text: string): string {
  return text.replaceAll(
    HIDDEN,
    (hidden) => `[U+${hidden.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}]`,
  );
}
