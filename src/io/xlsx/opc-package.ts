/**
 * A zip package of parts, relationships and content types (Open Packaging Conventions, ISO 29500-2). Parts
 * that are not set stay as the very bytes they were, in their place in the zip.
 */
import JSZip from 'jszip';
import { UserError } from '../../engine/user-error.js';
import { unpackEntry, type ZipEntry } from '../gate/zip-directory.js';
import { checkedZipDirectory, damagedZip } from '../gate/zip-gate.js';
import { decodeXmlBytes, encodeXmlBytes, escapeXml, type XmlEncoding } from './xml-text.js';
import { attr, childrenOf, readTree, TextEdits, type XmlElement } from './xml-tree.js';

/** New and changed entries all bear the first date a zip can hold, so that one edit gives one file. */
const ENTRY_DATE = new Date(Date.UTC(1980, 0, 1));

const CONTENT_TYPES = '[Content_Types].xml';

export interface Relationship {
  readonly id: string;
  /** The last step of the type's address, as in `worksheet`: alike in transitional and strict packages. */
  readonly kind: string;
  readonly type: string;
  /** The part it leads to; undefined where it leads out of the package. */
  readonly part: string | undefined;
}

export class OpcPackage {
  /** Part names compare without regard to case. */
  private readonly entries = new Map<string, string>();
  private readonly texts = new Map<string, { text: string; encoding: XmlEncoding }>();

  /** What the zip's directory says of the entries, by name. */
  private readonly directory: ReadonlyMap<string, ZipEntry>;

  private constructor(
    private readonly zip: JSZip,
    private readonly bytes: Uint8Array,
    directory: readonly ZipEntry[],
    readonly file: string,
  ) {
    this.directory = new Map(directory.map((entry) => [partKey(entry.name), entry]));
    for (const entry of Object.values(zip.files)) {
      if (!entry.dir) this.entries.set(partKey(entry.name), entry.name);
    }
  }

  /** Throws a UserError where the bytes are no zip, a damaged one, or one that would unpack to too much. */
  static async open(bytes: Uint8Array, file: string): Promise<OpcPackage> {
    const directory = checkedZipDirectory(bytes, file);
    try {
      return new OpcPackage(await JSZip.loadAsync(bytes), bytes, directory, file);
    } catch {
      throw damagedZip(file);
    }
  }

  has(part: string): boolean {
    return this.entries.has(partKey(part));
  }

  parts(): string[] {
    return [...this.entries.values()];
  }

  /** Throws a UserError where the part is missing or is no text. */
  async text(part: string): Promise<string> {
    const key = partKey(part);
    const known = this.texts.get(key);
    if (known) return known.text;
    const entry = this.directory.get(key);
    if (!this.entries.has(key) || !entry) throw this.damaged(part, 'it is missing');
    let bytes: Uint8Array;
    try {
      bytes = unpackEntry(this.bytes, entry);
    } catch {
      throw this.damaged(part, 'its data cannot be unpacked');
    }
    try {
      const decoded = decodeXmlBytes(bytes);
      this.texts.set(key, decoded);
      return decoded.text;
    } catch {
      throw this.damaged(part, 'it is neither UTF-8 nor UTF-16 text');
    }
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
    const key = partKey(part);
    const name = this.entries.get(key) ?? part;
    this.entries.set(key, name);
    this.texts.set(key, { text, encoding });
    this.zip.file(name, encodeXmlBytes(text, encoding), { date: ENTRY_DATE, createFolders: false });
  }

  /** Takes a part out, with its relationships and content type. */
  async remove(part: string): Promise<void> {
    for (const each of [part, relationshipsPart(part)]) {
      const name = this.entries.get(partKey(each));
      if (name === undefined) continue;
      this.zip.remove(name);
      this.entries.delete(partKey(each));
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
  async toBytes(options: { allDatesFixed?: boolean } = {}): Promise<Uint8Array> {
    if (options.allDatesFixed) for (const entry of Object.values(this.zip.files)) entry.date = ENTRY_DATE;
    return this.zip.generateAsync({
      type: 'uint8array',
      compression: 'DEFLATE',
      // A third of the time of the usual level, for a few more bytes.
      compressionOptions: { level: 3 },
    });
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
