/** What is wrong with the rows of Selection as typed, in words, row by row. */
import { isOrdered, type SizeClass } from '../../maths/classes.js';
import { checkSelection, type SelectionFinding } from '../../maths/tables.js';
import type { ClassOf } from '../book/book.js';
import { nameKey } from '../book/names.js';
import type { TableRow } from '../book/read-row.js';
import { sizeClassOf, type Text, textIn } from './class-rows.js';
import { type Context, groupBy, kindKey } from './context.js';
import { type Findings, Gathered } from './findings.js';

/** Where one of these is refused, nobody knows what the row is for. */
const KIND_HEADERS = ['Engine type', 'Fit', 'Of', 'Half'];

export function selectionFindings(context: Context): Findings {
  const { book } = context;
  const text = textIn(book);
  const found = new Gathered();
  for (const group of groupBy(book.selection, (row) => kindKey(row.engineType, row.fit)).values()) {
    const { engineType, fit } = group[0]!;
    const isOfKind = (row: { engineType: string; fit: string }) =>
      kindKey(row.engineType, row.fit) === kindKey(engineType, fit);
    const rowsOf = (of: ClassOf) => book.classes.filter((row) => isOfKind(row) && row.of === of);
    const classes = (of: ClassOf) => rowsOf(of).flatMap((row) => sizeClassOf(row) ?? []);
    // A row with a bad cell is no class, yet nobody shall be told that its mark is in no table.
    const otherMarks = (of: ClassOf, more: readonly (TableRow & { mark: string | undefined })[] = []) =>
      [...rowsOf(of).filter((row) => !sizeClassOf(row)), ...more]
        .filter(({ bad }) => !bad.some(({ header }) => KIND_HEADERS.includes(header)))
        .flatMap(({ mark }) => mark ?? []);
    const limits = context.limitsOf(engineType, fit);
    const { clearanceMin: min, clearanceMax: max } = limits ?? {};
    const shells = classes('shell');
    const whole = group.filter(
      (row) => row.journalMark !== undefined && row.boreMark !== undefined && row.shellMark !== undefined,
    );
    for (const row of group) {
      if (!whole.includes(row) && row.bad.length === 0) found.add(row, 'a mark is blank');
    }
    const findings = checkSelection(
      whole.map(({ journalMark, boreMark, shellMark }) => ({
        journalMark: journalMark!,
        boreMark: boreMark!,
        shellMark: shellMark!,
      })),
      {
        journals: classes('journal'),
        bores: classes('bore'),
        shells: [...shells, ...newShellClasses(context, engineType, fit, shells)],
        otherMarks: {
          journal: otherMarks('journal'),
          bore: otherMarks('bore'),
          shell: otherMarks('shell', book.newShells.filter(isOfKind)),
        },
        clearance: min === undefined || max === undefined ? undefined : { min, max },
      },
    );
    for (const finding of findings) {
      // A pair that is missing stands on the first row of its type and fit, whole or not.
      const row = finding.kind === 'pair missing' ? group[0]! : whole[finding.row]!;
      found.add(row, selectionSentence(finding, text));
    }
  }
  return found;
}

/** Marks that only New shells knows; halves of one mark and wall are one class. */
function newShellClasses(
  { book }: Context,
  engineType: string,
  fit: string,
  known: readonly SizeClass[],
): SizeClass[] {
  const classes: SizeClass[] = [];
  for (const row of book.newShells) {
    const { mark, from, to, bad } = row;
    if (kindKey(row.engineType, row.fit) !== kindKey(engineType, fit) || bad.length > 0) continue;
    if (mark === undefined || from === undefined || to === undefined || !isOrdered({ mark, from, to }))
      continue;
    if ([...known, ...classes].some((other) => nameKey(other.mark) === nameKey(mark))) continue;
    classes.push({ mark, from, to });
  }
  return classes;
}

function selectionSentence(finding: SelectionFinding, text: Text): string {
  switch (finding.kind) {
    case 'pair named twice':
      return `journal ${finding.journalMark} with bore ${finding.boreMark} is named twice`;
    case 'pair missing':
      return `no row for journal ${finding.journalMark} with bore ${finding.boreMark}`;
    case 'unknown mark':
      return `${finding.of} mark ${finding.mark} is in no table`;
    case 'worst case outside': {
      const [worst, range] = [finding.worst, finding.range].map(
        ([from, to]) => `${text(from)} to ${text(to)}`,
      );
      return `worst case ${worst} leaves the clearance range ${range}`;
    }
  }
}
