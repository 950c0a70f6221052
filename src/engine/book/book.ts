/** A workbook understood: settings, the maker's tables, gauges, parts and fits, each with its place. */
import type { Ratio } from '../../maths/decimal.js';
import type { Grain } from '../../maths/grain.js';
import type { Half } from '../../maths/matching/stock.js';
import type { LengthUnit, TemperatureUnit } from '../../maths/units.js';
import type { WorkbookModel } from '../workbook-model.js';
import type { SheetName } from './input-sheets.js';
import type { BadCell } from './problems.js';
import type { BareNumber, ReadLength, Table } from './table.js';

export interface Setup {
  readonly lengthUnit: LengthUnit;
  readonly temperatureUnit: TemperatureUnit;
  /** 0.5 to 0.9999. */
  readonly confidence: number;
  /** 0..1 of the clearance range; undefined where its cell was refused. */
  readonly aimShare: number | undefined;
  readonly allowUndecided: boolean;
  readonly buyNewShells: boolean;
  readonly preferKeptPairs: boolean;
  readonly massSpread: number | undefined;
  readonly halfDifference: Grain | undefined;
  /** Refused cells, each of a setting that only matching and the aim need. */
  readonly bad: readonly BadCell[];
}

/** A row of a table, with what is wrong in it. */
export interface TableRow {
  readonly row: number;
  readonly bad: readonly BadCell[];
}

export interface LimitsRow extends TableRow {
  readonly engineType: string;
  readonly fit: string;
  readonly clearanceMin: Grain | undefined;
  readonly clearanceMax: Grain | undefined;
  readonly serviceLimit: Grain | undefined;
  readonly aim: Grain | undefined;
  readonly journalMin: Grain | undefined;
  readonly journalMax: Grain | undefined;
  readonly wearLimit: Grain | undefined;
  readonly boreMin: Grain | undefined;
  readonly boreMax: Grain | undefined;
  readonly outOfRoundLimit: Grain | undefined;
  readonly taperLimit: Grain | undefined;
  readonly neighbourSpread: Grain | undefined;
  readonly massSpread: number | undefined;
  readonly journalMaterial: string | undefined;
  readonly boreMaterial: string | undefined;
}

export type ClassOf = 'journal' | 'bore' | 'shell';

export interface ClassRow extends TableRow {
  readonly engineType: string;
  readonly fit: string;
  readonly of: ClassOf | undefined;
  readonly mark: string | undefined;
  readonly from: Grain | undefined;
  readonly to: Grain | undefined;
}

export interface SelectionTableRow extends TableRow {
  readonly engineType: string;
  readonly fit: string;
  readonly journalMark: string | undefined;
  readonly boreMark: string | undefined;
  readonly shellMark: string | undefined;
}

export interface GaugeRow extends TableRow {
  readonly gauge: string;
  readonly maxError: Grain | undefined;
  readonly resolution: Grain;
  readonly repeatability: Grain;
  /** 1e-6 per K; undefined where its material cannot be read, or steel has been made unknown. */
  readonly expansion: number | undefined;
  readonly setFrom: string | undefined;
}

export interface MaterialRow extends TableRow {
  readonly material: string;
  readonly expansion: number | undefined;
}

/** What the maker lets journals be ground to. */
export interface UndersizeRow extends TableRow {
  readonly engineType: string;
  readonly fit: string;
  readonly step: string | undefined;
  readonly journalMin: Grain | undefined;
  readonly journalMax: Grain | undefined;
}

export interface NewShellRow extends TableRow {
  readonly engineType: string;
  readonly fit: string;
  readonly half: Half | undefined;
  readonly mark: string | undefined;
  readonly from: Grain | undefined;
  readonly to: Grain | undefined;
  readonly price: number;
  /** The undersize that it is for; undefined: any. */
  readonly step: string | undefined;
}

/** One reading of a gauge study. */
export interface StudyRow extends TableRow {
  readonly gauge: string;
  readonly part: string;
  readonly person: string;
  readonly trial: string;
  readonly value: Grain | undefined;
}

/** One reading cell of a part, uncorrected. */
export type Reading = ReadLength;

export type PartSheet = 'Journals' | 'Rods' | 'Cases' | 'Shells';

export interface PartRow extends TableRow {
  readonly sheet: PartSheet;
  readonly name: string;
  readonly engineType: string | undefined;
  readonly engine: string;
  readonly fit: string;
  readonly position: string;
  readonly mark: string | undefined;
  readonly half: Half | undefined;
  readonly quantity: number;
  readonly mass: number | undefined;
  /** Exact °C; undefined where blank, which is 20 °C. */
  readonly celsius: Ratio | undefined;
  /** Whether the temperature cell is a plain number or blank, over which a live formula can work. */
  readonly temperatureIsLive: boolean;
  readonly gauge: string | undefined;
  readonly usable: boolean;
  readonly bin: string | undefined;
  readonly readings: readonly Reading[];
}

export interface FitRow extends TableRow {
  readonly engine: string;
  readonly fit: string;
  readonly position: string;
  readonly journal: string | undefined;
  readonly bore: string | undefined;
  readonly upper: string | undefined;
  readonly lower: string | undefined;
  readonly strip: Grain | undefined;
}

export interface Book {
  readonly model: WorkbookModel;
  readonly setup: Setup;
  /** The engine type of rows that name none; undefined where Limits names several and each row must name its own. */
  readonly onlyEngineType: string | undefined;
  /** The user's sheets that are known, by name. */
  readonly tables: ReadonlyMap<SheetName, Table>;
  readonly limits: readonly LimitsRow[];
  readonly classes: readonly ClassRow[];
  readonly selection: readonly SelectionTableRow[];
  readonly gauges: readonly GaugeRow[];
  readonly materials: readonly MaterialRow[];
  readonly newShells: readonly NewShellRow[];
  readonly undersizes: readonly UndersizeRow[];
  readonly studies: readonly StudyRow[];
  readonly journals: readonly PartRow[];
  readonly rods: readonly PartRow[];
  readonly cases: readonly PartRow[];
  readonly shells: readonly PartRow[];
  /** The user's rows of Fits; undefined where the program makes the sheet. */
  readonly fits: readonly FitRow[] | undefined;
  /** Strip readings kept from a Fits sheet that the program made. */
  readonly keptStrips: readonly FitRow[];
  /** Every refused cell, in the order of sheets and rows. */
  readonly bad: readonly BadCell[];
  /** Sentences about the book that stand at no one cell. */
  readonly notices: readonly string[];
  readonly bareNumbers: readonly BareNumber[];
}
