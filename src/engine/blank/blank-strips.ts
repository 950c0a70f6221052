/** The sheet Fits of a blank workbook, where bearings that are not measured get the reading of a gauge strip. */
import { FITS } from '../input-sheets/fits.js';
import { type BlankColumn, type BlankSheet, blankColumn, blankSheet } from './blank-columns.js';
import type { EngineDescription } from './description.js';

const { engine, fit, position, strip } = FITS.columns;

/** One row a bearing; the parts are filled by place where they are measured too. */
export function stripsSheet({ engines, places }: EngineDescription): BlankSheet {
  const columns: BlankColumn[] = [engine, fit, position, strip].map((column) => blankColumn(column));
  const withStrips = places.filter(({ kind }) => kind.standIn === 'strip');
  const rows = engines.flatMap(({ name }) =>
    withStrips.flatMap(({ asked, positions }) =>
      positions.map((place) => ({
        [engine.header]: name,
        [fit.header]: asked.fit,
        [position.header]: /^\d+$/.test(place) ? Number(place) : place,
      })),
    ),
  );
  return blankSheet(FITS.name, columns, rows);
}
