/** The figures of a gauge study as they are told: lengths on the grain, categories as a whole number. */
import type { GaugeVariation } from '../../maths/gauge-study.js';
import { type Grain, roundToWhole } from '../../maths/grain.js';

export interface StudyFigures {
  readonly repeatability: Grain;
  /** Undefined with one person. */
  readonly reproducibility: Grain | undefined;
  /** The gauge as a whole. */
  readonly gauge: Grain;
  /** Undefined with one part. */
  readonly parts: Grain | undefined;
  /** The gauge in the whole variation; undefined where nothing varies. */
  readonly gaugeShare: number | undefined;
  /** How many groups of parts the gauge tells apart; undefined where that is endless or not seen. */
  readonly categories: number | undefined;
}

export function studyFigures(found: GaugeVariation): StudyFigures {
  const { repeatability, reproducibility, gauge, parts, total, categories } = found;
  const whole = (value: number | undefined) => (value === undefined ? undefined : roundToWhole(value));
  return {
    repeatability: roundToWhole(repeatability),
    reproducibility: whole(reproducibility),
    gauge: roundToWhole(gauge),
    parts: whole(parts),
    gaugeShare: total > 0 ? gauge / total : undefined,
    categories: categories === undefined || !Number.isFinite(categories) ? undefined : Math.trunc(categories),
  };
}
