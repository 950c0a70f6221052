/** What the record of a sheet that a user fills says. */
import type { InputQuantity, ValueOf } from './quantities.js';

export interface InputColumn<Of extends InputQuantity = InputQuantity> {
  readonly header: string;
  readonly quantity: Of;
  /** The sheet cannot be read without this column. */
  readonly needed?: true;
  /** What the column holds, for the blank sheet and the documentation. */
  readonly help: string;
  /** On the blank sheet, in characters. */
  readonly width?: number;
  /** The blank sheet leaves it out; it may be added by hand. */
  readonly isExtra?: true;
}

/** The columns of a sheet by the names that its rows have them under. */
export type InputColumns = Readonly<Record<string, InputColumn>>;

/** What a row of these columns is read as; undefined is a blank or a refused cell. */
export type RowValues<Columns extends InputColumns> = {
  readonly [Key in keyof Columns]: ValueOf<Columns[Key]['quantity']> | undefined;
};

/**
 * What the columns of readings are: diameters by station and angle, walls, lengths and necks of bolts, gaps with their
 * feelers, or what a dial shows by station and angle with its total.
 */
export type ReadingKind = 'diameters' | 'walls' | 'bolts' | 'gaps' | 'dial';

/** The kinds of readings that parts of a fit have. */
export type PartReadings = Exclude<ReadingKind, 'bolts'>;

export interface InputSheet<Columns extends InputColumns = InputColumns> {
  readonly name: string;
  readonly columns: Columns;
  readonly readings?: ReadingKind;
  /** The headers whose cells together tell a measured row from the others; without them its Part. */
  readonly rowNames?: readonly string[];
  /** A maker prints its lengths in two units: a column may stand twice, the second to check the first. */
  readonly isPrintedTwice?: true;
}

/**
 * How a part stands in a fit, and with it which limits, classes and materials are its own. A shaped one is oval and
 * tapered by design, so that its form is not judged.
 */
export type PartRole = 'inner' | 'shaped inner' | 'outer' | 'wall' | 'gap' | 'run-out';

/** A sheet of measured parts. */
export interface PartSheet extends InputSheet {
  /** One of its parts, in a sentence: `rod`. */
  readonly noun: string;
  /** What is counted of them: one, and several. */
  readonly counted: readonly [one: string, several: string];
  /** Several of them, as the caption of a table: `Connecting rods`. */
  readonly plural: string;
  readonly readings: PartReadings;
  readonly role: PartRole;
  /** The fit of a row: what its column Fit says, else this word; without the column always this word. */
  readonly fit?: string;
  /** What a part is made of where Limits names no material; undefined: it is left as it was read. */
  readonly material: 'steel' | undefined;
  /** What matching does with its parts: it fills them, leaves them where they are, or chooses among them. */
  readonly matching: 'filled' | 'stays' | 'chosen';
  /** Letter before the position in names that the blank sheet proposes, `R1`; without it that of the place. */
  readonly letter?: string;
  /** What a reading is of, for the blank sheet: `Diameter`. */
  readonly measured: string;
  /** How to measure them, for the guide of the blank workbook. */
  readonly guide: string;
  /** Its rows are known by their place, have no name of their own, and get the verdict of a fit each, beside them. */
  readonly isOfPlaces?: true;
  /** The same of bores that are measured with their shells in. */
  readonly withShells?: { readonly measured: string; readonly guide: string };
  /** It runs without shells: no parting line, no crankpin to count its angles from. */
  readonly isPlain?: true;
  /** Whether the page draws its spots along the axis. */
  readonly isDrawn?: true;
}

type Looks = Pick<InputColumn, 'width' | 'isExtra'>;

export function needed<Of extends InputQuantity>(
  header: string,
  quantity: Of,
  help: string,
  looks: Looks = {},
): InputColumn<Of> {
  return { header, quantity, needed: true, help, ...looks };
}

export function column<Of extends InputQuantity>(
  header: string,
  quantity: Of,
  help: string,
  looks: Looks = {},
): InputColumn<Of> {
  return { header, quantity, help, ...looks };
}

export function columnsOf({ columns }: InputSheet): readonly InputColumn[] {
  return Object.values(columns);
}

/** The headers by which a row of the sheet is known where it stands elsewhere. */
export function namedBy(sheet: InputSheet): readonly string[] {
  return columnsOf(sheet).flatMap(({ header, needed }) => (needed ? [header] : []));
}
