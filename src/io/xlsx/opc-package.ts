/** A package of parts, relationships and content types (Open Packaging Conventions, ISO 29500-2). */
import { checkedZipDirectory } from '../gate/zip-gate.js';
import { PackageParts } from './package-parts.js';
import { partAddress, partNameKey, plainNameKey, relationshipsPart, resolvePart } from './part-names.js';
import { escapeAttribute, escapeXml } from './xml-text.js';
import { attr, childrenOf, TextEdits } from './xml-tree.js';

export const CONTENT_TYPES = '[Content_Types].xml';

export interface Relationship {
  readonly id: string;
  /** The last step of the type's address, as in `worksheet`: alike in transitional and strict packages. */
  readonly kind: string;
  readonly type: string;
  /** The part it leads to; undefined where it leads out of the package. */
  readonly part: string | undefined;
}

export class OpcPackage extends PackageParts {
  /** @throws {UserError} where the bytes are no zip, a damaged one, or one that would unpack to too much */
  static async open(bytes: Uint8Array, file: string): Promise<OpcPackage> {
    return new OpcPackage(bytes, checkedZipDirectory(bytes, file), file);
  }

  /** Takes a part out, with its relationships and content type. */
  async remove(part: string): Promise<void> {
    for (const each of [part, relationshipsPart(part)]) {
      if (this.drop(each)) await this.removeOverride(each);
    }
  }

  /** The relationships of a part; of the package itself for ''. */
  async relationships(source: string): Promise<Relationship[]> {
    const part = relationshipsPart(source);
    if (!this.has(part)) return [];
    return childrenOf(await this.tree(part), 'Relationship').map((element) => {
      const type = attr(element, 'Type') ?? '';
      const target = attr(element, 'Target') ?? '';
      const isInside = attr(element, 'TargetMode') !== 'External';
      return {
        id: attr(element, 'Id') ?? '',
        type,
        kind: type.slice(type.lastIndexOf('/') + 1),
        part: isInside ? this.nameOf(resolvePart(source, target)) : undefined,
      };
    });
  }

  /** Adds a relationship to a target as written from its source, and returns its new id. */
  async addRelationship(source: string, type: string, target: string): Promise<string> {
    const part = relationshipsPart(source);
    const tree = await this.tree(part);
    const taken = new Set(tree.children.map((c) => attr(c, 'Id')));
    let number = tree.children.length + 1;
    while (taken.has(`rId${number}`)) number++;
    const id = `rId${number}`;
    const edits = new TextEdits(await this.text(part));
    edits.append(
      tree,
      `<${tree.prefix}Relationship Id="${id}" Type="${type}" Target="${escapeXml(target)}"/>`,
    );
    await this.setText(part, edits.apply());
    return id;
  }

  async removeRelationship(source: string, id: string): Promise<void> {
    const part = relationshipsPart(source);
    const edits = new TextEdits(await this.text(part));
    for (const element of (await this.tree(part)).children) {
      if (attr(element, 'Id') === id) edits.replace(element.start, element.end, '');
    }
    await this.setText(part, edits.apply());
  }

  async contentType(part: string): Promise<string | undefined> {
    const types = (await this.tree(CONTENT_TYPES)).children;
    const extension = part.slice(part.lastIndexOf('.') + 1).toLowerCase();
    const overrides = types.filter((t) => t.local === 'Override');
    const found =
      overrides.find((t) => partNameKey(attr(t, 'PartName') ?? '') === partNameKey(part)) ??
      overrides.find((t) => plainNameKey(attr(t, 'PartName') ?? '') === plainNameKey(part)) ??
      types.find((t) => t.local === 'Default' && attr(t, 'Extension')?.toLowerCase() === extension);
    return attr(found, 'ContentType');
  }

  async addOverride(part: string, contentType: string): Promise<void> {
    const tree = await this.tree(CONTENT_TYPES);
    const address = escapeAttribute(partAddress(part));
    const edits = new TextEdits(await this.text(CONTENT_TYPES));
    edits.append(tree, `<${tree.prefix}Override PartName="${address}" ContentType="${contentType}"/>`);
    await this.setText(CONTENT_TYPES, edits.apply());
  }

  private async removeOverride(part: string): Promise<void> {
    const edits = new TextEdits(await this.text(CONTENT_TYPES));
    for (const element of childrenOf(await this.tree(CONTENT_TYPES), 'Override')) {
      if (plainNameKey(attr(element, 'PartName') ?? '') === plainNameKey(part)) {
        edits.replace(element.start, element.end, '');
      }
    }
    await this.setText(CONTENT_TYPES, edits.apply());
  }
}
