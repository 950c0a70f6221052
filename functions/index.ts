/** Every function of the sheet, in the order in which help and README list them. */
import { clearanceUncertainty } from './clearance-uncertainty.js';
import type { FunctionRecord } from './definition.js';
import { fastenerStatus } from './fastener-status.js';
import { chanceInRange, fitStatus } from './fit-conformity.js';
import { fitVerdict } from './fit-verdict.js';
import { feelerVerdictOfGap, gapChance, gapVerdict } from './gap-conformity.js';
import { gapLoosest, gapMean, gapTightest } from './gap-size.js';
import { journalTaper, outOfRound } from './journal-form.js';
import { loosestClearance, shellClearance, tightestClearance } from './oil-clearance.js';
import { partStatus } from './part-conformity.js';
import { spotOutOfRound, spotTaper } from './part-form.js';
import { largestSpot, partSize, smallestSpot, spotMean } from './part-size.js';
import { plainClearance } from './plain-clearance.js';
import { at20C } from './reference-temperature.js';
import { ringGapInBore } from './ring-gap.js';
import { runOut } from './run-out.js';
import { runningClearance } from './running-clearance.js';
import { selectedShell } from './shell-selection.js';
import { fitGrade, shellGrade } from './size-classes.js';
import { runOutVerdict, spotRunOut } from './spot-run-out.js';
import { expandedUncertainty, standardUncertainty } from './uncertainty-budget.js';

export const functionRecords: readonly FunctionRecord[] = [
  shellClearance,
  tightestClearance,
  loosestClearance,
  plainClearance,
  journalTaper,
  outOfRound,
  at20C,
  fitGrade,
  shellGrade,
  clearanceUncertainty,
  fitStatus,
  chanceInRange,
  runningClearance,
  ringGapInBore,
  runOut,
  spotMean,
  partSize,
  largestSpot,
  smallestSpot,
  spotTaper,
  spotOutOfRound,
  standardUncertainty,
  expandedUncertainty,
  partStatus,
  fastenerStatus,
  fitVerdict,
  gapMean,
  gapTightest,
  gapLoosest,
  gapVerdict,
  feelerVerdictOfGap,
  gapChance,
  spotRunOut,
  runOutVerdict,
  selectedShell,
];
