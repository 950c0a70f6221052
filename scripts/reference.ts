/**
 * Every outside value that touches the program: item, source, what is printed there, what the program computes.
 *
 *   npm run reference
 *
 * Ends with 1 where a value does not agree, or a source at odds with itself is not named.
 */
import { agrees, type Value } from '../tests/reference/checks/check.js';
import { NOT_TOUCHED, REFERENCE_CHECKS } from '../tests/reference/checks/index.js';
import { tableText } from './table-text.js';

const HEADERS = ['Item', 'Source', 'What', 'Printed', 'Computed', 'Agrees'];

/** Ten significant digits: enough for every printed value. */
function text(value: Value): string {
  if (typeof value === 'string') return value;
  return [value]
    .flat()
    .map((number) => String(Number((number as number).toPrecision(10))))
    .join(', ');
}

let failures = 0;
const rows = REFERENCE_CHECKS.map((check) => {
  const computed = check.computed();
  const isSame = agrees(check, computed);
  const named = check.contradiction?.();
  const isGood = check.contradiction ? !isSame && named !== '' : isSame;
  if (!isGood) failures += 1;
  const verdict = check.contradiction
    ? `the source is at odds with itself; named: ${named || 'nothing'}`
    : isSame
      ? 'yes'
      : 'NO';
  return [check.item, check.source, check.what, text(check.printed), text(computed), verdict].map((cell) =>
    cell.replaceAll('|', '/'),
  );
});
console.log(tableText(HEADERS, rows));
console.log(`\n${rows.length} values, ${failures} that do not agree.\n`);
console.log(tableText(['Item that does not touch the program', 'Why'], Object.entries(NOT_TOUCHED)));
process.exitCode = failures > 0 ? 1 : 0;
