/**
 * The sheets and columns that a user fills, one record each. Reading, the blank sheet and the
 * documentation go by this table.
 */

export type SheetName =
  | 'Setup'
  | 'Limits'
  | 'Classes'
  | 'Selection'
  | 'Gauges'
  | 'Materials'
  | 'Journals'
  | 'Rods'
  | 'Cases'
  | 'Shells'
  | 'New shells'
  | 'Undersizes'
  | 'Fits'
  | 'Gauge study';

export interface InputColumn {
  readonly header: string;
  /** The sheet cannot be read without this column. */
  readonly needed?: true;
  /** What the column holds, for the blank sheet and the documentation. */
  readonly help: string;
}

export interface InputSheet {
  readonly columns: readonly InputColumn[];
  /** Whether the sheet has reading columns: diameters by station and angle, or walls. */
  readonly readings?: 'diameters' | 'walls';
}

const needed = (header: string, help: string): InputColumn => ({ header, needed: true, help });
const column = (header: string, help: string): InputColumn => ({ header, help });

const PART = needed('Part', "The part's own name, once in its sheet.");
const ENGINE_TYPE = column('Engine type', 'May be left out where Limits names one type only.');
const MARK = column('Mark', 'The size-class letter or number stamped on the part.');
const TEMPERATURE = column('Temperature', 'Of part and gauge when measured; blank is 20 °C.');
const GAUGE = column('Gauge', 'The gauge used, as Gauges names it.');
const USABLE = column('Usable', '`yes` (default) or `no`.');
const BIN = column('Bin', 'Where the part lies.');
const NOTE = column('Note', "The user's own words.");

