/**
 * Does a number format show a date or a time?
 *
 * Format codes: ISO 29500-1, 18.8.31. A code of theirs that a user wrote for a length, `0.000 mm`, uses the
 * letter of months without quotes; beside digit placeholders it can only be meant as a unit, so such a
 * section shows a number. Fractions of seconds (`ss.000`) are the one use of 0 in a time.
 */

/** The built-in formats of ISO 29500-1, 18.8.30 that are dates or times, those of East Asian locales included. */
export function isBuiltInDateFormat(id: number): boolean {
  return (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);
}

/** True where one of the sections for numbers shows a date or a time. */
export function isDateFormat(code: string): boolean {
  return sectionsOf(code).slice(0, 3).some(showsDate);
}

/** One token of a code: literals in quotes, escaped, padding or filling characters, brackets, or one character. */
const TOKEN = /"[^"]*"?|\\.|_.|\*.|\[[^\]]*\]?|./gsu;
const ELAPSED = /^\[(h+|m+|s+)\]$/i;

/** The sections with their literals taken out; an elapsed time `[h]` stays. */
function sectionsOf(code: string): string[] {
  const sections = [''];
  for (const [token] of code.matchAll(TOKEN)) {
    const isLiteral = token.length > 1 && !ELAPSED.test(token);
    if (token === ';') sections.push('');
    else if (!isLiteral) sections[sections.length - 1] += token;
    // A literal parts what stands around it: `s"."0` is no fraction of a second.
    else sections[sections.length - 1] += ' ';
  }
  return sections;
}

function showsDate(section: string): boolean {
  if (/\[[hms]+\]/i.test(section)) return true;
  const rest = section
    .replace(/General/gi, '')
    .replace(/AM\/PM|A\/P/gi, 'h')
    .replace(/(s)[.,]0+/gi, '$1')
    .replace(/E[+-]/gi, '');
  return /[ymdhsbeg]|aaa/i.test(rest) && !/[0#?]/.test(rest);
}
