/** What a command has done in a process of its own, and what that process tells while it works. */
import type { CheckBookOptions } from './check-book.js';
import type { MatchOptions } from './match-books.js';
import type { ReportBookOptions } from './report-book.js';

export type Job =
  | {
      readonly kind: 'check';
      readonly path: string;
      readonly target: string;
      readonly options: CheckBookOptions;
    }
  | { readonly kind: 'match'; readonly paths: readonly string[]; readonly options: MatchOptions }
  | { readonly kind: 'report'; readonly path: string; readonly options: ReportBookOptions };

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
