/**
 * The lines of the log beside a book: one change a line, tab-separated, readable in any editor. Lines are only ever
 * added. The last field is a checksum (CRC-32 of what is before it), so that a line cut short or damaged is noticed.
 */
import { crc32 } from 'node:zlib';
import { FITS } from '../input-sheets/fits.js';
import { measuredSheets } from './bench-row.js';

export type LogKind = 'reading' | 'undo' | 'note' | 'temperature' | 'gauge' | 'set to' | 'written';

export interface LogEntry {
  /** ISO 8601. */
  readonly time: string;
  readonly kind: LogKind;
  /** Undefined only where the book was written. */
  readonly sheet: string | undefined;
  readonly part: string;
  /** A spot, or the header of another column. */
  readonly spot: string;
  /** What the cell is to hold, as it was typed; blank empties it. */
  readonly typed: string;
  /** The reading in mm. */
  readonly mm: string;
  readonly gauge: string;
  readonly temperature: string;
  /** What the cell held before. */
  readonly before: string;
  /** Why a doubtful reading was kept. */
  readonly reason: string;
}

const FIELDS = [
  'time',
  'sheet',
  'part',
  'spot',
  'typed',
  'mm',
  'gauge',
  'temperature',
  'kind',
  'before',
  'reason',
] as const satisfies readonly (keyof LogEntry)[];

const KINDS: readonly string[] = ['reading', 'undo', 'note', 'temperature', 'gauge', 'set to', 'written'];

/** The first line of every log. */
export const LOG_HEADER = `${FIELDS.join('\t')}\tcheck\n`;

export function logLine(entry: LogEntry): string {
  const fields = FIELDS.map((field) => escaped(entry[field] ?? ''));
  const text = fields.join('\t');
  return `${text}\t${checksum(text)}\n`;
}

/** @returns undefined for a line that is damaged */
export function parseLogLine(line: string): LogEntry | undefined {
  const end = line.lastIndexOf('\t');
  const text = line.slice(0, end);
  if (end < 0 || line.slice(end + 1) !== checksum(text)) return undefined;
  const fields = text.split('\t').map(unescaped);
  if (fields.length !== FIELDS.length) return undefined;
  const entry = Object.fromEntries(FIELDS.map((field, place) => [field, fields[place]!]));
  const isKnown = KINDS.includes(entry.kind!) && (entry.sheet === '' || isKnownSheet(entry.sheet!));
  return isKnown ? ({ ...entry, sheet: entry.sheet || undefined } as unknown as LogEntry) : undefined;
}

const isKnownSheet = (name: string) =>
  name === FITS.name || measuredSheets().some((sheet) => sheet.name === name);

function checksum(text: string): string {
  return crc32(text).toString(16).padStart(8, '0');
}

/** Tabs, line ends and other control characters as `\xHH`, so that a line stays one line whatever was typed. */
function escaped(text: string): string {
  return text
    .replaceAll('\\', '\\x5c')
    .replaceAll(/\p{Cc}/gu, (control) => `\\x${control.charCodeAt(0).toString(16).padStart(2, '0')}`);
}

function unescaped(text: string): string {
  return text.replaceAll(/\\x([0-9a-f]{2})/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}
