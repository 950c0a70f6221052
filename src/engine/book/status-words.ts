/** Every word that the program writes under Status, by which the rows of an earlier run are known. */
const STATUS_WORDS: ReadonlySet<string> = new Set([
  'bad reading',
  'not measured',
  'measured: run again',
  'run again',
  'no limits',
  'beyond limits',
  'within limits',
  'undecided',
  'measured',
  'renew',
  'unclear',
  'tight',
  'loose',
  'in range',
  'within service limit',
  'consistent',
  'check the source',
]);

export function isStatusWord(value: unknown): boolean {
  return typeof value === 'string' && STATUS_WORDS.has(value);
}
