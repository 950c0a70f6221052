/**
 * Several workbooks as one stock: a book of their rows, each with its quantities as its own book read them, one below
 * the other. The cells of that book are what is written.
 *
 * A part or a crank named alike in two books gets its book's name; rods and shells that ran on such a crank follow it.
 * Gauges and materials that differ under one name get their book's name too. Rows of tables that two books share are
 * kept once. The first Setup among the books rules.
 */
import type { Book, Setup } from '../book/book.js';
import { BySheet } from '../book/by-sheet.js';
import { noKnownSheet } from '../book/find-tables.js';
import { materialLookup } from '../book/materials.js';
import { onlyEngineType, typesOfTables } from '../book/only-engine-type.js';
import type { TableRow } from '../book/read-row.js';
import type { Table } from '../book/table.js';
import { labelsOf } from '../book-labels.js';
import { CLASSES } from '../input-sheets/classes.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import { GAUGE_STUDY } from '../input-sheets/gauge-study.js';
import { GAUGES } from '../input-sheets/gauges.js';
import { inputSheets, partSheets } from '../input-sheets/index.js';
import type { InputSheet } from '../input-sheets/input-sheet.js';
import { LIMITS } from '../input-sheets/limits.js';
import { MATERIALS } from '../input-sheets/materials.js';
import { NEW_SHELLS } from '../input-sheets/new-shells.js';
import { SELECTION } from '../input-sheets/selection.js';
import { SETUP } from '../input-sheets/setup.js';
import { UNDERSIZES } from '../input-sheets/undersizes.js';
import { mergeFasteners, mergeParts, mergeSetup, mergeTable, type StockPlan } from './merged-rows.js';
import { findClashes, type Source } from './name-clashes.js';

/**
 * @param file what messages call the stock
 * @throws UserError where the books have no sheet that is of a stock
 */
export function mergeBooks(books: readonly Book[], file: string): Book {
  const labels = labelsOf(books.map(({ model }) => model.file));
  const sources = books.map((book, place): Source => ({ book, label: labels[place]! }));
  const ruling = sources.find(({ book }) => book.tables.has(SETUP.name)) ?? sources[0]!;
  const stock = stockOf(sources, ruling.book.setup);
  const found = new Map<string, Table>();
  const keep = (name: string, table: Table | undefined) => table && found.set(name, table);
  const table = <Row extends TableRow>(record: InputSheet, rowsOf: (book: Book) => readonly Row[]) => {
    const merged = mergeTable(record, stock, rowsOf);
    keep(record.name, merged.table);
    return merged.rows;
  };

  const { setup, table: setupTable } = mergeSetup(ruling, stock);
  keep(SETUP.name, setupTable);
  const materials = table(MATERIALS, (book) => book.materials);
  const knows = materialLookup(materials);
  const gauges = table(GAUGES, (book) => book.gauges);
  const rows = {
    limits: table(LIMITS, (book) => book.limits),
    materials,
    classes: table(CLASSES, (book) => book.classes),
    selection: table(SELECTION, (book) => book.selection),
    gauges: gauges.map((gauge) => ({ ...gauge, expansion: knows(gauge.material) })),
    newShells: table(NEW_SHELLS, (book) => book.newShells),
    undersizes: table(UNDERSIZES, (book) => book.undersizes),
    studies: table(GAUGE_STUDY, (book) => book.studies),
  };
  const fasteners = mergeFasteners(stock);
  keep(FASTENERS.name, fasteners.table);
  const parts = new BySheet(
    new Map(
      partSheets().flatMap((record) => {
        const merged = mergeParts(record, stock);
        keep(record.name, merged.table);
        return merged.table ? [[record.name, merged.rows] as const] : [];
      }),
    ),
  );
  // Sheets come in the order of the records, in which they are not merged: gauges are of materials.
  const tables = new Map(
    inputSheets().flatMap(({ name }) => (found.has(name) ? [[name, found.get(name)!]] : [])),
  );
  if (tables.size === 0) throw noKnownSheet(file);
  return {
    model: { file, sheets: [...tables.values()].map(({ sheet }) => sheet) },
    setup,
    tables,
    own: new Map(),
    places: new Map(),
    ...rows,
    fasteners: fasteners.rows,
    parts,
    onlyEngineType: stock.onlyEngineType,
    // Fits of the single books do not hold for the stock as a whole.
    fits: undefined,
    keptStrips: [],
    bad: [
      ...setup.bad,
      ...[...Object.values(rows), fasteners.rows, parts.all()].flatMap((list) =>
        list.flatMap(({ bad }) => bad),
      ),
    ],
    notices: [...new Set(books.flatMap(({ notices }) => notices))],
    bareNumbers: [],
  };
}

function stockOf(sources: readonly Source[], ruling: Setup): StockPlan {
  return {
    sources,
    clashes: findClashes(sources),
    units: { length: ruling.lengthUnit, temperature: ruling.temperatureUnit },
    onlyEngineType: onlyEngineType(
      sources.flatMap(({ book }) => book.limits.map(({ engineType }) => engineType)),
      sources.flatMap(({ book }) =>
        typesOfTables(book.tables).map((type) => type || book.onlyEngineType || ''),
      ),
    ),
  };
}
