/** The gauge set-ups of the simulation. All lengths in micrometres. */

export interface GaugeSpec {
  readonly name: string;
  readonly maxError: number;
  readonly resolution: number;
  readonly repeatability: number;
  readonly setFrom?: string;
  /** Its error is one constant; else it is another one at every size. */
  readonly sameAtAllSizes: boolean;
}

export type Slot = 'journal' | 'bore' | 'upper' | 'lower';
export const SLOTS: readonly Slot[] = ['journal', 'bore', 'upper', 'lower'];

export interface SetUp {
  readonly name: string;
  readonly what: string;
  readonly gauges: readonly GaugeSpec[];
  /** Which gauge measures which part. */
  readonly uses: Readonly<Record<Slot, string>>;
  /** °C at which part and gauge are when measured. */
  readonly celsius: Readonly<Record<Slot, number>>;
  readonly boreMaterial: 'steel' | 'aluminium';
  /** Readings of each spot. */
  readonly repeats: number;
  /** How far the expansion of a part or a gauge may lie from what the workbook says, as a share of it. */
  readonly expansionError: number;
  /** Whether a part has one spot only, so that it has no extremes. */
  readonly oneSpot: boolean;
}

const gauge = (
  name: string,
  maxError: number,
  resolution: number,
  repeatability: number,
  setFrom?: string,
): GaugeSpec => ({
  ...{ name, maxError, resolution, repeatability, ...(setFrom && { setFrom }) },
  sameAtAllSizes: true,
});

const AT_20 = { journal: 20, bore: 20, upper: 20, lower: 20 };
const OWN = { journal: 'M1', bore: 'B1', upper: 'W1', lower: 'W2' };
const PLAIN = {
  celsius: AT_20,
  boreMaterial: 'steel',
  repeats: 1,
  expansionError: 0,
  oneSpot: false,
} as const;
const INDEPENDENT = [
  gauge('M1', 2, 1, 0.5),
  gauge('B1', 2, 1, 0.8),
  gauge('W1', 1.5, 1, 0.5),
  gauge('W2', 1.5, 1, 0.5),
];

export const SET_UPS: readonly SetUp[] = [
  {
    ...PLAIN,
    name: 'independent gauges',
    what: 'a gauge of its own for journal, bore, upper and lower wall',
    gauges: INDEPENDENT,
    uses: OWN,
  },
  {
    ...PLAIN,
    name: 'the same, one spot a part',
    what: 'as before, with a single spot on each part',
    gauges: INDEPENDENT,
    uses: OWN,
    oneSpot: true,
  },
  {
    ...PLAIN,
    name: 'bore gauge set from the micrometer',
    what: 'the micrometer measures the journal and sets the bore gauge: its error, one constant, cancels',
    gauges: [gauge('M1', 4, 1, 0.5), gauge('B1', 1, 1, 0.8, 'M1'), ...INDEPENDENT.slice(2)],
    uses: OWN,
  },
  {
    ...PLAIN,
    name: 'the same, off by another error at each size',
    what: 'as before, with errors that differ from size to size: nothing cancels',
    gauges: [gauge('M1', 4, 1, 0.5), gauge('B1', 1, 1, 0.8, 'M1'), ...INDEPENDENT.slice(2)].map((own) => ({
      ...own,
      sameAtAllSizes: false,
    })),
    uses: OWN,
  },
  {
    ...PLAIN,
    name: 'one micrometer on both walls',
    what: 'its error counts twice',
    gauges: [gauge('M1', 2, 1, 0.5), gauge('B1', 2, 1, 0.8), gauge('W1', 3, 1, 0.5)],
    uses: { ...OWN, lower: 'W1' },
  },
  {
    ...PLAIN,
    name: 'coarse gauges',
    what: 'hundredths of a millimetre, one micrometer for journal and walls',
    gauges: [gauge('M1', 5, 10, 3), gauge('B1', 8, 10, 4, 'M1')],
    uses: { journal: 'M1', bore: 'B1', upper: 'M1', lower: 'M1' },
  },
  {
    ...PLAIN,
    name: 'parts at different temperatures',
    what: 'journal at 27 °C, aluminium case at 14 °C, shells at 22 °C',
    gauges: INDEPENDENT,
    uses: OWN,
    celsius: { journal: 27, bore: 14, upper: 22, lower: 22 },
    boreMaterial: 'aluminium',
  },
  {
    ...PLAIN,
    name: 'warm parts, expansion known to 10 %',
    what: 'all at 35 °C, aluminium case; parts and gauges expand by up to a tenth more or less than stated',
    gauges: INDEPENDENT,
    uses: OWN,
    celsius: { journal: 35, bore: 35, upper: 35, lower: 35 },
    boreMaterial: 'aluminium',
    expansionError: 0.1,
  },
  {
    ...PLAIN,
    name: 'every spot read four times',
    what: 'gauges of poor repeatability, four readings a spot',
    gauges: [gauge('M1', 1, 1, 2), gauge('B1', 1, 1, 2.5), gauge('W1', 1, 1, 1.5), gauge('W2', 1, 1, 1.5)],
    uses: OWN,
    repeats: 4,
  },
];

/** Set-ups in which repeats can decide a fit: scatter counts for much of the uncertainty. */
export const PLAN_SET_UPS: readonly SetUp[] = [
  {
    ...PLAIN,
    name: 'gauges of poor repeatability',
    what: 'scatter of 1.5 to 2.5 µm, constant errors of at most 1 µm',
    gauges: [gauge('M1', 1, 1, 2), gauge('B1', 1, 1, 2.5), gauge('W1', 1, 1, 1.5), gauge('W2', 1, 1, 1.5)],
    uses: OWN,
  },
  {
    ...PLAIN,
    name: 'a bore gauge of poor repeatability',
    what: 'scatter of 4 µm on the bore, of 0.5 µm elsewhere',
    gauges: [gauge('M1', 1, 1, 0.5), gauge('B1', 1, 1, 4), gauge('W1', 1, 1, 0.5), gauge('W2', 1, 1, 0.5)],
    uses: OWN,
  },
];
