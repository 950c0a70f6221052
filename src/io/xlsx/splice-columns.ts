/** Column widths in a user's sheet (ISO 29500-1, 18.3.1.17): ranges of columns are split where one changes. */
import { bodyOf, withAttribute } from './xml-scan.js';
import { attr, childOf, childrenOf, type TextEdits, type XmlElement } from './xml-tree.js';

export interface ColumnWidth {
  /** From 0. */
  readonly column: number;
  readonly characters: number;
}

/** Adds to the edits of a worksheet's text those that give the columns their widths. */
export function spliceColumns(worksheet: XmlElement, edits: TextEdits, widths: readonly ColumnWidth[]): void {
  const wanted = new Map(
    [...widths].sort((a, b) => a.column - b.column).map((w) => [w.column + 1, String(w.characters)]),
  );
  if (wanted.size === 0) return;
  const p = worksheet.prefix;
  const fresh = (column: number, width: string) =>
    `<${p}col min="${column}" max="${column}" width="${width}" customWidth="1"/>`;
  const cols = childOf(worksheet, 'cols');
  const ranges = childrenOf(cols, 'col').map((element) => ({
    element,
    min: Number(attr(element, 'min')),
    max: Number(attr(element, 'max')),
  }));
  let missing = '';
  for (const [column, width] of wanted) {
    if (ranges.some((r) => r.min <= column && column <= r.max)) continue;
    const next = ranges.find((r) => r.min > column);
    if (next) edits.insert(next.element.start, fresh(column, width));
    else missing += fresh(column, width);
  }
  for (const { element, min, max } of ranges) {
    const tag = `${bodyOf(edits.source.slice(element.start, element.openEnd))}/>`;
    const split = splitRange(tag, min, max, wanted);
    if (split !== tag) edits.replace(element.start, element.end, split);
  }
  if (missing === '') return;
  const last = ranges.at(-1);
  if (last) edits.insert(last.element.end, missing);
  else if (cols) edits.append(cols, missing);
  else edits.insert(childOf(worksheet, 'sheetData')!.start, `<${p}cols>${missing}</${p}cols>`);
}

/** One `col` as several: each wanted column by itself with its width, all other attributes kept. */
function splitRange(tag: string, min: number, max: number, wanted: ReadonlyMap<number, string>): string {
  const piece = (from: number, to: number, text: string) =>
    from > to ? '' : withAttribute(withAttribute(text, 'min', String(from)), 'max', String(to));
  let pieces = '';
  let from = min;
  for (const [column, width] of wanted) {
    if (column < min || column > max) continue;
    const one = withAttribute(withAttribute(tag, 'width', width), 'customWidth', '1');
    pieces += piece(from, column - 1, tag) + piece(column, column, one);
    from = column + 1;
  }
  return pieces + piece(from, max, tag);
}

/** The cell format of a column, by its index: cells that are not there have it. */
export function columnStyles(worksheet: XmlElement): (column: number) => number | undefined {
  const ranges = childrenOf(childOf(worksheet, 'cols'), 'col').flatMap((element) => {
    const style = attr(element, 'style');
    return style === undefined
      ? []
      : [{ min: Number(attr(element, 'min')), max: Number(attr(element, 'max')), style: Number(style) }];
  });
  if (ranges.length === 0) return () => undefined;
  return (column) => ranges.find(({ min, max }) => min <= column + 1 && column + 1 <= max)?.style;
}
