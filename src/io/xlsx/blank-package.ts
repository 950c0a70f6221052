/** A blank measurement workbook as an .xlsx package: to be filled in a spreadsheet program, or by pencil on paper. */
import ExcelJS from 'exceljs';
import { type BlankBook, GUIDE_SHEET, setupChoices } from '../../engine/blank/blank-book.js';
import type { BlankColumn, BlankSheet, InputKind } from '../../engine/blank/blank-columns.js';
import { drawingOf } from '../../engine/blank/figures.js';
import { columnLetters } from '../../engine/workbook-model.js';
import { addDrawing } from './drawing-part.js';
import { libraryPackage, libraryStyle, setWidths } from './library-styles.js';
import type { OpcPackage } from './opc-package.js';
import { listSheets } from './workbook-package.js';

/** High enough for a pencil, where the sheet is printed at its own size. */
const ROW_POINTS = 24;
const HEADER_POINTS = 48;
/** A sheet wider than this many characters is made smaller for the page; its rows are then made higher. */
const PAGE_CHARACTERS = 125;
const PAPER: Readonly<Record<'a4' | 'letter', number>> = { a4: 9, letter: 1 };
const GUIDE_WIDTH = 110;
/** Longer messages are cut by spreadsheet programs, or make the file unreadable. */
const LONGEST_PROMPT = 255;

const THIN: Partial<ExcelJS.Border> = { style: 'thin' };
const BOX: Partial<ExcelJS.Borders> = { top: THIN, left: THIN, bottom: THIN, right: THIN };
/** Of protection only what fills a form is left free; without a password everybody can take it off. */
const PROTECTION: Partial<ExcelJS.WorksheetProtection> = {
  selectLockedCells: true,
  selectUnlockedCells: true,
  formatColumns: true,
  formatRows: true,
};

/** The same book gives the same bytes. */
export async function blankPackage(book: BlankBook): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  // The library else takes the hour of writing.
  workbook.created = new Date(0);
  workbook.modified = new Date(0);
  await addGuide(workbook, book);
  for (const sheet of book.sheets) await addSheet(workbook, sheet, book);
  const pkg = await libraryPackage(workbook, 'the blank workbook');
  await addDrawings(pkg, book);
  return pkg.toBytes({ allDatesFixed: true });
}

async function addGuide(
  workbook: ExcelJS.Workbook,
  { guide, caution, description }: BlankBook,
): Promise<void> {
  const worksheet = workbook.addWorksheet(GUIDE_SHEET, options(description.paper));
  const lines = ['Measurement workbook', ...guide, 'Caution', ...caution];
  lines.forEach((line, place) => {
    const cell = worksheet.getCell(place + 1, 1);
    cell.value = line;
    cell.style = libraryStyle(place === 0 || line === 'Caution' ? 'title' : 'text');
  });
  setWidths(worksheet, [GUIDE_WIDTH]);
  await worksheet.protect('', PROTECTION);
}

function options(paper: 'a4' | 'letter'): Partial<ExcelJS.AddWorksheetOptions> {
  return {
    views: [{ state: 'frozen', ySplit: 1 }],
    pageSetup: {
      paperSize: PAPER[paper] as ExcelJS.PaperSize,
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      // As many pages high as it takes.
      fitToHeight: 0,
      margins: { left: 0.5, right: 0.5, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
    },
    headerFooter: {
      oddHeader: '&L&A&RName and date: ______________________________',
      oddFooter: '&CPage &P of &N',
    },
  };
}

async function addSheet(workbook: ExcelJS.Workbook, sheet: BlankSheet, book: BlankBook): Promise<void> {
  const { description } = book;
  const worksheet = workbook.addWorksheet(sheet.name, options(description.paper));
  worksheet.pageSetup.printTitlesRow = '1:1';
  setWidths(
    worksheet,
    sheet.columns.map(({ width }) => width),
  );
  worksheet.getRow(1).height = HEADER_POINTS;
  sheet.columns.forEach((column, place) => {
    const header = worksheet.getCell(1, place + 1);
    header.value = column.header;
    header.style = { ...libraryStyle('header'), border: BOX };
    sheet.rows.forEach((values, row) => {
      const cell = worksheet.getCell(row + 2, place + 1);
      cell.value = values[place] ?? null;
      cell.style = {
        border: BOX,
        alignment: {
          vertical: 'middle',
          ...(column.kind === 'text' && { horizontal: 'left', wrapText: true }),
        },
        protection: { locked: column.isFixed === true },
      };
      if (!column.isFixed) cell.dataValidation = validationOf(sheet, column, row);
    });
  });
  const width = sheet.columns.reduce((sum, column) => sum + column.width, 0);
  sheet.rows.forEach((_, row) => {
    worksheet.getRow(row + 2).height = ROW_POINTS * Math.max(1, width / PAGE_CHARACTERS);
  });
  await worksheet.protect('', PROTECTION);
}

/** A warning, not a refusal: `1.6536 in` and `42,003` as text are right too. */
function validationOf(sheet: BlankSheet, column: BlankColumn, row: number): ExcelJS.DataValidation {
  const { help, choices } = sheet.name === 'Setup' ? setupChoices(row) : column;
  const shown = {
    allowBlank: true,
    showInputMessage: true,
    promptTitle: column.header.slice(0, 32),
    prompt: help.slice(0, LONGEST_PROMPT),
    showErrorMessage: true,
    errorStyle: 'warning',
    errorTitle: column.header.slice(0, 32),
    error: help.slice(0, LONGEST_PROMPT),
  };
  if (choices) return { ...shown, type: 'list', formulae: [listFormula(choices)] };
  return { ...shown, ...RULE_OF_KIND[sheet.name === 'Setup' ? 'text' : column.kind] };
}

type Rule = Pick<ExcelJS.DataValidation, 'type' | 'operator' | 'formulae'>;

/** Temperatures have no least value that holds in both units. */
const ANY_NUMBER = { operator: 'greaterThan', formulae: [-500] } as const;

const RULE_OF_KIND: Readonly<Record<InputKind, Rule>> = {
  // A text of any length: the rule is there for its help.
  text: { type: 'textLength', operator: 'greaterThanOrEqual', formulae: [0] },
  size: { type: 'decimal', operator: 'greaterThan', formulae: [0] },
  length: { type: 'decimal', operator: 'greaterThanOrEqual', formulae: [-1] },
  mass: { type: 'decimal', operator: 'greaterThan', formulae: [0] },
  number: { type: 'decimal', ...ANY_NUMBER, formulae: [...ANY_NUMBER.formulae] },
  temperature: { type: 'decimal', ...ANY_NUMBER, formulae: [...ANY_NUMBER.formulae] },
  whole: { type: 'whole', operator: 'greaterThanOrEqual', formulae: [1] },
};

function listFormula(choices: NonNullable<BlankColumn['choices']>): string {
  if ('sheet' in choices) {
    const letters = columnLetters(choices.column);
    return `'${choices.sheet}'!$${letters}$2:$${letters}$${choices.rows + 1}`;
  }
  return `"${choices.join(',').replaceAll('"', '""')}"`;
}

async function addDrawings(pkg: OpcPackage, book: BlankBook): Promise<void> {
  const workbook = 'xl/workbook.xml';
  const entries = await listSheets(pkg, workbook, await pkg.tree(workbook));
  for (const [place, sheet] of book.sheets.entries()) {
    const part = entries.find(({ name }) => name === sheet.name)!.part!;
    const drawing = drawingOf(sheet.figure, book.description, book.caution);
    await addDrawing(pkg, part, drawing, { row: sheet.rows.length + 1, column: 0 }, place + 1);
  }
}
