/** The columns of the sheets about the matched sets: the sets themselves, and where their parts are picked. */
import type { Clearance } from '../../maths/clearance.js';
import { type MatchedSet, setsToMake } from '../assess/matched-sets.js';
import { type PickedPart, pickList } from '../assess/pick-list.js';
import type { Book } from '../book/book.js';
import { type TypedName, typedName } from '../book/typed-name.js';
import { type FitSlot, slotHeader } from '../input-sheets/fits.js';
import { liveSum } from './fit-columns.js';
import type { Layout } from './layout.js';
import { unlessMoved } from './live-terms.js';
import type { ResultColumn } from './result-column.js';
import type { ResultTable } from './result-table.js';

type SetColumn = ResultColumn<MatchedSet>;

const slot = (own: FitSlot, help: string): SetColumn => ({
  header: slotHeader(own),
  quantity: 'name',
  width: 12,
  json: own,
  help,
  page: 'chosen',
  value: (set, { book }) => slotName(set, own, book),
});

/** A part as its row has it typed; one that is bought has no row. */
function slotName({ parts, names }: MatchedSet, own: FitSlot, book: Book): TypedName | undefined {
  const part = parts[own];
  return part ? typedName(book, part.row, 'Part', names[own]) : names[own] || undefined;
}

const LENGTH = { quantity: 'length', width: 12, page: 'measured' } as const;

/** Live where every part stands in the book: a bought shell has no cell. */
const clearance = (header: string, key: keyof Clearance, help: string): SetColumn => ({
  ...LENGTH,
  header,
  json: key,
  help,
  value: (set) => set.clearance[key],
  live: ({ kind, parts }, layout) => liveSum(kind, parts, key, layout),
});

const engineOf = ({ journal, engine }: MatchedSet, book: Book) =>
  typedName(book, journal.row, 'Engine', engine);
const positionOf = ({ journal, position }: MatchedSet, book: Book) =>
  typedName(book, journal.row, 'Position', position);

/** The verdict of the run, as long as the parts stand where they stood: the sizes of the set follow their rows. */
function liveStatus({ parts, status }: MatchedSet, layout: Layout): string | undefined {
  const conditions = Object.values(parts).map((part) => part && layout.isPart(part, false));
  const isAsked = conditions.some((condition) => condition !== undefined);
  return isAsked ? unlessMoved(conditions, `"${status}"`) : undefined;
}

export const MATCHED_SETS: ResultTable<MatchedSet> = {
  name: 'Matched sets',
  rowName: 'Position',
  rows: ({ sets }) => sets,
  columns: [
    {
      header: 'Engine',
      quantity: 'name',
      width: 12,
      json: 'engine',
      help: 'The engine whose journal is filled.',
      value: (set, { book }) => engineOf(set, book),
    },
    {
      header: 'Fit',
      quantity: 'name',
      width: 10,
      json: 'fit',
      help: 'The fit of the journal.',
      page: 'every',
      value: ({ fit }) => fit,
    },
    {
      header: 'Position',
      quantity: 'name',
      width: 10,
      json: 'position',
      help: 'Its place along the crank.',
      page: 'every',
      value: (set, { book }) => positionOf(set, book),
    },
    slot('journal', 'The journal.'),
    slot('bore', 'The rod chosen for it, or the case that it sits in.'),
    slot(
      'upper',
      'The upper half-shell; `new MARK` is one to buy; blank: it is in the bore, and no row names it.',
    ),
    slot(
      'lower',
      'The lower half-shell; `new MARK` is one to buy; blank: it is in the bore, and no row names it.',
    ),
    clearance(
      'Clearance',
      'clearance',
      'Bore less both walls less journal, all as means; of a bore with its shells in without the walls.',
    ),
    clearance('Tightest', 'tightest', 'From the smallest bore, the largest walls and journal.'),
    clearance('Loosest', 'loosest', 'From the largest bore, the smallest walls and journal.'),
    {
      ...LENGTH,
      header: 'Clearance U',
      json: 'clearanceU',
      help: 'Twice the standard uncertainty of the clearance; blank without a gauge.',
      value: ({ clearanceU }) => clearanceU,
    },
    {
      ...LENGTH,
      header: 'Off aim',
      json: 'offAim',
      help: 'Clearance less aim.',
      value: ({ offAim }) => offAim,
    },
    {
      header: 'Status',
      quantity: 'word',
      width: 16,
      json: 'status',
      help: 'The verdict of the fit that these parts make.',
      page: 'measured',
      value: ({ status }) => status,
      live: liveStatus,
    },
    {
      header: 'Ran together',
      quantity: 'yes or no',
      width: 13,
      json: 'ranTogether',
      help: 'Whether bore and both shells ran on that journal.',
      page: 'chosen',
      value: ({ found }) => found.ranTogether,
    },
  ],
};

export const PICK_LIST: ResultTable<PickedPart> = {
  name: 'Pick list',
  rowName: 'Part',
  rows: ({ sets, matching }) => pickList(setsToMake(sets, matching)),
  columns: [
    {
      header: 'Bin',
      quantity: 'name',
      width: 12,
      help: 'Where the part lies.',
      page: 'every',
      value: ({ part }) => part.row.bin ?? '',
    },
    {
      header: 'Part',
      quantity: 'name',
      width: 14,
      help: 'The part.',
      page: 'every',
      value: ({ part: { row } }, { book }) => typedName(book, row, 'Part', row.name),
    },
    {
      header: 'Kind',
      quantity: 'word',
      width: 16,
      help: 'What it is in its set.',
      page: 'every',
      value: ({ kind }) => kind,
    },
    {
      header: 'For engine',
      quantity: 'name',
      width: 14,
      help: 'The engine that it is picked for.',
      value: ({ set }, { book }) => engineOf(set, book),
    },
    {
      header: 'Fit',
      quantity: 'name',
      width: 10,
      help: 'The fit that it is picked for.',
      page: 'every',
      value: ({ set }) => set.fit,
    },
    {
      header: 'Position',
      quantity: 'name',
      width: 12,
      help: 'The place along the crank.',
      page: 'every',
      value: ({ set }, { book }) => positionOf(set, book),
    },
  ],
};
