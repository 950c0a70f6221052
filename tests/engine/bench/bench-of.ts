/** A small book at the bench: one big end, two spots a journal, three repeats of one of them. */

import type { Answer } from '../../../src/engine/bench/answer.js';
import { BenchBook } from '../../../src/engine/bench/bench-book.js';
import { Dialogue } from '../../../src/engine/bench/dialogue.js';
import type { LogEntry } from '../../../src/engine/bench/log-line.js';
import { blankSpots } from '../../../src/engine/bench/order.js';
import { modelOf, type Plain, type Sheets, table } from '../book-of.js';

const AT_1 = { 'Engine type': 'X', Engine: 'E1', Position: 1 };

export function sheets(journal: Readonly<Record<string, Plain>> = {}, others: Sheets = {}): Sheets {
  return {
    Limits: table({
      'Engine type': 'X',
      Fit: 'big end',
      'Clearance min': 0.02,
      'Clearance max': 0.05,
      'Journal min': 41.985,
      'Journal max': 42.005,
    }),
    Gauges: table(
      { Gauge: 'M1', 'Max error': 0.004, Repeatability: 0.001 },
      { Gauge: 'D1', 'Max error': 0.002 },
    ),
    Journals: table({
      Part: 'J1',
      ...AT_1,
      Fit: 'big end',
      Temperature: undefined,
      Gauge: 'M1',
      'A 0': undefined,
      'A 0 #2': undefined,
      'A 90': undefined,
      'B 0': undefined,
      Note: undefined,
      ...journal,
    }),
    Rods: table({ Part: 'R1', ...AT_1, Gauge: 'D1', 'A 0': undefined }),
    Shells: table(
      { Part: 'U', ...AT_1, Half: 'upper', Gauge: 'M1', 'Wall 1': undefined },
      { Part: 'L', ...AT_1, Half: 'lower', Gauge: 'M1', 'Wall 1': undefined },
    ),
    ...others,
  };
}

export class Bench {
  readonly book: BenchBook;
  readonly dialogue: Dialogue;
  readonly log: LogEntry[] = [];

  /** @param log of an earlier sitting */
  constructor(
    given: Sheets = sheets(),
    { isPiped = false, log = [] }: { readonly isPiped?: boolean; readonly log?: readonly LogEntry[] } = {},
  ) {
    this.book = new BenchBook(modelOf(given));
    this.dialogue = new Dialogue(this.book, blankSpots(this.book), {
      now: () => '2026-01-01T00:00:00.000Z',
      isPiped,
      log,
    });
  }

  type(...lines: readonly string[]): Answer {
    let answer: Answer | undefined;
    for (const line of lines) {
      answer = this.dialogue.answer(line);
      this.log.push(...answer.entries);
    }
    return answer!;
  }

  /** The spot that is asked for, `J1 A 0`. */
  get asked(): string | undefined {
    const spot = this.dialogue.question()?.spot;
    return spot && `${spot.part} ${spot.column.header}`;
  }

  /** What a cell of a part's row holds. */
  cell(sheet: 'Journals' | 'Rods' | 'Shells', part: string, header: string): Plain {
    const { row } = this.book.partsNamed(part, sheet)[0]!;
    const { sheet: model, headerRow } = this.book.table(sheet)!;
    const column = model.rows[headerRow]!.findIndex((cell) => cell?.content?.value === header);
    return model.rows[row]?.[column]?.content?.value;
  }
}
