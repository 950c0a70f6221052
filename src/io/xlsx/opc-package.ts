/**
 * A zip package of parts, relationships and content types (Open Packaging Conventions, ISO 29500-2). Parts
 * that are not set stay as the very bytes they were, in their place in the zip.
 */
import { inflateRawSync } from 'node:zlib';
import { UserError } from '../../engine/user-error.js';
import { packedData, unpackEntry, type ZipEntry } from '../gate/zip-directory.js';
import { checkedZipDirectory } from '../gate/zip-gate.js';
import { encodingOfEntry, type PackedPart, packBytes, unpackedTexts } from './packed-part.js';
import { decodeXmlBytes, encodeXmlBytes, escapeXml, type XmlEncoding } from './xml-text.js';
import { attr, childrenOf, readTree, TextEdits, type XmlElement } from './xml-tree.js';
import { zipPieces } from './zip-writer.js';

/**
 * New and changed entries all bear the first date a zip can hold, 1 January 1980, so that one edit gives one file.
 */
const NEW_ENTRY = { time: ((1 << 5) | 1) << 16, isUtf8: true, version: 20, madeBy: 20, attributes: 0 };

const CONTENT_TYPES = '[Content_Types].xml';

export interface Relationship {
  readonly id: string;
  /** The last step of the type's address, as in `worksheet`: alike in transitional and strict packages. */
  readonly kind: string;
  readonly type: string;
  /** The part it leads to; undefined where it leads out of the package. */
  readonly part: string | undefined;
}

/** A part: as it came, or as it was set. */
interface Part {
  readonly name: string;
  readonly entry?: ZipEntry;
  readonly packed?: PackedPart;
}

/** Larger texts are unpacked anew each time rather than kept. */
const KEPT_CHARACTERS = 2_000_000;

export class OpcPackage {
  /** In the order of the zip. Part names compare without regard to case. */
  private readonly entries = new Map<string, Part>();
  private readonly texts = new Map<string, { text: string; encoding: XmlEncoding }>();

  private constructor(
    private readonly bytes: Uint8Array,
    directory: readonly ZipEntry[],
    readonly file: string,
  ) {
    for (const entry of directory) this.entries.set(partKey(entry.name), { name: entry.name, entry });
  }

  /** Throws a UserError where the bytes are no zip, a damaged one, or one that would unpack to too much. */
  static async open(bytes: Uint8Array, file: string): Promise<OpcPackage> {
    return new OpcPackage(bytes, checkedZipDirectory(bytes, file), file);
  }

  has(part: string): boolean {
    return this.entries.has(partKey(part));
  }

  parts(): string[] {
    return Array.from(this.entries.values(), ({ name }) => name).filter((name) => !name.endsWith('/'));
  }

  /** Throws a UserError where the part is missing or is no text. */
  async text(part: string): Promise<string> {
    return this.decoded(part).text;
  }

  /** Throws a UserError where the part is missing or cannot be unpacked. */
  async encodingOf(part: string): Promise<XmlEncoding> {
    const { entry, packed } = this.found(part);
    if (packed || this.texts.has(partKey(part))) return this.decoded(part).encoding;
    try {
      return await encodingOfEntry(this.bytes, entry!);
    } catch {
      throw this.damaged(part, 'its data cannot be unpacked');
    }
  }

  private decoded(part: string): { text: string; encoding: XmlEncoding } {
    const key = partKey(part);
    const known = this.texts.get(key);
    if (known) return known;
    let bytes: Uint8Array;
    const { entry, packed } = this.found(part);
    try {
      bytes = packed ? inflateRawSync(Buffer.concat(packed.data)) : unpackEntry(this.bytes, entry!);
    } catch {
      throw this.damaged(part, 'its data cannot be unpacked');
    }
    try {
      const decoded = decodeXmlBytes(bytes);
      if (decoded.text.length <= KEPT_CHARACTERS) this.texts.set(key, decoded);
      return decoded;
    } catch {
      throw this.damaged(part, 'it is neither UTF-8 nor UTF-16 text');
    }
  }

  /**
   * The text of a part, which may be a large one, in pieces that end behind a `>`.
   *
   * Throws a UserError where the part is missing or is no text.
   */
  async *pieces(part: string): AsyncGenerator<string> {
    const { entry, packed } = this.found(part);
    if (packed || this.texts.has(partKey(part))) {
      yield await this.text(part);
      return;
    }
    try {
      yield* unpackedTexts(this.bytes, entry!);
    } catch (error) {
      throw this.damaged(
        part,
        error instanceof TypeError ? 'it is neither UTF-8 nor UTF-16 text' : 'its data cannot be unpacked',
      );
    }
  }

  private found(part: string): Part {
    const found = this.entries.get(partKey(part));
    if (!found || found.name.endsWith('/')) throw this.damaged(part, 'it is missing');
    return found;
  }

