/** What holds for the rows that follow and name none: the temperature, a gauge for each sheet, what each gauge was set to. */
import type { LogEntry } from './log-line.js';

export const SET_TO = 'Set to';

/** Headers of a row's own values. */
export type RowHeader = 'Temperature' | 'Gauge' | typeof SET_TO;

/** The shop has another temperature tomorrow, and a zero moves: both are asked for anew. */
const HOURS_KEPT = 12;

export class Sitting {
  private temperature = '';
  /** By sheet: a micrometer for journals measures no bores. */
  private readonly gauges = new Map<string, string>();
  /** By sheet and gauge. */
  private readonly settings = new Map<string, string>();

  /**
   * As the last sitting ended.
   * @param now ISO 8601
   */
  static after(entries: readonly LogEntry[], now: string): Sitting {
    const sitting = new Sitting();
    const oldest = Date.parse(now) - HOURS_KEPT * 3_600_000;
    for (const { kind, sheet = '', gauge, typed, time } of entries) {
      const isFresh = Date.parse(time) >= oldest;
      if (kind === 'gauge') sitting.set('Gauge', sheet, '', typed);
      else if (kind === 'temperature' && isFresh) sitting.set('Temperature', sheet, '', typed);
      else if (kind === 'set to' && isFresh) sitting.set('Set to', sheet, gauge, typed);
    }
    return sitting;
  }

  /** @param gauge of the row, which counts for Set to */
  get(header: RowHeader, sheet: string, gauge: string): string {
    if (header === 'Temperature') return this.temperature;
    if (header === 'Gauge') return this.gauges.get(sheet) ?? '';
    return this.settings.get(settingKey(sheet, gauge)) ?? '';
  }

  set(header: RowHeader, sheet: string, gauge: string, text: string): void {
    if (header === 'Temperature') this.temperature = text;
    else if (header === 'Gauge') this.gauges.set(sheet, text);
    else this.settings.set(settingKey(sheet, gauge), text);
  }
}

const settingKey = (sheet: string, gauge: string) => `${sheet}\u0000${gauge.toLowerCase()}`;
