/** The two half-shells of one place: a strategy of its own, since either half may take a part marked `either`. */
import type { Half } from '../../maths/matching/stock.js';
import type { PartRow } from '../book/book.js';
import type { PartResult } from './part-result.js';

/** The parts on the two halves of a place. */
export type Halves = Partial<Record<'upper' | 'lower', PartResult>>;

function isHalfRefused({ half, bad }: PartRow): boolean {
  return half === undefined && bad.some(({ header }) => header === 'Half');
}

/** A shell whose Half was refused stands at its place all the same, so that its fit names the cell. */
export function halfOf(row: PartRow): Half | undefined {
  return isHalfRefused(row) ? 'either' : row.half;
}

/** What stands at a place of which only one part can be meant. */
export function onlyPart(
  there: readonly PartResult[] | undefined,
  unclear: string[],
): PartResult | undefined {
  if (!there || there.length < 2) return there?.[0];
  unclear.push(tooMany(there));
  return undefined;
}

export function tooMany(there: readonly PartResult[]): string {
  const { sheet } = there[0]!.row;
  return `${there.map(({ row }) => row.name).join(', ')} of ${sheet} all stand at this place: name one in Fits`;
}

/** Fills the halves that no cell names from the shells at the place, in row order. */
export function shellsByPlace(
  there: readonly PartResult[],
  typed: { upper?: boolean; lower?: boolean },
  unclear: string[],
): Halves {
  const of = (half: Half) => there.filter(({ row }) => halfOf(row) === half);
  if (typed.upper || typed.lower) {
    // One named half leaves the other to the part whose Half is exactly that, which a refused cell may have said.
    const half = typed.upper ? 'lower' : 'upper';
    const part = onlyPart([...of(half), ...there.filter(({ row }) => isHalfRefused(row))], unclear);
    return part ? { [half]: part } : {};
  }
  const found: Halves = {};
  const [uppers, lowers, eithers] = [of('upper'), of('lower'), of('either')];
  const free = (uppers.length === 0 ? 1 : 0) + (lowers.length === 0 ? 1 : 0);
  if (uppers.length > 1 || lowers.length > 1 || eithers.length > free) {
    unclear.push(tooMany(there));
    return {};
  }
  if (uppers[0]) found.upper = uppers[0];
  if (lowers[0]) found.lower = lowers[0];
  const rest = [...eithers];
  if (rest.length === 1 && free === 2 && rest[0]!.row.quantity > 1) rest.push(rest[0]!);
  for (const half of ['upper', 'lower'] as const) {
    if (found[half]) continue;
    const next = rest.shift();
    if (next) found[half] = next;
  }
  return found;
}

/** What speaks against the halves that a row names. */
export function wrongHalves({ upper, lower }: Halves): string[] {
  const faults: string[] = [];
  for (const [half, part] of [
    ['upper', upper],
    ['lower', lower],
  ] as const) {
    if (!part) continue;
    const { row } = part;
    if (isHalfRefused(row)) continue;
    if (row.half === undefined) faults.push(`shell ${row.name} has no Half: type upper, lower or either`);
    else if (row.half !== half && row.half !== 'either')
      faults.push(`shell ${row.name} is ${row.half}, named as ${half}`);
  }
  if (upper && upper === lower && upper.row.quantity < 2) {
    faults.push(`shell ${upper.row.name} stands on both halves with Quantity ${upper.row.quantity}`);
  }
  return faults;
}
