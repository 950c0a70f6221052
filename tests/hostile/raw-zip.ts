/** Zips written byte by byte, so that they may lie. */
import { crc32, deflateRawSync } from 'node:zlib';
import { journals, SHEET } from './shape.js';

const SHEET_PART = 'xl/worksheets/sheet1.xml';

export interface RawEntry {
  readonly name: string;
  readonly packed: Uint8Array;
  readonly size: number;
  readonly crc?: number;
  readonly method?: number;
  readonly flags?: number;
  /** Take the data of the entry before. */
  readonly isOverlapping?: boolean;
  /** What stands before the data, where it is other than what the directory says. */
  readonly local?: { readonly name?: string; readonly method?: number };
}

/** A zip written byte by byte, so that it may lie. */
export function rawZip(entries: readonly RawEntry[]): Buffer {
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let at = 0;
  let previous = 0;
  for (const { name, packed, size, crc = 0, method = 8, flags = 0, isOverlapping, local = {} } of entries) {
    const fields = Buffer.alloc(26);
    fields.writeUInt16LE(20, 0);
    fields.writeUInt16LE(flags, 2);
    fields.writeUInt16LE(method, 4);
    fields.writeUInt32LE(crc, 10);
    fields.writeUInt32LE(packed.length, 14);
    fields.writeUInt32LE(size, 18);
    fields.writeUInt16LE(name.length, 22);
    const ownName = Buffer.from(local.name ?? name);
    const ownFields = Buffer.from(fields);
    ownFields.writeUInt16LE(local.method ?? method, 4);
    ownFields.writeUInt16LE(ownName.length, 22);
    const stored = Buffer.concat([Buffer.from('PK\x03\x04'), ownFields, ownName, packed]);
    const header = isOverlapping ? previous : at;
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE(header, 10);
    centrals.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x00'), fields, rest, Buffer.from(name)]));
    if (isOverlapping) continue;
    locals.push(stored);
    previous = at;
    at += stored.length;
  }
  const directory = Buffer.concat(centrals);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...locals, directory, end]);
}

export function entry(name: string, content: string | Uint8Array): RawEntry {
  const data = Buffer.from(content);
  return { name, packed: deflateRawSync(data), size: data.length, crc: crc32(data) };
}

/** The parts of a sound book, with something changed of its sheet. */
export function entries(sheet: Partial<RawEntry> = {}): RawEntry[] {
  return Object.entries(journals(SHEET)).map(([name, content]) => ({
    ...entry(name, content),
    ...(name === SHEET_PART ? sheet : {}),
  }));
}
