/** Puts entries that are packed already together as a zip file (APPNOTE 6.3, 4.3). */
import type { PackedPart } from './packed-part.js';

export interface PackedEntry extends PackedPart {
  readonly name: string;
  readonly isUtf8: boolean;
  /** Hour and day of its last change, as they are stored. */
  readonly time: number;
  /** The version of the format that it needs. */
  readonly version: number;
  readonly madeBy: number;
  readonly attributes: number;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const UTF8_FLAG = 0x800;
const LOCAL_BYTES = 30;
const CENTRAL_BYTES = 46;
const END_BYTES = 22;

/** The file's bytes, one piece behind the other. Throws a RangeError where the file would need the fields of 64 bits: no workbook is that large. */
export function zipPieces(entries: readonly PackedEntry[]): Buffer[] {
  const pieces: Buffer[] = [];
  const central: Buffer[] = [];
  let offset = 0;
  for (const entry of entries) {
    const name = Buffer.from(entry.name, entry.isUtf8 ? 'utf8' : 'latin1');
    const local = Buffer.alloc(LOCAL_BYTES);
    local.writeUInt32LE(LOCAL, 0);
    writeShared(local, 4, entry, name.length);
    const record = Buffer.alloc(CENTRAL_BYTES);
    record.writeUInt32LE(CENTRAL, 0);
    record.writeUInt16LE(entry.madeBy, 4);
    writeShared(record, 6, entry, name.length);
    record.writeUInt32LE(entry.attributes, 38);
    record.writeUInt32LE(offset, 42);
    pieces.push(local, name, ...entry.data);
    central.push(record, name);
    offset += LOCAL_BYTES + name.length + lengthOf(entry.data);
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(END_BYTES);
  end.writeUInt32LE(END, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(offset, 16);
  pieces.push(directory, end);
  return pieces;
}

function lengthOf(pieces: readonly Buffer[]): number {
  return pieces.reduce((sum, { length }) => sum + length, 0);
}

/** The fields that both headers of an entry have, in the same order. */
function writeShared(header: Buffer, at: number, entry: PackedEntry, nameLength: number): void {
  header.writeUInt16LE(entry.version, at);
  header.writeUInt16LE(entry.isUtf8 ? UTF8_FLAG : 0, at + 2);
  header.writeUInt16LE(entry.method, at + 4);
  header.writeUInt32LE(entry.time, at + 6);
  header.writeUInt32LE(entry.crc, at + 10);
  header.writeUInt32LE(lengthOf(entry.data), at + 14);
  header.writeUInt32LE(entry.size, at + 18);
  header.writeUInt16LE(nameLength, at + 22);
}
