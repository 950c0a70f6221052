/**
 * What a maker's tables, as typed, say against themselves: classes that leave gaps, a selection that
 * misses a pair or whose worst case leaves the clearance range, limits upside down.
 *
 * The rows of one engine type and fit are checked together. Each finding names the place of the row it
 * stands on and says what is wrong, in facts; words are put to them where they are written.
 */

import { isOrdered, type SizeClass } from './classes.js';
import type { Grain } from './grain.js';

export type ClassFinding =
  | { readonly row: number; readonly kind: 'from above to' }
  | {
      readonly row: number;
      readonly kind: 'gap';
      readonly mark: string;
      readonly from: Grain;
      readonly to: Grain;
    }
  | {
      readonly row: number;
      readonly kind: 'overlap';
      readonly mark: string;
      readonly from: Grain;
      readonly to: Grain;
    }
  | { readonly row: number; readonly kind: 'mark named twice'; readonly mark: string };

/**
 * Checks the classes of one kind of part. A gap, an overlap or a mark named twice stands on both rows.
 * Rows may come in any order; `row` counts from 0 in the order given.
 */
export function checkClasses(classes: readonly SizeClass[]): ClassFinding[] {
  const findings: ClassFinding[] = [];
  const numbered = classes.map((row, index) => ({ ...row, index }));
  for (const row of numbered) {
    if (!isOrdered(row)) findings.push({ row: row.index, kind: 'from above to' });
    for (const other of numbered) {
      if (other.index !== row.index && sameMark(other.mark, row.mark)) {
        findings.push({ row: row.index, kind: 'mark named twice', mark: row.mark });
        break;
      }
    }
  }
  const ordered = numbered.filter(isOrdered).sort((a, b) => a.from - b.from || a.to - b.to);
  // A gap opens where nothing so far reaches the next From; an overlap is any two rows that share sizes.
  let reach = ordered[0];
  for (const row of ordered.slice(1)) {
    if (reach && row.from > reach.to) {
      const gap = { kind: 'gap', from: reach.to, to: row.from } as const;
      findings.push(
        { row: reach.index, mark: row.mark, ...gap },
        { row: row.index, mark: reach.mark, ...gap },
      );
    }
    if (!reach || row.to > reach.to) reach = row;
  }
  for (const [place, row] of ordered.entries()) {
    for (const other of ordered.slice(place + 1)) {
      const from = Math.max(row.from, other.from);
      const to = Math.min(row.to, other.to);
      if (from >= to) continue;
      const overlap = { kind: 'overlap', from, to } as const;
      findings.push(
        { row: row.index, mark: other.mark, ...overlap },
        { row: other.index, mark: row.mark, ...overlap },
      );
    }
  }
  return findings;
}

