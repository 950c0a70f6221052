import { CORPUS } from '../tests/corpus/corpus.js';
import { examine } from '../tests/corpus/examine.js';
import { newErrors, schemaErrors } from '../tests/validator/schema-errors.js';
for (const book of CORPUS) {
  const { before, after } = await examine(await book.make());
  const t = performance.now();
  let old: string[], now: string[];
  try { old = await schemaErrors(before);} catch (e) { console.log(book.holds, 'BEFORE', String(e).slice(0,200)); old=[]; }
  try { now = await schemaErrors(after);} catch (e) { console.log(book.holds, 'AFTER', String(e).slice(0,200)); now=[]; }
  console.log(book.holds, old.length, newErrors(old, now), (performance.now()-t).toFixed(0));
  if (old.length) console.log('   ', old.slice(0,3));
}
