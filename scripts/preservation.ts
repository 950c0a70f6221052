/** `npm run preservation`: makes docs/preservation.md anew. */
import { writeFileSync } from 'node:fs';
import { CORPUS } from '../tests/corpus/corpus.js';
import { examine } from '../tests/corpus/examine.js';
import { preservationPage, type Row } from '../tests/corpus/preservation-page.js';

const rows: Row[] = [];
for (const book of CORPUS) rows.push({ book, ...(await examine(await book.make())) });
writeFileSync('docs/preservation.md', preservationPage(rows));
