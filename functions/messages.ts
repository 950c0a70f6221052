/**
 * Every message that a cell can show. Each says what was found, where, and what was expected; the name
 * of the function is put before it.
 */
export const messages = {
  /** `where` names the argument, and inside a range the cell: `wall_upper (cell 2 of 3)`. */
  found: (where: string, found: string, expected: string) => `${where} is ${found}; expected ${expected}`,
  missing: (argument: string, expected: string) => `${argument} is missing; expected ${expected}`,
  tooMany: (names: readonly string[], given: number) =>
    `takes at most ${names.length} arguments (${names.join(', ')}); found ${given}`,
  cellOf: (argument: string, cell: number, cells: number) =>
    cells === 1 ? argument : `${argument} (cell ${cell} of ${cells})`,
  cellAt: (argument: string, row: number, column: string) => `${argument} (row ${row}, ${column})`,
  withoutHeader: (expected: string) => `${expected}; leave the header row out`,
  tooLong: (expected: string) => `${expected}, less than a kilometre`,
  perKelvin: (expected: string) => `${expected}: 0.0000115 per K is written 11.5`,
  notMultiple: (readings: number, stations: number) =>
    `readings has ${readings} cells, which ${stations} stations cannot share evenly; give every station the same angles`,
  tooFewStations: 'stations is 1; a taper needs readings at 2 stations or more',
  tooFewAngles: (readings: number, stations: number) =>
    `readings has ${readings} cells for ${stations} stations; out of round needs 2 angles or more at each`,
  oneReading: 'readings has 1 cell; a run-out needs 2 readings or more',
  crossed: (low: string, lowValue: string, high: string, highValue: string) =>
    `${low} ${lowValue} lies above ${high} ${highValue}; expected ${low} at or below ${high}`,
  noUsableClass: (argument: string) => `${argument} has no row whose From is at or below its To`,
  unequalRanges: (first: string, cells: number, other: string, otherCells: number) =>
    `${other} has ${otherCells} cells and ${first} has ${cells}; expected ranges of equal length`,
  unforeseen: (reason: string) => `could not be computed: ${reason}`,
} as const;
