/** How names and headers are matched. */
import type { CellContent } from '../workbook-model.js';

/** Names match without regard to case and outer spaces. */
export function nameKey(name: string): string {
  return name.trim().toLowerCase();
}

/** Sheet names and headers match without regard to case, spaces and punctuation. */
export function headerKey(header: string): string {
  return header
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}#]/gu, '');
}

/** What a cell shows where a name is meant: the number 2 and the text `2` are one name. */
export function nameText(content: CellContent): string | undefined {
  if (content.kind === 'text') return content.value.trim();
  return content.kind === 'number' ? String(content.value) : undefined;
}
