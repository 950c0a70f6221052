/** Torques in words and figures. */
import { type TorqueRange, type TorqueUnit, torqueIn } from '../../maths/torque.js';
import type { FastenerRow } from '../book/fasteners.js';

/** Converted torques have three figures and more: a torque wrench is read no finer. Workshop convention, no published source. */
const FIGURES = { below: 10, decimals: 2, others: 1 } as const;

/** A number, or a range with an en dash; a converted torque is rounded. */
export function torqueFigures({ low, high }: TorqueRange, unit: TorqueUnit): string {
  const [from, to] = [low, high].map((end) => {
    const value = torqueIn(end, unit);
    if (end.unit === unit) return String(value);
    return value.toFixed(value < FIGURES.below ? FIGURES.decimals : FIGURES.others);
  });
  return from === to ? from! : `${from}–${to}`;
}

/** As it was typed: `72–80 lb·ft`. */
export function torqueText(torque: TorqueRange): string {
  const { unit } = torque.low;
  return `${torqueFigures(torque, unit)} ${unit}`;
}

/** The torque of a fastener in a unit: as its cell or the printed one has it, else converted from the first of them. */
export function torqueOf({ torque, torqueAsPrinted }: FastenerRow, unit: TorqueUnit): string | undefined {
  const typed = [torque, torqueAsPrinted].flatMap((own) => own ?? []);
  const own = typed.find(({ low }) => low.unit === unit) ?? typed[0];
  return own && torqueFigures(own, unit);
}
