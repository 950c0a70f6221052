#!/usr/bin/env bash
# Draws docs/before.png and docs/after.png: the sheet Journals of the demo workbook one-engine as it was
# typed and as the program wrote it, there with the typed columns but the first hidden. Needs the built
# program, LibreOffice, pdftoppm and ImageMagick.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# 1: something in the book is not as it should be, which this demo is there to show.
node dist/src/commands/main.js check workbooks/one-engine.xlsx --out "$work" --values > /dev/null || [ $? -eq 1 ]
cp workbooks/one-engine.xlsx "$work/before.xlsx"
mv "$work/one-engine.checked.xlsx" "$work/after.xlsx"

for name in before after; do
  # The one sheet, with its grid and headings, on a page large enough for all of it.
  node --input-type=module - "$work/$name.xlsx" "$work/$name.page.xlsx" << 'NODE'
import ExcelJS from 'exceljs';
const [from, to] = process.argv.slice(2);
const book = new ExcelJS.Workbook();
await book.xlsx.readFile(from);
for (const sheet of [...book.worksheets]) if (sheet.name !== 'Journals') book.removeWorksheet(sheet.id);
const [sheet] = book.worksheets;
const A2 = 66;
Object.assign(sheet.pageSetup, {
  paperSize: A2, orientation: 'landscape', showGridLines: true, showRowColHeaders: true, scale: 100,
  fitToPage: false, printArea: undefined,
});
sheet.pageSetup.margins = { left: 0.2, right: 0.2, top: 0.2, bottom: 0.2, header: 0, footer: 0 };
sheet.headerFooter = {};
const headers = sheet.getRow(1).values;
const firstResult = headers.indexOf('Size');
for (let column = 2; column < firstResult; column++) sheet.getColumn(column).hidden = true;
await book.xlsx.writeFile(to);
NODE
  soffice "-env:UserInstallation=file://$work/profile" --headless --convert-to pdf --outdir "$work" \
    "$work/$name.page.xlsx" > /dev/null
  pdftoppm -gray -r 80 -f 1 -l 1 -singlefile -png "$work/$name.page.pdf" "$work/$name"
  convert "$work/$name.png" -trim +repage -bordercolor white -border 6 -colors 16 -strip "docs/$name.png"
done
ls -l docs/before.png docs/after.png
