/** `--take-repeatability`: what Gauge study found goes into Gauges before anything is computed. */
import { takenRepeatability } from '../engine/assess/taken-repeatability.js';
import { readBook } from '../engine/run-book.js';
import type { WorkbookModel } from '../engine/workbook-model.js';
import { fillCells } from '../io/xlsx/fill-cells.js';
import { readWorkbookPackage } from '../io/xlsx/read-package.js';
import { say } from './messages.js';

export interface BookBytes {
  readonly model: WorkbookModel;
  readonly bytes: Uint8Array;
}

export async function withRepeatability({ model, bytes }: BookBytes): Promise<BookBytes> {
  const { file } = model;
  const { fills, sentences } = takenRepeatability(readBook(model));
  const filled = await fillCells(bytes, fills, file);
  for (const sentence of sentences) say(sentence);
  for (const { sheet, reason } of filled.refused) say(`${file}: sheet ${sheet}: ${reason}`);
  return { model: { ...(await readWorkbookPackage(filled.bytes, file)), file }, bytes: filled.bytes };
}
