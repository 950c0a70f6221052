/** The shared strings of a workbook (ISO 29500-1, 18.4). */
import { UserError } from '../../engine/user-error.js';
import type { OpcPackage } from './opc-package.js';
import { parsePieces } from './sax.js';
import { decodeCellText } from './xml-text.js';

/**
 * Gathers the text of a string item: that of its runs together, without phonetic hints (`rPh`). The same
 * shape stands in `si` of the shared strings and in `is` of an inline string.
 */
export class StringItem {
  private text = '';
  private isPhonetic = false;
  private isText = false;

  open(local: string): void {
    if (local === 'rPh') this.isPhonetic = true;
    if (local === 't') this.isText = !this.isPhonetic;
  }

  close(local: string): void {
    if (local === 'rPh') this.isPhonetic = false;
    if (local === 't') this.isText = false;
  }

  add(text: string): void {
    if (this.isText) this.text += text;
  }

  take(): string {
    const text = decodeCellText(this.text);
    this.text = '';
    return text;
  }
}

/** Throws a UserError where the part is damaged. */
export async function readSharedStrings(pkg: OpcPackage, part: string | undefined): Promise<string[]> {
  if (part === undefined) return [];
  const strings: string[] = [];
  const item = new StringItem();
  try {
    await parsePieces(pkg.pieces(part), {
      open: (local) => item.open(local),
      close: (local) => {
        item.close(local);
        if (local === 'si') strings.push(item.take());
      },
      text: (text) => item.add(text),
    });
  } catch (error) {
    if (error instanceof UserError) throw error;
    throw pkg.damaged(part, (error as Error).message);
  }
  return strings;
}
