/** `oilgap sheet`: a blank measurement workbook for an engine. */
import { extname } from 'node:path';
import { blankBook } from '../engine/blank/blank-book.js';
import { boltsToMeasure } from '../engine/blank/blank-fasteners.js';
import { describeEngine } from '../engine/blank/describe-engine.js';
import { anglesNearParting } from '../engine/blank/description.js';
import { type DescriptionTexts, standardTexts } from '../engine/blank/description-items.js';
import { FASTENERS } from '../engine/input-sheets/fasteners.js';
import { UserError } from '../engine/user-error.js';
import { refuseExistingFile, writeNewFile } from '../io/new-file.js';
import { blankPackage } from '../io/xlsx/blank-package.js';
import { EXIT, print, say } from './messages.js';

export type SheetOptions = Readonly<Record<string, string>> & { readonly out: string };

/** Asks for the engine on a terminal where no option describes it. */
export async function sheet({ out, ...given }: SheetOptions): Promise<number> {
  if (extname(out).toLowerCase() !== '.xlsx') {
    throw new UserError(
      `${out}: found no name of an .xlsx file; expected one such as engine.xlsx; change --out.`,
    );
  }
  // Refused before the first question: a user who answered them all would have lost the answers.
  await refuseExistingFile(out);
  const standards: DescriptionTexts = { ...standardTexts(), ...given };
  const isAsking = Object.keys(given).length === 0 && process.stdin.isTTY && process.stderr.isTTY;
  const texts = isAsking ? await (await import('./sheet-questions.js')).askForEngine(standards) : standards;
  const description = describeEngine(texts);
  for (const angle of anglesNearParting(description)) {
    say(
      `--bore-angles: found ${angle}, which lies near the parting line at 90; expected directions at least 20° from it; ` +
        'the step between the halves is read there: choose another angle unless you mean it.',
    );
  }
  const book = blankBook(description);
  await writeNewFile(out, await blankPackage(book));
  const counts = book.sheets.filter(({ figure }) => figure).map(({ name, rows }) => `${name} ${rows.length}`);
  const bolts = boltsToMeasure(description);
  if (bolts > 0) counts.push(`${FASTENERS.name} ${bolts}`);
  if (counts.length === 0) print(`${out}\n  next: oilgap check ${out}`);
  else print(`${out}\n  rows to measure: ${counts.join(', ')}\n  next: oilgap bench ${out}`);
  return EXIT.good;
}
