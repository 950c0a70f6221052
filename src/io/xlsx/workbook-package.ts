/** Finds the workbook, its sheets and its other parts in a package, by relationships and content types. */
import { UserError } from '../../engine/user-error.js';
import { refuseForeign } from '../gate/foreign-files.js';
import { LIMITS } from '../gate/limits.js';
import { refuseDoubledRelationships, refuseDoubledTypes } from './check-relationships.js';
import { OpcPackage } from './opc-package.js';
import { partNameKey } from './part-names.js';
import { attr, childOf, childrenOf, type XmlElement } from './xml-tree.js';

export interface SheetEntry {
  readonly name: string;
  readonly sheetId: number;
  readonly relationshipId: string;
  /** Undefined where the relationship is missing. */
  readonly part: string | undefined;
  /** The last step of the relationship's type, such as `worksheet` or `chartsheet`; undefined where it is missing. */
  readonly kind: string | undefined;
  /** False for chart sheets, dialogs and macro sheets. */
  readonly isWorksheet: boolean;
  readonly isHidden: boolean;
  readonly element: XmlElement;
}

export interface WorkbookParts {
  readonly pkg: OpcPackage;
  /** The workbook part's name. */
  readonly workbook: string;
  readonly usesDate1904: boolean;
  /** In the order of the tabs. */
  readonly sheets: readonly SheetEntry[];
}

/**
 * Opens a workbook's package.
 *
 * Throws a UserError that says what the file is instead: not a zip, an old or encrypted workbook, an
 * OpenDocument or binary one, some other package, or a damaged one.
 */
export async function openWorkbook(bytes: Uint8Array, file: string): Promise<WorkbookParts> {
  refuseForeign(bytes, file);
  const pkg = await OpcPackage.open(bytes, file);
  const workbook = await findWorkbook(pkg);
  const tree = await pkg.tree(workbook);
  await refuseDoubledTypes(pkg);
  const sheets = checkedSheets(pkg, workbook, await listSheets(pkg, workbook, tree));
  await refuseDoubledRelationships(pkg, workbook);
  return {
    pkg,
    workbook,
    usesDate1904: ['1', 'true'].includes(attr(childOf(tree, 'workbookPr'), 'date1904') ?? ''),
    sheets,
  };
}

/** Two sheets of one name cannot be told apart, and what is written into one of two of one part changes both. */
function checkedSheets(
  pkg: OpcPackage,
  workbook: string,
  sheets: readonly SheetEntry[],
): readonly SheetEntry[] {
  if (sheets.length > LIMITS.sheets) {
    throw new UserError(
      `${pkg.file}: found ${sheets.length} sheets; expected at most ${LIMITS.sheets}. Split the book and run again.`,
    );
  }
  const taken = new Set<string>();
  for (const { name, part } of sheets) {
    if (part !== undefined && partNameKey(part) === partNameKey(workbook)) {
      throw pkg.damaged(workbook, `the sheet ${name} leads to the workbook itself`);
    }
    for (const key of [
      `name ${name.toLowerCase()}`,
      ...(part === undefined ? [] : [`part ${part.toLowerCase()}`]),
    ]) {
      if (taken.has(key)) {
        throw pkg.damaged(
          workbook,
          `two sheets have the ${key.startsWith('name') ? `name ${name}` : `part ${part}`}`,
        );
      }
      taken.add(key);
    }
  }
  return sheets;
}

export async function listSheets(pkg: OpcPackage, workbook: string, tree: XmlElement): Promise<SheetEntry[]> {
  const relationships = new Map((await pkg.relationships(workbook)).map((r) => [r.id, r]));
  return childrenOf(childOf(tree, 'sheets'), 'sheet').map((element) => {
    const relationshipId = attr(element, ':id') ?? '';
    const relationship = relationships.get(relationshipId);
    return {
      name: attr(element, 'name') ?? '',
      sheetId: Number(attr(element, 'sheetId')),
      relationshipId,
      part: relationship?.part,
      kind: relationship?.kind,
      isWorksheet: relationship?.kind === 'worksheet',
      isHidden: (attr(element, 'state') ?? 'visible') !== 'visible',
      element,
    };
  });
}

/** The part that the workbook refers to by a relationship of a kind, such as `styles`. */
export async function partOfKind(
  pkg: OpcPackage,
  workbook: string,
  kind: string,
): Promise<string | undefined> {
  const found = (await pkg.relationships(workbook)).find((r) => r.kind === kind);
  return found?.part !== undefined && pkg.has(found.part) ? found.part : undefined;
}

async function findWorkbook(pkg: OpcPackage): Promise<string> {
  if (!pkg.has('[Content_Types].xml')) {
    const isOpenDocument = pkg.has('mimetype') && (await pkg.text('mimetype')).includes('opendocument');
    throw new UserError(
      isOpenDocument
        ? `${pkg.file}: this is an OpenDocument file (.ods). Open it in the spreadsheet program and save it as .xlsx.`
        : `${pkg.file}: this is a zip file, but it holds no workbook. An .xlsx workbook was expected.`,
    );
  }
  const main = (await pkg.relationships('')).find((r) => r.kind === 'officeDocument')?.part;
  const candidates = main !== undefined && pkg.has(main) ? [main] : pkg.parts();
  for (const part of candidates) {
    const type = (await pkg.contentType(part)) ?? '';
    if (type.includes('ms-excel.sheet.binary')) {
      throw new UserError(
        `${pkg.file}: this is a binary workbook (.xlsb). Open it in the spreadsheet program and save it as .xlsx.`,
      );
    }
    // Workbooks, templates and their macro variants: …sheet.main+xml, …sheet.macroEnabled.main+xml, and so on.
    if (/(spreadsheetml|ms-excel)\.(sheet|template|addin)\.(macroEnabled\.)?main\+xml$/i.test(type))
      return part;
  }
  throw new UserError(
    `${pkg.file}: this is a package without a workbook part, perhaps a text document. An .xlsx workbook was expected.`,
  );
}
