/**
 * What passes between the process of a command and those that it starts: jobs, messages while they work, results. It
 * imports nothing of those who do the work.
 */
import type { EngineUnits } from '../engine/spreadsheet.js';
import type { Paper } from '../io/report/print-pdf.js';

/** How a book is computed and written. */
export interface RunOptions {
  readonly values: boolean;
  readonly seconds: number;
  /** Whether a file that is written over is kept beside it. */
  readonly isPreviousKept?: boolean;
  /** The repeatability of studied gauges goes into Gauges before anything is computed. */
  readonly takeRepeatability?: boolean;
  /** Books of the stock that could not be read. */
  readonly missingBooks?: readonly string[];
}

/** In what form a book is accounted for. */
export interface AccountOptions {
  readonly isPrinted: boolean;
  readonly isJson: boolean;
  /** Characters of a line that fits are drawn in; undefined for counts alone. */
  readonly width: number | undefined;
}

export interface CheckBookOptions extends RunOptions {
  readonly output: AccountOptions;
}

export interface MatchBooksOptions extends RunOptions {
  /** Undefined: nothing is written. */
  readonly out: string | undefined;
  /** A part or a place that is asked about. */
  readonly explain: string | undefined;
  readonly output: AccountOptions;
}

export interface ReportBookOptions {
  readonly out: string | undefined;
  /** The program that prints to PDF; undefined where none is wanted. */
  readonly chromium: string | undefined;
  readonly paper: Paper;
  readonly seconds: number;
}

export type Job =
  | {
      readonly kind: 'check';
      readonly path: string;
      readonly target: string;
      readonly options: CheckBookOptions;
    }
  | { readonly kind: 'match'; readonly paths: readonly string[]; readonly options: MatchBooksOptions }
  | { readonly kind: 'report'; readonly path: string; readonly options: ReportBookOptions }
  | { readonly kind: 'calc'; readonly formula: string; readonly units: EngineUnits };

export interface JobResult {
  /** The exit code that it stands for. */
  readonly code: number;
  /** Entries of the JSON document, where one is wanted. */
  readonly documents: readonly unknown[];
}

/** From the process that works to the one that waits. */
export type JobMessage =
  | { readonly kind: 'said'; readonly by: 'say' | 'print' | 'progress'; readonly text: string }
  /** A temporary file that is to be removed if the process dies. */
  | { readonly kind: 'made'; readonly path: string }
  | { readonly kind: 'gone'; readonly path: string }
  | { readonly kind: 'done'; readonly result: JobResult }
  /** The message of a UserError. */
  | { readonly kind: 'refused'; readonly message: string }
  /** A fault of the program: its stack. */
  | { readonly kind: 'failed'; readonly stack: string };