/** Marks match without regard to case and outer spaces. */
export function sameMark(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

export interface SelectionRow {
  readonly journalMark: string;
  readonly boreMark: string;
  readonly shellMark: string;
}

export type SelectionFinding =
  | {
      readonly row: number;
      readonly kind: 'pair named twice';
      readonly journalMark: string;
      readonly boreMark: string;
    }
  | {
      readonly row: number;
      readonly kind: 'pair missing';
      readonly journalMark: string;
      readonly boreMark: string;
    }
  | {
      readonly row: number;
      readonly kind: 'unknown mark';
      readonly of: 'journal' | 'bore' | 'shell';
      readonly mark: string;
    }
  | {
      readonly row: number;
      readonly kind: 'worst case outside';
      readonly worst: readonly [Grain, Grain];
      readonly range: readonly [Grain, Grain];
    };

export interface SelectionTables {
  readonly journals: readonly SizeClass[];
  readonly bores: readonly SizeClass[];
  /** Shell classes, and the marks of new shells for those that have no class. */
  readonly shells: readonly SizeClass[];
  /** Marks that stand in a table although their row cannot be used as a class. */
  readonly otherMarks?: Readonly<Record<'journal' | 'bore' | 'shell', readonly string[]>>;
  readonly clearance: { readonly min: Grain; readonly max: Grain } | undefined;
}

/**
 * The clearances that a selection row can give when every part lies within its class:
 * [B_from − 2·w_to − J_to, B_to − 2·w_from − J_from].
 */
export function worstCase(journal: SizeClass, bore: SizeClass, shell: SizeClass): [Grain, Grain] {
  return [bore.from - 2 * shell.to - journal.to, bore.to - 2 * shell.from - journal.from];
}

/**
 * Checks the selection of one engine type and fit; a missing pair stands on the first row. A mark that
 * is named twice may mean either class: the worst of both must stay within the range.
 */
export function checkSelection(rows: readonly SelectionRow[], tables: SelectionTables): SelectionFinding[] {
  const findings: SelectionFinding[] = [];
  const samePair = (row: SelectionRow, journalMark: string, boreMark: string) =>
    sameMark(row.journalMark, journalMark) && sameMark(row.boreMark, boreMark);
  for (const [index, row] of rows.entries()) {
    const { journalMark, boreMark, shellMark } = row;
    if (rows.filter((other) => samePair(other, journalMark, boreMark)).length > 1) {
      findings.push({ row: index, kind: 'pair named twice', journalMark, boreMark });
    }
    const marks = [
      ['journal', journalMark, tables.journals],
      ['bore', boreMark, tables.bores],
      ['shell', shellMark, tables.shells],
    ] as const;
    for (const [of, mark, classes] of marks) {
      const known = [...classes.map((row) => row.mark), ...(tables.otherMarks?.[of] ?? [])];
      if (!known.some((other) => sameMark(other, mark))) {
        findings.push({ row: index, kind: 'unknown mark', of, mark });
      }
    }
    const [journals, bores, shells] = marks.map(([, mark, classes]) =>
      classes.filter((row) => isOrdered(row) && sameMark(row.mark, mark)),
    );
    const cases = journals!.flatMap((journal) =>
      bores!.flatMap((bore) => shells!.map((shell) => worstCase(journal, bore, shell))),
    );
    if (cases.length === 0 || !tables.clearance) continue;
    const { min, max } = tables.clearance;
    const worst = [
      Math.min(...cases.map(([least]) => least)),
      Math.max(...cases.map(([, most]) => most)),
    ] as const;
    if (worst[0] < min || worst[1] > max) {
      findings.push({ row: index, kind: 'worst case outside', worst, range: [min, max] });
    }
  }
  if (rows.length > 0) {
    for (const journalMark of distinctMarks(tables.journals, tables.otherMarks?.journal)) {
      for (const boreMark of distinctMarks(tables.bores, tables.otherMarks?.bore)) {
        if (!rows.some((row) => samePair(row, journalMark, boreMark))) {
          findings.push({ row: 0, kind: 'pair missing', journalMark, boreMark });
        }
      }
    }
  }
  return findings;
}

function distinctMarks(classes: readonly SizeClass[], others: readonly string[] = []): string[] {
  const marks = [...classes.map(({ mark }) => mark), ...others];
  const seen = new Map(marks.map((mark) => [mark.trim().toLowerCase(), mark]));
  return [...seen.values()];
}

export interface LimitPair {
  readonly name: string;
  readonly min: Grain | undefined;
  readonly max: Grain | undefined;
}

/** Pairs of limits whose minimum lies above their maximum. */
export function crossedLimits(pairs: readonly LimitPair[]): LimitPair[] {
  return pairs.filter(({ min, max }) => min !== undefined && max !== undefined && min > max);
}

/** The shell that a selection row names for two marks; undefined unless exactly one row does. */
export function selectedShell(
  rows: readonly SelectionRow[],
  journalMark: string,
  boreMark: string,
): string | undefined {
  const named = rows.filter(
    (row) => sameMark(row.journalMark, journalMark) && sameMark(row.boreMark, boreMark),
  );
  return named.length === 1 ? named[0]!.shellMark : undefined;
}
