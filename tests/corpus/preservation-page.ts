/** docs/preservation.md, made from what was examined: `npm run preservation`. */
import type { CorpusBook } from './corpus-book.js';
import type { Examined } from './examine.js';

export type Row = { readonly book: CorpusBook } & Examined;

export function preservationPage(rows: readonly Row[]): string {
  const parts = rows.reduce((sum, row) => sum + row.parts, 0);
  const identical = rows.reduce((sum, row) => sum + row.identical, 0);
  const cells = rows.reduce((sum, row) => sum + row.cells, 0);
  const lines = rows.map(({ book, parts: all, identical: same, written, apart }) => {
    const sheets = written.filter((part) => !/workbook|Content_Types|styles/.test(part));
    const sheet =
      apart.length > 0 ? `${apart.join(', ')}: results on a sheet of their own` : sheets.join(', ');
    return `| ${book.holds} | ${all} | ${same} | ${sheet} | ${book.unreadByExcelJs ?? 'same cells'} |`;
  });
  return `# What stays of a workbook

Made by \`npm run preservation\` from the books in \`tests/corpus/\`; \`npm test\` holds it to them.

\`oilgap check\` writes into a copy of the package. Each book below holds a sheet Journals and one thing more; those with a program's name were written by that program. It is checked, and then compared with what it was:

- every part that is not written is byte for byte the same;
- the user's cells in written sheets keep value, formula and format, and rows their heights;
- what stands around the cells in a written sheet (drawings, rules, links, print settings, extensions) is letter for letter the same, and so are names, links
  and protection of the workbook;
- what people type beside, below and between the written columns stays;
- the written book, checked once more, is byte for byte the same in every part;
- ExcelJS finds the same cells in the user's book and in the written one, where it can read the book at all;
- LibreOffice opens the written book and finds the same cells in the user's sheets (\`npm run live\`);
- a validator of the schemas finds no error in the written book that the user's did not have (\`npm run validate\`).

Of each package, writing changes the lists of parts, sheets and formats (\`[Content_Types].xml\`, \`xl/workbook.xml\`, its relationships and \`xl/styles.xml\`) and the sheet named in the table. A
calculation chain that lists a replaced formula is taken out; spreadsheet programs make it anew. A table (ListObject) that ends where the written columns begin is made to reach over
them, so that it sorts results with their parts. Where something is in the way of the written columns, or the sheet has no room for them, the results stand on a sheet of the
program's own, row for row, and a message says so.

${rows.length} books, ${parts} parts, of which ${identical} stay byte for byte; ${cells} cells compared.

| The book holds | Parts | Byte for byte | Sheet written | ExcelJS |
| --- | --- | --- | --- | --- |
${lines.join('\n')}

None of these books was opened in Excel.
`;
}
