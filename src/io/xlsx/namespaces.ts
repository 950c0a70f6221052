/** Strict packages (ISO 29500-1) and transitional ones (29500-4) name the same elements in other namespaces. */
import type { WorkbookParts } from './workbook-package.js';

const TRANSITIONAL = {
  main: 'http://schemas.openxmlformats.org/spreadsheetml/2006/main',
  relationships: 'http://schemas.openxmlformats.org/officeDocument/2006/relationships',
};
const STRICT = {
  main: 'http://purl.oclc.org/ooxml/spreadsheetml/main',
  relationships: 'http://purl.oclc.org/ooxml/officeDocument/relationships',
};
export type Namespaces = typeof TRANSITIONAL;

/** The namespaces of a user's package: what is added to it must be in the same. */
export async function namespacesOf({ pkg, workbook }: WorkbookParts): Promise<Namespaces> {
  const root = await pkg.tree(workbook);
  return root.attributes.some((a) => a.value === STRICT.main) ? STRICT : TRANSITIONAL;
}
