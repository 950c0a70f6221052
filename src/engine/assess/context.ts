/** What the rows of a book look up in each other: limits, classes, gauges with their chains, materials. */

import { aimWithin, isOrdered, type SizeClass } from '../../maths/classes.js';
import { exact } from '../../maths/decimal.js';
import type { Grain } from '../../maths/grain.js';
import type { SystematicSource } from '../../maths/shared-gauges.js';
import type { SelectionRow } from '../../maths/tables.js';
import type { GaugeRandom } from '../../maths/uncertainty.js';
import type { Book, ClassOf, ClassRow, Expansion, GaugeRow, LimitsRow, PartRow } from '../book/book.js';
import { type MaterialLookup, materialLookup } from '../book/materials.js';
import { nameKey } from '../book/names.js';
import { type BadCell, reasonOf } from '../book/problems.js';
import { Row } from '../book/row.js';
import { GAUGES } from '../input-sheets/gauges.js';
import { partSheet } from '../input-sheets/index.js';
import { limitHeader, ROLES } from '../input-sheets/roles.js';
import { sizesByGauge } from './sizes-by-gauge.js';

/** An engine type and a fit of it, as one key. */
export function kindKey(engineType: string, fit: string): string {
  return `${nameKey(engineType)}\u0000${nameKey(fit)}`;
}

/** Groups rows by a key, in the order in which the keys first appear. */
export function groupBy<Row>(rows: readonly Row[], key: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(key(row));
    if (group) group.push(row);
    else groups.set(key(row), [row]);
  }
  return groups;
}

/** A gauge as it stands behind a reading. */
export interface GaugeUse {
  readonly systematic: readonly SystematicSource[];
  readonly random: GaugeRandom;
  /** Undefined where steel has been made unknown. */
  readonly expansion: Expansion | undefined;
  /** Rows of Gauges from the gauge itself up its chain, for formulas. */
  readonly rows: readonly GaugeRow[];
  /** The gauges of a circle in its chain: a zero that nothing sets. */
  readonly circle: readonly string[];
}

export type GaugeLookup =
  | { readonly gauge: GaugeUse | undefined; readonly why: readonly string[] }
  | { readonly bad: readonly string[] };

/** The classes of one kind of part that can hold a size. */
export interface UsableClasses {
  readonly classes: readonly SizeClass[];
  readonly rows: readonly ClassRow[];
}

export class Context {
  private readonly limits: Map<string, LimitsRow>;
  private readonly classRows: Map<string, ClassRow[]>;
  private readonly classes = new Map<string, UsableClasses>();
  private readonly candidates = new Map<string, readonly SizeClass[]>();
  private readonly gaugeUses = new Map<string | undefined, GaugeLookup>();
  private readonly gauges: Map<string, GaugeRow>;
  private measuredBy: ReadonlyMap<string, { readonly from: Grain; readonly to: Grain }> | undefined;
  private readonly selection: Map<string, SelectionRow[]>;
  readonly material: MaterialLookup;

  constructor(readonly book: Book) {
    this.limits = new Map([...book.limits].reverse().map((row) => [kindKey(row.engineType, row.fit), row]));
    this.classRows = groupBy(book.classes, (row) => `${kindKey(row.engineType, row.fit)}\u0000${row.of}`);
    this.gauges = new Map([...book.gauges].reverse().map((row) => [nameKey(row.gauge), row]));
    this.material = materialLookup(book.materials);
    const named = book.selection.flatMap((row) => {
      const { journalMark, boreMark, shellMark } = row;
      if (row.bad.length > 0 || !journalMark || !boreMark || !shellMark) return [];
      return [{ kind: kindKey(row.engineType, row.fit), row: { journalMark, boreMark, shellMark } }];
    });
    this.selection = new Map(
      [...groupBy(named, ({ kind }) => kind)].map(([kind, rows]) => [kind, rows.map(({ row }) => row)]),
    );
  }

  limitsOf(engineType: string | undefined, fit: string): LimitsRow | undefined {
    return engineType === undefined ? undefined : this.limits.get(kindKey(engineType, fit));
  }

  /** The clearance aimed for; undefined where no limits say, or where the cell that says it was refused. */
  aimOf(limits: LimitsRow | undefined): Grain | undefined {
    if (limits?.aim !== undefined) return limits.aim;
    const { aimShare } = this.book.setup;
    if (limits?.clearanceMin === undefined || limits.clearanceMax === undefined) return undefined;
    if (aimShare === undefined || this.aimFault(limits)) return undefined;
    return aimWithin(limits.clearanceMin, limits.clearanceMax, aimShare);
  }

  /** The refused cell that leaves the limits without an aim. */
  aimFault(limits: LimitsRow | undefined): BadCell | undefined {
    if (!limits || limits.aim !== undefined) return undefined;
    return [...limits.bad, ...this.book.setup.bad].find(({ header }) => header === 'Aim');
  }

  /** Rows with a bad cell or From above To take no part; a part of no known type has no classes. */
  classesOf(engineType: string | undefined, fit: string, of: ClassOf): UsableClasses {
    if (engineType === undefined) return { classes: [], rows: [] };
    const key = `${kindKey(engineType, fit)}\u0000${of}`;
    const known = this.classes.get(key) ?? this.usableClasses(this.classRows.get(key) ?? []);
    this.classes.set(key, known);
    return known;
  }

