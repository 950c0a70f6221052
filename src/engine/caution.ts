/** What every user must have read; shown in the README, on the Summary sheet and by --help. */
export const CAUTION = [
  "The engine maker's manual and its limits come first.",
  'A computed fit is confirmed by measurement on the torqued assembly before the engine runs.',
  'A part that fails at speed can injure or kill: where in doubt, a qualified engine machinist decides.',
] as const;
