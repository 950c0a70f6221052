/** Every kind of fit. */
import { addPartSheet } from '../input-sheets/index.js';
import { GAP } from './gap.js';
import type { KindOfFit } from './kind-of-fit.js';
import { PLAIN_FIT } from './plain-fit.js';
import { RUN_OUT } from './run-out.js';
import { SHELL_BEARING } from './shell-bearing.js';

const KINDS: KindOfFit[] = [SHELL_BEARING, PLAIN_FIT, GAP, RUN_OUT];

export function kindsOfFit(): readonly KindOfFit[] {
  return KINDS;
}

/** Every record of a fit: each kind, and what it is with shells in its bore. */
export function recordsOfFits(): readonly KindOfFit[] {
  return KINDS.flatMap((kind) => (kind.shellsIn ? [kind, kind.shellsIn] : [kind]));
}

/** Adds a kind with the sheets that only it needs; what it returns takes them out again. */
export function addKindOfFit(kind: KindOfFit): () => void {
  KINDS.push(kind);
  const added = (kind.sheets ?? []).map(addPartSheet);
  return () => {
    KINDS.splice(KINDS.indexOf(kind), 1);
    for (const takeOut of added) takeOut();
  };
}
