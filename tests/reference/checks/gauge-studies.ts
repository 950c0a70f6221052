/** Gauge studies and analyses of variance against published studies and certified data. */
import { mean, oneWayAnalysis, sampleDeviation } from '../../../src/maths/analysis-of-variance.js';
import { analyseStudy, averageAndRange } from '../../../src/maths/gauge-study.js';
import { items, published, readingsBy, statisticalDataset } from '../published.js';
import { checkOf, type ReferenceCheck } from './check.js';

const analysis = published('grr-aiag-anova');
const ranges = published('grr-aiag-xbarr');
const instruments = published('strd-sirstv');
const worksheet = published('anova-4x10');
const days = published('gum-h5');

const study = () => readingsBy(analysis.inputs.file, 'appraiser', 'part');
const groups = (file: string, by: string) => readingsBy(file, by).flat();

export const GAUGE_STUDY_CHECKS: readonly ReferenceCheck[] = [
  checkOf(
    analysis,
    'EV, AV, GRR, PV by analysis of variance',
    ['EV', 'AV', 'GRR', 'PV'].map((name) => analysis.expected[name]),
    5e-6,
    () => {
      const found = analyseStudy(study());
      return [found.repeatability, found.reproducibility!, found.gauge, found.parts!];
    },
  ),
  checkOf(
    ranges,
    'EV, AV, GRR, PV by average and range',
    ['EV', 'AV', 'GRR', 'PV'].map((name) => ranges.expected[name]),
    2e-4,
    () => {
      const found = averageAndRange(study());
      return [found.repeatability, found.reproducibility!, found.gauge, found.parts!];
    },
  ),
  checkOf(
    instruments,
    'F and residual standard deviation',
    [instruments.expected.F, instruments.expected.residual_sd],
    1e-9,
    () => {
      const { f, within } = oneWayAnalysis(groups(instruments.inputs.file, 'instrument'));
      return [f, Math.sqrt(within.meanSquare)];
    },
  ),
  checkOf(
    worksheet,
    'F and repeatability',
    [worksheet.expected.F, worksheet.expected.s_repeatability],
    1e-6,
    () => {
      const { f, within } = oneWayAnalysis(groups(worksheet.inputs.file, 'group'));
      return [f, Math.sqrt(within.meanSquare)];
    },
  ),
  checkOf(days, 'mean of the means of days, V', days.expected.mean_V, 5e-7, () =>
    mean(days.inputs.day_means_V),
  ),
  ...items
    .filter(({ id }) => /^strd-(lew|lottery|michelso|numacc\d)$/.test(id))
    .map((dataset) =>
      checkOf(
        dataset,
        'standard deviation',
        dataset.expected.sd,
        // Doubles hold the tenths of 10000000.1 to eight digits.
        (dataset.id === 'strd-numacc4' ? 2e-8 : 1e-12) * dataset.expected.sd,
        () => sampleDeviation(statisticalDataset(dataset.inputs.file)),
      ),
    ),
];
