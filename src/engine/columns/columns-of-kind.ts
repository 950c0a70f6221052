/** The result columns of the fits of a kind, on Fits or beside what was measured as a whole. */
import type { FitResult } from '../assess/fit.js';
import { isOnFits, type KindOfFit } from '../kinds/kind-of-fit.js';
import { fitColumns } from './fit-columns.js';
import { GAP_COLUMNS } from './gap-columns.js';
import type { ResultColumn } from './result-column.js';
import { RUN_OUT_COLUMNS } from './run-out-columns.js';

export function columnsOfKind(kind: KindOfFit): readonly ResultColumn<FitResult>[] {
  if (isOnFits(kind)) return fitColumns(kind);
  return kind.strategy === 'dial' ? RUN_OUT_COLUMNS : GAP_COLUMNS;
}