  /** The tree of a part; a text that is no XML is the user's damaged file. */
  async tree(part: string, leaves?: ReadonlySet<string>): Promise<XmlElement> {
    const xml = await this.text(part);
    try {
      return readTree(xml, leaves);
    } catch (error) {
      throw this.damaged(part, error instanceof Error ? error.message : String(error));
    }
  }

  damaged(part: string, what: string): UserError {
    return new UserError(
      `${this.file}: the workbook is damaged: in its part ${part}, ${what}. Open it in the spreadsheet program, let it repair the file, save it as .xlsx and run again.`,
    );
  }

  /** Sets a part's text; where nothing changes, the entry stays as it is. A new part goes to the end. */
  async setText(part: string, text: string): Promise<void> {
    const isKnown = this.has(part);
    if (isKnown && (await this.text(part)) === text) return;
    this.write(part, text, this.texts.get(partKey(part))?.encoding ?? 'utf-8');
  }

  /** Sets a part to a text that has nothing of the old one, not even its encoding. */
  async replaceText(part: string, text: string): Promise<void> {
    if (this.has(part)) {
      const old = await this.text(part);
      if (old === text && this.texts.get(partKey(part))?.encoding === 'utf-8') return;
    }
    this.write(part, text, 'utf-8');
  }

  private write(part: string, text: string, encoding: XmlEncoding): void {
    this.setPacked(part, packBytes(encodeXmlBytes(text, encoding)));
    this.texts.set(partKey(part), { text, encoding });
  }

  /** Sets a part that is packed already. A new part goes to the end. */
  setPacked(part: string, packed: PackedPart): void {
    const key = partKey(part);
    this.texts.delete(key);
    this.entries.set(key, { name: this.entries.get(key)?.name ?? part, packed });
  }

  /** Takes a part out, with its relationships and content type. */
  async remove(part: string): Promise<void> {
    for (const each of [part, relationshipsPart(part)]) {
      if (!this.entries.delete(partKey(each))) continue;
      this.texts.delete(partKey(each));
      await this.removeOverride(each);
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
        part: isInside ? resolvePart(source, target) : undefined,
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
    const found =
      types.find((t) => t.local === 'Override' && partKey(attr(t, 'PartName') ?? '') === partKey(part)) ??
      types.find((t) => t.local === 'Default' && attr(t, 'Extension')?.toLowerCase() === extension);
    return attr(found, 'ContentType');
  }

  async addOverride(part: string, contentType: string): Promise<void> {
    const tree = await this.tree(CONTENT_TYPES);
    const edits = new TextEdits(await this.text(CONTENT_TYPES));
    edits.append(tree, `<${tree.prefix}Override PartName="/${part}" ContentType="${contentType}"/>`);
    await this.setText(CONTENT_TYPES, edits.apply());
  }

  private async removeOverride(part: string): Promise<void> {
    const edits = new TextEdits(await this.text(CONTENT_TYPES));
    for (const element of childrenOf(await this.tree(CONTENT_TYPES), 'Override')) {
      if (partKey(attr(element, 'PartName') ?? '') === partKey(part)) {
        edits.replace(element.start, element.end, '');
      }
    }
    await this.setText(CONTENT_TYPES, edits.apply());
  }

  /** The zip; with all dates fixed, also those of entries that were not set. */
  async toBytes(options: { readonly allDatesFixed?: boolean } = {}): Promise<Uint8Array> {
    return Buffer.concat(this.toPieces(options));
  }

  /** The bytes of the zip, one piece behind the other. */
  toPieces({ allDatesFixed = false } = {}): Buffer[] {
    return zipPieces(
      Array.from(this.entries.values(), ({ name, entry, packed }) => {
        if (packed) return { ...packed, name, ...NEW_ENTRY };
        const { size, crc, method, isUtf8, time, version, madeBy, attributes } = entry!;
        const data = [packedData(this.bytes, entry!)];
        return {
          ...{ name, data, size, crc, method, isUtf8, version, madeBy, attributes },
          time: allDatesFixed ? NEW_ENTRY.time : time,
        };
      }),
    );
  }
}

function partKey(part: string): string {
  return part.replace(/\\/g, '/').replace(/^\//, '').toLowerCase();
}

/** The part that holds a part's relationships; of the package for ''. */
export function relationshipsPart(source: string): string {
  const slash = source.lastIndexOf('/') + 1;
  return `${source.slice(0, slash)}_rels/${source.slice(slash)}.rels`;
}

/** A relationship's target as a part name, without a leading slash. */
export function resolvePart(source: string, target: string): string {
  const path = target.replace(/\\/g, '/').replace(/#.*$/, '');
  const steps = path.startsWith('/') ? [] : source.split('/').slice(0, -1);
  for (const step of path.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.' && step !== '') steps.push(step);
  }
  try {
    return decodeURIComponent(steps.join('/'));
  } catch {
    return steps.join('/');
  }
}
