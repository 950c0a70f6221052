/** Refuses a package by what its directory says, before anything of it is unpacked. */
import { UserError } from '../../engine/user-error.js';
import { LIMITS, megabytes } from './limits.js';
import { type LocalHeader, readLocalHeader, readZipDirectory, type ZipEntry } from './zip-directory.js';

const SAVE_ANEW = 'Open it in the spreadsheet program and save it as .xlsx, then run again.';

/** Throws a UserError that says what is wrong and what to do. */
export function checkedZipDirectory(bytes: Uint8Array, file: string): ZipEntry[] {
  const entries = orDamaged(() => readZipDirectory(bytes), file);
  const excess = excessOf(entries);
  if (excess !== undefined) throw new UserError(`${file}: ${excess}`);
  const headers = orDamaged(() => entries.map((entry) => readLocalHeader(bytes, entry)), file);
  const reason = sharedBytesOf(entries, headers) ?? oddNameOf(entries) ?? otherHeaderOf(entries, headers);
  if (reason !== undefined) throw new UserError(`${file}: ${reason}`);
  return entries;
}

function orDamaged<Value>(read: () => Value, file: string): Value {
  try {
    return read();
  } catch {
    throw damagedZip(file);
  }
}

export function damagedZip(file: string): UserError {
  return new UserError(
    `${file}: the file starts as an .xlsx workbook but is damaged or cut short. Copy or download it again, or open it in the spreadsheet program and save it anew.`,
  );
}

function excessOf(entries: readonly ZipEntry[]): string | undefined {
  if (entries.length > LIMITS.parts) {
    return `found a package of ${entries.length} parts; expected at most ${LIMITS.parts}. ${SAVE_ANEW}`;
  }
  const locked = entries.find(({ isEncrypted }) => isEncrypted);
  if (locked) {
    return `found the part ${locked.name} encrypted with a password; expected an open workbook. Take the password off and save it, then run again.`;
  }
  const odd = entries.find(({ method }) => method !== 0 && method !== 8);
  if (odd) {
    return `found the part ${odd.name} packed by a method (${odd.method}) that workbooks do not use; expected a stored or deflated one. ${SAVE_ANEW}`;
  }
  let size = 0;
  for (const entry of entries) {
    size += entry.size;
    if (entry.size > LIMITS.partBytes)
      return tooLarge(`the part ${entry.name}`, entry.size, LIMITS.partBytes);
    if (entry.size > LIMITS.ratioFrom && entry.size > entry.packed * LIMITS.ratio) {
      return (
        `found that the part ${entry.name} unpacks from ${megabytes(entry.packed)} to ${megabytes(entry.size)}; ` +
        `expected at most ${LIMITS.ratio} times its packed size. No workbook of measured parts is like that: take out what is not needed, ${lowerFirst(SAVE_ANEW)}`
      );
    }
  }
  if (size > LIMITS.packageBytes) return tooLarge('the package', size, LIMITS.packageBytes);
  return undefined;
}

/** Parts in the same bytes are the means of a small file to unpack to much, and of one part to pass for two. */
function sharedBytesOf(entries: readonly ZipEntry[], headers: readonly LocalHeader[]): string | undefined {
  const places = entries
    .map(({ name, header, packed }, i) => ({ name, start: header, end: headers[i]!.end + packed }))
    .sort((a, b) => a.start - b.start);
  for (const [i, { name, start }] of places.entries()) {
    const before = places[i - 1];
    if (before === undefined || before.end <= start) continue;
    return `found parts that share their bytes, ${before.name} and ${name}; expected each with its own. ${SAVE_ANEW}`;
  }
  return undefined;
}

/** A program that reads the file from its start would see other parts than one that begins with the directory. */
function otherHeaderOf(entries: readonly ZipEntry[], headers: readonly LocalHeader[]): string | undefined {
  for (const [i, { name, method }] of entries.entries()) {
    const header = headers[i]!;
    if (slashed(header.name) !== slashed(name)) {
      return `found a part that is named ${name} in the list of parts and ${header.name} before its data; expected one name. ${SAVE_ANEW}`;
    }
    if (header.method !== method) {
      return `found two methods of packing for the part ${name}, ${method} in the list of parts and ${header.method} before its data; expected one. ${SAVE_ANEW}`;
    }
  }
  return undefined;
}

function slashed(name: string): string {
  return name.replaceAll('\\', '/');
}

function tooLarge(what: string, size: number, limit: number): string {
  return `found that ${what} unpacks to ${megabytes(size)}; expected at most ${megabytes(limit)}. Split the book or take out what is not needed, and run again.`;
}

/** Two parts of one name would be read by one program and another by the next; steps upwards lead out of the package. */
function oddNameOf(entries: readonly ZipEntry[]): string | undefined {
  const names = new Set<string>();
  for (const { name } of entries) {
    const key = slashed(name).replace(/^\//, '').toLowerCase();
    if (names.has(key)) {
      return `found two parts of the name ${name}; expected each name once. ${SAVE_ANEW}`;
    }
    if (key.split('/').some((step) => step === '..')) {
      return `found a part whose name leads out of the package, ${name}; expected names within it. ${SAVE_ANEW}`;
    }
    names.add(key);
  }
  return undefined;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
