/** What a zip file says of its entries (APPNOTE 6.3, 4.3), read without unpacking anything. */
import { crc32, inflateRawSync } from 'node:zlib';

export interface ZipEntry {
  readonly name: string;
  /** Offset of its header; its data follow. */
  readonly header: number;
  readonly packed: number;
  readonly size: number;
  readonly crc: number;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly isEncrypted: boolean;
  /** Whether the name is stored as UTF-8. */
  readonly isUtf8: boolean;
  /** Hour and day of its last change, as they are stored. */
  readonly time: number;
  /** The version of the format that it needs, the program that made it, and what its system notes of the file. */
  readonly version: number;
  readonly madeBy: number;
  readonly attributes: number;
}

const END = 0x06054b50;
const END_64 = 0x06064b50;
const END_64_LOCATOR = 0x07064b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END_BYTES = 22;
const LONGEST_COMMENT = 0xffff;
const UTF8_FLAG = 0x800;
/** A 32-bit field that says: see the 64-bit one. */
const SEE_64 = 0xffffffff;

/** Throws a RangeError or SyntaxError where the directory is damaged. */
export function readZipDirectory(bytes: Uint8Array): ZipEntry[] {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { count, offset } = directoryPlace(data);
  const entries: ZipEntry[] = [];
  let at = offset;
  for (let i = 0; i < count; i++) {
    if (data.readUInt32LE(at) !== CENTRAL) throw new SyntaxError('an entry is not where it is said to be');
    const flags = data.readUInt16LE(at + 8);
    const nameEnd = at + 46 + data.readUInt16LE(at + 28);
    const extraEnd = nameEnd + data.readUInt16LE(at + 30);
    if (extraEnd > data.length) throw new RangeError('the directory is cut short');
    const wide = wideFields(data.subarray(nameEnd, extraEnd));
    const field = (place: number) => {
      const value = data.readUInt32LE(at + place);
      return value === SEE_64 ? wide() : value;
    };
    const size = field(24);
    const packed = field(20);
    const header = field(42);
    if (header + 30 + packed > data.length) throw new RangeError('an entry is cut short');
    entries.push({
      name: data.toString(flags & UTF8_FLAG ? 'utf8' : 'latin1', at + 46, nameEnd),
      header,
      packed,
      size,
      crc: data.readUInt32LE(at + 16),
      method: data.readUInt16LE(at + 10),
      isEncrypted: (flags & 1) === 1,
      isUtf8: (flags & UTF8_FLAG) !== 0,
      time: data.readUInt32LE(at + 12),
      version: data.readUInt16LE(at + 6),
      madeBy: data.readUInt16LE(at + 4),
      attributes: data.readUInt32LE(at + 38),
    });
    at = extraEnd + data.readUInt16LE(at + 32);
  }
  return entries;
}

/** What stands before the data of an entry, which repeats some of what the directory says of it (4.3.7). */
export interface LocalHeader {
  readonly name: string;
  readonly method: number;
  /** Offset of the data. */
  readonly end: number;
}

/** Throws a RangeError or SyntaxError where the header is damaged. */
export function readLocalHeader(bytes: Uint8Array, { header, isUtf8 }: ZipEntry): LocalHeader {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (data.readUInt32LE(header) !== LOCAL) throw new SyntaxError('its header is damaged');
  const nameEnd = header + 30 + data.readUInt16LE(header + 26);
  const end = nameEnd + data.readUInt16LE(header + 28);
  if (end > data.length) throw new RangeError('its header is cut short');
  return {
    name: data.toString(isUtf8 ? 'utf8' : 'latin1', header + 30, nameEnd),
    method: data.readUInt16LE(header + 8),
    end,
  };
}

/** The data of an entry as they are stored. Throws a RangeError or SyntaxError where its header is damaged. */
export function packedData(bytes: Uint8Array, entry: ZipEntry): Buffer {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = readLocalHeader(bytes, entry).end;
  return data.subarray(start, start + entry.packed);
}

/** Throws an Error where the data are not what the directory says: another length, another checksum, damage. */
export function unpackEntry(bytes: Uint8Array, entry: ZipEntry): Uint8Array {
  const packed = packedData(bytes, entry);
  // One byte more than is said is allowed, so that a longer entry is told from a whole one.
  const unpacked = entry.method === 0 ? packed : inflateRawSync(packed, { maxOutputLength: entry.size + 1 });
  if (unpacked.length !== entry.size) throw new RangeError('it is not as long as it is said to be');
  if (crc32(unpacked) !== entry.crc) throw new RangeError('its checksum is wrong');
  return unpacked;
}

function directoryPlace(data: Buffer): { count: number; offset: number } {
  const end = endRecord(data);
  const count = data.readUInt16LE(end + 10);
  const offset = data.readUInt32LE(end + 16);
  const locator = end - 20;
  if ((count !== 0xffff && offset !== SEE_64) || locator < 0 || data.readUInt32LE(locator) !== END_64_LOCATOR)
    return { count, offset };
  const record = Number(data.readBigUInt64LE(locator + 8));
  if (data.readUInt32LE(record) !== END_64) throw new SyntaxError('its 64-bit end record is damaged');
  return {
    count: Number(data.readBigUInt64LE(record + 32)),
    offset: Number(data.readBigUInt64LE(record + 48)),
  };
}

/** The last end record whose comment reaches just to the end of the file. */
function endRecord(data: Buffer): number {
  const first = Math.max(0, data.length - END_BYTES - LONGEST_COMMENT);
  for (let at = data.length - END_BYTES; at >= first; at--) {
    if (data.readUInt32LE(at) === END && at + END_BYTES + data.readUInt16LE(at + 20) === data.length)
      return at;
  }
  throw new SyntaxError('it has no end record');
}

/** The 64-bit fields of an entry, one after the other (4.5.3). */
function wideFields(extra: Buffer): () => number {
  let at = 0;
  while (at + 4 <= extra.length && extra.readUInt16LE(at) !== 1) at += 4 + extra.readUInt16LE(at + 2);
  at += 4;
  return () => {
    const value = Number(extra.readBigUInt64LE(at));
    at += 8;
    return value;
  };
}
