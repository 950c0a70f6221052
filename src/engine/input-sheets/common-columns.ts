/** Columns that several sheets have. */
import { column, needed } from './input-sheet.js';
import {
  COUNT,
  ENGINE_NAME,
  GAUGE_NAME,
  NAME,
  PART_NAME,
  SETTING,
  TEMPERATURE,
  TEXT,
  YES_OR_NO,
} from './quantities.js';

export const FIT_WORDS = '`big end`, `main`, or another word.';

/** How a bore is measured that takes shells. */
export const BORE_WITHOUT_SHELLS = 'Bore, cap torqued, no shells in it';
export const GUIDE_TO_BORES =
  'measure the bores with caps torqued and no shells in them. The parting line is at 90°.';

/** How it is measured with its shells in. */
export const BORE_WITH_ITS_SHELLS = {
  measured: 'Bore, cap torqued, its shells in it',
  guide:
    'measure the bores with caps torqued and their shells in them, which stay there. The parting line is at 90°.',
} as const;

export const part = needed('Part', PART_NAME, "The part's own name, once in its sheet.");
export const engineType = column('Engine type', NAME, 'May be left out where Limits names one type only.');
export const mark = column('Mark', NAME, 'The size-class letter or number stamped on the part.', {
  width: 7,
});
/** Of a sheet of bores that take shells; `yes` makes of its fits bores less journals. */
export const shellsIn = column(
  'Shells in',
  YES_OR_NO,
  '`yes`: the shells were in it when it was measured; blank is `no`.',
  { width: 9, isExtra: true },
);
export const quantity = column('Quantity', COUNT, 'How many alike; blank is 1.', { width: 9, isExtra: true });

/** What stands at the right of every sheet of parts. */
export const MEASURED = {
  temperature: column('Temperature', TEMPERATURE, 'Of part and gauge when measured; blank is 20 °C.', {
    width: 12.5,
  }),
  gauge: column('Gauge', GAUGE_NAME, 'The gauge used, as Gauges names it.', { width: 9 }),
  setTo: column(
    'Set to',
    SETTING,
    "The size for which the gauge's zero stood: the readings of the row are deviations from it. Blank: they are sizes.",
    { width: 9, isExtra: true },
  ),
  usable: column('Usable', YES_OR_NO, '`yes` (default) or `no`.', { width: 7.5 }),
  bin: column('Bin', NAME, 'Where the part lies.', { isExtra: true }),
  note: column('Note', TEXT, "The user's own words.", { width: 18 }),
} as const;

/** The columns of a sheet whose rows are known by their place. */
export const PLACE_OF_ROW = {
  engine: needed('Engine', ENGINE_NAME, 'The engine that it is measured on.', { width: 8 }),
  engineType,
  fit: needed('Fit', NAME, 'What is measured, as Limits names it.', { width: 16 }),
  position: needed('Position', NAME, 'Its place.', { width: 9 }),
  gauge: MEASURED.gauge,
  note: MEASURED.note,
} as const;

/** Where a part ran. */
export function ranAt(noun: string) {
  return {
    engine: column('Engine', ENGINE_NAME, `Where the ${noun} ran.`, { width: 8 }),
    position: column('Position', NAME, `Where the ${noun} ran.`, { width: 9 }),
  } as const;
}

/** The engine type that a row of a table is for, and its fit: `the class is`, `the limits are`. */
export function ruleFor(whatIs: string) {
  return {
    engineType: needed('Engine type', NAME, `The type that the ${whatIs} for.`),
    fit: needed('Fit', NAME, FIT_WORDS, { width: 8 }),
  } as const;
}
