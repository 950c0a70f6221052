/** One torque that a manual prints in several units. */
import { parseDecimal } from '../../../src/maths/decimal.js';
import { areTorquesApart, type TorqueRange, type TorqueUnit, torqueIn } from '../../../src/maths/torque.js';
import { published } from '../published.js';
import { checkOf, type ReferenceCheck } from './check.js';

const printed = published('tm-torque-two-units');
const { kgfm, lbft, Nm } = printed.inputs as Record<'kgfm' | 'lbft' | 'Nm', readonly [string, string]>;

function rangeOf([low, high]: readonly [string, string], unit: TorqueUnit): TorqueRange {
  const end = (text: string) => ({ value: parseDecimal(text)!, unit });
  return { low: end(low), high: end(high) };
}

const metric = rangeOf(Nm, 'N·m');
const others = [
  ['kgf·m', rangeOf(kgfm, 'kgf·m'), 0.5],
  // Half a pound-foot.
  ['lb·ft', rangeOf(lbft, 'lb·ft'), 0.678],
] as const;

export const TORQUE_CHECKS: readonly ReferenceCheck[] = others.flatMap(([unit, range, tolerance]) => [
  checkOf(printed, `the printed ${unit} in N·m`, printed.expected.Nm as number[], tolerance, () => [
    torqueIn(range.low, 'N·m'),
    torqueIn(range.high, 'N·m'),
  ]),
  checkOf(printed, `${unit} and N·m as one torque`, 'one', 0, () =>
    areTorquesApart(range, metric) ? 'two' : 'one',
  ),
]);
