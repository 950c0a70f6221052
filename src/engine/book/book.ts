/** A workbook understood: settings, the maker's tables, gauges, parts and fits, each with its place. */
import type { Ratio } from '../../maths/decimal.js';
import type { Grain } from '../../maths/grain.js';
import type { Half } from '../../maths/matching/stock.js';
import type { LengthUnit, TemperatureUnit } from '../../maths/units.js';
import type { CLASSES } from '../input-sheets/classes.js';
import type { FITS } from '../input-sheets/fits.js';
import type { InputColumns, RowValues } from '../input-sheets/input-sheet.js';
import type { LIMITS } from '../input-sheets/limits.js';
import type { NEW_SHELLS } from '../input-sheets/new-shells.js';
import type { ReadExactLength } from '../input-sheets/quantities.js';
import type { SELECTION } from '../input-sheets/selection.js';
import type { UNDERSIZES } from '../input-sheets/undersizes.js';
import type { WorkbookModel } from '../workbook-model.js';
import type { BySheet } from './by-sheet.js';
import type { FastenerRow } from './fasteners.js';
import type { OwnColumns } from './own-columns.js';
import type { Placement } from './placement.js';
import type { BadCell } from './problems.js';
import type { TableRow } from './read-row.js';
import type { BareNumber, ReadLength, Table } from './table.js';

export interface Setup {
  readonly lengthUnit: LengthUnit;
  readonly temperatureUnit: TemperatureUnit;
  /** 0.5 to 0.9999. */
  readonly confidence: number;
  /** 0..1 of the clearance range; undefined where its cell was refused. */
  readonly aimShare: number | undefined;
  readonly allowUndecided: boolean;
  /** Whether matching may make fits within the service limit. */
  readonly allowWorn: boolean;
  readonly buyNewShells: boolean;
  readonly preferKeptPairs: boolean;
  /** Whether a rod that ran on a journal serves there only. */
  readonly rodsStay: boolean;
  /** Whether half-shells whose rows name one place serve only with each other. */
  readonly halvesStay: boolean;
  readonly newWithUsed: boolean;
  readonly massSpread: number | undefined;
  readonly halfDifference: Grain | undefined;
  /** The step of the scale that strip readings are read by. */
  readonly stripStep: Grain;
  /** Refused cells, each of a setting that only matching and the aim need. */
  readonly bad: readonly BadCell[];
}

/** A row that is for one engine type and fit, each blank where its cell is. */
type ForKind<Sheet extends { readonly columns: InputColumns }> = TableRow &
  Omit<RowValues<Sheet['columns']>, 'engineType' | 'fit'> & {
    readonly engineType: string;
    readonly fit: string;
  };

export type LimitsRow = ForKind<typeof LIMITS>;
/** Inner parts are `journal`, outer ones `bore`, whatever their word. */
export type ClassRow = Omit<ForKind<typeof CLASSES>, 'of'> & {
  readonly of: 'journal' | 'bore' | 'shell' | undefined;
};
export type SelectionTableRow = ForKind<typeof SELECTION>;
export type UndersizeRow = ForKind<typeof UNDERSIZES>;
export type NewShellRow = Omit<ForKind<typeof NEW_SHELLS>, 'price'> & { readonly price: number };

/** What a size class is of. */
export type ClassOf = NonNullable<ClassRow['of']>;

export interface GaugeRow extends TableRow {
  readonly gauge: string;
  readonly maxError: Grain | undefined;
  readonly resolution: Grain;
  readonly repeatability: Grain;
  /** Blank is steel, and so is what was refused. */
  readonly material: string;
  /** Undefined where its material cannot be read, or steel has been made unknown. */
  readonly expansion: Expansion | undefined;
  readonly setFrom: string | undefined;
  /** Its error is one constant at all sizes. */
  readonly isConstant: boolean;
  /** The sizes that it can measure. */
  readonly from: Grain | undefined;
  readonly to: Grain | undefined;
}

/** A linear expansion coefficient and half the width of the interval in which it lies, 1e-6 per K. */
export interface Expansion {
  readonly value: number;
  readonly error: number;
}

export interface MaterialRow extends TableRow {
  readonly material: string;
  readonly expansion: Expansion | undefined;
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

export interface PartRow extends TableRow {
  /** The sheet's name in the records. */
  readonly sheet: string;
  readonly name: string;
  readonly engineType: string | undefined;
  readonly engine: string;
  readonly fit: string;
  readonly position: string;
  readonly mark: string | undefined;
  readonly half: Half | undefined;
  readonly quantity: number;
  /** Its shells were in it when it was measured. */
  readonly hasShells: boolean;
  readonly mass: number | undefined;
  /** Exact °C; undefined where blank, which is 20 °C. */
  readonly celsius: Ratio | undefined;
  /** Whether the temperature cell is a plain number or blank, over which a live formula can work. */
  readonly temperatureIsLive: boolean;
  readonly gauge: string | undefined;
  /** The size for which the gauge's zero stood; undefined: readings are sizes. */
  readonly setTo: ReadExactLength | undefined;
  readonly usable: boolean;
  readonly bin: string | undefined;
  readonly readings: readonly Reading[];
}

export type FitRow = TableRow &
  Omit<RowValues<(typeof FITS)['columns']>, 'engine' | 'fit' | 'position'> & {
    readonly engine: string;
    readonly fit: string;
    readonly position: string;
  };

export interface Book {
  readonly model: WorkbookModel;
  readonly setup: Setup;
  /** The engine type of rows that name none; undefined where Limits names several and each row must name its own. */
  readonly onlyEngineType: string | undefined;
  /** The user's sheets that are known, by their names in the records. */
  readonly tables: ReadonlyMap<string, Table>;
  /** The program's own columns of an earlier run, by the same names. */
  readonly own: ReadonlyMap<string, OwnColumns>;
  /** Where the results of a sheet of the user's stand, by the same names. */
  readonly places: ReadonlyMap<string, Placement>;
  readonly limits: readonly LimitsRow[];
  readonly classes: readonly ClassRow[];
  readonly selection: readonly SelectionTableRow[];
  readonly gauges: readonly GaugeRow[];
  readonly materials: readonly MaterialRow[];
  readonly newShells: readonly NewShellRow[];
  readonly undersizes: readonly UndersizeRow[];
  readonly studies: readonly StudyRow[];
  readonly fasteners: readonly FastenerRow[];
  readonly parts: BySheet<PartRow>;
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
