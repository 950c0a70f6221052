/** What is wrong with the maker's tables, gauges and materials as typed, in words, row by row. */
import { type ClassFinding, checkClasses, crossedLimits } from '../../maths/tables.js';
import type { Book, GaugeRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import { type BadCell, reasonOf } from '../book/problems.js';
import type { TableRow } from '../book/read-row.js';
import { sizeClassOf, type Text, textIn } from './class-rows.js';
import { type Context, groupBy, kindKey } from './context.js';
import { type Findings, Gathered } from './findings.js';
import { selectionFindings } from './selection-checks.js';
import { undersizeFindings } from './undersize-checks.js';
import { worstCaseFindings } from './worst-cases.js';

/** The tables that are checked, by their names in the records. */
export const CHECKED_SHEETS = [
  'Limits',
  'Classes',
  'Selection',
  'Undersizes',
  'Gauges',
  'Materials',
] as const;

export type CheckedSheet = (typeof CHECKED_SHEETS)[number];

export interface TableRowResult {
  readonly row: number;
  readonly status: 'consistent' | 'check the source';
  readonly why: readonly string[];
}

export type TableResults = Readonly<Record<CheckedSheet, readonly TableRowResult[]>>;

export function assessTables(context: Context): TableResults {
  const { book } = context;
  return {
    Limits: findingsBy(book.limits, limitsFindings(context)),
    Classes: findingsBy(book.classes, classFindings(context)),
    Selection: findingsBy(book.selection, selectionFindings(context)),
    Undersizes: findingsBy(book.undersizes, undersizeFindings(context)),
    Gauges: findingsBy(book.gauges, gaugeFindings(book)),
    Materials: findingsBy(book.materials, materialFindings(book)),
  };
}

function findingsBy(rows: readonly TableRow[], findings: Findings): TableRowResult[] {
  return rows.map((row) => {
    const why = [
      ...row.bad.map((bad: BadCell) => reasonOf(bad)),
      ...(row.differing ?? []),
      ...(findings.get(row) ?? []),
    ];
    return { row: row.row, status: why.length > 0 ? 'check the source' : 'consistent', why };
  });
}

/** A thing named twice stands on both rows. */
function repeatedNames<Row extends TableRow>(
  rows: readonly Row[],
  nameOf: (row: Row) => string,
  noun: string,
): Gathered {
  const found = new Gathered();
  for (const group of groupBy(rows, (row) => nameKey(nameOf(row))).values()) {
    if (group.length < 2) continue;
    for (const row of group)
      found.add(row, `${noun} ${nameOf(row)} is named ${group.length} times: the first rules`);
  }
  return found;
}

function limitsFindings(context: Context): Findings {
  const { book } = context;
  const text = textIn(book);
  const found = new Gathered();
  for (const group of groupBy(book.limits, (row) => kindKey(row.engineType, row.fit)).values()) {
    for (const row of group) {
      const pairs = [
        { name: 'Clearance min and max', min: row.clearanceMin, max: row.clearanceMax },
        { name: 'Journal min and max', min: row.journalMin, max: row.journalMax },
        { name: 'Bore min and max', min: row.boreMin, max: row.boreMax },
        { name: 'Bearing min and max', min: row.bearingMin, max: row.bearingMax },
      ];
      for (const { name, min, max } of crossedLimits(pairs)) {
        found.add(row, `${name}: ${text(min!)} is above ${text(max!)}`);
      }
      const { serviceLimit, clearanceMax } = row;
      if (serviceLimit !== undefined && clearanceMax !== undefined && serviceLimit < clearanceMax) {
        found.add(row, `Service limit ${text(serviceLimit)} is below Clearance max ${text(clearanceMax)}`);
      }
      if (group.length > 1)
        found.add(row, `${group.length} rows are for ${row.engineType}, ${row.fit}: the first rules`);
    }
    for (const finding of worstCaseFindings(group[0]!, context, text)) found.add(group[0]!, finding);
  }
  return found;
}

function classFindings({ book }: Context): Findings {
  const found = new Gathered();
  for (const group of groupBy(
    book.classes,
    (row) => `${kindKey(row.engineType, row.fit)}\u0000${row.of}`,
  ).values()) {
    const whole = group.filter((row) => sizeClassOf(row));
    for (const row of group) {
      const blank = (['of', 'mark', 'from', 'to'] as const)
        .filter((key) => row[key] === undefined)
        .map((key) => key[0]!.toUpperCase() + key.slice(1));
      if (row.bad.length === 0 && blank.length > 0) found.add(row, `${blank.join(', ')} left blank`);
    }
    for (const finding of checkClasses(whole.map((row) => sizeClassOf(row)!))) {
      found.add(whole[finding.row]!, classSentence(finding, textIn(book)));
    }
  }
  return found;
}

function classSentence(finding: ClassFinding, text: Text): string {
  switch (finding.kind) {
    case 'from above to':
      return 'From is above To: the row holds no size';
    case 'mark named twice':
      return `mark ${finding.mark} is named twice`;
    case 'gap':
      return `gap to ${finding.mark} from ${text(finding.from)} to ${text(finding.to)}`;
    case 'overlap':
      return `overlap with ${finding.mark} from ${text(finding.from)} to ${text(finding.to)}`;
  }
}

function materialFindings({ materials }: Book): Findings {
  const found = repeatedNames(materials, ({ material }) => material, 'material');
  for (const row of materials) {
    if (row.expansion === undefined && row.bad.length === 0) {
      found.add(row, 'Expansion is blank: the row says nothing of this material');
    }
  }
  return found;
}

function gaugeFindings(book: Book): Findings {
  const found = repeatedNames(book.gauges, ({ gauge }) => gauge, 'gauge');
  const first = new Map([...book.gauges].reverse().map((row) => [nameKey(row.gauge), row]));
  const circular = namesInCircles(first);
  for (const row of book.gauges) {
    if (row.maxError === undefined && row.bad.length === 0)
      found.add(row, 'Max error is blank: rows of this gauge cannot be judged');
    if (row.setFrom === undefined) continue;
    if (!first.has(nameKey(row.setFrom)))
      found.add(row, `Set from names ${row.setFrom}, which Gauges does not list`);
    if (circular.has(nameKey(row.gauge))) found.add(row, `Set from leads in a circle back to ${row.gauge}`);
  }
  return found;
}

/** The keys of gauges whose chain leads back to themselves. Each gauge is walked once: chains share their upper ends. */
function namesInCircles(first: ReadonlyMap<string, GaugeRow>): Set<string> {
  const circular = new Set<string>();
  const walked = new Set<string>();
  for (const start of first.keys()) {
    const path = new Map<string, number>();
    let at: string | undefined = start;
    for (; at !== undefined && !walked.has(at); at = keyOfSetFrom(first.get(at))) {
      walked.add(at);
      path.set(at, path.size);
    }
    const begin = at === undefined ? undefined : path.get(at);
    if (begin !== undefined) for (const key of [...path.keys()].slice(begin)) circular.add(key);
  }
  return circular;
}

function keyOfSetFrom(row: GaugeRow | undefined): string | undefined {
  return row?.setFrom === undefined ? undefined : nameKey(row.setFrom);
}