  private usableClasses(rows: readonly ClassRow[]): UsableClasses {
    const usable = rows.flatMap((row) => {
      const { mark, from, to, bad } = row;
      if (bad.length > 0 || mark === undefined || from === undefined || to === undefined) return [];
      return isOrdered({ mark, from, to }) ? [{ row, size: { mark, from, to } }] : [];
    });
    return { classes: usable.map(({ size }) => size), rows: usable.map(({ row }) => row) };
  }

  /** The shells of a fit that can be had: the new ones, else the classes of shells. */
  candidatesOf(engineType: string | undefined, fit: string): readonly SizeClass[] {
    if (engineType === undefined) return [];
    const kind = kindKey(engineType, fit);
    const known = this.candidates.get(kind) ?? this.findCandidates(engineType, fit, kind);
    this.candidates.set(kind, known);
    return known;
  }

  private findCandidates(engineType: string, fit: string, kind: string): readonly SizeClass[] {
    const offered = this.book.newShells.flatMap((row) => {
      const { mark, from, to, bad } = row;
      if (kindKey(row.engineType, row.fit) !== kind || bad.length > 0) return [];
      return mark === undefined || from === undefined || to === undefined ? [] : [{ mark, from, to }];
    });
    return offered.length > 0 ? offered : this.classesOf(engineType, fit, 'shell').classes;
  }

  selectionOf(engineType: string | undefined, fit: string): readonly SelectionRow[] {
    return (engineType !== undefined && this.selection.get(kindKey(engineType, fit))) || [];
  }

  /** The gauge that a row names, followed up its `Set from` chain. */
  gaugeOf(name: string | undefined): GaugeLookup {
    const known = this.gaugeUses.get(name) ?? this.findGauge(name);
    this.gaugeUses.set(name, known);
    return known;
  }

  /**
   * Whether a gauge measures a size: by its From and To; where these are blank, by the sizes that it measured in this book.
   */
  reaches(gauge: GaugeUse, size: Grain): boolean {
    const row = gauge.rows[0]!;
    const isTyped = row.from !== undefined || row.to !== undefined;
    const { from, to } = isTyped ? row : (this.sizesMeasured.get(nameKey(row.gauge)) ?? {});
    return (from === undefined || size >= from) && (to === undefined || size <= to);
  }

  private findGauge(name: string | undefined): GaugeLookup {
    if (name === undefined) return { gauge: undefined, why: [] };
    const first = this.gauges.get(nameKey(name));
    if (!first) return { gauge: undefined, why: [`gauge ${name} is not in Gauges: counted as none`] };
    const chain = new Set<GaugeRow>();
    let row: GaugeRow | undefined = first;
    while (row && !chain.has(row)) {
      chain.add(row);
      row = row.setFrom === undefined ? undefined : this.gauges.get(nameKey(row.setFrom));
    }
    const rows = [...chain];
    const bad = rows.flatMap((row) => gaugeFaults(row, this.book));
    if (bad.length > 0) return { bad };
    return {
      gauge: {
        systematic: rows.map((row) => ({
          gauge: nameKey(row.gauge),
          maxError: row.maxError!,
          isConstant: row.isConstant,
        })),
        random: first,
        expansion: first.expansion,
        rows,
        circle: row ? rows.slice(rows.indexOf(row)).map(({ gauge }) => gauge) : [],
      },
      why: [],
    };
  }

  /** The sizes that each gauge measured in this book, and as much beside them as any of its kind reaches. */
  private get sizesMeasured(): ReadonlyMap<string, { readonly from: Grain; readonly to: Grain }> {
    this.measuredBy ??= sizesByGauge(this.book);
    return this.measuredBy;
  }

  /** Exact 20 °C, where a row names no temperature. */
  readonly reference = exact(20);

  /** A bad material cell of the limits, which every part of its role needs. */
  materialFault(row: PartRow, limits: LimitsRow | undefined): BadCell | undefined {
    const { material } = ROLES[partSheet(row.sheet).role];
    return material && limits?.bad.find(({ header }) => header === limitHeader(material));
  }

  /** The refused cell of Materials that leaves the expansion of steel unknown. */
  steelFault(): BadCell | undefined {
    if (this.material('steel') !== undefined) return undefined;
    return this.book.materials.find(({ material }) => nameKey(material) === 'steel')?.bad[0];
  }

  /**
   * The expansion of a part; undefined where its material is not named and its sheet gives none, and where
   * steel is unknown.
   */
  expansionOf(row: PartRow, limits: LimitsRow | undefined): Expansion | undefined {
    const named = namedMaterial(row, limits) ?? partSheet(row.sheet).material;
    return named === undefined ? undefined : this.material(named);
  }
}

/** The material that Limits names for a part. */
export function namedMaterial({ sheet }: PartRow, limits: LimitsRow | undefined): string | undefined {
  const { material } = ROLES[partSheet(sheet).role];
  return material && limits?.[material];
}

/** A bad cell of a gauge, or its blank Max error, counts against every row of that gauge. */
function gaugeFaults(row: GaugeRow, book: Book): string[] {
  const faults = row.bad.map(reasonOf);
  if (row.maxError === undefined && !row.bad.some(({ header }) => header === 'Max error')) {
    const at = new Row(book.tables.get(GAUGES.name)!, row.row).address('Max error');
    faults.push(`Gauges!${at} (Max error): blank, expected the greatest error of gauge ${row.gauge}`);
  }
  return faults;
}
