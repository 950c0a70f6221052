/** What every user must have read; shown in the README, on the Summary sheet and by --help. */
export const CAUTION = [
  "The engine maker's manual and its limits come first.",
  'A computed fit is confirmed by measurement on the torqued assembly before the engine runs.',
  'A part that fails at speed can injure or kill: where in doubt, a qualified engine machinist decides.',
] as const;

/** What stands above every list of fasteners. */
export const FASTENER_CAUTION = [
  'Torques, angles and orders are those that were typed from the manual: oilgap gives no torque of its own.',
  "oilgap calls no bolt fit for use without its maker's limit: `no limits` says that none was typed.",
  'Hold each torque against the manual, and its unit against the wrench, before a bolt is tightened.',
] as const;
