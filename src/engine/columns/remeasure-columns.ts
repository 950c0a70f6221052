/** The columns of Re-measure. */
import type { Remeasure } from '../assess/remeasure-words.js';
import type { ResultTable } from './result-table.js';

export const REMEASURE: ResultTable<Remeasure> = {
  name: 'Re-measure',
  rowName: 'Part',
  rows: ({ remeasure }) => remeasure,
  columns: [
    {
      header: 'Sheet',
      quantity: 'word',
      width: 12,
      json: 'sheet',
      help: 'The sheet of the part.',
      page: 'every',
      value: ({ sheet }) => sheet,
    },
    {
      header: 'Part',
      quantity: 'name',
      width: 14,
      json: 'part',
      help: 'The part, or the parts that the same holds for.',
      page: 'every',
      value: ({ parts }) => parts.join(', '),
    },
    {
      header: 'Spot',
      quantity: 'word',
      width: 12,
      json: 'spot',
      help: 'The headers of its readings to take again, or `all`.',
      page: 'every',
      value: ({ spot }) => spot,
    },
    {
      header: 'Why',
      quantity: 'sentence',
      width: 70,
      json: 'why',
      help: 'What is wrong or open, how often to read, and with which gauge.',
      page: 'every',
      value: ({ why }) => why,
    },
  ],
};
