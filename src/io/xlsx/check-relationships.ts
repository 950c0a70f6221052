/** Refuses a package whose relationships or content types can be read in two ways: two programs would see two books. */
import { CONTENT_TYPES, type OpcPackage, type Relationship } from './opc-package.js';
import { partNameKey, plainNameKey, relationshipsPart } from './part-names.js';
import { attr, childrenOf } from './xml-tree.js';

/** Kinds of parts of which a workbook has one at most (ISO 29500-1, 12.3). */
const ONE_AT_MOST: ReadonlySet<string> = new Set(['styles', 'sharedStrings', 'calcChain', 'sheetMetadata']);

const SHEETS: ReadonlySet<string> = new Set(['worksheet', 'chartsheet', 'dialogsheet', 'xlMacrosheet']);

/** @throws {UserError} where the package names two workbooks, or the workbook an id, a part or a kind of part twice */
export async function refuseDoubledRelationships(pkg: OpcPackage, workbook: string): Promise<void> {
  const workbooks = (await pkg.relationships('')).filter(({ kind }) => kind === 'officeDocument');
  if (workbooks.length > 1) {
    throw pkg.damaged(relationshipsPart(''), 'more than one relationship leads to a workbook');
  }
  const doubled = doubledOf(await pkg.relationships(workbook));
  if (doubled !== undefined) throw pkg.damaged(relationshipsPart(workbook), doubled);
}

/** @throws {UserError} where the content types name a part with two types */
export async function refuseDoubledTypes(pkg: OpcPackage): Promise<void> {
  const types = new Map<string, string>();
  for (const element of childrenOf(await pkg.tree(CONTENT_TYPES), 'Override')) {
    const part = attr(element, 'PartName') ?? '';
    const type = attr(element, 'ContentType') ?? '';
    const other = types.get(plainNameKey(part));
    if (other !== undefined && other !== type) {
      throw pkg.damaged(CONTENT_TYPES, `the part ${part} has two types, ${other} and ${type}`);
    }
    types.set(plainNameKey(part), type);
  }
}

function doubledOf(relationships: readonly Relationship[]): string | undefined {
  const ids = new Set<string>();
  const kinds = new Set<string>();
  /** The parts so far, and whether each is one that is read and written. */
  const parts = new Map<string, boolean>();
  for (const { id, kind, part } of relationships) {
    if (ids.has(id)) return `two relationships have the id ${id}`;
    ids.add(id);
    if (ONE_AT_MOST.has(kind) && kinds.has(kind)) return `two relationships are of the kind ${kind}`;
    kinds.add(kind);
    if (part === undefined) continue;
    const key = partNameKey(part);
    const isRead = ONE_AT_MOST.has(kind) || SHEETS.has(kind);
    const wasRead = parts.get(key);
    if (wasRead !== undefined && (wasRead || isRead)) return `two relationships lead to the part ${part}`;
    parts.set(key, isRead);
  }
  return undefined;
}
