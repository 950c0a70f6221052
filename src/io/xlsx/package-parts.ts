/** The parts of a zip package. Those that are not set stay as the very bytes they were, in their place in the zip. */
import { inflateRawSync } from 'node:zlib';
import { UserError } from '../../engine/user-error.js';
import { packedData, unpackEntry, type ZipEntry } from '../gate/zip-directory.js';
import { encodingOfEntry, type PackedPart, packBytes, unpackedTexts } from './packed-part.js';
import { partNameKey, plainNameKey } from './part-names.js';
import { decodeXmlBytes, EncodingError, encodeXmlBytes, type XmlEncoding } from './xml-text.js';
import { readTree, type XmlElement } from './xml-tree.js';
import { zipPieces } from './zip-writer.js';

/**
 * New and changed entries all bear the first date a zip can hold, 1 January 1980, so that one edit gives one file.
 */
const NEW_ENTRY = { time: ((1 << 5) | 1) << 16, isUtf8: true, version: 20, madeBy: 20, attributes: 0 };

/** A part: as it came, or as it was set. */
interface Part {
  readonly name: string;
  readonly entry?: ZipEntry;
  readonly packed?: PackedPart;
}

/** Larger texts are unpacked anew each time rather than kept. */
const KEPT_CHARACTERS = 2_000_000;

export class PackageParts {
  /** In the order of the zip. Part names compare without regard to case. */
  private readonly entries = new Map<string, Part>();
  /** The keys of names with encoded characters, by the same with those characters as themselves. */
  private readonly encodedKeys = new Map<string, string>();
  private readonly texts = new Map<string, { text: string; encoding: XmlEncoding }>();

  constructor(
    private readonly bytes: Uint8Array,
    directory: readonly ZipEntry[],
    readonly file: string,
  ) {
    for (const entry of directory) {
      const key = partNameKey(entry.name);
      this.entries.set(key, { name: entry.name, entry });
      if (key.includes('%')) this.encodedKeys.set(plainNameKey(entry.name), key);
    }
  }

  /** The key of a part of that name as it is written, else of one that only differs in which characters are encoded. */
  private keyOf(part: string): string {
    const key = partNameKey(part);
    if (this.entries.has(key)) return key;
    const plain = plainNameKey(part);
    return this.entries.has(plain) ? plain : (this.encodedKeys.get(plain) ?? key);
  }

  /** The name that the zip has for a part; the one given where it has none. */
  nameOf(part: string): string {
    const found = this.entries.get(this.keyOf(part));
    return found ? found.name.replaceAll('\\', '/').replace(/^\//, '') : part;
  }

  has(part: string): boolean {
    return this.entries.has(this.keyOf(part));
  }

  parts(): string[] {
    return Array.from(this.entries.values(), ({ name }) => name).filter((name) => !name.endsWith('/'));
  }

  /** @throws {UserError} where the part is missing or is no text */
  async text(part: string): Promise<string> {
    return this.decoded(part).text;
  }

  /** @throws {UserError} where the part is missing or cannot be unpacked */
  async encodingOf(part: string): Promise<XmlEncoding> {
    const { entry, packed } = this.found(part);
    if (packed || this.texts.has(this.keyOf(part))) return this.decoded(part).encoding;
    try {
      return await encodingOfEntry(this.bytes, entry!);
    } catch (error) {
      throw this.damaged(part, reasonOf(error));
    }
  }

  private decoded(part: string): { text: string; encoding: XmlEncoding } {
    const key = this.keyOf(part);
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
    } catch (error) {
      throw this.damaged(part, reasonOf(error));
    }
  }

  /**
   * The text of a part, which may be a large one, in pieces that end behind a `>`.
   *
   * @throws {UserError} where the part is missing or is no text
   */
  async *pieces(part: string): AsyncGenerator<string> {
    const { entry, packed } = this.found(part);
    if (packed || this.texts.has(this.keyOf(part))) {
      yield await this.text(part);
      return;
    }
    try {
      yield* unpackedTexts(this.bytes, entry!);
    } catch (error) {
      throw this.damaged(part, reasonOf(error));
    }
  }

  private found(part: string): Part {
    const found = this.entries.get(this.keyOf(part));
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
    this.write(part, text, this.texts.get(this.keyOf(part))?.encoding ?? 'utf-8');
  }

  /** Sets a part to a text that has nothing of the old one, not even its encoding. */
  async replaceText(part: string, text: string): Promise<void> {
    if (this.has(part)) {
      const old = await this.text(part);
      if (old === text && this.texts.get(this.keyOf(part))?.encoding === 'utf-8') return;
    }
    this.write(part, text, 'utf-8');
  }

  private write(part: string, text: string, encoding: XmlEncoding): void {
    this.setPacked(part, packBytes(encodeXmlBytes(text, encoding)));
    this.texts.set(this.keyOf(part), { text, encoding });
  }

  /** Sets a part that is packed already. A new part goes to the end. */
  setPacked(part: string, packed: PackedPart): void {
    const key = this.keyOf(part);
    this.texts.delete(key);
    this.entries.set(key, { name: this.entries.get(key)?.name ?? part, packed });
  }

  /** Takes one part out of the zip; says whether it was there. */
  protected drop(part: string): boolean {
    this.texts.delete(this.keyOf(part));
    return this.entries.delete(this.keyOf(part));
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

/** Why the text of a part cannot be had, as a clause. */
function reasonOf(error: unknown): string {
  if (error instanceof EncodingError) return error.message;
  return error instanceof TypeError ? 'it is neither UTF-8 nor UTF-16 text' : 'its data cannot be unpacked';
}
