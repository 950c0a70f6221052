/** The formats of output as cell formats of the user's workbook. */
import type { OutputFormat } from '../../engine/workbook-model.js';
import { emptyStyles } from './empty-styles.js';
import { formatStylesXml } from './format-styles.js';
import { FORMATS } from './formats.js';
import { mergeStyles } from './merge-styles.js';
import type { Namespaces } from './output-sheet.js';
import { partOfKind, type WorkbookParts } from './workbook-package.js';

const STYLES_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml';

export interface OutputStyles {
  /** The user's cell format for an output format. */
  readonly ofFormat: (format: OutputFormat) => number;
}

/** Adds to the user's styles what the given formats need, and nothing that is there already. */
export async function addOutputStyles(
  { pkg, workbook }: WorkbookParts,
  formats: ReadonlySet<OutputFormat>,
  namespaces: Namespaces,
): Promise<OutputStyles> {
  const wanted = new Set([...formats].map((format) => FORMATS.indexOf(format)));
  let indexOf: ReadonlyMap<number, number> = new Map();
  if ([...wanted].some((index) => index !== 0)) {
    const part = (await partOfKind(pkg, workbook, 'styles')) ?? (await addStylesPart());
    const merged = mergeStyles(await pkg.text(part), formatStylesXml(), wanted);
    indexOf = merged.indexOf;
    await pkg.setText(part, merged.xml);
  }
  return { ofFormat: (format) => indexOf.get(FORMATS.indexOf(format)) ?? 0 };

  async function addStylesPart(): Promise<string> {
    const folder = workbook.slice(0, workbook.lastIndexOf('/') + 1);
    const part = `${folder}styles.xml`;
    await pkg.replaceText(part, emptyStyles(namespaces.main));
    await pkg.addOverride(part, STYLES_TYPE);
    await pkg.addRelationship(workbook, `${namespaces.relationships}/styles`, 'styles.xml');
    return part;
  }
}
