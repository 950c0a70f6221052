/** Every function of the sheet, in the order in which help and README list them. */
import { clearanceUncertainty } from './clearance-uncertainty.js';
import type { FunctionRecord } from './definition.js';
import { fastenerStatus } from './fastener-status.js';
import { chanceInRange, fitStatus } from './fit-conformity.js';
import { fitVerdict } from './fit-verdict.js';
import { journalTaper, outOfRound } from './journal-form.js';
import { loosestClearance, shellClearance, tightestClearance } from './oil-clearance.js';
import { partStatus } from './part-conformity.js';
import { spotOutOfRound, spotTaper } from './part-form.js';
import { largestSpot, partSize, smallestSpot, spotMean } from './part-size.js';
import { plainClearance } from './plain-clearance.js';
import { at20C } from './reference-temperature.js';
import { runningClearance } from './running-clearance.js';
import { selectedShell } from './shell-selection.js';
import { fitGrade, shellGrade } from './size-classes.js';
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
  selectedShell,
];
