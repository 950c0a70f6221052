/** The formats of output as cell formats of the user's workbook. */
import type { OutputCell, OutputFormat } from '../../engine/workbook-model.js';
import { appendStyles } from './append-styles.js';
import { emptyStyles } from './empty-styles.js';
import type { Namespaces } from './namespaces.js';
import { partOfKind, type WorkbookParts } from './workbook-package.js';

const STYLES_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml';

/**
 * Adds to the user's styles what the given formats need, and nothing that is there already.
 *
 * @returns the index of the user's cell format for a cell
 */
export async function addOutputStyles(
  { pkg, workbook }: WorkbookParts,
  formats: ReadonlySet<OutputFormat>,
  namespaces: Namespaces,
): Promise<(cell: OutputCell) => number> {
  if ([...formats].every((format) => format === 'plain')) return () => 0;
  const part = (await partOfKind(pkg, workbook, 'styles')) ?? (await addStylesPart());
  const { xml, indexOf } = appendStyles(await pkg.text(part), formats);
  await pkg.setText(part, xml);
  return ({ format }) => indexOf.get(format) ?? 0;

  async function addStylesPart(): Promise<string> {
    const folder = workbook.slice(0, workbook.lastIndexOf('/') + 1);
    const part = `${folder}styles.xml`;
    await pkg.replaceText(part, emptyStyles(namespaces.main));
    await pkg.addOverride(part, STYLES_TYPE);
    await pkg.addRelationship(workbook, `${namespaces.relationships}/styles`, 'styles.xml');
    return part;
  }
}
