/** The gauge set-ups of the simulation. All lengths in micrometres. */

export interface GaugeSpec {
  readonly name: string;
  readonly maxError: number;
  readonly resolution: number;
  readonly repeatability: number;
  readonly setFrom?: string;
  /** Its error is one at all sizes, and the workbook says so; else it has another at each size. */
  readonly sameAtAllSizes?: true;
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
  /** How far the expansion of parts and gauges may lie from what the workbook says, 1e-6 per K; it says this too. */
  readonly expansionError: Readonly<Record<'steel' | 'aluminium', number>>;
  /** Whether a part has one spot only, so that it has no extremes. */
  readonly oneSpot: boolean;
  /** Whether parts are truly round and parallel. */
  readonly isRound: boolean;
}

const gauge = (
  name: string,
  maxError: number,
  resolution: number,
  repeatability: number,
  more: Pick<GaugeSpec, 'setFrom' | 'sameAtAllSizes'> = {},
): GaugeSpec => ({ name, maxError, resolution, repeatability, ...more });

const at = (celsius: number) => ({ journal: celsius, bore: celsius, upper: celsius, lower: celsius });
const OWN = { journal: 'M1', bore: 'B1', upper: 'W1', lower: 'W2' };
const PLAIN = {
  celsius: at(20),
  boreMaterial: 'steel',
  repeats: 1,
  expansionError: { steel: 0, aluminium: 0 },
  oneSpot: false,
  isRound: false,
} as const;
const INDEPENDENT = [
  gauge('M1', 2, 1, 0.5),
  gauge('B1', 2, 1, 0.8),
  gauge('W1', 1.5, 1, 0.5),
  gauge('W2', 1.5, 1, 0.5),
];
const SCATTERED = [
  gauge('M1', 1, 1, 2),
  gauge('B1', 1, 1, 2.5),
  gauge('W1', 1, 1, 1.5),
  gauge('W2', 1, 1, 1.5),
];
const COARSE = {
  gauges: [gauge('M1', 5, 10, 3), gauge('B1', 8, 10, 4, { setFrom: 'M1' })],
  uses: { journal: 'M1', bore: 'B1', upper: 'M1', lower: 'M1' },
};
/** Tables differ by about so much, and a gauge is seldom known better. */
const UNSURE = { boreMaterial: 'aluminium', expansionError: { steel: 1, aluminium: 2.3 } } as const;

const setByMicrometer = (more: Pick<GaugeSpec, 'sameAtAllSizes'>) => [
  gauge('M1', 4, 1, 0.5, more),
  gauge('B1', 1, 1, 0.8, { setFrom: 'M1' }),
  ...INDEPENDENT.slice(2),
];

export const SET_UPS: readonly SetUp[] = [
  {
    ...PLAIN,
    name: 'independent gauges',
    what: 'a gauge of its own for journal (± 2 µm, scatter 0.5 µm), bore (± 2 µm, 0.8 µm), upper and lower wall (± 1.5 µm, 0.5 µm), all of 1 µm resolution',
    gauges: INDEPENDENT,
    uses: OWN,
  },
  {
    ...PLAIN,
    name: 'the same, one spot a part',
    what: 'with a single spot on each part, so that no extremes are taken',
    gauges: INDEPENDENT,
    uses: OWN,
    oneSpot: true,
  },
  {
    ...PLAIN,
    name: 'the same, round parts',
    what: 'parts without form: every difference of two spots is scatter',
    gauges: INDEPENDENT,
    uses: OWN,
    isRound: true,
  },
  {
    ...PLAIN,
    name: 'bore gauge set from the micrometer',
    what: 'the micrometer (± 4 µm, another error at each size) measures the journal and sets the bore gauge (± 1 µm)',
    gauges: setByMicrometer({}),
    uses: OWN,
    oneSpot: true,
  },
  {
    ...PLAIN,
    name: 'the same, one error at all sizes',
    what: 'as before, the micrometer `Same at all sizes`: its error cancels',
    gauges: setByMicrometer({ sameAtAllSizes: true }),
    uses: OWN,
    oneSpot: true,
  },
  {
    ...PLAIN,
    name: 'one micrometer on both walls',
    what: '± 3 µm, which counts twice',
    gauges: [gauge('M1', 2, 1, 0.5), gauge('B1', 2, 1, 0.8), gauge('W1', 3, 1, 0.5)],
    uses: { ...OWN, lower: 'W1' },
    oneSpot: true,
  },
  {
    ...PLAIN,
    ...COARSE,
    name: 'coarse gauges',
    what: 'hundredths of a millimetre: one micrometer (± 5 µm, scatter 3 µm) for journal and walls, the bore gauge (± 8 µm, 4 µm) set from it',
  },
  {
    ...PLAIN,
    ...COARSE,
    name: 'coarse gauges, round parts',
    what: 'the same on parts without form',
    isRound: true,
  },
  {
    ...PLAIN,
    ...COARSE,
    name: 'coarse gauges, one spot a part',
    what: 'the same with a single spot on each part',
    oneSpot: true,
  },
  {
    ...PLAIN,
    name: 'parts at different temperatures',
    what: 'journal at 27 °C, aluminium case at 14 °C, shells at 22 °C',
    gauges: INDEPENDENT,
    uses: OWN,
    celsius: { journal: 27, bore: 14, upper: 22, lower: 22 },
    boreMaterial: 'aluminium',
    oneSpot: true,
  },
  ...[5, 20, 35, 50].map(
    (celsius): SetUp => ({
      ...PLAIN,
      ...UNSURE,
      name: `all at ${celsius} °C`,
      what: 'aluminium case; expansion of parts and gauges off by up to its stated error (steel 1, aluminium 2.3 in 1e-6/K); one spot a part',
      gauges: INDEPENDENT,
      uses: OWN,
      celsius: at(celsius),
      oneSpot: true,
    }),
  ),
  {
    ...PLAIN,
    ...UNSURE,
    name: 'all at 50 °C, several spots',
    what: 'the same with four, six and two spots and form',
    gauges: INDEPENDENT,
    uses: OWN,
    celsius: at(50),
  },
  {
    ...PLAIN,
    name: 'gauges of poor repeatability',
    what: 'scatter of 1.5 to 2.5 µm, max errors of 1 µm; each spot read once',
    gauges: SCATTERED,
    uses: OWN,
  },
  {
    ...PLAIN,
    name: 'the same, every spot read twice',
    what: 'one more repeat',
    gauges: SCATTERED,
    uses: OWN,
    repeats: 2,
  },
  {
    ...PLAIN,
    name: 'every spot read four times',
    what: 'four readings a spot',
    gauges: SCATTERED,
    uses: OWN,
    repeats: 4,
  },
  {
    ...PLAIN,
    name: 'gauges of poor repeatability, one spot a part',
    what: 'a single spot on each part, read once',
    gauges: SCATTERED,
    uses: OWN,
    oneSpot: true,
  },
];

/** Set-ups in which repeats can decide a fit: scatter counts for much of the uncertainty. */
export const PLAN_SET_UPS: readonly SetUp[] = [
  {
    ...PLAIN,
    name: 'gauges of poor repeatability',
    what: 'scatter of 1.5 to 2.5 µm, constant errors of at most 1 µm',
    gauges: SCATTERED,
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
