/** Parts packed and unpacked piece by piece, so that a large one never stands in memory as a whole. */
import { once } from 'node:events';
import { crc32, createDeflateRaw, createInflateRaw, deflateRawSync } from 'node:zlib';
import { packedData, type ZipEntry } from '../gate/zip-directory.js';
import { checkDeclaredEncoding, decodeXmlBytes, encodingOfBytes, type XmlEncoding } from './xml-text.js';

export interface PackedPart {
  /** In pieces: what is large need not be copied together. */
  readonly data: readonly Buffer[];
  /** Bytes unpacked. */
  readonly size: number;
  readonly crc: number;
  /** 0 stored, 8 deflated. */
  readonly method: number;
}

/** A third of the time of the usual level, for a few more bytes. */
const LEVEL = 3;
const DEFLATED = 8;
const CHUNK_BYTES = 1 << 18;
const GREATER = 0x3e;

export function packBytes(bytes: Uint8Array): PackedPart {
  const data = deflateRawSync(bytes, { level: LEVEL });
  return { data: [data], size: bytes.length, crc: crc32(bytes), method: DEFLATED };
}

/** Packs texts as they come, on another thread than the one that makes them. */
export async function packTexts(texts: AsyncIterable<string> | Iterable<string>): Promise<PackedPart> {
  const deflate = createDeflateRaw({ level: LEVEL, chunkSize: CHUNK_BYTES });
  const data: Buffer[] = [];
  deflate.on('data', (chunk: Buffer) => data.push(chunk));
  const ended = once(deflate, 'end');
  let size = 0;
  let crc = 0;
  const write = async (text: string) => {
    const bytes = Buffer.from(text, 'utf8');
    size += bytes.length;
    crc = crc32(bytes, crc);
    if (!deflate.write(bytes)) await once(deflate, 'drain');
  };
  let gathered = '';
  for await (const text of texts) {
    gathered += text;
    if (gathered.length < CHUNK_BYTES) continue;
    await write(gathered);
    gathered = '';
  }
  await write(gathered);
  deflate.end();
  await ended;
  return { data, size, crc, method: DEFLATED };
}

/** Throws an Error where the data are not what the directory says: another length, another checksum, damage. */
async function* unpacked(bytes: Uint8Array, entry: ZipEntry): AsyncGenerator<Buffer> {
  const packed = packedData(bytes, entry);
  let size = 0;
  let crc = 0;
  for await (const chunk of entry.method === 0 ? [packed] : inflated(packed)) {
    size += chunk.length;
    if (size > entry.size) break;
    crc = crc32(chunk, crc);
    yield chunk;
  }
  if (size !== entry.size) throw new RangeError('it is not as long as it is said to be');
  if (crc !== entry.crc) throw new RangeError('its checksum is wrong');
}

function inflated(packed: Buffer): AsyncIterable<Buffer> {
  const inflate = createInflateRaw({ chunkSize: CHUNK_BYTES });
  inflate.end(packed);
  return inflate;
}

/** The encoding that the first bytes of a part show. */
export async function encodingOfEntry(bytes: Uint8Array, entry: ZipEntry): Promise<XmlEncoding> {
  for await (const chunk of unpacked(bytes, entry)) return encodingOfBytes(chunk);
  return 'utf-8';
}

/**
 * The text of a part in pieces that each end behind a `>`, without its byte order mark. A part in UTF-16 comes as a
 * whole.
 *
 * Throws a TypeError on bytes that are no text, an EncodingError where it declares another encoding, and what
 * `unpacked` throws.
 */
export async function* unpackedTexts(bytes: Uint8Array, entry: ZipEntry): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let rest: Buffer = Buffer.alloc(0);
  let isFirst = true;
  let isWhole = false;
  let isChecked = false;
  const decoded = (data: Buffer) => {
    const text = decoder.decode(data);
    if (!isChecked) checkDeclaredEncoding(text, 'utf-8');
    isChecked = true;
    return text;
  };
  for await (const chunk of unpacked(bytes, entry)) {
    let data = rest.length > 0 ? Buffer.concat([rest, chunk]) : chunk;
    if (isFirst && data.length >= 3) {
      isFirst = false;
      const encoding = encodingOfBytes(data);
      isWhole = encoding === 'utf-16le' || encoding === 'utf-16be';
      if (encoding === 'utf-8-bom') data = data.subarray(3);
    }
    const end = isFirst || isWhole ? 0 : data.lastIndexOf(GREATER) + 1;
    // What inflating hands over is its own to use again.
    rest = Buffer.from(data.subarray(end));
    if (end > 0) yield decoded(data.subarray(0, end));
  }
  if (isWhole) yield decodeXmlBytes(rest).text;
  else if (rest.length > 0) yield decoded(rest);
}
