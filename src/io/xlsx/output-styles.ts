/** The formats of output as cell formats of the user's workbook. */
import type { OutputCell, OutputFormat } from '../../engine/workbook-model.js';
import { StyleLists } from './append-styles.js';
import { emptyStyles } from './empty-styles.js';
import { FORMAT_LOOKS } from './formats.js';
import type { Namespaces } from './namespaces.js';
import { partOfKind, type WorkbookParts } from './workbook-package.js';

const STYLES_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml';

/** The cell format of a cell, by its index; a cell that stood there before leaves it the fill that the user gave it. */
export type StyleOf = (cell: OutputCell, before?: number) => number;

export interface OutputStyles {
  readonly styleOf: StyleOf;
  /** Whether a cell format of the user's has a fill. */
  readonly hasFill: (index: number) => boolean;
  /** Writes what cells turned out to need into the package. */
  save(): Promise<void>;
}

const PLAIN: OutputStyles = { styleOf: () => 0, hasFill: () => false, save: async () => {} };

/** Adds to the user's styles what the given formats need, and nothing that is there already. */
export async function addOutputStyles(
  { pkg, workbook }: WorkbookParts,
  formats: ReadonlySet<OutputFormat>,
  namespaces: Namespaces,
): Promise<OutputStyles> {
  if ([...formats].every((format) => format === 'plain')) return PLAIN;
  const part = (await partOfKind(pkg, workbook, 'styles')) ?? (await addStylesPart());
  const lists = new StyleLists(await pkg.text(part));
  const indexOf = lists.indicesOf(formats);
  const fills = new Map<number, number>();
  const fillOf = (index: number) => {
    const fill = fills.get(index) ?? lists.fillOf(index);
    fills.set(index, fill);
    return fill;
  };
  const filled = new Map<string, number>();
  return {
    styleOf: ({ format }, before = 0) => {
      const fill = before === 0 ? 0 : fillOf(before);
      if (fill === 0) return indexOf.get(format) ?? 0;
      if (format === 'plain') return before;
      const key = `${format} ${fill}`;
      const known = filled.get(key) ?? lists.cellFormat(FORMAT_LOOKS[format], fill);
      filled.set(key, known);
      return known;
    },
    hasFill: (index) => index > 0 && fillOf(index) > 0,
    save: () => pkg.setText(part, lists.apply()),
  };

  async function addStylesPart(): Promise<string> {
    const folder = workbook.slice(0, workbook.lastIndexOf('/') + 1);
    // A part of that name to which nothing leads stays as it is.
    let file = 'styles.xml';
    for (let number = 2; pkg.has(`${folder}${file}`); number++) file = `styles${number}.xml`;
    const part = `${folder}${file}`;
    await pkg.replaceText(part, emptyStyles(namespaces.main));
    await pkg.addOverride(part, STYLES_TYPE);
    await pkg.addRelationship(workbook, `${namespaces.relationships}/styles`, file);
    return part;
  }
}
