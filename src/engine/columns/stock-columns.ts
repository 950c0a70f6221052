/** The columns of the sheets about the rest of the stock: what has no set, what is to be bought, what is left. */
import type { LeftPart } from '../assess/left-over.js';
import type { Bought } from '../assess/to-buy.js';
import { typedName } from '../book/typed-name.js';
import { type UnmatchedRow, unmatchedRows } from '../words/not-matched.js';
import { leftWords } from '../words/stock-words.js';
import type { ResultTable } from './result-table.js';

export const NOT_MATCHED: ResultTable<UnmatchedRow> = {
  name: 'Not matched',
  rowName: 'Position',
  rows: unmatchedRows,
  columns: [
    {
      header: 'Engine',
      quantity: 'name',
      width: 12,
      json: 'engine',
      help: 'The engine of the journal.',
      page: 'every',
      value: ({ journal: { row } }, { book }) => typedName(book, row, 'Engine', row.engine),
    },
    {
      header: 'Fit',
      quantity: 'name',
      width: 10,
      json: 'fit',
      help: 'Its fit.',
      page: 'every',
      value: ({ journal }) => journal.row.fit,
    },
    {
      header: 'Position',
      quantity: 'name',
      width: 10,
      json: 'position',
      help: 'Its place along the crank.',
      page: 'every',
      value: ({ journal: { row } }, { book }) => typedName(book, row, 'Position', row.position),
    },
    {
      header: 'Journal',
      quantity: 'name',
      width: 14,
      json: 'journal',
      help: 'The journal.',
      page: 'every',
      value: ({ journal: { row } }, { book }) => typedName(book, row, 'Part', row.name),
    },
    {
      header: 'Why',
      quantity: 'sentence',
      width: 90,
      json: 'why',
      help: 'Why it has no set, and what would fill it.',
      page: 'every',
      value: ({ why }) => why,
    },
  ],
};

export const TO_BUY: ResultTable<Bought> = {
  name: 'To buy',
  rowName: 'Mark',
  rows: ({ toBuy }) => toBuy,
  columns: [
    {
      header: 'Engine type',
      quantity: 'name',
      width: 14,
      json: 'engineType',
      help: 'The engine type that they are for.',
      page: 'every',
      value: ({ engineType }) => engineType,
    },
    {
      header: 'Fit',
      quantity: 'name',
      width: 10,
      json: 'fit',
      help: 'The fit that they are for; of a fastener its Group.',
      page: 'every',
      value: ({ fit }) => fit,
    },
    {
      header: 'Half',
      quantity: 'word',
      width: 10,
      json: 'half',
      help: '`upper`, `lower`, `either`, `pair` of one sold as a pair; `fastener` where it is one.',
      page: 'every',
      value: ({ half }) => half,
    },
    {
      header: 'Mark',
      quantity: 'name',
      width: 10,
      json: 'mark',
      help: 'Their mark in New shells; of a fastener its Thread and Length.',
      page: 'every',
      value: ({ mark }) => mark,
    },
    {
      header: 'Quantity',
      quantity: 'count',
      width: 10,
      json: 'quantity',
      help: 'How many are needed.',
      page: 'every',
      value: ({ quantity }) => quantity,
    },
    {
      header: 'Price',
      quantity: 'price',
      width: 10,
      json: 'price',
      help: 'The price of one, or of one pair; blank where it is not known.',
      page: 'every',
      value: ({ price }) => price,
    },
    {
      header: 'Price in all',
      quantity: 'price',
      width: 12,
      help: 'The price of all of them; blank where it is not known.',
      page: 'every',
      value: ({ priceInAll }) => priceInAll,
    },
    {
      header: 'For',
      quantity: 'sentence',
      width: 50,
      help: 'The places that they go to.',
      page: 'every',
      value: ({ places }) => places.join(', '),
    },
  ],
};

export const LEFT_OVER: ResultTable<LeftPart> = {
  name: 'Left over',
  rowName: 'Part',
  rows: ({ leftOver }) => leftOver,
  columns: [
    {
      header: 'Part',
      quantity: 'name',
      width: 14,
      json: 'part',
      help: 'A rod or a row of shells.',
      page: 'every',
      value: ({ part: { row } }, { book }) => typedName(book, row, 'Part', row.name),
    },
    {
      header: 'Kind',
      quantity: 'word',
      width: 30,
      json: 'kind',
      help: 'What it is; of a row with a Quantity, how many no set takes.',
      page: 'every',
      value: leftWords,
    },
    {
      header: 'Bin',
      quantity: 'name',
      width: 12,
      json: 'bin',
      help: 'Where it lies.',
      page: 'every',
      value: ({ part }) => part.row.bin ?? '',
    },
  ],
};
