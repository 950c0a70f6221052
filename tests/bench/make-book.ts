/** Makes one book of the bench: `make-book.js ROWS FILE [engines]`. */
import { stockList } from './stock-list.js';
import { writeBook } from './write-book.js';

const [rows, file, engines] = process.argv.slice(2);
await writeBook(stockList({ rows: Number(rows), seed: 20, withEngines: engines === 'engines' }), file!);
