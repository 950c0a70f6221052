#!/usr/bin/env bash
# Draws the pictures in docs/ from the real thing: before.png and after.png, the sheet Journals of the demo
# workbook one-engine as it was typed and as the program wrote it, there with the typed columns but the first
# hidden; a small picture of each other sheet that the program writes; and the first pages of the engine's
# printed page. Needs the built program, LibreOffice, Chromium, pdftoppm and ImageMagick.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# 1: something in the book is not as it should be, which this demo is there to show.
run() { node dist/src/commands/main.js "$@" --out "$work" > /dev/null || [ $? -eq 1 ]; }
run check workbooks/one-engine.xlsx --values
run check workbooks/three-engines.xlsx workbooks/stock.xlsx --values
run report workbooks/one-engine.xlsx --pdf
cp workbooks/one-engine.xlsx "$work/before.xlsx"
mv "$work/one-engine.checked.xlsx" "$work/after.xlsx"

# sheet_picture BOOK SHEET PICTURE FIRST: the one sheet, with its grid and headings, on a page large enough for
# all of it; columns after the first and before that headed FIRST are hidden.
sheet_picture() {
  node --input-type=module - "$work/$1.xlsx" "$work/$3.xlsx" "$2" "$4" << 'NODE'
import ExcelJS from 'exceljs';
const [from, to, name, first] = process.argv.slice(2);
const book = new ExcelJS.Workbook();
await book.xlsx.readFile(from);
for (const sheet of [...book.worksheets]) if (sheet.name !== name) book.removeWorksheet(sheet.id);
const [sheet] = book.worksheets;
const A2 = 66;
Object.assign(sheet.pageSetup, {
  paperSize: A2, orientation: 'landscape', showGridLines: true, showRowColHeaders: true, scale: 100,
  fitToPage: false, printArea: undefined,
});
sheet.pageSetup.margins = { left: 0.2, right: 0.2, top: 0.2, bottom: 0.2, header: 0, footer: 0 };
sheet.headerFooter = {};
const firstShown = sheet.getRow(1).values.indexOf(first);
for (let column = 2; column < firstShown; column++) sheet.getColumn(column).hidden = true;
await book.xlsx.writeFile(to);
NODE
  soffice "-env:UserInstallation=file://$work/profile" --headless --convert-to pdf --outdir "$work" \
    "$work/$3.xlsx" > /dev/null
  pdftoppm -gray -r 80 -f 1 -l 1 -singlefile -png "$work/$3.pdf" "$work/$3"
  convert "$work/$3.png" -trim +repage -bordercolor white -border 6 -colors 16 -strip "docs/$3.png"
}

cp "$work/after.xlsx" "$work/sheets.xlsx"
sheet_picture before Journals before ''
sheet_picture after Journals after Size
sheet_picture sheets Fits sheet-fits ''
sheet_picture sheets Summary sheet-summary ''
sheet_picture sheets 'Re-measure' sheet-re-measure ''
sheet_picture sheets 'Matched sets' sheet-matched-sets ''
sheet_picture sheets 'Pick list' sheet-pick-list ''
sheet_picture three-engines.checked 'Not matched' sheet-not-matched ''
sheet_picture three-engines.checked 'Left over' sheet-left-over ''
sheet_picture stock.checked 'To buy' sheet-to-buy ''

pdftoppm -gray -r 60 -f 2 -l 3 -png "$work/one-engine.report.pdf" "$work/page"
convert "$work"/page-*.png -bordercolor black -border 1 -bordercolor white -border 6 +append -colors 16 -strip \
  docs/page.png
ls -l docs/*.png
