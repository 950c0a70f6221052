/** One fit of a big end, for tests. */
import { assess, type Plain, type Sheets, table } from '../book-of.js';

export type Cells = Readonly<Record<string, Plain>>;

export const AT_1 = { Engine: 'E1', Position: 1 };
export const LIMITS = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 };

export interface Given {
  readonly journal?: Cells;
  readonly bore?: Cells;
  readonly upper?: Cells;
  readonly lower?: Cells;
  readonly limits?: Cells;
  readonly sheets?: Sheets;
}

/** Bore 45, walls 1.5, journal 42 less the clearance asked for. */
export function fitOf(clearance: number, { journal, bore, upper, lower, limits, sheets }: Given = {}) {
  const size = Number((42 - clearance).toFixed(6));
  return assess({
    Limits: table({ ...LIMITS, ...limits }),
    Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': size, ...journal }),
    Rods: table({ Part: 'R1', ...AT_1, 'A 0': 45, ...bore }),
    Shells: table(
      { Part: 'U', ...AT_1, Half: 'upper', 'Wall 1': 1.5, ...upper },
      { Part: 'L', ...AT_1, Half: 'lower', 'Wall 1': 1.5, ...lower },
    ),
    ...sheets,
  }).fits[0]!;
}