export const INPUT_SHEETS: Readonly<Record<SheetName, InputSheet>> = {
  Setup: {
    columns: [needed('Item', 'The name of a setting.'), needed('Value', 'Its value.')],
  },
  Limits: {
    columns: [
      needed('Engine type', 'The type that the limits are for.'),
      needed('Fit', '`big end`, `main`, or another word.'),
      needed('Clearance min', 'Least diametral clearance.'),
      needed('Clearance max', 'Greatest diametral clearance of new parts.'),
      column('Service limit', 'Greatest clearance of worn parts.'),
      column('Aim', 'The clearance wished for.'),
      column('Journal min', 'Least journal size.'),
      column('Journal max', 'Greatest journal size.'),
      column('Wear limit', 'Least size of a worn journal.'),
      column('Bore min', 'Least bore size.'),
      column('Bore max', 'Greatest bore size.'),
      column('Out-of-round limit', 'Greatest out of round of journal and bore.'),
      column('Taper limit', 'Greatest taper of journal and bore.'),
      column('Neighbour spread', 'Greatest difference of clearance between neighbours.'),
      column('Mass spread', 'Greatest difference of mass among the rods of one crank, g.'),
      column('Journal material', 'A material of Materials or a built-in one.'),
      column('Bore material', 'A material of Materials or a built-in one.'),
      column('Source', 'Where the limits were read.'),
    ],
  },
  Classes: {
    columns: [
      needed('Engine type', 'The type that the class is for.'),
      needed('Fit', '`big end`, `main`, or another word.'),
      needed('Of', '`journal`, `bore` or `shell`.'),
      needed('Mark', 'The mark stamped on parts of the class.'),
      needed('From', 'Least size.'),
      needed('To', 'First size above the class.'),
    ],
  },
  Selection: {
    columns: [
      needed('Engine type', 'The type that the row is for.'),
      needed('Fit', '`big end`, `main`, or another word.'),
      needed('Journal mark', "The journal's mark."),
      needed('Bore mark', "The bore's mark."),
      needed('Shell mark', 'The shell that goes between them.'),
    ],
  },
  Gauges: {
    columns: [
      needed('Gauge', "The gauge's name."),
      needed('Max error', '±, from its maker or certificate.'),
      column('Resolution', 'Its smallest step.'),
      column('Repeatability', 'Standard deviation of one reading.'),
      column('Material', 'What it is made of; blank is steel.'),
      column('Set from', 'The gauge that set its zero.'),
    ],
  },
  Materials: {
    columns: [
      needed('Material', "The material's name."),
      needed('Expansion', 'Linear expansion coefficient, 1e-6 per K.'),
    ],
  },
  Journals: {
    readings: 'diameters',
    columns: [
      PART,
      ENGINE_TYPE,
      needed('Engine', 'Groups the journals of one crank.'),
      needed('Fit', '`big end`, `main`, or another word.'),
      needed('Position', 'Its place along the crank.'),
      MARK,
      TEMPERATURE,
      GAUGE,
      USABLE,
      BIN,
      NOTE,
    ],
  },
  Rods: {
    readings: 'diameters',
    columns: [
      PART,
      ENGINE_TYPE,
      column('Engine', 'Where the rod ran.'),
      column('Position', 'Where the rod ran.'),
      MARK,
      column('Mass', 'In grams.'),
      TEMPERATURE,
      GAUGE,
      USABLE,
      BIN,
      NOTE,
    ],
  },
  Cases: {
    readings: 'diameters',
    columns: [
      PART,
      ENGINE_TYPE,
      needed('Engine', 'The engine that the case belongs to.'),
      needed('Position', 'Its place along the crank.'),
      MARK,
      TEMPERATURE,
      GAUGE,
      USABLE,
      BIN,
      NOTE,
    ],
  },
  Shells: {
    readings: 'walls',
    columns: [
      PART,
      ENGINE_TYPE,
      column('Fit', 'Blank is `big end`.'),
      column('Engine', 'Where the shell ran.'),
      column('Position', 'Where the shell ran.'),
      needed('Half', '`upper`, `lower` or `either`.'),
      MARK,
      column('Quantity', 'How many alike; blank is 1.'),
      TEMPERATURE,
      GAUGE,
      USABLE,
      BIN,
      NOTE,
    ],
  },
  'New shells': {
    columns: [
      needed('Engine type', 'The type that the shell is for.'),
      needed('Fit', '`big end`, `main`, or another word.'),
      needed('Half', '`upper`, `lower` or `either`.'),
      needed('Mark', 'What to order.'),
      needed('Wall from', 'Least wall.'),
      needed('Wall to', 'Greatest wall.'),
      column('Price', 'Of one, to four decimals; blank is 1.'),
      column('Step', 'The step of Undersizes that the shell is for; blank: any.'),
    ],
  },
  Undersizes: {
    columns: [
      needed('Engine type', 'The type that the step is for.'),
      needed('Fit', '`big end`, `main`, or another word.'),
      needed('Step', "The step's name, as `0.25`."),
      needed('Journal min', 'Least journal size after grinding.'),
      needed('Journal max', 'Greatest journal size after grinding.'),
    ],
  },
  Fits: {
    columns: [
      needed('Engine', 'The engine.'),
      needed('Fit', '`big end`, `main`, or another word.'),
      needed('Position', 'The place along the crank.'),
      column('Journal', 'Blank: filled by place.'),
      column('Bore', 'Blank: filled by place.'),
      column('Upper shell', 'Blank: filled by place.'),
      column('Lower shell', 'Blank: filled by place.'),
      column('Strip reading', 'The clearance that a plastic gauge strip showed.'),
    ],
  },
  'Gauge study': {
    columns: [
      needed('Gauge', 'The gauge that is studied, as Gauges names it.'),
      needed('Part', 'One of several parts that differ as the measured ones do.'),
      needed('Person', 'Who measured.'),
      needed('Trial', 'First, second, third reading of the part by that person, the others unseen.'),
      needed('Value', 'The reading.'),
    ],
  },
};

/** The settings of the sheet Setup. */
export const SETUP_ITEMS = [
  'Length unit',
  'Temperature unit',
  'Confidence',
  'Aim',
  'Undecided fits',
  'New shells',
  'Prefer',
  'Mass spread',
  'Half difference',
] as const;
