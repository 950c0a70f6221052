import { expect, test } from 'vitest';
import type { OutputCell, OutputSheet } from '../../../src/engine/workbook-model.js';
import { worksheetTexts } from '../../../src/io/xlsx/worksheet-xml.js';
import { readTree } from '../../../src/io/xlsx/xml-tree.js';
import { outputSheet } from './sample-edits.js';

const NAMESPACES = { main: 'urn:main', relationships: 'urn:relationships' };
const STYLES = ['plain', 'text', 'header', 'name', 'mm', 'in', 'whole', 'chance', 'title'];
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="urn:main">';

function context(formulas: string[] = []) {
  return {
    styleOf: ({ format }: OutputCell) => STYLES.indexOf(format),
    namespaces: NAMESPACES,
    onFormula: (address: string) => formulas.push(address),
  };
}

function textOf(sheet: OutputSheet): string {
  return [...worksheetTexts(sheet, context())].join('');
}

/** A sheet without header rows, widths and orientation of its own. */
function sheetOf(rows: OutputSheet['rows']): OutputSheet {
  return { name: 'A', rows, widths: [], headerRows: 0, landscape: false };
}

test('a sheet is a worksheet part with its elements in the order that the standard asks for', () => {
  // CT_Worksheet, ISO 29500-1, A.2.
  const order = [
    'sheetPr',
    'dimension',
    'sheetViews',
    'sheetFormatPr',
    'cols',
    'sheetData',
    'pageMargins',
    'pageSetup',
  ];
  expect(readTree(textOf(outputSheet('A'))).children.map(({ local }) => local)).toEqual(order);
});

test('the whole text of a small sheet', () => {
  const sheet: OutputSheet = {
    name: 'A',
    rows: [
      [
        { value: 'Clearance U', format: 'header' },
        { value: 'Why', format: 'header' },
      ],
      [{ value: 0.04125, format: 'mm' }, undefined, { value: 'a & b ', format: 'plain' }],
    ],
    widths: [9, 50],
    headerRows: 1,
    landscape: true,
  };
  expect(textOf(sheet)).toBe(
    `${HEAD}<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr><dimension ref="A1:C2"/>` +
      '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/><selection pane="bottomLeft"/></sheetView></sheetViews>' +
      '<sheetFormatPr defaultRowHeight="15"/>' +
      '<cols><col min="1" max="1" width="9" customWidth="1"/><col min="2" max="2" width="50" customWidth="1"/></cols>' +
      '<sheetData><row r="1" ht="30" customHeight="1"><c r="A1" s="2" t="inlineStr"><is><t>Clearance U</t></is></c><c r="B1" s="2" t="inlineStr"><is><t>Why</t></is></c></row>' +
      '<row r="2"><c r="A2" s="4"><v>0.04125</v></c><c r="C2" t="inlineStr"><is><t xml:space="preserve">a &amp; b </t></is></c></row></sheetData>' +
      '<pageMargins left="0.4" right="0.4" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>' +
      '<pageSetup orientation="landscape" fitToWidth="1" fitToHeight="0"/></worksheet>',
  );
});

test('what a sheet does not have is left out', () => {
  expect(textOf(sheetOf([]))).toBe(
    `${HEAD}<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr><sheetViews><sheetView workbookViewId="0"/></sheetViews>` +
      '<sheetFormatPr defaultRowHeight="15"/><sheetData></sheetData>' +
      '<pageMargins left="0.4" right="0.4" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>' +
      '<pageSetup orientation="portrait" fitToWidth="1" fitToHeight="0"/></worksheet>',
  );
});

test.each<[string, OutputCell | undefined, string]>([
  ['no cell', undefined, ''],
  ['a blank text', { value: '', format: 'plain' }, ''],
  ['a blank text with a look', { value: '', format: 'header' }, '<c r="A1" s="2"/>'],
  [
    'a blank result of a formula',
    { value: '', format: 'plain', formula: '""' },
    '<c r="A1" t="str"><f>&quot;&quot;</f><v></v></c>',
  ],
])('%s', (_, cell, text) => {
  expect(textOf(sheetOf([[cell]]))).toContain(`<sheetData>${text && `<row r="1">${text}</row>`}</sheetData>`);
});

test('every formula is told with its address', () => {
  const formulas: string[] = [];
  for (const _ of worksheetTexts(outputSheet('A'), context(formulas)));
  expect(formulas).toEqual(['C3', 'D3', 'F3']);
});

test('rows are made one by one, when they are asked for', () => {
  let made = 0;
  const rows = {
    *[Symbol.iterator]() {
      for (;;) yield [{ value: ++made, format: 'whole' as const }];
    },
  };
  const texts = worksheetTexts(sheetOf(rows), context());
  // Their number is not known yet.
  expect(texts.next().value).not.toContain('dimension');
  expect(made).toBe(0);
  expect(texts.next().value).toBe('<row r="1"><c r="A1" s="6"><v>1</v></c></row>');
  expect(texts.next().value).toBe('<row r="2"><c r="A2" s="6"><v>2</v></c></row>');
  expect(made).toBe(2);
});

test('a number that no cell can hold is refused', () => {
  expect(() => textOf(sheetOf([[{ value: Number.NaN, format: 'mm' }]]))).toThrow(RangeError);
});
